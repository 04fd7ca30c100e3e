"""A connection to the server: how long it may be silent, how slowly an answer may be read, and how many there may be.

uvicorn closes a connection that is idle between two requests; one that never finishes its headers, or never reads its
answer, it keeps for ever.
"""

import asyncio
from collections.abc import Callable
from typing import Any

from uvicorn.protocols.http.h11_impl import H11Protocol

from runboard.web.door.bounds import Bounds

_Timer = asyncio.TimerHandle | None
# Seconds in which what has just come may ask: many are accepted at once, before any of them is read.
THEIR_SAY = 0.05
BUSY = 3


class DoorConnections:
    """All connections of one server, of both its doors."""

    def __init__(self, bounds: Bounds) -> None:
        self.bounds = bounds
        self._open: dict[Connection, str] = {}  # in the order in which they were last heard of
        self._making_room = False

    def add(self, connection: "Connection", address: str) -> None:
        """One more. Where there are too many, of that address or in all, some go as soon as those that came with it had
        their say: first who never asked, then who was answered and asks no more, then whose request is not whole, each
        that was heard of longest ago; else who came last. So a phone that presses stays, however many say nothing."""
        self._open[connection] = address
        if self._is_full(address):
            self._make_room_later(connection.loop)

    def _make_room_later(self, loop: asyncio.AbstractEventLoop) -> None:
        if not self._making_room:
            self._making_room = True
            # However late a busy loop comes to it, in two turns more it reads what waits to be read.
            loop.call_later(THEIR_SAY, loop.call_soon, loop.call_soon, self._make_room)

    def _is_full(self, address: str) -> bool:
        own = sum(at == address for at in self._open.values())
        return own > self.bounds.from_one or len(self._open) > self.bounds.connections

    def _make_room(self) -> None:
        self._making_room = False
        own: dict[str, list[Connection]] = {}
        for connection, address in self._open.items():
            own.setdefault(address, []).append(connection)
        for some in own.values():
            self._let_go(some, len(some) - self.bounds.from_one)
        self._let_go(list(self._open), len(self._open) - self.bounds.connections)

    def _let_go(self, some: "list[Connection]", over: int) -> None:
        last = len(some)
        order = sorted(
            enumerate(some), key=lambda pair: (pair[1].goes(), pair[0] if pair[1].goes() < BUSY else last - pair[0])
        )
        for _, connection in order[: max(0, over)]:
            if connection.goes() == 0 and connection.loop.time() - connection.came_at < THEIR_SAY:
                self._make_room_later(connection.loop)  # it came meanwhile, and what it asks was not read yet
            else:
                self.remove(connection)  # now: it is told of its end later
                connection.leave()

    def heard(self, connection: "Connection") -> None:
        """It said something."""
        if connection in self._open:
            self._open[connection] = self._open.pop(connection)

    def remove(self, connection: "Connection") -> None:
        """It is closed."""
        self._open.pop(connection, None)


class Connection(H11Protocol):
    """uvicorn's own, with an end to what it waits for. ``among`` are all connections."""

    def __init__(self, *arguments: Any, among: DoorConnections, **named: Any) -> None:
        super().__init__(*arguments, **named)
        self._among = among
        self.came_at = 0.0  # by the loop's clock
        self._asking: _Timer = None  # until a request's headers are there
        self._reading: _Timer = None  # until what was sent is read
        self._unread = 0

    def goes(self) -> int:
        """How soon it makes room: 0 if it never asked for anything, 1 if all was answered, 2 if a request's body is still to
        come, ``BUSY`` if it is being answered."""
        cycle: Any = self.cycle
        if cycle is None:
            return 0
        if cycle.response_complete:
            return 1
        return 2 if cycle.more_body else BUSY

    def leave(self) -> None:
        """Let it go, with whatever was still to be sent: who does not listen cannot be told."""
        self.transport.abort()

    # What asyncio and uvicorn call.

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        super().connection_made(transport)
        self.came_at = self.loop.time()
        self._wait_for_headers()
        self._among.add(self, self.client[0] if self.client else "")

    def connection_lost(self, exc: Exception | None) -> None:
        self._among.remove(self)
        _stop(self._asking)
        _stop(self._reading)
        super().connection_lost(exc)

    def handle_events(self) -> None:
        before = self.cycle
        super().handle_events()
        if self.cycle is not before:
            _stop(self._asking)
            self._among.heard(self)

    def on_response_complete(self) -> None:
        self._wait_for_headers()
        super().on_response_complete()

    def pause_writing(self) -> None:
        super().pause_writing()
        self._wait_for_reading()

    def resume_writing(self) -> None:
        _stop(self._reading)
        super().resume_writing()

    def _wait_for_headers(self) -> None:
        _stop(self._asking)
        self._asking = self._later(self._among.bounds.headers, self._leave_unless_reading)

    def _leave_unless_reading(self) -> None:
        """Nothing was asked for long. An answer that was sent whole may still be on its way."""
        if not self.transport.get_write_buffer_size():
            self.leave()
        elif self._reading is None or self._reading.cancelled():
            self._wait_for_reading()

    def _wait_for_reading(self) -> None:
        _stop(self._reading)
        self._unread = self.transport.get_write_buffer_size()
        self._reading = self._later(self._among.bounds.unread, self._leave_unless_read)

    def _leave_unless_read(self) -> None:
        read = self._unread - self.transport.get_write_buffer_size()
        if read < min(self._unread, self._among.bounds.read_least):
            self.leave()
        else:
            self._wait_for_reading()

    def _later(self, seconds: float, does: Callable[[], None]) -> asyncio.TimerHandle:
        return self.loop.call_later(seconds, does)


def _stop(timer: _Timer) -> None:
    if timer is not None:
        timer.cancel()
