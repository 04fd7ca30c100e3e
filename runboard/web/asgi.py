"""What uvicorn serves: the Flask app through a2wsgi, and beside it the event stream."""

from collections.abc import Callable
from typing import Any
from urllib.parse import quote_from_bytes

from a2wsgi import WSGIMiddleware
from flask import Flask

from runboard.web.guard import is_this_computer
from runboard.web.stream import Streams, serve_stream

WORKERS = 10
_ASCII = bytes(range(0x21, 0x7F))


class Served:
    """The ASGI app. ``start`` and ``stop`` are called when the server starts and when it has let everybody go."""

    def __init__(self, app: Flask, streams: Streams, start: Callable[[], None], stop: Callable[[], None]) -> None:
        wsgi: Any = app.wsgi_app
        self._pages: Any = WSGIMiddleware(wsgi, workers=WORKERS)
        self._streams = streams
        self._start = start
        self._stop = stop

    async def __call__(self, scope: dict[str, Any], receive: Any, send: Any) -> None:
        if scope["type"] == "lifespan":
            await self._live(receive, send)
        elif scope["type"] == "http" and scope["path"] == "/stream" and _is_for_us(scope):
            await serve_stream(self._streams, receive, send)
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


def _is_for_us(scope: dict[str, Any]) -> bool:
    """The stream stands outside Flask, so it looks at method and host itself; what it does not take, Flask answers."""
    host = next((value for name, value in scope["headers"] if name == b"host"), b"")
    return scope["method"] == "GET" and is_this_computer(host.decode("latin1"))
