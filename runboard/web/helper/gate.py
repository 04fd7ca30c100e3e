"""What keeps a helper's phone to its tray, and tells a phone whose help is over that it is: calmly, in its language."""

from posixpath import normpath

from flask import Response, jsonify, make_response, render_template, request

from runboard.floor.letting_in.devices import session_of
from runboard.floor.letting_in.guests import why_over
from runboard.floor.pressing.access import GUEST
from runboard.run.calls.device import Session
from runboard.web.door.errors import asked_by_script
from runboard.web.door.pages import shop_zone, workshop
from runboard.web.door.sessions import asking_session, asking_token, door
from runboard.web.helper.language import language
from runboard.words.helper import NAMES, Speech

# What a guest's phone may ask for: its page, its presses, and the files that those need.
ENDPOINTS = frozenset({"helper.page", "helper.state", "helper.picture", "helper.leave_tray", "taps.taps"})
_FILES = frozenset(
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
_FOLDERS = ("helper/", "icons/", "signs/")


def speech() -> Speech:
    """How the asking phone is spoken to."""
    shop = workshop()
    return Speech(language(), shop_zone(), shop.books.latest().units, shop.clock.now())


def turned_away() -> Response | None:
    """The answer to a guest's phone for what is not its own (403), or to one whose help is over (401). None where it may
    ask, and for every phone that is no guest's."""
    session = _guest()
    if session is None:
        return None
    say, shut = speech(), door()
    over = why_over(workshop(), session, shut.clock.now()) if shut else ""
    if over:
        return said(say(f"over-{over.replace(' ', '-')}"), 401, over=over)
    if _is_own():
        return None
    return said(say("shut", tray=session.device.tray), 403, back=("/helper", say("shut-go")))


def said(text: str, status: int, back: tuple[str, str] | None = None, over: str = "") -> Response:
    """One sentence, as a page or as JSON."""
    if asked_by_script():
        return make_response(jsonify(sentence=text, over=over), status)
    response = make_response(
        render_template("helper/said.html", text=text, back=back, lang=language(), names=NAMES, tell=speech()), status
    )
    response.headers["Cache-Control"] = "no-store"
    return response


def _guest() -> Session | None:
    """The asking phone's session where it is a guest's, over or not."""
    shut = door()
    session = asking_session() or (session_of(shut, asking_token()) if shut else None)
    return session if session is not None and session.device.access == GUEST else None


def _is_own() -> bool:
    if request.endpoint == "static_files.static":
        name = normpath(str((request.view_args or {}).get("name")))
        return name in _FILES or name.startswith(_FOLDERS)
    return request.endpoint in ENDPOINTS
