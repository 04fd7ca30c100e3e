"""Pairing: the welcome page, which is all that an unknown device gets, and what a lead does with devices."""

from flask import Blueprint, Flask, Response, abort, make_response, render_template, request
from markupsafe import Markup

from runboard.floor.letting_in.devices import (
    HTTP,
    Door,
    make_code,
    pair,
    rename_device,
    revoke_device,
    session_of,
    tidy_name,
)
from runboard.floor.pressing.access import CREW, GUEST, LEAD
from runboard.lan import qr
from runboard.run.calls.device import Device
from runboard.run.refusal import Refused
from runboard.web.door.errors import answer, asked_by_script
from runboard.web.door.pages import page, said, see_other
from runboard.web.door.sessions import access, asked_by, asking_device, asking_session, asking_token, begin, door
from runboard.web.network.ways import first_page

_UNKNOWN = "This device is not paired with the shop. Open runboard's first page on it, and type a code there."
# Told apart by what browsers say of themselves; first come, first served.
_KINDS = (("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android phone"), ("Mac OS", "Mac"), ("Windows", "PC"))

part = Blueprint("pairing", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)
    app.jinja_env.globals.update(devices_shown=devices_shown)


@part.get("/pair")
def welcome() -> Response:
    """Where a code is typed; the address in a QR code brings it along. Nothing is done before the press."""
    _door()
    return _welcome(200, code=request.args.get("code", ""))


@part.post("/pair")
def pair_this() -> Response:
    """Pair the device that asks: its session begins, and it goes on to Now."""
    shut, code = _door(), request.form.get("code", "")
    name = request.form.get("name", "") or _kind_of_device()
    try:
        token, session = pair(shut, code, name, request.remote_addr or "", asking_token(), way=asked_by())
    except Refused as refused:
        return _not_paired(refused, code)
    response = see_other("/")
    begin(response, token, session)
    return response


def turn_away() -> Response:
    """The answer to an unknown device, whatever it asked for (401)."""
    return answer(_UNKNOWN, 401) if asked_by_script() else _welcome(401)


def _not_paired(refused: Refused, code: str) -> Response:
    often = refused.code == "pairing too often"
    status, sentence = 429 if often else 422, said("refused", refused.code, refused.facts)
    response = answer(sentence, status) if asked_by_script() else _welcome(status, sentence, code)
    if often:
        response.headers["Retry-After"] = str(60 * refused.facts["minutes"])
    return response


def _welcome(status: int, problem: str = "", code: str = "") -> Response:
    session = asking_session()
    text = render_template(
        "network/welcome.html",
        problem=problem,
        code=code[:40],
        name=tidy_name(request.values.get("name", "")) or _kind_of_device(),
        known=session.device if session else None,
        is_over=session is None and _was_plain(),
    )
    response = make_response(text, status)
    response.headers["Cache-Control"] = "no-store"
    return response


def _was_plain() -> bool:
    """Whether the asking device is a lead's whose session by plain http is over."""
    shut = door()
    before = session_of(shut, asking_token()) if shut else None
    return bool(before and before.way == HTTP and before.device.access == LEAD and not before.device.revoked_at)


@part.post("/devices/code")
def show_code() -> Response:
    """A code for one device, as text and as QR.

    The answer is the page itself and no redirect: the code is kept nowhere, so it cannot be shown again.
    """
    wanted, device = request.form.get("access", ""), request.form.get("device", "")
    if wanted not in (LEAD, CREW):
        abort(400)
    code, ends_at = make_code(_door(), wanted, device)
    at = first_page()
    picture = _drawn(f"{at}pair?code={code}")
    response = page("network/code.html", code=code, ends_at=ends_at, first_page=at, picture=picture, wanted=wanted)
    response.headers["Cache-Control"] = "no-store"
    return response


@part.get("/devices/<device_id>")
def one(device_id: str) -> Response:
    """One device: its name, and how it is shut out or paired again."""
    return page("network/device.html", device=_known(device_id), own=asking_device())


@part.post("/devices/<device_id>")
def rename(device_id: str) -> Response:
    """Call it something else."""
    known, name = _known(device_id), request.form.get("name", "")
    try:
        rename_device(_door(), device_id, name)
    except Refused as refused:
        problem = said("refused", refused.code, refused.facts)
        return page("network/device.html", status=422, device=known, own=asking_device(), problem=problem, name=name)
    return see_other("/shop#devices")


@part.post("/devices/<device_id>/revoke")
def revoke(device_id: str) -> Response:
    """Shut it out, now."""
    revoke_device(_door(), _known(device_id).id)
    return see_other("/shop#devices")


def devices_shown() -> list[Device] | None:
    """The devices for the Shop page: those paired, then the revoked, each as last seen; helpers who came by a card stand
    elsewhere. None for who may not see them."""
    shut = door()
    if shut is None or access() != LEAD:
        return None
    paired = (one for one in shut.devices.devices() if one.access != GUEST)
    return sorted(paired, key=lambda one: one.revoked_at is not None)


def _drawn(address: str) -> Markup:
    """The QR code, as an SVG element."""
    return Markup(qr.svg(address, "The address with the code, for a camera"))  # noqa: S704 - it is an element, made here


def _door() -> Door:
    """The door; 404 where nobody has to pair."""
    return door() or abort(404)


def _known(device_id: str) -> Device:
    return _door().devices.device(device_id) or abort(404)


def _kind_of_device() -> str:
    """What a device probably is, as its first name."""
    agent = request.headers.get("User-Agent", "")
    return next((name for sign, name in _KINDS if sign in agent), "Phone")
