"""POST /taps: a batch of presses from a phone's outbox; the same batch twice is answered alike, and counted once."""

from typing import Any

from flask import Blueprint, Response, jsonify, make_response

from runboard.floor.pressing.access import GUEST
from runboard.floor.pressing.taps import Sender, take_taps_of
from runboard.run.refusal import Refused
from runboard.web.door.errors import BadForm, read_json
from runboard.web.door.pages import refusal, workshop
from runboard.web.door.sessions import access, asking_device, asking_session
from runboard.web.door.speaking import refusal_to_asker

part = Blueprint("taps", __name__)


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
        raise BadForm(refusal(refused)) from refused
    return jsonify({**answers, "taps": [_with_sentence(tap) for tap in answers["taps"]]})


def _later(refused: Refused) -> Response:
    """429: the phone keeps its presses, and sends them again when it may."""
    response = make_response(jsonify(sentence=refusal_to_asker(refused.code, refused.facts)), 429)
    response.headers["Retry-After"] = str(refused.facts["seconds"])
    return response


def _sender() -> Sender:
    session = asking_session()
    at = (session.device.run, session.device.tray) if session else ("", "")
    return Sender(asking_device(), access(), at)


def _with_sentence(answer: dict[str, Any]) -> dict[str, Any]:
    if not answer.get("code"):
        return answer
    sentence = refusal_to_asker(answer["code"], answer.get("facts") or {})
    if access() == GUEST:  # facts may be of other trays and runs
        answer = {key: value for key, value in answer.items() if key != "facts"}
    return {**answer, "sentence": sentence}
