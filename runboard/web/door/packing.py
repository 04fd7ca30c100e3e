"""Answers made smaller on their way: text over a kilobyte is gzipped where the browser takes it."""

import gzip
from functools import lru_cache

from flask import Flask, Response, request

LEAST_BYTES = 1024
_TEXT = ("text/", "application/json", "application/javascript", "image/svg+xml", "application/manifest+json")


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.after_request(pack)


def pack(response: Response) -> Response:
    """Gzip a text answer that is worth it, and say that the answer depends on what the browser takes."""
    if response.status_code != 200 or response.is_streamed or not (response.mimetype or "").startswith(_TEXT):
        return response
    body = response.get_data()
    if len(body) < LEAST_BYTES:
        return response
    response.vary.add("Accept-Encoding")
    if "gzip" in request.headers.get("Accept-Encoding", ""):
        response.set_data(_packed(body))
        response.headers["Content-Encoding"] = "gzip"
    return response


@lru_cache(maxsize=128)  # scripts, styles and an unchanged state are asked for again and again
def _packed(body: bytes) -> bytes:
    return gzip.compress(body, compresslevel=5, mtime=0)
