"""Who may ask, until phones can pair: this computer only, and no page of another site.

A page somewhere on the web can make a browser send requests here. It cannot hide where it comes from (``Origin``), nor
set the host that the browser thinks it is talking to (a name of its own that it points at 127.0.0.1).
"""

from urllib.parse import urlsplit

from flask import Flask, Response, abort, request

HOSTS = ("localhost", "127.0.0.1", "[::1]")
_READING = ("GET", "HEAD", "OPTIONS")
_HEADERS = {
    "Content-Security-Policy": "default-src 'self'; img-src 'self' data: blob:; object-src 'none'; base-uri 'none'; "
    "form-action 'self'; frame-ancestors 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.before_request(turn_strangers_away)
    app.after_request(harden)


def turn_strangers_away() -> None:
    """400 for a host that is not this computer, 403 for a write that another site's page sends."""
    host = request.headers.get("Host", "")
    if not is_this_computer(host):
        abort(400, "host")
    if request.method not in _READING and not is_own_page(
        request.headers.get("Origin"), request.headers.get("Sec-Fetch-Site"), host
    ):
        abort(403, "origin")


def is_this_computer(host: str) -> bool:
    """Whether a Host header names this computer, with whatever port."""
    name, _, port = host.rpartition(":")
    if port.endswith("]") or not name:  # no port: the whole is the name
        name = host
    return name.lower() in HOSTS


def is_own_page(origin: str | None, site: str | None, host: str) -> bool:
    """Whether a write comes from a page of this host, or from no page at all (a command, a test)."""
    if origin is None:
        return site in (None, "same-origin", "none")
    try:
        return urlsplit(origin).netloc.lower() == host.lower()
    except ValueError:
        return False


def harden(response: Response) -> Response:
    """The headers of every answer: nothing from elsewhere, nothing inline, no guessing of types."""
    for name, value in _HEADERS.items():
        response.headers.setdefault(name, value)
    return response
