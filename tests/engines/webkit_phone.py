"""WebKitGTK through its driver; closed, it has forgotten all."""

import os
import warnings
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from selenium import webdriver
from selenium.common.exceptions import WebDriverException
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.remote.webelement import WebElement

from build import engines
from tests.engines.phone import Phone, until

# In the middle, where what is stuck to the screen's edges does not lie over it, and once it stands
# still: a touch goes to where it stood.
_FIND = """const [selector, words, end] = arguments;
    const found = [...document.querySelectorAll(selector)].find((one) =>
        one.checkVisibility({ visibilityProperty: true }) && one.textContent.includes(words));
    found?.scrollIntoView({ block: "center", behavior: "instant" });
    const place = () => JSON.stringify(found?.getBoundingClientRect());
    const before = place();
    setTimeout(() => end(place() === before ? found : null), 50);"""
_EVALUATE = """const [argument, end] = arguments;
    Promise.resolve().then(() => ({})(argument)).then(
        (value) => end({{ value }}), (error) => end({{ error: String(error) }}));"""


class WebKitPhone(Phone):
    """Drives one browser; `display` is the screen it is shown on."""

    def __init__(self, folder: Path, display: str) -> None:
        super().__init__(folder / "saved")
        self.saved_files.mkdir()
        # It saves files where the person's own settings say.
        (folder / "user-dirs.dirs").write_text(f'XDG_DOWNLOAD_DIR="{self.saved_files}"\n')
        home = {"HOME": str(folder), "XDG_CONFIG_HOME": str(folder)}
        options = webdriver.WebKitGTKOptions()
        options.binary_location = str(engines.mini_browser())
        options.add_argument("--automation")
        options.add_argument("--features=+StorageAPI,+StorageAPIEstimate,+FileSystem")
        service = webdriver.WebKitGTKService(
            "/usr/bin/WebKitWebDriver",
            env={**os.environ, **home, "DISPLAY": display, "LANGUAGE": "en_GB"},
        )
        with warnings.catch_warnings():  # selenium's own use of what it is about to give up
            warnings.simplefilter("ignore", DeprecationWarning)
            self.driver = webdriver.WebKitGTK(options=options, service=service)
        self.driver.set_script_timeout(60)
        self.driver.set_window_size(390, 844)  # it becomes no narrower than 447

    def open(self, address: str) -> None:
        self.driver.get(address)

    def reload(self) -> None:
        self.driver.refresh()

    def close(self) -> None:
        self.driver.quit()

    def evaluate(self, function: str, argument: Any = None) -> Any:
        came = self.driver.execute_async_script(_EVALUATE.format(function), argument)
        assert "error" not in came, came["error"]
        return came.get("value")

    def _with(self, selector: str, words: str, act: Callable[[WebElement], Any]) -> None:
        """Do something to an element as soon as it can be done."""
        refused = ""

        def done() -> bool:
            nonlocal refused
            element = self.driver.execute_async_script(_FIND, selector, words)
            try:
                return bool(element) and (act(element), True)[1]
            except WebDriverException as fault:  # drawn anew just now, or something lies over it
                refused = fault.msg or ""
                return False

        until(done, lambda: f"not there: {selector} {words} {refused}")

    def tap(self, selector: str, words: str = "") -> None:
        self._with(selector, words, WebElement.click)

    def fill(self, selector: str, text: str) -> None:
        self._with(selector, "", WebElement.clear)
        self._with(selector, "", lambda field: field.send_keys(text))

    def page_down(self) -> None:
        ActionChains(self.driver).send_keys(Keys.PAGE_DOWN).perform()

    @contextmanager
    def held(self, selector: str) -> Iterator[None]:
        chain = ActionChains(self.driver)
        self._with(selector, "", lambda thing: chain.click_and_hold(thing).perform())
        yield
        ActionChains(self.driver).release().perform()

    def give(self, selector: str, file: Path) -> None:
        self._with(selector, "", lambda field: field.send_keys(str(file)))
