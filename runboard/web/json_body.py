"""The JSON that a request carries, read strictly: what could not be stored is turned away here, with a sentence."""

import json
from typing import Any

from flask import request

from runboard.web.errors import BadForm

_LARGEST = 2**53  # what a browser's numbers hold exactly


def read_json() -> Any:
    """The value in the request's body. Raises ``BadForm`` for another content type and for what is no plain JSON."""
    if request.mimetype != "application/json":
        raise BadForm("Taps have to be sent as application/json.", 415)
    try:
        text = request.get_data().decode("utf-8")
        value = json.loads(text, parse_constant=_no_constant, parse_int=_whole_number, parse_float=_number)
        # Half of a character pair written as \ud83d is JSON, but no text: no database takes it.
        if "\\u" in text:
            json.dumps(value, ensure_ascii=False).encode("utf-8")
    except (ValueError, RecursionError) as error:
        raise BadForm("The body is no plain JSON, so nothing was stored.") from error
    return value


def _no_constant(word: str) -> float:
    raise ValueError(f"{word} is no JSON")


def _whole_number(digits: str) -> int:
    if len(digits) > 17 or abs(number := int(digits)) > _LARGEST:
        raise ValueError("too large a number")
    return number


def _number(digits: str) -> float:
    number = float(digits)
    if abs(number) == float("inf"):
        raise ValueError("too large a number")
    return number
