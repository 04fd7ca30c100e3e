"""'Put it in my phone's calendar': a machine's end or a wait as a file that a phone's calendar opens, with its alarm."""

from flask import Blueprint, Response, abort, make_response, request, url_for

from runboard.floor.looking.calendar import load_calendar, wait_calendar
from runboard.web.door.pages import said, see_other, unkept, workshop

part = Blueprint("calendar", __name__)


@part.get("/calendar")
def put_in() -> Response:
    """Where a page's link leads: on to the file. An iPhone opens its calendar for a redirect to one (read, not seen)."""
    asked = {name: request.args.get(name, "") for name in ("run", "load", "tray", "step")}
    if not asked["run"] or not (asked["load"] or (asked["tray"] and asked["step"])):
        abort(404)
    if asked["load"]:
        return see_other(url_for("calendar.of_load", run=asked["run"], load=asked["load"]))
    return see_other(url_for("calendar.of_wait", run=asked["run"], tray=asked["tray"], step=asked["step"]))


@part.get("/runs/<run>/loads/<path:load>.ics")
def of_load(run: str, load: str) -> Response:
    """The end of a running machine; 404 where nobody knows the load, 409 where it does not run."""
    return _file(load_calendar(workshop(), run, load, said))


@part.get("/runs/<run>/trays/<tray>/waits/<step>.ics")
def of_wait(run: str, tray: str, step: str) -> Response:
    """The end of a wait; 404 where nobody knows the tray, 409 where it does not wait."""
    return _file(wait_calendar(workshop(), run, tray, step, said))


def _file(text: str) -> Response:
    response = make_response(text)
    response.headers["Content-Type"] = "text/calendar; charset=utf-8; method=PUBLISH"
    response.headers["Content-Disposition"] = 'inline; filename="runboard.ics"'
    return unkept(response)
