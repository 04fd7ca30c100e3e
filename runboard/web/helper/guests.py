"""What a lead does with helpers who came by a tray's card: sees who, sets the hours, shuts out, lets in again."""

from flask import Blueprint, Flask, Response, abort, request

from runboard.floor.letting_in.devices import Door
from runboard.floor.letting_in.guest_rights import guest_person
from runboard.floor.letting_in.guests import Guest, guests, let_in_again, revoke_guest, revoke_tray
from runboard.floor.letting_in.travellers import MOST_HOURS, hours_of_access, set_hours
from runboard.floor.pressing.access import LEAD
from runboard.web.door.pages import page, see_other, workshop
from runboard.web.door.sessions import access, door
from runboard.web.fittings import fittings

BACK = "/shop#helpers"

part = Blueprint("guests", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)
    app.jinja_env.globals.update(guests_shown=guests_shown, hours_shown=hours_shown)


def guests_shown() -> list[Guest] | None:
    """The helpers for the Shop page; None for who may not see them."""
    shut = door()
    return list(guests(workshop(), shut)) if shut is not None and access() == LEAD else None


def hours_shown() -> str:
    """How many hours a helper's access lasts, '8' or '2.5'."""
    return f"{hours_of_access(fittings().settings).total_seconds() / 3600:g}"


@part.get("/helpers/<device_id>")
def one(device_id: str) -> Response:
    """One helper: which tray, until when, what they were shown, and how they are shut out."""
    found = _known(device_id)
    seen = workshop().ledger.state.people.get(guest_person(device_id))
    book = workshop().books.latest()
    shown = [station.name for key in (seen.shown if seen else ()) if (station := book.station(key))]
    return page("helper/one.html", guest=found, shown=shown)


@part.post("/helpers/<device_id>/revoke")
def revoke(device_id: str) -> Response:
    """Shut this phone out, now."""
    revoke_guest(workshop(), _door(), _known(device_id).device.id)
    return see_other(BACK)


@part.post("/helpers/<device_id>/again")
def again(device_id: str) -> Response:
    """Let it in for the usual hours, from now."""
    let_in_again(workshop(), _door(), fittings().settings, _known(device_id).device.id)
    return see_other(BACK)


@part.post("/helpers/<device_id>/cards")
def cards(device_id: str) -> Response:
    """What is printed for the tray opens it no more, and everybody who came by it is shut out."""
    device = _known(device_id).device
    revoke_tray(workshop(), _door(), fittings().settings, (device.run, device.tray))
    return see_other(BACK)


@part.post("/helpers/hours")
def hours() -> Response:
    """How long access lasts, for those who come from now on."""
    _door()
    try:
        set_hours(fittings().settings, float(request.form.get("hours", "").replace(",", ".")))
    except ValueError:
        return page("helper/hours.html", status=422, most=f"{MOST_HOURS:g}", typed=request.form.get("hours", "")[:20])
    return see_other(BACK)


def _known(device_id: str) -> Guest:
    return next((one for one in guests(workshop(), _door()) if one.device.id == device_id), None) or abort(404)


def _door() -> Door:
    """The door; 404 where nobody has to pair."""
    return door() or abort(404)
