"""What uvicorn serves: the Flask app through a2wsgi, and beside it the event stream.

What comes in is read here, on the event loop, and each sender has a few workers at a time: see ``bounds.py``.
"""

import asyncio
import json
import threading
import time
from collections.abc import Callable, Collection
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any
from urllib.parse import quote_from_bytes

from a2wsgi import WSGIMiddleware
from flask import Flask
from werkzeug.sansio.http import parse_cookie

from runboard.floor.letting_in.devices import Door, held_session, who
from runboard.floor.pressing.access import GUEST
from runboard.run.calls.device import Session
from runboard.web.door.arriving import PART, Arrivals, NotTaken, announced, with_length
from runboard.web.door.bounds import MOST_A_SENDER, MOST_STRANGERS, WORKERS, Bounds
from runboard.web.door.errors import status_in_words
from runboard.web.door.guard import is_known_host
from runboard.web.door.sessions import cookie_name
from runboard.web.door.sizes import A_FEW_WORDS, NOT_TAKEN, endpoint_of, most_for, most_from
from runboard.web.door.stream import Streams, serve_stream
from runboard.web.door.taking_turns import Gone, Waits
from runboard.web.fittings import fitted

_ASCII = bytes(range(0x21, 0x7F))
_READING = ("GET", "HEAD", "OPTIONS")
# A file is sent in pieces of some kilobytes: so many of them wait for whoever reads slowly, and no worker with them.
_PIECES = 10_000


class Served:
    """The ASGI app. ``start`` and ``stop`` are called when the server starts and when it has let everybody go; ``stop``
    is told whether it has, or somebody is answered still. ``folder`` takes large bodies until they are read."""

    def __init__(
        self,
        app: Flask,
        streams: Streams,
        start: Callable[[], None],
        stop: Callable[[bool], None],
        folder: Path | None = None,
        bounds: Bounds | None = None,
    ) -> None:
        wsgi: Any = app.wsgi_app
        self.bounds = bounds or Bounds()
        self._app = app
        self._pages: Any = WSGIMiddleware(wsgi, workers=WORKERS, send_queue_size=_PIECES)
        self._asking = ThreadPoolExecutor(2, "sessions")
        self._streams = streams
        self._arrivals = Arrivals(self.bounds, folder)
        self._waits = Waits()
        self._door: Door | None = fitted(app).door
        self._hosts: Collection[str] = fitted(app).hosts
        self._start = start
        self._stop = stop

    async def __call__(self, scope: dict[str, Any], receive: Any, send: Any) -> None:
        if scope["type"] == "lifespan":
            await self._live(receive, send)
        elif (
            scope["type"] == "http"
            and scope["path"] == "/stream"
            and (device := await self._listener(scope)) is not None
        ):
            await serve_stream(self._streams, receive, send, device, lambda: self._may_listen(scope))
        elif scope["type"] == "http":
            await self._answer(scope, receive, send)

    def end(self) -> None:
        """The server ends: who listens, is still sending or waits for a turn is let go."""
        self._streams.end()
        self._arrivals.end()
        self._waits.end()

    async def _live(self, receive: Any, send: Any) -> None:
        await receive()
        self._start()
        await send({"type": "lifespan.startup.complete"})
        await receive()
        self._asking.shutdown(wait=False, cancel_futures=True)
        self._stop(await self._all_answered())
        await send({"type": "lifespan.shutdown.complete"})

    async def _all_answered(self) -> bool:
        """Whether every worker has ended; those that have not by then are waited for no longer."""
        workers: ThreadPoolExecutor = self._pages.executor
        # On a thread, since a worker that is not done may still ask something of this loop.
        ending = threading.Thread(target=workers.shutdown, kwargs={"cancel_futures": True}, daemon=True)
        ending.start()
        until = time.monotonic() + self.bounds.ending
        while ending.is_alive() and time.monotonic() < until:
            await asyncio.sleep(0.01)
        return not ending.is_alive()

    async def _answer(self, scope: dict[str, Any], receive: Any, send: Any) -> None:
        """Read what comes, wait for its sender's turn, and let Flask answer: also why a body was not taken."""
        not_taken = 0
        try:
            body = await self._arrivals.take(receive, await self._most(scope), announced(scope["headers"]))
        except NotTaken as why:
            if not why.status:
                return
            not_taken, body = why.status, self._arrivals.nothing()
        sending = _Sending(send)
        try:
            async with self._waits.turn(self._senders(scope), receive):
                await self._pages(_as_read(scope, body.length, not_taken), body.receive, sending)
        except (Gone, asyncio.CancelledError):
            if sending.has_begun:
                raise
            await _say_busy(send)
        finally:
            body.close()

    async def _most(self, scope: dict[str, Any]) -> int:
        """How many bytes this request may bring."""
        endpoint = endpoint_of(self._app, scope["method"], scope["path"])
        whole = most_for(endpoint, scope["method"] in _READING).whole
        said = announced(scope["headers"])
        if self._door is None or (said is not None and said <= A_FEW_WORDS):
            return whole
        session = self._held(scope) or await self._read_session(scope)
        return most_from(whole, session.device.access if session else "")

    def _senders(self, scope: dict[str, Any]) -> list[tuple[str, int]]:
        """Whose turns a request takes, and how many of each there are. By what is at hand: nobody waits to be known."""
        at = scope["client"][0] if scope["client"] else ""
        if self._door is None:
            return [(at, 2 * MOST_A_SENDER)]
        session = self._held(scope)
        if session is None:
            return [(f"unknown {at}", MOST_A_SENDER), ("unknown", MOST_STRANGERS)]
        if session.device.access == GUEST:
            return [(session.device.id, MOST_A_SENDER), ("guests", MOST_STRANGERS)]
        return [(session.device.id, MOST_A_SENDER)]

    async def _may_listen(self, scope: dict[str, Any]) -> bool:
        return await self._listener(scope) is not None

    async def _listener(self, scope: dict[str, Any]) -> str | None:
        """The id of the device that may hear the stream, '' where nobody has to pair; None for whoever may not, guests
        too: what happens in the shop is not theirs to hear, and their page polls. The stream stands outside Flask, so it
        looks at method, host and session itself; what it does not take, Flask answers, and turns away."""
        if scope["method"] != "GET" or not is_known_host(_header(scope, b"host"), self._hosts):
            return None
        if self._door is None:
            return ""
        session = await self._read_session(scope)
        return session.device.id if session and session.device.access != GUEST else None

    async def _read_session(self, scope: dict[str, Any]) -> Session | None:
        """The session that the request carries. Off the loop, which waits for no disk."""
        token = _token(scope)
        if self._door is None or not token:
            return None
        return await asyncio.get_running_loop().run_in_executor(self._asking, who, self._door, token)

    def _held(self, scope: dict[str, Any]) -> Session | None:
        """The same, if it is known without reading."""
        token = _token(scope)
        return held_session(self._door, token) if self._door and token else None


