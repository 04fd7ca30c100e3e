"""What uvicorn serves: the Flask app through a2wsgi, and beside it the event stream."""

from collections.abc import Callable, Collection
from typing import Any
from urllib.parse import quote_from_bytes

from a2wsgi import WSGIMiddleware
from flask import Flask
from werkzeug.http import parse_cookie

from runboard.floor.access import GUEST
from runboard.floor.devices import Door, who
from runboard.web.guard import is_known_host
from runboard.web.sessions import cookie_name
from runboard.web.stream import Streams, serve_stream

WORKERS = 10
_ASCII = bytes(range(0x21, 0x7F))


class Served:
    """The ASGI app. ``start`` and ``stop`` are called when the server starts and when it has let everybody go."""

    def __init__(self, app: Flask, streams: Streams, start: Callable[[], None], stop: Callable[[], None]) -> None:
        wsgi: Any = app.wsgi_app
        self._pages: Any = WSGIMiddleware(wsgi, workers=WORKERS)
        self._streams = streams
        self._door: Door | None = app.extensions["door"]
        self._hosts: Collection[str] = app.extensions["hosts"]
        self._start = start
        self._stop = stop

    async def __call__(self, scope: dict[str, Any], receive: Any, send: Any) -> None:
        if scope["type"] == "lifespan":
            await self._live(receive, send)
        elif scope["type"] == "http" and scope["path"] == "/stream" and self._may_listen(scope):
            await serve_stream(self._streams, receive, send, self._device(scope), lambda: self._may_listen(scope))
        elif scope["type"] == "http":
            # a2wsgi reads the query as ASCII; a browser quotes what is not, others may not.
            query = quote_from_bytes(scope["query_string"], safe=_ASCII)
            await self._pages({**scope, "query_string": query.encode()}, receive, send)

    async def _live(self, receive: Any, send: Any) -> None:
        await receive()
        self._start()
        await send({"type": "lifespan.startup.complete"})
        await receive()
        self._pages.executor.shutdown(wait=True)
        self._stop()
        await send({"type": "lifespan.shutdown.complete"})

    def _may_listen(self, scope: dict[str, Any]) -> bool:
        """The stream stands outside Flask, so it looks at method, host and session itself; what it does not take,
        Flask answers, and turns away."""
        is_for_us = scope["method"] == "GET" and is_known_host(_header(scope, b"host"), self._hosts)
        return is_for_us and (self._door is None or self._device(scope) != "")

    def _device(self, scope: dict[str, Any]) -> str:
        """The id of the device whose session the request carries; '' for none, and for a guest's: what happens in the
        shop is not theirs to hear, and their page polls."""
        token = _cookies(scope).get(cookie_name(scope["scheme"] == "https"), "")
        session = who(self._door, token) if self._door and token else None
        return session.device.id if session and session.device.access != GUEST else ""


def _header(scope: dict[str, Any], wanted: bytes) -> str:
    return "; ".join(value.decode("latin1") for name, value in scope["headers"] if name == wanted)


def _cookies(scope: dict[str, Any]) -> dict[str, str]:
    return parse_cookie(_header(scope, b"cookie"))
