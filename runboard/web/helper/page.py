"""The helper's page: a tray's card opens it on any phone, and it shows that tray's current operation only."""

import json
from functools import partial
from typing import Any, cast

from flask import Blueprint, Response, abort, jsonify, make_response, redirect, render_template, request
from markupsafe import Markup, escape

from runboard.floor.letting_in.guest_look import look_as_guest, work_now
from runboard.floor.letting_in.guests import admit, find_tray, leave, tray_of_card
from runboard.floor.letting_in.travellers import read_keys, traveller_link
from runboard.floor.pressing.access import GUEST
from runboard.run.calls.device import Session
from runboard.run.fold.route import Step
from runboard.run.refusal import Refused
from runboard.web.door import pictures
from runboard.web.door.errors import asked_by_script
from runboard.web.door.guard import TurnedAway
from runboard.web.door.pages import see_other, unkept, what_changed, workshop
from runboard.web.door.sessions import access, asking_browser, asking_session, begin, door, door_here
from runboard.web.door.speaking import LANGUAGE_COOKIE, language, speech
from runboard.web.door.ways import secure_page
from runboard.web.fittings import fittings
from runboard.web.helper.record import helper_record
from runboard.words.sentences import LANGUAGES, lang_of
from runboard.words.speech import Speech

_YEAR = 365 * 24 * 3600

part = Blueprint("helper", __name__)


@part.after_request
def keep_language(response: Response) -> Response:
    """A language that was chosen by a link holds on this phone."""
    if request.args.get(LANGUAGE_COOKIE) in LANGUAGES:
        response.set_cookie(LANGUAGE_COOKIE, language(), max_age=_YEAR, path="/", samesite="Strict")
    return response


@part.app_errorhandler(TurnedAway)
def turn_away(error: TurnedAway) -> Response:
    """The answer to a guest's phone whose help is over (401), or that asks for what is not its own (403)."""
    say = speech()
    if error.over:
        return said(say(f"over-{error.over.replace(' ', '-')}"), 401, over=error.over)
    return said(say("shut", tray=error.tray), 403, back=("/helper", say("shut-go")))


@part.get("/t")
def typed() -> Response:
    """Where the short code of a card is typed."""
    return _code_page(200)


@part.post("/t")
def open_typed() -> Response:
    """Go to the tray whose code was typed."""
    code = request.form.get("code", "")
    try:
        at = _find(code=code)
    except Refused as refused:
        return _code_page(_status(refused), speech().refused(refused.code, refused.facts), code)
    return see_other(traveller_link(read_keys(fittings().settings), *at).path)


@part.get("/t/<token>")
def card(token: str) -> Response:
    """What a card's square code opens: the tray and its step, and who helps. A lead's or crew's phone goes to Trays."""
    at = _tray_of(token)
    if isinstance(at, Response):
        return at
    session = asking_session()
    if session is not None and (session.device.run, session.device.tray) == at:
        return see_other("/helper")
    return _card_page(at, 200, name=session.device.name if session else "")


@part.post("/t/<token>")
def come(token: str) -> Response:
    """The guest's first name opens their session, and the page."""
    at = _tray_of(token)
    if isinstance(at, Response):
        return at
    name = request.form.get("name", "")
    try:
        secret, session = admit(workshop(), door_here(), fittings().settings, at, name, asking_browser())
    except Refused as refused:
        return _card_page(at, 422, name, speech().refused(refused.code, refused.facts))
    response = see_other("/helper")
    begin(response, secret, session)
    return response


@part.get("/helper")
def page() -> Response:
    """The page; what it shows comes from its state."""
    session, say = _guest(), speech()
    until = say("until", name=session.device.name, at=say.moment(session.ends_at))
    return _page("helper/helper.html", until=until, wait=say("tray", tray=session.device.tray))


