"""A plan as a piece of text for a link, and back.

A link holds what was asked, not what was answered: `1.` and then, in URL-safe base64 without
padding, 4 bytes of CRC-32 and the request as compact JSON, deflated (RFC 1951) with a dictionary of
the words that requests are made of. The dictionary belongs to version 1 and never changes; a later
form gets another number, and every number is read for ever.

A link is short enough for a small QR code, tells damage from a foreign text, and cannot swell: what
inflates beyond `LARGEST` is refused.
"""

from __future__ import annotations

import base64
import binascii
import json
import re
import zlib
from collections.abc import Mapping
from typing import Any

from engine.answers import kept_weights
from engine.read import plain_json
from engine.read.errors import Problem, Refused

LARGEST = 4096  # bytes of JSON
_SHAPE = re.compile(r"#?(\d{1,4})\.([A-Za-z0-9_-]{8,2048})")
# A name that a field can have. In the page names become paths, and those left out here (`__proto__`
# among them) would lead behind its objects.
_NAME = re.compile(r"(?!constructor$|prototype$)[a-z][a-z0-9_]*")

# The words of version 1, the most usual last, where deflate reaches them cheapest. Keep for ever.
_WORDS_1 = (
    b'"US women""US men""UK child""EU child""US child""Mondopoint""Japan""mock rib","every":"rib"'
    b'"pulled_width":"swatch":{"flat_width":","length":","needles":","rounds":"yd / 100 g"" tex"Nm '
    b'"person":{"age":"height":"weight":" kg"" lb""sex":"man""woman""shoe_size":{"size":'
    b'"system":"UK"'
    b'"EU"},"foot_length_of_sock":"length_ease":0.04"leg":{"rounds":"toe":{"left":10,"needles":30}'
    b'"heel":{"left":10,"needles":30}"sock":{"cuff":{"kind":"hem","rounds":20}'
    b'{"cylinder":{"slots":72},"fabric":{"rounds":"9.6 / in","stitches":"7.5 / in",'
    b'"yarn":"400 m / 100 g"},"foot":{"ankle_girth":" in","ball_girth":" cm","calf_girth":" cm",'
    b'"heel_girth":" cm","length":"24.6 cm"},'
    b'"person":{"sex":"woman"},"units":"in"}"units":"cm"}'
)


def write(request: Mapping[str, Any]) -> str:
    """Return the text of a link (without `#`) that holds `request`; blank fields are left out."""
    bare = _bare(kept_weights.told_in(request, "g"))
    data = json.dumps(bare, ensure_ascii=False, sort_keys=True, separators=(",", ":")).encode()
    squeeze = zlib.compressobj(9, zlib.DEFLATED, -15, 9, zlib.Z_DEFAULT_STRATEGY, _WORDS_1)
    body = zlib.crc32(data).to_bytes(4, "big") + squeeze.compress(data) + squeeze.flush()
    return f"1.{_letters(body)}"


def read(text: str) -> dict[str, Any]:
    """Return the request a link holds, or raise `Refused` with one sentence."""
    match = _SHAPE.fullmatch(text.strip())
    if not match:
        raise _no("This link holds no sock plan.", "Ask for the whole link again, or start afresh.")
    if match[1] != "1":
        raise _no(
            "This link was made by a newer Heelwise than this one.",
            "Go online once so that this one can renew itself, then open the link again.",
        )
    return kept_weights.told_in(_open(match[2]), "oz")


def _letters(body: bytes) -> str:
    return base64.urlsafe_b64encode(body).rstrip(b"=").decode()


def _open(text: str) -> dict[str, Any]:
    try:
        request = plain_json.read(_inflated(text))
        named = _named(request)
    except (_Damaged, plain_json.NotJson, RecursionError):  # the last: lists in lists in lists
        raise _no(
            "This link is damaged: a part of it is missing or changed.",
            "Ask for it again, and copy it whole.",
        ) from None
    if not isinstance(request, dict) or not named:
        raise _no("This link holds no sock plan.", "Ask for the whole link again, or start afresh.")
    return request


class _Damaged(Exception):
    """Raised where a link is not as it was written."""


def _inflated(text: str) -> bytes:
    """Return the JSON that a link's letters hold, or raise `_Damaged`."""
    inflate = zlib.decompressobj(-15, _WORDS_1)
    try:
        body = base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))
        data = inflate.decompress(body[4:], LARGEST)
    except (binascii.Error, zlib.error):
        raise _Damaged from None
    whole = inflate.eof and not inflate.unused_data
    as_written = _letters(body) == text  # the last letter has bits to spare
    if not whole or not as_written or zlib.crc32(data) != int.from_bytes(body[:4], "big"):
        raise _Damaged
    return data


def _named(value: Any) -> bool:
    """Tell whether every name in it could be a field's."""
    if isinstance(value, list):
        return all(map(_named, value))
    return not isinstance(value, dict) or all(
        _NAME.fullmatch(name) and _named(inner) for name, inner in value.items()
    )


def _no(message: str, way_out: str) -> Refused:
    return Refused([Problem("link", message, way_out)])


def _bare(value: Any) -> Any:
    """Return the value without blank fields and empty groups."""
    if not isinstance(value, Mapping):
        return value.strip() if isinstance(value, str) else value
    kept = {str(name): _bare(inner) for name, inner in value.items()}
    return {name: inner for name, inner in kept.items() if inner not in (None, "", {})}
