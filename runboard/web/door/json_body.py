"""The JSON that a request carries: what is no plain JSON is turned away with a sentence."""

from typing import Any

from flask import request

from runboard.shop.json_text import read_json_text
from runboard.shop.problem import Unreadable
from runboard.web.door.errors import BadForm


def read_json() -> Any:
    """The value in the request's body. Raises ``BadForm`` for another content type and for what is no plain JSON."""
    if request.mimetype != "application/json":
        raise BadForm("Taps have to be sent as application/json.", 415)
    try:
        return read_json_text(request.get_data(), "what was sent")
    except Unreadable as error:
        raise BadForm(f"{error} So nothing was stored.") from error
