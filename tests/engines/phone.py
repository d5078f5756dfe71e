"""A phone in somebody's hand, whichever engine its browser has: all that the flows ask of it.

A selector goes with words where several things answer to it; the first in sight that has them is
meant. Whatever is awaited is looked for again and again, up to a time limit.
"""

import json
import time
from abc import ABC, abstractmethod
from collections.abc import Callable
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Any, TypeVar

T = TypeVar("T")

# What a person sees, top to bottom: words, and what stands in fields. An engine may put white space
# elsewhere, and words of choices that are folded up are in sight in none.
_IN_SIGHT = """(selector) => {
  const seen = [];
  for (const root of document.querySelectorAll(selector)) {
    const walk = document.createTreeWalker(root, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
    for (let node = walk.currentNode; node; node = walk.nextNode()) {
      const element = node instanceof Element ? node : node.parentElement;
      const inSight = element.checkVisibility({ visibilityProperty: true });
      if (!inSight || element.closest("option, style")) continue;
      if (node instanceof Text) seen.push(node.data);
      else if (node.matches("[type=radio], [type=checkbox]")) seen.push(`[${node.checked}]`);
      else if (node.matches("input, select, textarea")) seen.push(`[${node.value}]`);
    }
  }
  return seen.join(" ");
}"""


class Phone(ABC):
    """One browser with nothing stored at first."""

    def __init__(self, saved_files: Path) -> None:
        self.saved_files = saved_files

    @abstractmethod
    def open(self, address: str) -> None: ...

    @abstractmethod
    def reload(self) -> None: ...

    @abstractmethod
    def close(self) -> None: ...

    @abstractmethod
    def evaluate(self, function: str, argument: Any = None) -> Any:
        """What a JavaScript function, or its promise, comes to in the page."""

    @abstractmethod
    def tap(self, selector: str, words: str = "") -> None: ...

    @abstractmethod
    def fill(self, selector: str, text: str) -> None:
        """Type a text in place of what stands there."""

    @abstractmethod
    def page_down(self) -> None:
        """Press the key that a pedal presses."""

    @abstractmethod
    def held(self, selector: str) -> AbstractContextManager[None]:
        """A finger on it until the end of the block."""

    @abstractmethod
    def give(self, selector: str, file: Path) -> None:
        """Pick a file."""

    def sight(self, selector: str) -> str:
        """Words and fields in sight within it."""
        return " ".join(str(self.evaluate(_IN_SIGHT, selector)).split())

    def reads(self, selector: str, words: str) -> None:
        """Wait until these words are in sight within it."""
        until(
            lambda: words in self.sight(selector),
            lambda: f"no {words!r} in {selector}: {self.sight('body')}",
        )

    def ready(self) -> None:
        """Wait until the calculator is up."""
        until(lambda: not self.sight("#waiting"), lambda: "the calculator does not start")

    def saved(self, selector: str) -> Path:
        """The JSON file that a tap hands to the phone, once it is whole."""
        for old in self.saved_files.iterdir():
            old.unlink()
        self.tap(selector)

        def whole() -> Path | None:
            for file in self.saved_files.iterdir():
                # Firefox and Chromium are still writing, and give it another name afterwards.
                if file.suffix in {".part", ".crdownload"}:
                    continue
                try:
                    json.loads(file.read_bytes())
                except (ValueError, OSError):
                    continue
                return file
            return None

        return until(whole, lambda: "no file was saved")


def until(look: Callable[[], T | None], fault: Callable[[], str], seconds: float = 120) -> T:
    """What looking finds, once it finds something."""
    end = time.monotonic() + seconds
    while not (found := look()):
        assert time.monotonic() < end, fault()
        time.sleep(0.05)
    return found
