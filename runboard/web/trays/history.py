"""GET /runs/<run>/trays/<tray>/history: what happened to a tray, for the Trays screen."""

from flask import Blueprint, Flask, Response, jsonify

from runboard.floor.looking.look_back import history_of
from runboard.run.fold.record import plain
from runboard.run.log.event import write_moment
from runboard.web.door.pages import workshop

part = Blueprint("history", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


@part.get("/runs/<run>/trays/<tray>/history")
def history(run: str, tray: str) -> Response:
    """``{"entries": [{"at", "event", "kind", "person", "code", "facts", "basis", "undone"}]}``, oldest first."""
    names = {one.key: one.name for one in workshop().book.people}
    entries = [
        {
            "at": write_moment(one.at),
            "event": one.event,
            "kind": one.kind,
            "person": one.person,
            "code": one.code,
            "facts": plain({**one.facts, "who": names.get(one.person, "somebody")}),
            "basis": one.basis,
            "undone": one.undone,
        }
        for one in history_of(workshop(), run, tray)
    ]
    response = jsonify(entries=entries)
    response.headers["Cache-Control"] = "private, no-cache"
    return response
