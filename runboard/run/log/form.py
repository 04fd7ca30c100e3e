"""The form of an event: the JSON Schema made from the table of kinds, and the check of what arrives."""

from collections.abc import Callable, Iterator, Mapping
from datetime import UTC, datetime
from functools import cache
from typing import Any

import fastjsonschema

from runboard.run.log.event import BASES, VERSION, Event, event_from_json, parse_moment
from runboard.run.log.kinds import KINDS
from runboard.run.log.shapes import COUNT, KEY, LOAD, MOMENT, NAME, STEP, TRAY
from runboard.run.log.size import check_body
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError, product_from_json
from runboard.shop.product import Product

# Moments outside are slips of a clock, and near the calendar's ends nothing could be added to them.
EARLIEST, LATEST = datetime(1990, 1, 1, tzinfo=UTC), datetime(2200, 1, 1, tzinfo=UTC)

ID = {"type": "string", "pattern": "^[A-Za-z0-9_-]{6,64}(\\.[2-9])?$"}


def _or_none(shape: Mapping[str, Any]) -> dict[str, Any]:
    """A field of the envelope that names nothing where it is null or empty."""
    return {"anyOf": [{"type": "null"}, {"const": ""}, shape]}


# What a device is called is its own; it stands on one line.
DEVICE = {"type": "string", "maxLength": 80, "pattern": NAME["pattern"]}

ENVELOPE: dict[str, Any] = {
    "id": ID,
    "v": {"type": "integer", "minimum": 1, "maximum": VERSION},
    "kind": {"enum": list(KINDS)},
    "at": MOMENT,
    "run": _or_none(KEY),
    "load": _or_none(LOAD),
    "tray": _or_none(TRAY),
    "operation": _or_none(STEP),
    "revision": {"anyOf": [{"type": "null"}, COUNT]},
    "station": _or_none(KEY),
    "person": _or_none(KEY),
    "device": _or_none(DEVICE),
    "offset_ms": {"anyOf": [{"type": "null"}, {"type": "integer", "minimum": -(2**53), "maximum": 2**53}]},
    "seen": {"anyOf": [{"type": "null"}, {"type": "integer", "minimum": 0, "maximum": 2**53}]},
    "basis": {"enum": list(BASES)},
    "seq": COUNT | {"maximum": 2**53},
    "entered_by": _or_none(KEY),
    "body": {"type": "object"},
}

# What each subject's events must name in the envelope.
NEEDED: Mapping[str, tuple[str, ...]] = {
    "shop": (),
    "person": ("person",),
    "station": ("station",),
    "run": ("run",),
    "load": ("run", "load"),
    "tray": ("run", "tray"),
}
ALSO_NEEDED: Mapping[str, tuple[str, ...]] = {
    "pieces counted": ("operation",),
    "pieces held": ("operation",),
    "wait ended": ("operation",),
    "first piece checked": ("operation",),
    "first piece decided": ("operation",),
    "operation given": ("operation",),
    "shown how": ("station",),
    "span answered": ("run", "load"),
    "note written": (),
    "change adopted": ("run",),
    "change judged": ("run",),
}


def body_schema(kind: str) -> dict[str, Any]:
    """The JSON Schema of a kind's body."""
    known = KINDS[kind]
    return {
        "type": "object",
        "required": list(known.required),
        "properties": {**known.required, **known.optional},
        "additionalProperties": False,
    }


def needed(kind: str) -> tuple[str, ...]:
    """The envelope's fields that an event of this kind must fill."""
    return (*NEEDED[KINDS[kind].subject], *ALSO_NEEDED.get(kind, ()))


@cache
def _envelope_check() -> Callable[[Any], Any]:
    check: Callable[[Any], Any] = fastjsonschema.compile(
        {
            "type": "object",
            "required": ["id", "kind", "at"],
            "properties": ENVELOPE,
            "additionalProperties": False,
        }
    )
    return check


@cache
def _body_check(kind: str) -> Callable[[Any], Any]:
    check: Callable[[Any], Any] = fastjsonschema.compile(body_schema(kind))
    return check


def check_form(raw: Any) -> Event:
    """The event that a JSON record says; Refused 'form' with where and what where it is none, 'run too large' where it says
    more of a run than one may have."""
    try:
        _envelope_check()(raw)
        _body_check(raw["kind"])(raw.get("body") or {})
    except fastjsonschema.JsonSchemaValueException as error:
        raise Refused(
            "form", where=str(error.name).removeprefix("data").lstrip(".")[:120] or "event", what=_short(error)
        ) from None
    body = raw.get("body") or {}
    check_body(body, _product(body))
    for name in needed(raw["kind"]):
        if not raw.get(name):
            raise Refused("form", where=name, what=f"'{raw['kind']}' must name its {name}")
    for where, text in _moments(raw):
        moment = _read(text)
        if moment is None or (where != "at" and not EARLIEST < moment < LATEST):  # of 'at' the corrected one counts
            raise Refused("form", where=where, what="must be a moment with its zone, in ISO 8601")
    return _in_the_calendar(event_from_json(raw))


def _in_the_calendar(event: Event) -> Event:
    """The event, if its corrected moment is none that only a broken clock says; the phone's own may be any."""
    try:
        if EARLIEST < event.moment < LATEST:
            return event
    except OverflowError:
        pass
    raise Refused("form", where="at", what=f"must lie between {EARLIEST.year} and {LATEST.year}")


def _moments(raw: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    """Every moment that an event says, with where it stands: a date that no calendar has would stop the fold."""
    yield "at", raw["at"]
    known, body = KINDS[raw["kind"]], raw.get("body") or {}
    for name, shape in {**known.required, **known.optional}.items():
        if shape is MOMENT and name in body:
            yield f"body.{name}", body[name]
    for order in body.get("orders", ()):
        if order.get("due"):
            yield "body.orders.due", order["due"]


def _read(text: str) -> datetime | None:
    try:
        return parse_moment(text)
    except (ValueError, OverflowError):
        return None


def _product(body: Mapping[str, Any]) -> Product | None:
    """A product that cannot be read would make every fold of the log fail."""
    if "product" not in body:
        return None
    try:
        product = product_from_json(body["product"])
    except BookError as error:
        raise Refused("form", where="body.product", what=error.problems[0].sentence) from None
    if not product.operations:
        raise Refused("form", where="body.product", what="has no operation")
    return product


def _short(error: fastjsonschema.JsonSchemaValueException) -> str:
    if error.rule in ("pattern", "propertyNames") or (error.rule == "anyOf" and not str(error.name).endswith("due")):
        return "cannot be that: a key is letters, digits, points and dashes, and a name is one line"
    message = str(error.message)
    return message.removeprefix(str(error.name)).strip()[:200]
