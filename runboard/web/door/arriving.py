"""A request's body on its way in: read whole on the event loop, within its time and size, before a worker is taken.

A worker that reads what a sender does not send waits for ever, and ten such senders are all workers.
"""

import asyncio
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from tempfile import SpooledTemporaryFile
from typing import Any

from runboard.web.door.bounds import Bounds

PART = 64_000
_LENGTH, _CODING = b"content-length", b"transfer-encoding"


class NotTaken(Exception):
    """A body that is not read to its end. ``status`` says why: 408 too slow, 413 too large, 503 too many at once, or the
    server ends, 507 the disk is full; 0 where the sender has gone, and nobody is to be answered."""

    def __init__(self, status: int) -> None:
        super().__init__(status)
        self.status = status


@dataclass
class Arrived:
    """A body that is there, in memory or in a file that goes with it; ``length`` bytes. To be closed."""

    held: "SpooledTemporaryFile[bytes]"
    length: int
    forget: Callable[[int], None]

    async def receive(self) -> dict[str, Any]:
        """The next part, as ASGI gives it."""
        part = self.held.read(PART)
        return {"type": "http.request", "body": part, "more_body": self.held.tell() < self.length}

    def close(self) -> None:
        """Let go of it."""
        self.held.close()
        self.forget(self.length)


class Arrivals:
    """The bodies of all requests. ``folder`` takes the large ones: none of them is seen there, or outlives the server."""

    def __init__(self, bounds: Bounds, folder: Path | None = None) -> None:
        self._bounds = bounds
        self._folder = folder
        self._held = 0
        self._ended = False
        self._waits: set[asyncio.Timeout] = set()

    async def take(self, receive: Any, most: int, said: int | None) -> Arrived:
        """The body of one request, of at most so many bytes; one that is ``said`` to be longer is not read at all.
        Raises ``NotTaken``."""
        if self._ended:
            raise NotTaken(503)
        if (said or 0) > most:
            raise NotTaken(413)
        arrived = self.nothing()
        if said == 0:
            return arrived
        try:
            await self._read(arrived, receive, most)
        except BaseException:
            arrived.close()
            raise
        arrived.held.seek(0)
        return arrived

    def nothing(self) -> Arrived:
        """A body of no length."""
        # The file is made only once the body is larger than what is kept in memory.
        held = SpooledTemporaryFile(max_size=self._bounds.in_memory, dir=str(self._folder) if self._folder else None)  # noqa: SIM115 - closed by Arrived
        return Arrived(held, 0, self._forget)

    def end(self) -> None:
        """The server ends: nothing more is waited for."""
        self._ended = True
        for wait in self._waits:
            if not wait.expired():
                wait.reschedule(0)

    async def _read(self, arrived: Arrived, receive: Any, most: int) -> None:
        bounds, more = self._bounds, True
        with self._waiting() as wait:
            async with wait:
                while more:
                    message = await receive()
                    if message["type"] == "http.disconnect":
                        raise NotTaken(0)
                    part, more = message.get("body", b""), message.get("more_body", False)
                    self._keep(arrived, part, most)
                    # Once its time is up it has no more, whatever comes.
                    if not (self._ended or wait.expired()):
                        wait.reschedule((wait.when() or 0) + len(part) / bounds.body_rate)

    @contextmanager
    def _waiting(self) -> Iterator[asyncio.Timeout]:
        wait = asyncio.timeout(self._bounds.body)
        self._waits.add(wait)
        try:
            yield wait
        except TimeoutError:
            raise NotTaken(503 if self._ended else 408) from None
        finally:
            self._waits.discard(wait)

    def _keep(self, arrived: Arrived, part: bytes, most: int) -> None:
        arrived.length += len(part)
        self._held += len(part)
        if arrived.length > most:
            raise NotTaken(413)
        # What is small is taken whatever others send: the number of connections bounds it.
        if arrived.length > self._bounds.in_memory and self._held > self._bounds.bodies:
            raise NotTaken(503)
        try:
            arrived.held.write(part)
        except OSError as full:
            raise NotTaken(507) from full

    def _forget(self, length: int) -> None:
        self._held -= length


def announced(headers: list[tuple[bytes, bytes]]) -> int | None:
    """How long the body is said to be, in bytes; None where that is not said, and 0 for none."""
    found = dict(headers)
    if _CODING in found:
        return None
    text = found.get(_LENGTH, b"0")
    return int(text) if text.isdigit() else 0


def with_length(headers: list[tuple[bytes, bytes]], length: int) -> list[tuple[bytes, bytes]]:
    """The headers of a body that is there: what came in pieces of a length that nobody said has one now."""
    kept = [header for header in headers if header[0] not in (_LENGTH, _CODING)]
    has_body = len(kept) < len(headers)
    return [*kept, (_LENGTH, str(length).encode())] if has_body else kept
