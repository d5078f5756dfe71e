"""What comes out of the printer, read back as a printer would have it.

The text by pypdf, the picture by pypdfium2. Paper: A4 is 210 × 297 mm (ISO 216), Letter 8.5 × 11 in
(ANSI/ASME Y14.1).
"""

from __future__ import annotations

import io
import unicodedata
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pypdf
import pypdfium2
from playwright.sync_api import BrowserContext, Page

NewPhone = Callable[..., BrowserContext]
PAPER = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
SMALL = {"A6": (105.0, 148.0)}  # ISO 216
DOTS = 8  # a mm, about 200 to the inch
UNPRINTED = 5  # mm at the edge that an ordinary printer leaves white (common practice)


def to_a_file(phone: BrowserContext) -> BrowserContext:
    """The phone with a printer that only counts how often it was asked."""
    phone.add_init_script("window.print = () => { window.asked = (window.asked ?? 0) + 1 }")
    return phone


def printed(page: Page, paper: str, keep: Path | None = None, margin: str = "0") -> bytes:
    made: bytes = page.pdf(
        format=paper,
        prefer_css_page_size=True,
        margin={"top": margin, "right": margin, "bottom": margin, "left": margin},
    )
    if keep:
        keep.write_bytes(made)
    return made


def text_of(made: bytes) -> list[str]:
    """The words of each page, ligatures taken apart."""
    pages = pypdf.PdfReader(io.BytesIO(made)).pages
    return [unicodedata.normalize("NFKC", page.extract_text()) for page in pages]


def picture(made: bytes, page: int = 0) -> np.ndarray[Any, np.dtype[np.uint8]]:
    """A page as ink sees it, DOTS to the mm: 0 is black."""
    sheet = pypdfium2.PdfDocument(made)[page]
    bitmap = sheet.render(scale=DOTS * 25.4 / 72, grayscale=True)
    return np.array(bitmap.to_numpy()).reshape(bitmap.height, bitmap.width)


def ink(seen: np.ndarray[Any, Any]) -> tuple[float, float, float, float]:
    """Where ink begins and ends in mm: left, top, right, bottom."""
    down, across = np.where(seen < 200)
    return tuple(n / DOTS for n in (across.min(), down.min(), across.max() + 1, down.max() + 1))


def nothing_cut_off(made: bytes, paper: str, margin: float = UNPRINTED) -> int:
    """Hold every page to its margins in mm; how many pages there are."""
    pages = len(pypdf.PdfReader(io.BytesIO(made)).pages)
    wide, high = {**PAPER, **SMALL}[paper]
    for number in range(pages):
        left, top, right, bottom = ink(picture(made, number))
        assert left >= margin - 0.5, (number, left)
        assert top >= margin - 0.5, (number, top)
        assert right <= wide - margin + 0.5, (number, right)
        assert bottom <= high - margin + 0.5, (number, bottom)
    return pages
