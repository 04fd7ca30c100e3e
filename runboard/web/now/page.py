"""Now, Trays and the wall: shells that the browser fills from the state's JSON, online and offline alike."""

from flask import Blueprint, Response, redirect, url_for
from werkzeug.wrappers import Response as WerkzeugResponse

from runboard.floor.looking.at_hand import first_person
from runboard.floor.pressing import ahead
from runboard.web.door.pages import asking_person, page, workshop
from runboard.web.door.sessions import asking_device
from runboard.web.door.ways import could_be_secure

part = Blueprint("now", __name__)


@part.get("/")
def now() -> Response:
    """What to do now."""
    return _shell("now/now.html")


@part.get("/trays")
def trays() -> Response:
    """Where each tray is."""
    return _shell("trays/trays.html")


@part.post("/put-right")
def put_right() -> WerkzeugResponse:
    """Correct what is dated after now, and go back to what there is to do."""
    ahead.put_right(workshop(), asking_person(), asking_device())
    return redirect(url_for("now.now"), 303)


@part.get("/wall")
def wall() -> Response:
    """The wall page: machines, times, and what wants somebody, for a whole room, on an old tablet or the shop's screen."""
    return page("now/wall.html", person=asking_person())


def _shell(template: str) -> Response:
    """A page whose first state is for who this browser said it is, else for the first lead, so that it is asked once."""
    return page(template, person=first_person(workshop(), asking_person()), could_be_secure=could_be_secure())
