"""The memory that a WebAssembly module begins with, as its data section lays it out."""

import struct
from collections.abc import Iterable, Iterator

from build import wasm


class Memory:
    """What a data section lays out, as one image that can be searched and changed."""

    def __init__(self, content: bytes) -> None:
        laid_out = list(_segments(content))
        self.segments = [(at, len(data)) for at, data in laid_out]
        self.size = max(at + length for at, length in self.segments)
        self.image = bytearray(self.size)
        for at, data in laid_out:
            self.write(at, data)

    def read(self, at: int, length: int) -> bytes:
        """So many bytes."""
        return bytes(self.image[at : at + length])

    def write(self, at: int, content: bytes) -> None:
        """Write over what is there."""
        self.image[at : at + len(content)] = content

    def words(self, at: int, count: int) -> tuple[int, ...]:
        """So many 32-bit numbers; none lie outside. Raises struct.error."""
        return struct.unpack_from(f"<{count}I", self.image, at)

    def all_words(self) -> Iterable[int]:
        """Every 32-bit number at a place where an address can stand."""
        return memoryview(self.read(0, self.size // 4 * 4)).cast("I")

    def text(self, at: int) -> str:
        """The text up to a zero, "" where there is none."""
        end = self.image.find(b"\0", at, at + 100)
        return self.image[at:end].decode("latin-1") if 0 < at < end else ""

    def find(self, content: bytes) -> Iterator[int]:
        """Where it stands."""
        at = self.image.find(content)
        while at >= 0:
            yield at
            at = self.image.find(content, at + 1)

    def pointing(self, to: int) -> Iterator[int]:
        """Where the address `to` stands."""
        return (at for at in self.find(struct.pack("<I", to)) if at % 4 == 0)

    def section(self) -> bytes:
        """The data section, each segment as it is now."""
        made = [wasm.written(len(self.segments))]
        for at, length in self.segments:
            made += [
                b"\0\x41",
                wasm.signed(at),
                b"\x0b",
                wasm.written(length),
                self.read(at, length),
            ]
        return b"".join(made)


def _segments(content: bytes) -> Iterator[tuple[int, bytes]]:
    """Where each segment of a data section goes, and what it holds."""
    count, at = wasm.number(content, 0)
    for _ in range(count):
        start, at = wasm.placed(content, at)
        length, at = wasm.number(content, at)
        yield start, content[at : at + length]
        at += length
