"""Pairing: the welcome page, which is all that an unknown device gets, and what a lead does with devices."""

from flask import Blueprint, Response, abort, make_response, render_template, request

from runboard.floor.letting_in.devices import (
    HTTP,
    make_code,
    pair,
    rename_device,
    revoke_device,
    session_of,
    tidy_name,
)
from runboard.floor.pressing.access import CREW, LEAD
from runboard.run.calls.device import Device
from runboard.run.refusal import Refused
from runboard.web.door.errors import answer, asked_by_script
from runboard.web.door.guard import Unpaired
from runboard.web.door.pages import page, refusal, see_other, unkept
from runboard.web.door.sessions import asked_by, asking_device, asking_session, asking_token, begin, door, door_here
from runboard.web.door.ways import drawn, first_page, ways
from runboard.words.sentences import say, sentence

# Told apart by what browsers say of themselves; first come, first served.
DEVICE_KINDS = (("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "android"), ("Mac OS", "Mac"), ("Windows", "PC"))

part = Blueprint("pairing", __name__)


@part.get("/pair")
def welcome() -> Response:
    """Where a code is typed; the address in a QR code brings it along. Nothing is done before the press."""
    door_here()
    return _welcome(200, code=request.args.get("code", ""))


@part.post("/pair")
def pair_this() -> Response:
    """Pair the device that asks: its session begins, and it goes on to Now."""
    shut, code = door_here(), request.form.get("code", "")
    name = request.form.get("name", "") or _kind_of_device()
    try:
        token, session = pair(shut, code, name, request.remote_addr or "", asking_token(), way=asked_by())
    except Refused as refused:
        return _not_paired(refused, code)
    response = see_other("/")
    begin(response, token, session)
    return response


@part.app_errorhandler(Unpaired)
def turn_away(_: Unpaired) -> Response:
    """The answer to an unknown device, whatever it asked for (401)."""
    return answer(sentence("pairing-unknown"), 401) if asked_by_script() else _welcome(401)


def _not_paired(refused: Refused, code: str) -> Response:
    often = refused.code == "pairing too often"
    status, sentence = 429 if often else 422, refusal(refused)
    response = answer(sentence, status) if asked_by_script() else _welcome(status, sentence, code)
    if often:
        response.headers["Retry-After"] = str(60 * refused.facts["minutes"])
    return response


def _welcome(status: int, problem: str = "", code: str = "") -> Response:
    session, network = asking_session(), ways()
    text = render_template(
        "network/welcome.html",
        problem=problem,
        code=code[:40],
        name=tidy_name(request.values.get("name", "")) or _kind_of_device(),
        known=session.device if session else None,
        is_over=session is None and _was_plain(),
        by_http=asked_by() == HTTP,
        network=network,
    )
    return unkept(make_response(text, status))


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
    code, ends_at = make_code(door_here(), wanted, device)
    at = first_page()
    picture = drawn(f"{at}pair?code={code}", sentence("pairing-qr"))
    return page(
        "network/code.html", cached=False, code=code, ends_at=ends_at, first_page=at, picture=picture, wanted=wanted
    )


@part.get("/devices/<device_id>")
def one(device_id: str) -> Response:
    """One device: its name, and how it is shut out or paired again."""
    return page("network/device.html", device=_known(device_id), own=asking_device())


@part.post("/devices/<device_id>")
def rename(device_id: str) -> Response:
    """Call it something else."""
    known, name = _known(device_id), request.form.get("name", "")
    try:
        rename_device(door_here(), device_id, name)
    except Refused as refused:
        problem = refusal(refused)
        return page("network/device.html", status=422, device=known, own=asking_device(), problem=problem, name=name)
    return see_other("/shop#devices")


@part.post("/devices/<device_id>/revoke")
def revoke(device_id: str) -> Response:
    """Shut it out, now."""
    revoke_device(door_here(), _known(device_id).id)
    return see_other("/shop#devices")


def _known(device_id: str) -> Device:
    return door_here().devices.device(device_id) or abort(404)


def _kind_of_device() -> str:
    """What a device probably is, as its first name."""
    agent = request.headers.get("User-Agent", "")
    return say("device", next((name for sign, name in DEVICE_KINDS if sign in agent), "phone"))
