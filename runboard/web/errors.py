"""What went wrong, as a sentence that says what to do: JSON where a script asked, a page where a person did."""

import logging

from flask import Flask, Response, jsonify, make_response, render_template, request
from werkzeug.exceptions import HTTPException

from runboard.run.refusal import Refused
from runboard.web.pages_support import said

_ASKED_BY_SCRIPT = ("/taps", "/state", "/table.json")
_SENTENCES = {
    400: "That request cannot be read. Load the page again.",
    403: "That came from another site's page, so nothing was done. Open runboard itself and press again.",
    404: "There is nothing here. Go to Now.",
    405: "That cannot be done here. Go to Now.",
    409: "That does not fit what has happened meanwhile. Load the page again.",
    413: "That is more than can be taken at once. Send less.",
    415: "That has to be sent as JSON.",
    500: "Something failed here, and nothing was stored. Press again; if it fails again, look at what the server printed.",
}
_HOST = "runboard answers on this computer only: open it as http://127.0.0.1 with the port it printed."

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
    app.register_error_handler(Exception, _failure)


def answer(sentence: str, status: int) -> Response:
    """A sentence with its status, in the form that was asked for."""
    if _by_script():
        return make_response(jsonify(sentence=sentence), status)
    return make_response(render_template("error.html", sentence=sentence, status=status), status)


def _by_script() -> bool:
    path = request.path
    return path.startswith(_ASKED_BY_SCRIPT) or path.endswith(("/state", "/history")) or request.is_json


def _http_error(error: HTTPException) -> Response:
    status = error.code or 500
    if status < 400:  # a redirect that routing raised
        return make_response(error.get_response())
    if error.description == "host":
        return answer(_HOST, status)
    said_so = answer(_SENTENCES.get(status, _SENTENCES[400]), status)
    for name, value in error.get_headers():
        if name == "Allow":
            said_so.headers[name] = value
    return said_so


def _refused(error: Refused) -> Response:
    return answer(said("refused", error.code, error.facts), 404 if error.code.endswith(" unknown") else 409)


def _failure(error: Exception) -> Response:
    _log.exception("%s %s failed", request.method, request.path, exc_info=error)
    return answer(_SENTENCES[500], 500)
