"""Pictures: taken in from a phone, and shown to whoever works here."""

from collections.abc import Mapping
from typing import cast

from flask import Blueprint, Response, abort, jsonify, make_response, request
from werkzeug.datastructures import FileStorage, MultiDict

from runboard.floor.changing.photograph import MOST_BYTES
from runboard.floor.changing.pictures import Shelf, keep_picture
from runboard.run.refusal import Refused
from runboard.web.door.pages import refusal
from runboard.web.fittings import fittings

_TYPES = {"jpg": "image/jpeg", "png": "image/png"}
_FOR_GOOD = "private, max-age=31536000, immutable"

Texts = MultiDict[str, str]

part = Blueprint("pictures", __name__)


def shelf() -> Shelf:
    """Where this shop's pictures are kept."""
    return fittings().pictures


@part.post("/pictures")
def take() -> Response:
    """Keep one picture, and say its name: ``{"name"}``, or 422 with ``{"sentence"}``."""
    file = request.files.get("file")
    try:
        return jsonify(name=keep_picture(shelf(), _content(file) if file else b""))
    except Refused as refused:
        return make_response(jsonify(sentence=refusal(refused)), 422)


@part.get("/pictures/<name>")
def show(name: str) -> Response:
    """A picture. Under one name there is never another, so it is kept for good."""
    content = shelf().read(name)
    if content is None:
        abort(404)
    response = Response(content, content_type=_TYPES[name.rpartition(".")[2]])
    response.headers["Cache-Control"] = _FOR_GOOD
    response.set_etag(name.partition(".")[0][:20])
    return cast(Response, response.make_conditional(request))


def take_pictures(texts: Texts, files: Mapping[str, FileStorage]) -> Texts:
    """The form's texts with the names of the pictures that came; ``name.wrong`` says why one was refused.

    A picture comes as ``name.file`` beside its field ``name``; ``name.gone`` takes it off.
    """
    filled: Texts = MultiDict((name, text) for name, text in texts.items(multi=True) if not name.endswith(".wrong"))
    for name in texts:
        if name.endswith("picture.gone"):
            filled[name.removesuffix(".gone")] = ""
    for name, file in files.items():
        content = _content(file)
        if name.endswith(".file") and (content or file.filename):  # else nothing was chosen
            _take(filled, name.removesuffix(".file"), content)
    return filled


def _take(filled: Texts, field: str, content: bytes) -> None:
    try:
        filled[field] = keep_picture(shelf(), content)
    except Refused as error:
        filled[f"{field}.wrong"] = refusal(error)


def _content(file: FileStorage) -> bytes:
    """What came, and a byte more than may come where it is too much."""
    try:
        return file.stream.read(MOST_BYTES + 1)
    finally:
        file.close()
