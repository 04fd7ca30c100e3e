"""The shapes of the fields that bodies of events have, as JSON Schema."""

from typing import Any

from runboard.shop.limits import MOST_ORDER_LINES, MOST_TRAYS

_CONTROL = "\\u0000-\\u001f\\u007f-\\u009f\\u2028\\u2029"
_KEY = "[A-Za-z0-9][A-Za-z0-9._-]*"
_STEP = f"{_KEY}(?::{_KEY})?"
# No '+' and no point: 'oil/5+6' is a load of two trays, 'oil/5.2' the second of one.
_TRAY = "[A-Za-z0-9][A-Za-z0-9_-]*"

TEXT: dict[str, Any] = {"type": "string", "maxLength": 2000}
# A name, which stands in a title, and of which screens show many at once: one line.
NAME: dict[str, Any] = {"type": "string", "maxLength": 200, "pattern": f"^[^{_CONTROL}]*$"}
NAME_OF_ONE: dict[str, Any] = NAME | {"minLength": 1}
KEY: dict[str, Any] = {"type": "string", "minLength": 1, "maxLength": 80, "pattern": f"^{_KEY}$"}
KEY_OR_NOBODY: dict[str, Any] = {"type": "string", "maxLength": 80, "pattern": f"^(?:{_KEY})?$"}
STEP: dict[str, Any] = KEY | {"pattern": f"^{_STEP}$"}
TRAY: dict[str, Any] = KEY | {"maxLength": 40, "pattern": f"^{_TRAY}$"}
LOAD: dict[str, Any] = KEY | {"maxLength": 400, "pattern": f"^{_STEP}(?:/[A-Za-z0-9][A-Za-z0-9._+-]*)?$"}
LINE: dict[str, Any] = KEY | {"pattern": f"^(?:-|{_KEY})$"}
# An alert, a reminder, a move, an event: made of several keys.
NAMED: dict[str, Any] = {"type": "string", "minLength": 1, "maxLength": 600, "pattern": f"^[^{_CONTROL}]+$"}
COUNT: dict[str, Any] = {"type": "integer", "minimum": 0, "maximum": 100000}
NUMBER: dict[str, Any] = {"type": "number", "minimum": -1e6, "maximum": 1e6}
AMOUNT: dict[str, Any] = NUMBER | {"minimum": 0}
MINUTES: dict[str, Any] = {"type": "number", "minimum": 0, "maximum": 100000}
MOMENT: dict[str, Any] = {"type": "string", "format": "date-time", "maxLength": 40}
YES: dict[str, Any] = {"type": "boolean"}
TEXTS: dict[str, Any] = {"type": "array", "items": TEXT, "maxItems": 200}
OPEN: dict[str, Any] = {"type": "array", "items": NAMED, "maxItems": 500}
TRAYS_NAMED: dict[str, Any] = {"type": "array", "items": TRAY, "maxItems": 500}
PLACE: dict[str, Any] = {"type": "integer", "minimum": 1, "maximum": 10000}
PLACES: dict[str, Any] = {"type": "array", "items": PLACE, "maxItems": 500}
OBJECT: dict[str, Any] = {"type": "object"}
PIECES: dict[str, Any] = {"type": "object", "propertyNames": TRAY, "additionalProperties": COUNT, "maxProperties": 500}
SCRAP: dict[str, Any] = {
    "type": "array",
    "maxItems": 100,
    "items": {
        "type": "object",
        "required": ["pieces", "why"],
        "properties": {"pieces": COUNT, "why": NAME, "positions": PLACES},
        "additionalProperties": False,
    },
}
COUNTED: dict[str, Any] = {
    "type": "object",
    "required": ["good"],
    "properties": {"good": COUNT, "scrap": SCRAP},
    "additionalProperties": False,
}
COUNTS: dict[str, Any] = {
    "type": "object",
    "propertyNames": {"pattern": f"^(?:\\*|{_TRAY})$", "maxLength": 40},
    "additionalProperties": COUNTED,
    "maxProperties": 500,
}
ORDERS: dict[str, Any] = {
    "type": "array",
    "maxItems": MOST_ORDER_LINES,
    "items": {
        "type": "object",
        "required": ["line", "pieces"],
        "properties": {
            "line": LINE,
            "pieces": COUNT,
            "for": NAME,
            "text": NAME,
            "due": {"anyOf": [MOMENT, {"type": "null"}]},
        },
        "additionalProperties": False,
    },
}
TRAYS: dict[str, Any] = {
    "type": "array",
    "maxItems": MOST_TRAYS,
    "items": {
        "type": "object",
        "required": ["tray", "pieces"],
        "properties": {"tray": TRAY, "pieces": COUNT, "at": STEP, "wood": NAME},
        "additionalProperties": False,
    },
}
PLACED: dict[str, Any] = {
    "type": "array",
    "maxItems": 500,
    "items": {
        "type": "object",
        "required": ["position", "line", "text"],
        "properties": {"position": PLACE, "line": LINE, "text": TEXT},
        "additionalProperties": False,
    },
}
# Minutes that something is between: of a hundred goes five are below the first, ninety-five below the last.
RANGE: dict[str, Any] = {
    "type": "object",
    "required": ["low", "mid", "high"],
    "properties": {"low": NUMBER, "mid": NUMBER, "high": NUMBER},
    "additionalProperties": False,
}
MEASURES: dict[str, Any] = {"type": "object", "additionalProperties": {"anyOf": [NUMBER, TEXT]}, "maxProperties": 50}


def one_of(*words: str) -> dict[str, Any]:
    """The shape of a field that takes one of these words."""
    return {"enum": list(words)}
