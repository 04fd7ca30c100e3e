"""Now and Trays: shells that the browser fills from the state's JSON, online and offline alike."""

from flask import Blueprint, Flask, Response, redirect, url_for
from werkzeug.wrappers import Response as WerkzeugResponse

from runboard.floor.pressing import ahead
from runboard.web.door.pages import asking_person, page, workshop
from runboard.web.door.sessions import asking_device

part = Blueprint("now", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


@part.get("/")
def now() -> Response:
    """What to do now."""
    return page("now/now.html", person=_person())


@part.get("/trays")
def trays() -> Response:
    """Where each tray is."""
    return page("trays/trays.html", person=_person())


@part.post("/put-right")
def put_right() -> WerkzeugResponse:
    """Correct what is dated after now, and go back to what there is to do."""
    ahead.put_right(workshop(), asking_person(), asking_device())
    return redirect(url_for("now.now"), 303)


def _person() -> str:
    """Whom the first state is for, so that it is asked once: who this browser said it is, else the first lead."""
    people = [one for one in workshop().books.latest().people if not one.removed]
    leads = [one.key for one in people if one.access == "lead"]
    known = asking_person()
    return known if any(one.key == known for one in people) else next(iter(leads), "")
