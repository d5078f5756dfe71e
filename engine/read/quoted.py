"""What somebody wrote, within a sentence of ours: it must not turn round the words beside it.

Characters that set the direction of writing (Unicode's `Bidi_Control`) and those without a shape
are left out; words that run from right to left are kept apart from the rest (UAX 9, 6.3).
"""

from __future__ import annotations

import unicodedata

LONGEST = 40
_TURNING = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
_SHAPELESS = ("Cc", "Cs")  # NUL and its like, halves of a character
_APART = "\u2068{}\u2069"  # first strong isolate, and its end


def plain(text: str) -> str:
    """Return the text as it can stand in a sentence or a heading."""
    kept = "".join(
        one for one in text if one not in _TURNING and unicodedata.category(one) not in _SHAPELESS
    )
    leftwards = any(unicodedata.bidirectional(one) in ("R", "AL") for one in kept)
    return _APART.format(kept) if leftwards else kept


def quoted(text: str) -> str:
    """Return the text in quotes, cut where it is long."""
    text = text.strip()
    more = "…" if len(text) > LONGEST else ""
    return f"“{plain(text[:LONGEST])}{more}”"
