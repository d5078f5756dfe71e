"""Phones with a storage that stays."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Playwright

from tests.conftest import PHONE
from tests.faults.kept_phone import KeptPhone


@pytest.fixture
def kept_phone(
    playwright: Playwright, browser_type_launch_args: dict[str, Any], tmp_path: Path
) -> Callable[..., KeptPhone]:
    """Makes a phone with nothing stored yet; keywords change what it is."""

    def make(**features: Any) -> KeptPhone:
        return KeptPhone(
            playwright, tmp_path / "storage", {**browser_type_launch_args, **PHONE, **features}
        )

    return make
