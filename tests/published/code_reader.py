"""Reads a code as a camera's program would: zxing-cpp, which knows nothing of how ours are made."""

from __future__ import annotations

import re
from typing import Any

import numpy as np
import numpy.typing as npt
import zxingcpp

Pixels = npt.NDArray[np.uint8]
DARK, WHITE = 0, 255


def pixels(svg: str, per_module: int = 4) -> Pixels:
    """The picture of a code: its runs of dark modules filled in, `per_module` pixels each way."""
    across, down = map(int, re.findall(r'viewBox="0 0 (\d+) (\d+)"', svg)[0])
    drawn = np.full((down, across), WHITE, np.uint8)
    for left, top, wide, back in re.findall(r"M(\d+) (\d+)h(\d+)v1h-(\d+)z", svg):
        assert wide == back
        drawn[int(top), int(left) : int(left) + int(wide)] = DARK
    return np.kron(drawn, np.ones((per_module, per_module), np.uint8))


def found(picture: Any) -> list[Any]:
    """The codes in a picture (pixels or a Pillow image)."""
    return list(
        zxingcpp.read_barcodes(
            picture, formats=zxingcpp.BarcodeFormats(zxingcpp.BarcodeFormat.QRCode)
        )
    )


def read(picture: Any) -> str:
    """The text of the one code in a picture."""
    (code,) = found(picture)
    return str(code.text)
