"""POST /taps: a batch of presses from a phone's outbox; the same batch twice is answered alike, and counted once."""

from typing import Any

from flask import Blueprint, Flask, Response, jsonify, make_response

from runboard.floor.pressing.access import GUEST
from runboard.floor.pressing.taps import Sender, take_taps_of
from runboard.run.refusal import Refused
from runboard.web.door.errors import BadForm
from runboard.web.door.json_body import read_json
from runboard.web.door.pages import said, workshop
from runboard.web.door.sessions import access, asking_device, asking_session
from runboard.web.helper.gate import speech

part = Blueprint("taps", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


@part.post("/taps")
def taps() -> Response:
    """Take a batch: for each id ``accepted``, ``known`` or ``refused`` with a sentence. 400 if it is no batch,
    429 if this device has to wait."""
    batch = read_json()
    try:
        answers = take_taps_of(workshop(), batch, _sender())
    except Refused as refused:
        if refused.code == "too fast":
            return _later(refused)
        raise BadForm(said("refused", refused.code, refused.facts)) from refused
    return jsonify({**answers, "taps": [_with_sentence(one) for one in answers["taps"]]})


def _later(refused: Refused) -> Response:
    """429: the phone keeps its presses, and sends them again when it may."""
    sentence = (
        speech().refused(refused.code, refused.facts)
        if access() == GUEST
        else said("refused", refused.code, refused.facts)
    )
    response = make_response(jsonify(sentence=sentence), 429)
    response.headers["Retry-After"] = str(refused.facts["seconds"])
    return response


def _sender() -> Sender:
    session = asking_session()
    at = (session.device.run, session.device.tray) if session else ("", "")
    return Sender(asking_device(), access(), at)


def _with_sentence(answer: dict[str, Any]) -> dict[str, Any]:
    if not answer.get("code"):
        return answer
    if access() == GUEST:  # a sentence in their language; its facts may be of other trays and runs
        sentence = speech().refused(answer["code"], answer.get("facts") or {})
        return {key: value for key, value in answer.items() if key != "facts"} | {"sentence": sentence}
    return {**answer, "sentence": said("refused", answer["code"], answer.get("facts") or {})}