@part.get("/helper/state")
def state() -> Response:
    """What the page shows, as JSON in the phone's language. Its tag changes with every word of it."""
    record = look_as_guest(workshop(), _guest(), partial(helper_record, speech())) or abort(404)
    text = json.dumps(record, separators=(",", ":"), ensure_ascii=False)
    response = what_changed(text, text)
    response.vary.add("Cookie")
    return response


@part.get("/helper/pictures/<name>")
def picture(name: str) -> Response:
    """A picture of the tray's current step; 404 for every other."""
    device = _guest().device
    work = work_now(workshop(), device.run, device.tray) or abort(404)
    if work.step is None or name not in [instruction.picture for instruction in work.step.operation.instructions]:
        abort(404)
    return pictures.show(name)


@part.post("/helper/leave")
def leave_tray() -> Response:
    """The guest stops helping; only the lead lets this phone in again."""
    say, session = speech(), _guest()
    try:
        leave(workshop(), door_here(), session)
    except Refused as refused:
        return said(say.refused(refused.code, refused.facts), 409, back=("/helper", say("shut-go")))
    return said(say("left"), 200)


def _tray_of(token: str) -> tuple[str, str] | Response:
    """The tray of a card's code; else the answer: why there is none, or where a lead's or crew's phone goes."""
    try:
        at = _find(token=token)
    except Refused as refused:
        say = speech()
        back = None if refused.code == "card over" else ("/t", say("card-code-title"))
        return said(say.refused(refused.code, refused.facts), _status(refused), back)
    if access() not in ("", GUEST):
        return cast(Response, redirect(f"/trays?run={at[0]}#tray-{at[1]}", code=303))
    return at


def _find(token: str = "", code: str = "") -> tuple[str, str]:
    """The tray of a token or a code. Where nobody has to pair, everybody may look at every tray anyhow."""
    shut = door()
    if shut is None:
        return tray_of_card(workshop(), fittings().settings, token, code)
    return find_tray(workshop(), shut, fittings().settings, request.remote_addr or "", token, code)


def _status(refused: Refused) -> int:
    return {"card too often": 429, "card over": 410}.get(refused.code, 404)


def _card_page(at: tuple[str, str], status: int, name: str = "", problem: str = "") -> Response:
    say, work = speech(), work_now(workshop(), *at) or abort(404)
    secure = secure_page()
    return _page(
        "helper/card.html",
        status,
        title=say("card-tray", tray=at[1], run=work.run.name),
        step=_step_said(say, work.step) if work.step else say("card-through"),
        name=name,
        problem=problem,
        # Paired phones are known at https, and a browser does not say so across from http.
        shop=f"{secure.rstrip('/')}{request.path}" if secure else "",
    )


def _step_said(say: Speech, step: Step) -> Markup:
    """'Your step: Sand 120', whose name has its own language where nobody translated it."""
    name = say.step(step)
    lang = lang_of(name)
    marked = Markup('<span lang="{}">{}</span>').format(lang, name) if lang else escape(name)
    return Markup(say("card-step", step=marked))  # noqa: S704 - the name is escaped above, the sentence is the catalogue's


def _code_page(status: int, problem: str = "", code: str = "") -> Response:
    return _page("helper/code.html", status, problem=problem, code=code[:40])


def said(text: str, status: int, back: tuple[str, str] | None = None, over: str = "") -> Response:
    """One sentence, as a page or as JSON."""
    if asked_by_script():
        return make_response(jsonify(sentence=text, over=over), status)
    return _page("helper/said.html", status, text=text, back=back)


def _page(template: str, status: int = 200, **context: Any) -> Response:
    """A page in the phone's language, which no cache keeps."""
    say = speech()
    return unkept(
        make_response(render_template(template, lang=say.locale, names=LANGUAGES, tell=say, **context), status)
    )


def _guest() -> Session:
    """The asking guest's session; 404 for everybody else, who has no tray of their own."""
    session = asking_session()
    if session is None or session.device.access != GUEST:
        abort(404)
    return session
