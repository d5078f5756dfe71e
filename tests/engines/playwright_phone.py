"""Chromium and Firefox."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Locator

from tests.engines.phone import Phone


class PlaywrightPhone(Phone):
    """A context of a browser that runs; `touch` where it has a finger and no mouse."""

    def __init__(self, context: BrowserContext, saved_files: Path, touch: bool) -> None:
        super().__init__(saved_files)
        self.context, self.touch = context, touch
        self.page = context.new_page()

    def open(self, address: str) -> None:
        self.page.goto(address)

    def reload(self) -> None:
        self.page.reload()

    def close(self) -> None:
        self.context.close()

    def evaluate(self, function: str, argument: Any = None) -> Any:
        return self.page.evaluate(function, argument)

    def _first(self, selector: str, words: str = "") -> Locator:
        return self.page.locator(selector, has_text=words).filter(visible=True).first

    def tap(self, selector: str, words: str = "") -> None:
        thing = self._first(selector, words)
        if self.touch:
            thing.tap()
        else:
            thing.click()

    def fill(self, selector: str, text: str) -> None:
        self._first(selector).fill(text)

    def page_down(self) -> None:
        self.page.keyboard.press("PageDown")

    @contextmanager
    def held(self, selector: str) -> Iterator[None]:
        self._first(selector).hover()
        self.page.mouse.down()
        yield
        self.page.mouse.up()

    def give(self, selector: str, file: Path) -> None:
        self.page.locator(selector).set_input_files(file)
