"""What a lead does with helpers who came by a tray's card: sees who, sets the hours, shuts out, lets in again."""

from flask import Blueprint, Response, abort, request

from runboard.floor.letting_in.guest_look import stations_shown
from runboard.floor.letting_in.guests import Guest, guests, let_in_again, revoke_guest, revoke_tray
from runboard.floor.letting_in.travellers import MOST_HOURS, hours_in_words, set_hours
from runboard.web.door.pages import page, see_other, workshop
from runboard.web.door.sessions import door_here
from runboard.web.fittings import fittings

BACK = "/shop#helpers"

part = Blueprint("guests", __name__)


@part.get("/helpers/<device_id>")
def one(device_id: str) -> Response:
    """One helper: which tray, until when, what they were shown, and how they are shut out."""
    found = _known(device_id)
    shown, lasts = stations_shown(workshop(), device_id), hours_in_words(fittings().settings)
    return page("helper/one.html", guest=found, shown=shown, hours=lasts)


@part.post("/helpers/<device_id>/revoke")
def revoke(device_id: str) -> Response:
    """Shut this phone out, now."""
    revoke_guest(workshop(), door_here(), _known(device_id).device.id)
    return see_other(BACK)


@part.post("/helpers/<device_id>/again")
def again(device_id: str) -> Response:
    """Let it in for the usual hours, from now."""
    let_in_again(workshop(), door_here(), fittings().settings, _known(device_id).device.id)
    return see_other(BACK)


@part.post("/helpers/<device_id>/cards")
def cards(device_id: str) -> Response:
    """What is printed for the tray opens it no more, and everybody who came by it is shut out."""
    device = _known(device_id).device
    revoke_tray(workshop(), door_here(), fittings().settings, (device.run, device.tray))
    return see_other(BACK)


@part.post("/helpers/hours")
def hours() -> Response:
    """How long access lasts, for those who come from now on."""
    door_here()
    try:
        set_hours(fittings().settings, float(request.form.get("hours", "").replace(",", ".")))
    except ValueError:
        return page("helper/hours.html", status=422, most=f"{MOST_HOURS:g}", typed=request.form.get("hours", "")[:20])
    return see_other(BACK)


def _known(device_id: str) -> Guest:
    return next((held for held in guests(workshop(), door_here()) if held.device.id == device_id), None) or abort(404)
