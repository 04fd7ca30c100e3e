"""Who may ask: a device that is paired, by a name of this server, for what its access allows, from a page of our own.

A page somewhere on the web can make a browser send requests here. It cannot hide where it comes from (``Origin``), nor
set the host that the browser thinks it is talking to (a name of its own that it points at this server's address), nor
make the browser add the session's cookie (``SameSite=Strict``).
"""

from collections.abc import Collection
from posixpath import normpath
from urllib.parse import urlsplit

from flask import Flask, Response, abort, request

from runboard.floor.letting_in.devices import session_of
from runboard.floor.letting_in.guests import why_over
from runboard.floor.pressing.access import CREW, GUEST, LEAD
from runboard.run.calls.device import Session
from runboard.web.door.pages import workshop
from runboard.web.door.sessions import access, asking_session, asking_token, door
from runboard.web.fittings import fittings

_READING = ("GET", "HEAD", "OPTIONS")
# Without a session: the pages that welcome a device, what they offer it to trust, what a tray's card opens, their styles
# and the sign; and one review, by a code of its own.
_OPEN = frozenset(
    {
        "pairing.welcome",
        "pairing.pair_this",
        "welcome.steps",
        "welcome.certificate",
        "welcome.profile",
        "helper.typed",
        "helper.open_typed",
        "helper.card",
        "helper.come",
        "friend_code.look",
        "friend_code.answer",
    }
)
_OPEN_FILES = frozenset({"tokens.css", "base.css", "icon.svg", "welcome/welcome.css", "helper/helper.css"})
_OPEN_FOLDER = "icons/"  # a phone's home screen asks for them without the cookie
# What changes something is a lead's, and so is what is not listed here: events have a table of their own.
_CREW_WRITES = frozenset(
    {
        "taps.taps",
        "plan_lines.tick",
        "welcome.go_over",
        "push.subscription",
        "push.end",
        "before.ask",
        "before.drop",
        "before.end",
        "plan_shopping.count",
        "plan_shopping.bought",
        "plan_shopping.changed",
        "plan_shopping.back",
    }
)
_LEAD_READS = frozenset(
    {
        "pairing.one",
        "guests.one",
        "shop_file.download",
        "shop_file.choose",
        "plan_run.download",
        "review_over_runs.as_json",
        "review_over_runs.as_zip",
        "outside.alarms",
        "signals.stations",
        "tray_code.trays",
        "tray_code.show",
        "signals.one",
    }
)
# What a guest's phone may ask for: its page, its presses, and the files that those need.
_GUESTS = frozenset({"helper.page", "helper.state", "helper.picture", "helper.leave_tray", "taps.taps"})
_GUESTS_FILES = frozenset(
    {
        "tokens.css",
        "base.css",
        "icon.svg",
        "door/outbox.js",
        "door/poll.js",
        "door/clock.js",
        "door/wrong_clock.js",
        "door/remembered.js",
        "door/lengths.js",
        "door/sound.js",
        "vendor/idb-8.0.4.js",
        "vendor/lit-html-3.3.3.js",
    }
)
_GUESTS_FOLDERS = ("helper/", "icons/", "signs/")
_HEADERS = {
    "Content-Security-Policy": "default-src 'self'; img-src 'self' data: blob:; object-src 'none'; base-uri 'none'; "
    "form-action 'self'; frame-ancestors 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}


class Unpaired(Exception):
    """An unknown device asks for what is not open to it. Who answers is for the pages that welcome one to say."""


class TurnedAway(Exception):
    """A guest's phone asks whose help is ``over`` (why), or for what is not its ``tray``'s. The helper's pages answer it."""

    def __init__(self, over: str = "", tray: str = "") -> None:
        super().__init__(over or tray)
        self.over, self.tray = over, tray


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.before_request(turn_strangers_away)
    app.after_request(harden)


def turn_strangers_away() -> None:
    """400 for a host that is not this server, 403 for a write that another site's page sends, ``Unpaired`` for a device that
    is not paired, 403 for what its access does not allow; a guest's phone is told by a page in its own language."""
    host = request.headers.get("Host", "")
    if not is_known_host(host, fittings().hosts):
        abort(400, "host")
    reading = request.method in _READING
    if not reading and not is_own_page(request.headers.get("Origin"), request.headers.get("Sec-Fetch-Site"), host):
        abort(403, "origin")
    if _is_open():
        return
    if access() in ("", GUEST):
        keep_guests_to_their_tray()
        if not access():
            if fittings().door is None:  # nobody has to pair, and nobody is sent to
                abort(404)
            raise Unpaired
    elif not may_ask(access(), request.endpoint or "", reading):
        abort(403, "lead")


def keep_guests_to_their_tray() -> None:
    """``TurnedAway`` for a guest's phone whose help is over, or that asks for another's; no other phone is meant."""
    session, shut = _guest(), door()
    if session is None:
        return
    over = why_over(workshop(), session, shut.clock.now()) if shut else ""
    if over:
        raise TurnedAway(over=over)
    if not _is_guests():
        raise TurnedAway(tray=session.device.tray)


def _guest() -> Session | None:
    """The asking phone's session where it is a guest's, over or not."""
    shut = door()
    session = asking_session() or (session_of(shut, asking_token()) if shut else None)
    return session if session is not None and session.device.access == GUEST else None


def may_ask(access: str, endpoint: str, reading: bool) -> bool:
    """Whether a lead's or crew's device may ask for that endpoint, to read or to change something."""
    if access == LEAD:
        return True
    return access == CREW and (endpoint not in _LEAD_READS if reading else endpoint in _CREW_WRITES)


def is_known_host(host: str, known: Collection[str]) -> bool:
    """Whether a Host header is one of the known names, with whatever port."""
    name, _, port = host.rpartition(":")
    if port.endswith("]") or not name:  # no port: the whole is the name
        name = host
    return name.lower() in known


def is_own_page(origin: str | None, site: str | None, host: str) -> bool:
    """Whether a write comes from a page of this host, or from no page at all (a command, a test)."""
    if origin is None:
        return site in (None, "same-origin", "none")
    try:
        return urlsplit(origin).netloc.lower() == host.lower()
    except ValueError:
        return False


def _is_guests() -> bool:
    return request.endpoint in _GUESTS or _is_file(_GUESTS_FILES, _GUESTS_FOLDERS)


def _is_file(files: Collection[str], folders: tuple[str, ...]) -> bool:
    """Whether one of these files of ``static/`` is asked for, or one in these folders."""
    if request.endpoint != "static_files.static":
        return False
    name = normpath(str((request.view_args or {}).get("name")))  # icons/../now is no icon
    return name in files or name.startswith(folders)


def _is_open() -> bool:
    if request.endpoint in ("signals.receive", "signals.press"):  # each has a token of its own, which its view looks at
        speaks = request.endpoint == "signals.receive" or request.method == "POST"  # a button does nothing but press
        return speaks and request.authorization is not None and request.authorization.type == "bearer"
    return request.endpoint in _OPEN or _is_file(_OPEN_FILES, (_OPEN_FOLDER,))


def harden(response: Response) -> Response:
    """The headers of every answer: nothing from elsewhere, nothing inline, no guessing of types."""
    for name, value in _HEADERS.items():
        response.headers.setdefault(name, value)
    return response
