"""The helper's page: a tray's card opens it on any phone, and it shows that tray's current operation only."""

import json
from hashlib import blake2b
from typing import Any, cast

from flask import Blueprint, Flask, Response, abort, make_response, redirect, render_template, request

from runboard.floor.changing.runs import new_event
from runboard.floor.letting_in.devices import Door
from runboard.floor.letting_in.guest_rights import guest_person
from runboard.floor.letting_in.guests import admit, find_tray, leave, tray_of_card
from runboard.floor.letting_in.helper import Work, with_bad, work_at
from runboard.floor.letting_in.travellers import read_keys, traveller_link
from runboard.floor.pressing.access import GUEST
from runboard.floor.pressing.taps import Sender, why_refused
from runboard.floor.warm import catch_up
from runboard.run.calls.device import Session
from runboard.run.log.event import write_moment
from runboard.run.refusal import Refused
from runboard.web.door import pictures
from runboard.web.door.pages import see_other, workshop
from runboard.web.door.sessions import access, asking_browser, asking_session, begin, door
from runboard.web.fittings import fittings
from runboard.web.helper.gate import said, speech
from runboard.web.helper.language import LANGUAGE_COOKIE, language
from runboard.web.helper.record import helper_record
from runboard.web.network.ways import secure_page
from runboard.words.helper import NAMES

_YEAR = 365 * 24 * 3600

part = Blueprint("helper", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


@part.after_request
def keep_language(response: Response) -> Response:
    """A language that was chosen by a link holds on this phone."""
    if request.args.get(LANGUAGE_COOKIE) in NAMES:
        response.set_cookie(LANGUAGE_COOKIE, language(), max_age=_YEAR, path="/", samesite="Strict")
    return response


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
    if access() not in ("", GUEST):
        return cast(Response, redirect(f"/trays?run={at[0]}#tray-{at[1]}", code=303))
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
    if access() not in ("", GUEST):
        return cast(Response, redirect(f"/trays?run={at[0]}#tray-{at[1]}", code=303))
    name = request.form.get("name", "")
    try:
        secret, session = admit(workshop(), _door(), fittings().settings, at, name, asking_browser())
    except Refused as refused:
        return _card_page(at, 422, name, speech().refused(refused.code, refused.facts))
    response = see_other("/helper")
    begin(response, secret, session)
    return response


@part.get("/helper")
def page() -> Response:
    """The page; what it shows comes from its state."""
    session = _guest()
    say = speech()
    until = say("until", name=session.device.name, at=say.moment(session.ends_at))
    response = make_response(
        render_template(
            "helper/helper.html",
            lang=say.locale,
            names=NAMES,
            until=until,
            tell=say,
            wait=say("tray", tray=session.device.tray),
        )
    )
    response.headers["Cache-Control"] = "no-store"
    return response


@part.get("/helper/state")
def state() -> Response:
    """What the page shows, as JSON in the phone's language. Its tag changes with every word of it."""
    session, shop = _guest(), workshop()
    person, say = guest_person(session.device.id), speech()
    sender = Sender(session.device.id, GUEST, (session.device.run, session.device.tray))
    with shop.lock:
        work = _work(session)
        about: dict[str, Any] = {"run": work.run.id, "person": person, "load": work.load_id}
        if work.step is not None:
            about |= {"operation": work.step.key, "station": work.step.operation.station}

        def refused(draft: dict[str, Any]) -> Refused | None:
            made = new_event(shop, draft["kind"], draft["body"], **about, revision=work.tray.revision)
            return why_refused(shop, made, sender)

        record = helper_record(say, shop.ledger.state, shop.book, work, person, refused)
        record["seq"] = shop.ledger.last_seq
    text = json.dumps(record, separators=(",", ":"), ensure_ascii=False)
    etag = blake2b(text.encode("utf-8", "surrogatepass"), digest_size=12).hexdigest()
    response = Response(content_type="application/json")
    response.headers["Cache-Control"] = "private, no-cache"
    response.vary.add("Cookie")
    response.set_etag(etag, weak=True)
    if request.if_none_match.contains_weak(etag):
        response.status_code = 304
        return response
    # The page sets its clock by the time, which is no part of what changed.
    response.set_data(f'{{"now":"{write_moment(shop.clock.now())}",{text[1:]}')
    return response


@part.get("/helper/pictures/<name>")
def picture(name: str) -> Response:
    """A picture of the tray's current step; 404 for every other."""
    with workshop().lock:
        work = _work(_guest())
    if work.step is None or name not in [one.picture for one in work.step.operation.instructions]:
        abort(404)
    return pictures.show(name)


@part.post("/helper/leave")
def leave_tray() -> Response:
    """The guest stops helping; only the lead lets this phone in again."""
    say, session = speech(), _guest()
    try:
        leave(workshop(), _door(), session)
    except Refused as refused:
        return said(say.refused(refused.code, refused.facts), 409, back=("/helper", say("shut-go")))
    return said(say("left"), 200)


def _tray_of(token: str) -> tuple[str, str] | Response:
    try:
        return _find(token=token)
    except Refused as refused:
        say = speech()
        back = None if refused.code == "card over" else ("/t", say("card-code-title"))
        return said(say.refused(refused.code, refused.facts), _status(refused), back)


def _find(token: str = "", code: str = "") -> tuple[str, str]:
    """The tray of a token or a code. Where nobody has to pair, everybody may look at every tray anyhow."""
    shut = door()
    if shut is None:
        return tray_of_card(workshop(), fittings().settings, token, code)
    return find_tray(workshop(), shut, fittings().settings, request.remote_addr or "", token, code)


def _status(refused: Refused) -> int:
    return {"card too often": 429, "card over": 410}.get(refused.code, 404)


def _card_page(at: tuple[str, str], status: int, name: str = "", problem: str = "") -> Response:
    say = speech()
    work = work_at(workshop().ledger.state, *at)
    if work is None:
        abort(404)
    response = make_response(
        render_template(
            "helper/card.html",
            lang=say.locale,
            names=NAMES,
            tell=say,
            title=say("card-tray", tray=at[1], run=work.run.name),
            step=say("card-step", step=say.name(work.step)) if work.step else say("card-through"),
            name=name,
            problem=problem,
            # Paired phones are known at https, and a browser does not say so across from http.
            shop=f"{secure.rstrip('/')}{request.path}" if (secure := secure_page()) else "",
        ),
        status,
    )
    response.headers["Cache-Control"] = "no-store"
    return response


def _code_page(status: int, problem: str = "", code: str = "") -> Response:
    say = speech()
    text = render_template("helper/code.html", lang=say.locale, names=NAMES, tell=say, problem=problem, code=code[:40])
    response = make_response(text, status)
    response.headers["Cache-Control"] = "no-store"
    return response


def _work(session: Session) -> Work:
    """The tray's current operation, as it is now."""
    shop = workshop()
    catch_up(shop)
    work = work_at(shop.ledger.state, session.device.run, session.device.tray) or abort(404)
    return with_bad(work, shop.ledger.held)


def _guest() -> Session:
    """The asking guest's session; 404 for everybody else, who has no tray of their own."""
    session = asking_session()
    if session is None or session.device.access != GUEST:
        abort(404)
    return session


def _door() -> Door:
    """The door; 404 where nobody has to pair, so that there are no guests."""
    return door() or abort(404)
