"""Now and Trays: shells that the browser fills from the state's JSON, online and offline alike."""

from flask import Blueprint, Flask, Response

from runboard.web.pages_support import page

part = Blueprint("now", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


@part.get("/")
def now() -> Response:
    """What to do now."""
    return page("now.html")


@part.get("/trays")
def trays() -> Response:
    """Where each tray is."""
    return page("trays.html")
