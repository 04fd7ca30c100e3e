"""What the browser draws its screens from, as JSON: the state, a tray's history, and the table that server and page interpret."""

from functools import cache
from importlib import resources

from flask import Blueprint, Response, jsonify, request

from runboard.floor.looking.listening import note_page
from runboard.floor.looking.look import state_for
from runboard.floor.looking.look_back import history_record
from runboard.web.door.pages import asking_person, what_changed, workshop
from runboard.web.door.sessions import asking_device

part = Blueprint("state", __name__)


@part.get("/state")
def shop_state() -> Response:
    """The whole shop as the asking person sees it."""
    note_page(workshop(), asking_person(), asking_device(), "hears" in request.args)
    return what_changed(*state_for(workshop(), asking_person()))


@part.get("/table.json")
def table() -> Response:
    """The transition table."""
    response = Response(_table(), content_type="application/json")
    response.headers["Cache-Control"] = "no-cache"
    response.add_etag(weak=True)
    response.make_conditional(request)
    return response


@part.get("/runs/<run>/trays/<tray>/history")
def history(run: str, tray: str) -> Response:
    """``{"entries": [{"at", "event", "kind", "person", "code", "facts", "basis", "undone"}]}``, oldest first."""
    response = jsonify(entries=history_record(workshop(), run, tray))
    response.headers["Cache-Control"] = "private, no-cache"
    return response


@cache
def _table() -> bytes:
    return (resources.files("runboard.run.fold") / "table.json").read_bytes()
