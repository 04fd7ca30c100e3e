"""The wall page: Now for a whole room, on an old tablet or the shop's screen. The browser draws it from the state."""

from flask import Blueprint, Flask, Response

from runboard.web.door.pages import asking_person, page

part = Blueprint("wall", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


@part.get("/wall")
def wall() -> Response:
    """Machines, times, and what wants somebody."""
    return page("now/wall.html", person=asking_person())