def _as_read(scope: dict[str, Any], length: int, not_taken: int) -> dict[str, Any]:
    """The request as Flask gets it, its body read."""
    # a2wsgi reads the query as ASCII; a browser quotes what is not, others may not.
    query = quote_from_bytes(scope["query_string"], safe=_ASCII).encode()
    headers = with_length(scope["headers"], length)
    return {**scope, "query_string": query, "headers": headers, NOT_TAKEN: not_taken}


class _Sending:
    """Sends a long answer in parts, each once there is room for it: whoever does not read one keeps their own turn, and no
    copies of it."""

    def __init__(self, send: Any) -> None:
        self._send = send
        self.has_begun = False

    async def __call__(self, message: dict[str, Any]) -> None:
        self.has_begun = True
        body = message.get("body", b"")
        for at in range(PART, len(body), PART):
            await self._send({"type": message["type"], "body": body[at - PART : at], "more_body": True})
        rest = len(body) and (len(body) - 1) // PART * PART
        await self._send({**message, "body": body[rest:]} if rest else message)


async def _say_busy(send: Any) -> None:
    """Where no worker says it, since the server ends. Nobody hears it who has gone."""
    headers = [(b"content-type", b"application/json"), (b"connection", b"close")]
    await send({"type": "http.response.start", "status": 503, "headers": headers})
    await send({"type": "http.response.body", "body": json.dumps({"sentence": status_in_words(503)}).encode()})


def _token(scope: dict[str, Any]) -> str:
    said = b"; ".join(value for name, value in scope["headers"] if name == b"cookie")
    return parse_cookie(said.decode("utf-8", "replace")).get(cookie_name(scope["scheme"] == "https"), "")


def _header(scope: dict[str, Any], wanted: bytes) -> str:
    return "; ".join(value.decode("latin1") for name, value in scope["headers"] if name == wanted)
