"""How much goes to and fro: what a request may bring, by what it asks for, and answers made smaller on their way.

The table is the one for the event loop that reads a body and for Flask.
"""

from dataclasses import dataclass

from flask import Flask, Response, request
from werkzeug.exceptions import HTTPException

from runboard.floor.changing.file_in import MOST_BYTES as A_FILE
from runboard.floor.changing.photograph import MOST_BYTES as A_PICTURE
from runboard.floor.looking.answers import A_PROGRAM
from runboard.floor.pressing.access import LEAD
from runboard.run.calls.signals import MOST_BYTES as A_SIGNAL
from runboard.run.refusal import NotStored
from runboard.web.door.errors import answer, status_in_words
from runboard.web.door.packing import LEAST, packed


@dataclass(frozen=True)
class Most:
    """Bytes: ``whole`` of the body, ``fields`` of what a form says beside its files."""

    whole: int
    fields: int = 500_000


# A form may bring a picture for every step at once, where the page's script did not send them one by one before.
_PICTURES = Most(12 * A_PICTURE)
A_FEW_WORDS = 20_000
NOT_TAKEN = "runboard.not_taken"  # in the ASGI scope: the status with which a body was turned away before Flask
_USUAL, _A_FEW_WORDS = Most(2_000_000), Most(A_FEW_WORDS, A_FEW_WORDS)
# What is gzipped where the browser takes it.
_TEXT = ("text/", "application/json", "application/javascript", "image/svg+xml", "application/manifest+json")
BY_ENDPOINT = {
    "pairing.pair_this": Most(4_000, 4_000),
    "helper.open_typed": Most(4_000, 4_000),
    "helper.come": Most(4_000, 4_000),
    "friend_code.answer": _A_FEW_WORDS,
    "signals.receive": Most(A_SIGNAL),
    "signals.press": Most(A_SIGNAL),
    "push.subscription": Most(8_000),
    "outside.add": Most(8_000, 8_000),
    "signals.save_broker": _A_FEW_WORDS,
    "signals.make": _A_FEW_WORDS,
    "signals.make_press": _A_FEW_WORDS,
    "pictures.take": _PICTURES,
    "plan.save_product": _PICTURES,
    "plan_route.save_one": _PICTURES,
    "before.ask": Most(A_PROGRAM + A_FEW_WORDS),
    "before.drop": Most(A_PROGRAM + A_FEW_WORDS),
    "shop_file.look": Most(A_FILE + A_FEW_WORDS),
}


def init_app(app: Flask) -> None:
    """Plug into the app; after the guard, which turns strangers away by what they ask for alone."""
    app.before_request(_limit)
    app.after_request(_pack)


def most_for(endpoint: str, reading: bool = False) -> Most:
    """What a request for that endpoint may bring; a few words where nothing is asked for that would take more."""
    return _A_FEW_WORDS if reading or not endpoint else BY_ENDPOINT.get(endpoint, _USUAL)


def most_from(whole: int, access: str) -> int:
    """The same for a device of that access: of somebody unknown only a few words are read, and files are a lead's."""
    if access == LEAD:
        return whole
    return min(whole, _USUAL.whole if access else _A_FEW_WORDS.whole)


def endpoint_of(app: Flask, method: str, path: str) -> str:
    """What is asked for; '' for nothing that there is."""
    try:
        return str(app.url_map.bind("").match(path, method)[0])
    except HTTPException:
        return ""


def _limit() -> Response | None:
    status = request.environ.get("asgi.scope", {}).get(NOT_TAKEN)
    if status:
        return _not_taken(status)
    most = most_for(request.endpoint or "")
    request.max_content_length, request.max_form_memory_size = most.whole, most.fields
    return None


def _not_taken(status: int) -> Response:
    """Why a body was not read to its end."""
    if status == 507:
        raise NotStored("full")
    response = answer(status_in_words(status), status)
    if (
        status != 413
    ):  # else nothing more is read from the sender, who may still be sending and would not see the answer
        response.headers["Connection"] = "close"
    return response


def _pack(response: Response) -> Response:
    """Gzip a text answer that is worth it, and say that the answer depends on what the browser takes."""
    if response.status_code != 200 or response.is_streamed or not (response.mimetype or "").startswith(_TEXT):
        return response
    body = response.get_data()
    if len(body) < LEAST or response.content_encoding:
        return response
    response.vary.add("Accept-Encoding")
    if "gzip" in request.headers.get("Accept-Encoding", ""):
        response.set_data(packed(body))
        response.headers["Content-Encoding"] = "gzip"
    return response
