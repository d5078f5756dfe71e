"""A slow line before a host: what goes through it takes its time, whoever asked, workers included.

One direction is one queue: all connections share its rate, a few packets of each in turn, and what
has gone through arrives half a round trip later. A new connection waits a round trip before its
first byte, as TCP does. Lost packets and TCP's slow start are not played.
"""

from __future__ import annotations

import asyncio
import contextlib
import threading
from collections.abc import Iterator
from dataclasses import dataclass, field

AT_ONCE = 0.02  # seconds
PIECE = 4 * 1460  # bytes of a connection that go before it is another's turn: four packets


@dataclass
class Line:
    """Bits a second down, a fifth of them up; seconds there and back. Counts what went down."""

    rate: float
    round_trip: float
    down: int = field(default=0, init=False)


class _Way:
    """One direction: a queue at a rate in bits a second."""

    def __init__(self, rate: float, delay: float) -> None:
        self.rate, self.delay = rate, delay
        self.free = self.woke = 0.0  # when the line is free, and when a piece was last seen off

    async def carry(self, size: int) -> float:
        """Wait until so many bytes are on the line; returns the moment at which they arrive."""
        loop = asyncio.get_running_loop()
        # A busy machine wakes too late; what follows at once was on the line all the same.
        if loop.time() - self.woke > AT_ONCE:
            self.free = max(loop.time(), self.free)
        self.free += size * 8 / self.rate
        arrives = self.free + self.delay
        await asyncio.sleep(self.free - loop.time())
        self.woke = loop.time()
        return arrives


async def _relay(
    line: Line, way: _Way, reader: asyncio.StreamReader, writer: asyncio.StreamWriter, down: bool
) -> None:
    """Carry all that comes until its end or the line's."""
    loop = asyncio.get_running_loop()
    flying: asyncio.Queue[tuple[float, bytes]] = asyncio.Queue()

    async def land() -> None:
        while True:
            moment, piece = await flying.get()
            await asyncio.sleep(moment - loop.time())
            if not piece:
                return
            writer.write(piece)
            await writer.drain()

    landing = asyncio.create_task(land())
    with contextlib.suppress(OSError):
        while piece := await reader.read(PIECE):
            moment = await way.carry(len(piece))
            line.down += len(piece) * down
            flying.put_nowait((moment, piece))
    flying.put_nowait((loop.time() + way.delay, b""))
    with contextlib.suppress(OSError):
        await landing
    writer.close()


@contextlib.contextmanager
def before(port: int, line: Line) -> Iterator[int]:
    """The port of this machine at which the host of another port is reached through the line."""
    ready: list[int] = []
    started, over = threading.Event(), threading.Event()

    async def serve() -> None:
        up = _Way(line.rate / 5, line.round_trip / 2)
        down = _Way(line.rate, line.round_trip / 2)

        async def connected(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
            await asyncio.sleep(line.round_trip)
            host_reader, host_writer = await asyncio.open_connection("127.0.0.1", port, limit=PIECE)
            with contextlib.suppress(asyncio.CancelledError):  # the bench is over
                await asyncio.gather(
                    _relay(line, up, reader, host_writer, down=False),
                    _relay(line, down, host_reader, writer, down=True),
                )

        server = await asyncio.start_server(connected, "127.0.0.1", 0, limit=PIECE)
        ready.append(server.sockets[0].getsockname()[1])
        started.set()
        while not over.is_set():
            await asyncio.sleep(0.05)
        server.close()

    thread = threading.Thread(target=lambda: asyncio.run(serve()), daemon=True)
    thread.start()
    started.wait()
    try:
        yield ready[0]
    finally:
        over.set()
        thread.join()
