"""What went wrong, as a sentence that says what to do: JSON where a script asked, a page where a person did."""

import logging
from typing import Any

from flask import Flask, Response, jsonify, make_response, render_template, request
from werkzeug.exceptions import HTTPException

from runboard.run.refusal import NotStored, Refused
from runboard.shop.json_text import read_json_text
from runboard.shop.problem import Unreadable
from runboard.web.door.pages import refusal, said
from runboard.words.sentences import sentence

_ASKED_BY_SCRIPT = ("/taps", "/state", "/stream", "/table.json", "/signals/", "/buttons/", "/push/", "/pictures")
_log = logging.getLogger("runboard")


class BadForm(Exception):
    """A request whose form is wrong. ``sentence`` says where and what."""

    def __init__(self, sentence: str, status: int = 400) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.status = status


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_error_handler(HTTPException, _http_error)
    app.register_error_handler(BadForm, lambda error: answer(error.sentence, error.status))
    app.register_error_handler(Refused, _refused)
    app.register_error_handler(NotStored, _not_stored)
    app.register_error_handler(Exception, _failure)


def read_json() -> Any:
    """The value in the request's body. Raises ``BadForm`` for another content type and for what is no plain JSON."""
    if request.mimetype != "application/json":
        raise BadForm(sentence("http-no-json"), 415)
    try:
        return read_json_text(request.get_data(), "what was sent")
    except Unreadable as error:
        raise BadForm(sentence("http-unreadable", {"why": str(error)})) from error


def answer(sentence: str, status: int) -> Response:
    """A sentence with its status, in the form that was asked for."""
    if asked_by_script():
        return make_response(jsonify(sentence=sentence), status)
    return make_response(render_template("door/error.html", sentence=sentence, status=status), status)


def status_in_words(status: int) -> str:
    """What a status of HTTP means for who asked, and what to do."""
    return sentence(f"http-{status}") or sentence("http-400")


def asked_by_script() -> bool:
    """Whether a script asked, which wants its answer as JSON."""
    path = request.path
    return path.startswith(_ASKED_BY_SCRIPT) or path.endswith(("/state", "/history")) or request.is_json


def _http_error(error: HTTPException) -> Response:
    status = error.code or 500
    if status < 400:  # a redirect that routing raised
        return make_response(error.get_response())
    if error.description in ("host", "lead"):
        return answer(sentence(f"http-{error.description}"), status)
    said_so = answer(status_in_words(status), status)
    for name, value in error.get_headers():
        if name == "Allow":
            said_so.headers[name] = value
    return said_so


def _refused(error: Refused) -> Response:
    return answer(refusal(error), 404 if error.code.endswith(" unknown") else 409)


def _not_stored(failed: NotStored) -> Response:
    """507, or 503 where it passes by itself: a phone keeps its press and sends it again."""
    _log.error("%s %s was not stored: %s", request.method, request.path, failed.why)
    then = "phone keeps" if request.path == "/taps" else "press again"
    sentence = f"{said('not-stored', failed.why)} {said('not-stored', then)}"
    if request.method in ("GET", "HEAD"):
        sentence = said("not-stored", "only looked" if failed.why == "busy" else failed.why)
    return answer(sentence, 503 if failed.why == "busy" else 507)


def _failure(error: Exception) -> Response:
    _log.exception("%s %s failed", request.method, request.path, exc_info=error)
    return answer(status_in_words(500), 500)
