"""POST /taps: a batch of presses from a phone's outbox; the same batch twice is answered alike, and counted once."""

from typing import Any

from flask import Blueprint, Flask, Response, jsonify

from runboard.floor.taps import take_taps
from runboard.run.refusal import Refused
from runboard.web.errors import BadForm
from runboard.web.json_body import read_json
from runboard.web.pages_support import said, workshop
from runboard.web.sessions import access, asking_device

MOST_BYTES = 2_000_000

part = Blueprint("taps", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.config["MAX_CONTENT_LENGTH"] = MOST_BYTES
    app.register_blueprint(part)


@part.post("/taps")
def taps() -> Response:
    """Take a batch: for each id ``accepted``, ``known`` or ``refused`` with a sentence. 400 if it is no batch."""
    batch = read_json()
    try:
        answers = take_taps(workshop(), batch, asking_device(), access())
    except Refused as refused:
        raise BadForm(said("refused", refused.code, refused.facts)) from refused
    return jsonify({**answers, "taps": [_with_sentence(one) for one in answers["taps"]]})


def _with_sentence(answer: dict[str, Any]) -> dict[str, Any]:
    if not answer.get("code"):
        return answer
    return {**answer, "sentence": said("refused", answer["code"], answer.get("facts") or {})}
