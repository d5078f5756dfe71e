"""A WebAssembly module taken apart and put together again, as far as this build has to.

The binary format is that of the WebAssembly Core Specification 3.0, chapter 5: 5.2.2 (LEB128), 5.4
(instructions), 5.5 (modules); the older exception instructions after the proposal's phase 3 text.
"""

from collections.abc import Iterable, Iterator

IMPORT, EXPORT, ELEMENT, CODE, DATA = 2, 7, 9, 10, 11  # sections
FUNCTION, TABLE, MEMORY, GLOBAL, TAG = range(5)  # what is imported or exported
NOTHING = b"\x00\x00\x0b"  # a body without locals that traps: unreachable, end
CALL, TAIL_CALL, ADDRESS, NUMBER = 0x10, 0x12, 0xD2, 0x41

# What follows an instruction's first byte: how many LEB128 numbers, or how many bytes.
_NUMBERS = dict.fromkeys((0x05, 0x0B, 0x0F, 0x19, 0x1A, 0x1B, 0x00, 0x01, 0x0A, 0xD1), 0)
_NUMBERS |= dict.fromkeys(range(0x45, 0xC5), 0)
_NUMBERS |= dict.fromkeys((0x02, 0x03, 0x04, 0x06, 0x07, 0x08, 0x09, 0x0C, 0x0D, 0x18), 1)
_NUMBERS |= dict.fromkeys((0x10, 0x12, 0x14, 0x15, *range(0x20, 0x27), 0x3F, 0x40), 1)
_NUMBERS |= dict.fromkeys((0x41, 0x42, 0xD0, 0xD2), 1)
_NUMBERS |= dict.fromkeys((0x11, 0x13, *range(0x28, 0x3F)), 2)
_BULK = (0, 0, 0, 0, 0, 0, 0, 0, 2, 1, 2, 1, 2, 1, 2, 1, 1, 1)  # behind 0xFC


class Unreadable(ValueError):
    """An instruction that is not known here."""


def sections(wasm: bytes) -> Iterator[tuple[int, bytes]]:
    """Number and content of each, in their order."""
    at = 8
    while at < len(wasm):
        number_ = wasm[at]
        length, at = number(wasm, at + 1)
        yield number_, wasm[at : at + length]
        at += length


def module(parts: Iterable[tuple[int, bytes]]) -> bytes:
    """The module with these sections."""
    made = [b"\0asm\1\0\0\0"]
    for kind, content in parts:
        made += [bytes([kind]), written(len(content)), content]
    return b"".join(made)


def number(content: bytes, at: int) -> tuple[int, int]:
    """An unsigned LEB128 number, and where it ends."""
    value = shift = 0
    while True:
        byte = content[at]
        value |= (byte & 0x7F) << shift
        at, shift = at + 1, shift + 7
        if byte < 0x80:
            return value, at


def written(value: int) -> bytes:
    """The number as unsigned LEB128."""
    out = bytearray()
    while value > 0x7F:
        out.append(value & 0x7F | 0x80)
        value >>= 7
    return bytes([*out, value])


def signed(value: int) -> bytes:
    """A number that is not negative as signed LEB128."""
    bits = written(value)
    return bits if bits[-1] < 0x40 else bytes([*bits[:-1], bits[-1] | 0x80, 0])


def placed(content: bytes, at: int) -> tuple[int, int]:
    """The address a segment goes to, and where what tells it ends: active, `i32.const`, `end`.

    Raises Unreadable.
    """
    if content[at : at + 2] != b"\0\x41":
        raise Unreadable("a segment that is placed in another way")
    address, at = number(content, at + 2)  # not negative, so signed and unsigned are alike
    return address, at + 1


def name(content: bytes, at: int) -> tuple[str, int]:
    """A name, and where it ends."""
    length, at = number(content, at)
    return content[at : at + length].decode(), at + length


def imports(content: bytes) -> Iterator[tuple[str, str, int]]:
    """Module, name and kind of each import of an import section."""
    count, at = number(content, 0)
    for _ in range(count):
        where, at = name(content, at)
        what, at = name(content, at)
        yield where, what, content[at]
        at = _past_type(content, at)


def _past_type(content: bytes, at: int) -> int:
    """Behind the type of an import (5.5.5)."""
    kind, at = content[at], at + 1
    if kind == FUNCTION:
        return number(content, at)[1]
    if kind == GLOBAL:
        return at + 2
    if kind == TAG:
        return number(content, at + 1)[1]
    if kind == TABLE:
        at += 1
    with_most, at = content[at] & 1, number(content, at + 1)[1]
    return number(content, at)[1] if with_most else at


def exports(content: bytes) -> Iterator[tuple[str, int, int, bytes]]:
    """Name, kind, index and the bytes of each export of an export section."""
    count, at = number(content, 0)
    for _ in range(count):
        begun = at
        what, at = name(content, at)
        kind = content[at]
        index, at = number(content, at + 1)
        yield what, kind, index, content[begun:at]


def bodies(content: bytes) -> list[bytes]:
    """The functions' bodies of a code section, locals and all."""
    count, at = number(content, 0)
    found = []
    for _ in range(count):
        length, at = number(content, at)
        found.append(content[at : at + length])
        at += length
    return found


def code(functions: list[bytes]) -> bytes:
    """A code section of these bodies."""
    made = [written(len(functions))]
    for body in functions:
        made += [written(len(body)), body]
    return b"".join(made)


def operands(body: bytes) -> tuple[set[int], set[int]]:
    """Functions that a body calls or has the address of, and every 32-bit number in it.

    Raises Unreadable.
    """
    calls, numbers = set[int](), set[int]()
    count, at = number(body, 0)
    for _ in range(count):  # locals
        at = number(body, at)[1] + 1
    end = len(body)
    while at < end:
        kind = body[at]
        at += 1
        follow = _NUMBERS.get(kind)
        if follow is None:
            at = _past_rare(kind, body, at)
        elif kind in (CALL, TAIL_CALL, ADDRESS):
            function, at = number(body, at)
            calls.add(function)
        elif kind == NUMBER:
            begun = at
            while body[at] >= 0x80:
                at += 1
            at += 1
            if at - begun > 2:  # no address is shorter
                numbers.add(number(body, begun)[0] & 0xFFFFFFFF)
        else:
            for _ in range(follow):
                while body[at] >= 0x80:
                    at += 1
                at += 1
    if at != end:
        raise Unreadable("a body that ends within an instruction")
    return calls, numbers


def _past_rare(kind: int, body: bytes, at: int) -> int:
    """Behind what follows an instruction of another form than most."""
    if kind == 0x43:  # f32.const
        return at + 4
    if kind == 0x44:  # f64.const
        return at + 8
    follow = 0
    if kind == 0x0E:  # br_table
        count, at = number(body, at)
        follow = count + 1
    elif kind == 0x1C:  # select of a type
        follow, at = number(body, at)
    elif kind == 0x1F:  # try_table
        at = number(body, at)[1]
        count, at = number(body, at)
        for _ in range(count):
            way = body[at]
            at = number(body, at + 1)[1]
            at = number(body, at)[1] if way < 2 else at
    elif kind == 0xFC:
        which, at = number(body, at)
        follow = _BULK[which]
    else:
        raise Unreadable(f"instruction {kind:#x}")
    for _ in range(follow):
        at = number(body, at)[1]
    return at
