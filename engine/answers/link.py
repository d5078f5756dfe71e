"""A plan as a piece of text for a link, and back.

A link holds what was asked: `1.` and then, in URL-safe base64 without padding, 4 bytes of CRC-32
and the request as compact JSON, deflated (RFC 1951) with a dictionary of the words that requests
are made of. The dictionary never changes; a later form gets another number, and every number is
read for ever.

Version 2 brings the counts along, which a page shows before its engine is there and which the
engine then checks: `2.` and the bytes of `sent_counts`, the CRC-32 of these with the deflated
request, and that request, deflated as before. So whoever has no inflater can tell damage too.

Version 3 is a set of instructions: as version 1, its JSON with a `set` beside the fields.

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

from engine.answers import kept_weights, sent_counts
from engine.read import plain_json
from engine.read.errors import Problem, Refused
from engine.say import messages as say
from engine.say.message import Message

LARGEST = 4096  # bytes of JSON
_SET = b"3."  # is summed too: a 1 misread as 3 is no set
_SHAPE = re.compile(r"#?(\d{1,4})\.([A-Za-z0-9_-]{8,2048})")
# A name that a field can have. In the page names become paths, and those left out here (`__proto__`
# among them) would lead behind its objects.
_NAME = re.compile(r"(?!constructor$|prototype$)[a-z][a-z0-9_]*")

# The words of both versions, the most usual last, where deflate reaches them cheapest. Keep them.
_WORDS = (
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


def write(request: Mapping[str, Any], counts: bytes | None = None) -> str:
    """Return the text of a link (without `#`) that holds `request`; blank fields are left out.

    `counts` are those of its sock, as `sent_counts.pack` gives them; without them it is version 1.
    """
    data, squeezed = _squeezed(request)
    if counts is None:
        return f"1.{_letters(_sum(data) + squeezed)}"
    return f"2.{_letters(counts + _sum(counts + squeezed) + squeezed)}"


def write_set(request: Mapping[str, Any], wanted: Mapping[str, Any]) -> str:
    """Return the text of a link (without `#`) that holds a set of instructions over sizes."""
    data, squeezed = _squeezed({**request, "set": wanted})
    return f"3.{_letters(_sum(_SET + data) + squeezed)}"


def _squeezed(request: Mapping[str, Any]) -> tuple[bytes, bytes]:
    """Return the JSON of a request, plain and deflated."""
    bare = _bare(kept_weights.told_in(request, "g"))
    data = json.dumps(bare, ensure_ascii=False, sort_keys=True, separators=(",", ":")).encode()
    squeeze = zlib.compressobj(9, zlib.DEFLATED, -15, 9, zlib.Z_DEFAULT_STRATEGY, _WORDS)
    return data, squeeze.compress(data) + squeeze.flush()


def read(text: str) -> dict[str, Any]:
    """Return the `request` a link holds, the counts `sent` with it (2), or its `set` (3).

    Raises `Refused` with one sentence.
    """
    match = _SHAPE.fullmatch(text.strip())
    if not match:
        raise _no(say.link_empty(), say.ask_for_link())
    if match[1] not in ("1", "2", "3"):
        raise _no(say.link_newer(), say.renew_first())
    try:
        body = _bytes(match[2])
        if match[1] == "1":
            return {"request": _request(_inflated(body[4:], body[:4]))}
        if match[1] == "3":
            request = _request(_inflated(body[4:], body[:4], _SET))
            return {"request": request, "set": request.pop("set", None) or {}}
        counts, kept, squeezed = body[: sent_counts.BYTES], body[sent_counts.BYTES :][:4], body[12:]
        if _sum(counts + squeezed) != kept:
            raise _Damaged
        return {"request": _request(_inflated(squeezed)), "sent": sent_counts.read(counts)}
    except (_Damaged, plain_json.NotJson, RecursionError):  # the last: lists in lists in lists
        raise _no(say.link_damaged(), say.copy_it_whole()) from None


def _sum(data: bytes) -> bytes:
    return zlib.crc32(data).to_bytes(4, "big")


def _letters(body: bytes) -> str:
    return base64.urlsafe_b64encode(body).rstrip(b"=").decode()


def _bytes(text: str) -> bytes:
    """Return what a link's letters stand for, or raise `_Damaged`."""
    try:
        body = base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))
    except binascii.Error:
        raise _Damaged from None
    if _letters(body) != text:  # the last letter has bits to spare
        raise _Damaged
    return body


def _request(data: bytes) -> dict[str, Any]:
    request = plain_json.read(data)
    if not isinstance(request, dict) or not _named(request):
        raise _no(say.link_empty(), say.ask_for_link())
    return kept_weights.told_in(request, "oz")


class _Damaged(Exception):
    """Raised where a link is not as it was written."""


def _inflated(squeezed: bytes, kept: bytes | None = None, form: bytes = b"") -> bytes:
    """Return the JSON of a link, which after its `form` has the sum `kept`, or raise `_Damaged`."""
    inflate = zlib.decompressobj(-15, _WORDS)
    try:
        data = inflate.decompress(squeezed, LARGEST)
    except zlib.error:
        raise _Damaged from None
    if not inflate.eof or inflate.unused_data or kept not in (None, _sum(form + data)):
        raise _Damaged
    return data


def _named(value: Any) -> bool:
    """Tell whether every name in it could be a field's."""
    if isinstance(value, list):
        return all(map(_named, value))
    return not isinstance(value, dict) or all(
        _NAME.fullmatch(name) and _named(inner) for name, inner in value.items()
    )


def _no(message: Message, way_out: Message) -> Refused:
    return Refused([Problem("link", message, way_out)])


def _bare(value: Any) -> Any:
    """Return the value without blank fields and empty groups."""
    if not isinstance(value, Mapping):
        return value.strip() if isinstance(value, str) else value
    kept = {str(name): _bare(inner) for name, inner in value.items()}
    return {name: inner for name, inner in kept.items() if inner not in (None, "", {})}
