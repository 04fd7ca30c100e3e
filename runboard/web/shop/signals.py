"""Where machines speak: POST /signals/<station> with a token of its own. Nothing is ever sent back to a machine but this
answer: nothing here switches anything."""

from flask import Blueprint, Flask, Response, jsonify, make_response, request

from runboard.floor.keeping.signals import Ears, take_signal, who_speaks
from runboard.run.calls.signals import read_payload, read_signal
from runboard.run.refusal import Refused
from runboard.web.door.pages import said
from runboard.web.fittings import fittings

_STATUS = {"signal token": 401, "signal too often": 429, "signal form": 422, "station unknown": 404}

part = Blueprint("signals", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


def ears() -> Ears:
    """What hears machines in this app."""
    return fittings().leaving.ears


@part.post("/signals/<station>")
def receive(station: str) -> Response:
    """Take a reading: a number of watts, 'on' or 'off', or JSON that holds ``watts`` or ``on``.

    Answers ``{"station", "runs"}``; ``runs`` is null while it is not settled whether low power will last.
    """
    try:
        sensor = who_speaks(ears(), _token(), station, request.remote_addr or "")
        runs = take_signal(ears(), station, read_signal(read_payload(request.get_data())), sensor.name)
    except Refused as refused:
        return _refuse(refused)
    return jsonify(station=station, runs=runs)


def _token() -> str:
    scheme, _, token = request.headers.get("Authorization", "").partition(" ")
    return token.strip() if scheme.lower() == "bearer" else ""


def _refuse(refused: Refused) -> Response:
    sentence = said("refused", refused.code, refused.facts)
    response = make_response(jsonify(sentence=sentence), _STATUS[refused.code])
    if refused.code == "signal token":
        response.headers["WWW-Authenticate"] = "Bearer"
    if refused.code == "signal too often":
        response.headers["Retry-After"] = str(60 * refused.facts["minutes"])
    return response
