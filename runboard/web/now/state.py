"""The state as JSON, for the screens that the browser draws, and the table that server and page both interpret."""

from functools import cache
from hashlib import blake2b
from importlib import resources

from flask import Blueprint, Flask, Response, request

from runboard.floor.looking.listening import note_page
from runboard.floor.looking.look import state_for
from runboard.run.log.event import write_moment
from runboard.web.door.pages import asking_person, workshop
from runboard.web.door.sessions import asking_device

part = Blueprint("state", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


@part.get("/state")
def shop_state() -> Response:
    """The whole shop as the asking person sees it."""
    return _state(None)


@part.get("/runs/<run>/state")
def run_state(run: str) -> Response:
    """The same, with one run only; 404 where nobody knows the run."""
    return _state(run)


@part.get("/table.json")
def table() -> Response:
    """The transition table."""
    response = Response(_table(), content_type="application/json")
    response.headers["Cache-Control"] = "no-cache"
    response.add_etag(weak=True)
    response.make_conditional(request)
    return response


def _state(run: str | None) -> Response:
    shop = workshop()
    note_page(shop, asking_person(), asking_device(), "hears" in request.args)
    tag, text = state_for(shop, asking_person(), run)
    # The tag names the asking person as the address did; a header takes only some characters.
    etag = blake2b(tag.encode("utf-8", "surrogatepass"), digest_size=12).hexdigest()
    response = Response(content_type="application/json")
    response.headers["Cache-Control"] = "private, no-cache"
    response.set_etag(etag, weak=True)
    if request.if_none_match.contains_weak(etag):
        response.status_code = 304
        return response
    # The text is kept from one answer to the next, the time is not: the page sets its clock by it.
    response.set_data(f'{{"now":"{write_moment(shop.clock.now())}",{text[1:]}')
    return response


@cache
def _table() -> bytes:
    return (resources.files("runboard.run.fold") / "table.json").read_bytes()
