"""The event stream: tells open pages that something changed or fell due, so that they ask now and not in two seconds.

Polling is the truth, this is a hint: whatever is lost here is seen at the next poll. It stands beside Flask as a native
asynchronous route, because a thread for each open page would starve the server.
"""

import asyncio
import json
import threading
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass
from typing import Any

HEARTBEAT_SECONDS = 10.0
MOST_LISTENERS = 500
MOST_A_DEVICE = 16  # tabs of one browser; nobody has as many phones as would take all
_BACKLOG = 32
_END = b""

_HEADERS = [
    (b"content-type", b"text/event-stream; charset=utf-8"),
    (b"cache-control", b"no-store"),
    (b"x-content-type-options", b"nosniff"),
]


@dataclass(eq=False)
class Listener:
    """One open page: the loop that it is served on, what it has still to be told, and whose it is."""

    loop: asyncio.AbstractEventLoop
    queue: asyncio.Queue[bytes]
    device: str = ""

    def offer(self, message: bytes) -> None:
        """Put a message in its queue; a page that reads too slowly loses the oldest."""
        if self.queue.full():
            self.queue.get_nowait()
        self.queue.put_nowait(message)


class Streams:
    """All open pages. Any thread may tell; it never waits and never fails."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._listeners: dict[Listener, None] = {}  # in order of opening
        self._ended = False

    def changed(self, seq: int) -> None:
        """The log or the book is another one."""
        self._tell("changed", {"seq": seq})

    def look(self) -> None:
        """Something fell due that nobody was told of by name yet."""
        self._tell("changed", {})

    def due(self, record: Mapping[str, Any]) -> None:
        """Something fell due."""
        self._tell("due", record)

    def open(self, device: str = "") -> Listener | None:
        """A new listener on the running loop; None where there are too many, or the server ends. Where its device has as
        many as it may, the oldest of those ends."""
        listener = Listener(asyncio.get_running_loop(), asyncio.Queue(_BACKLOG), device)
        with self._lock:
            if self._ended or len(self._listeners) >= MOST_LISTENERS:
                return None
            theirs = [listener for listener in self._listeners if device and listener.device == device]
            self._listeners[listener] = None
            over = theirs[: max(0, len(theirs) + 1 - MOST_A_DEVICE)]
            for oldest in over:
                del self._listeners[oldest]
        self._send(_END, over)
        return listener

    def close(self, listener: Listener) -> None:
        """Forget a page that has gone."""
        with self._lock:
            self._listeners.pop(listener, None)

    def end(self) -> None:
        """The server ends: let every page go, so that nothing waits for them."""
        self._ended = True
        self._send(_END)

    def shut_out(self, device: str) -> None:
        """A device may listen no more: let its pages go."""
        with self._lock:
            theirs = [listener for listener in self._listeners if listener.device == device]
        self._send(_END, theirs)

    def _tell(self, event: str, record: Mapping[str, Any]) -> None:
        text = json.dumps(record, separators=(",", ":"), ensure_ascii=False)
        self._send(f"event: {event}\ndata: {text}\n\n".encode())

    def _send(self, message: bytes, to: list[Listener] | None = None) -> None:
        with self._lock:
            listeners = list(self._listeners)
        for listener in listeners if to is None else to:
            try:
                listener.loop.call_soon_threadsafe(listener.offer, message)
            except RuntimeError:  # its loop is closed: the page is gone
                self.close(listener)


async def _always() -> bool:
    return True


async def serve_stream(
    streams: Streams, receive: Any, send: Any, device: str = "", may_listen: Callable[[], Awaitable[bool]] = _always
) -> None:
    """Answer one page's request for the stream, until it goes away, or the server ends, or its device may listen no
    more: ``may_listen`` is asked at each heartbeat too, for what another process did."""
    listener = streams.open(device)
    if listener is None:
        await send({"type": "http.response.start", "status": 503, "headers": [(b"retry-after", b"5")]})
        await send({"type": "http.response.body", "body": b""})
        return
    leaving = asyncio.ensure_future(_end_when_gone(listener, receive))
    try:
        await send({"type": "http.response.start", "status": 200, "headers": _HEADERS})
        if await may_listen():  # it may have been shut out between the asking and the opening
            await _pass_on(listener, send, may_listen)
        await send({"type": "http.response.body", "body": b"", "more_body": False})
    finally:
        streams.close(listener)
        leaving.cancel()


async def _pass_on(listener: Listener, send: Any, may_listen: Callable[[], Awaitable[bool]]) -> None:
    # The first bytes at once: some browsers call a stream open only when they have read something.
    message = b"retry: 2000\n: hello\n\n"
    while message != _END:
        await send({"type": "http.response.body", "body": message, "more_body": True})
        try:
            message = await asyncio.wait_for(listener.queue.get(), HEARTBEAT_SECONDS)
        except TimeoutError:
            message = b": here\n\n" if await may_listen() else _END


async def _end_when_gone(listener: Listener, receive: Any) -> None:
    while (await receive())["type"] != "http.disconnect":
        pass
    listener.offer(_END)
