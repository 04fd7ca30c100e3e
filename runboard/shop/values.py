"""One value of a record, as JSON says it: read strictly, or ``Unreadable`` with what is wrong, all but the field's name."""

import json
import math
import re
from collections.abc import Callable, Mapping
from datetime import date, time, timedelta
from typing import Any

from runboard.shop.durations import OVERNIGHT, parse_duration
from runboard.shop.keys import is_key
from runboard.shop.problem import Unreadable
from runboard.shop.record import CLOCK, NAME_LENGTH, REQUIRED, TEXT_LENGTH, Kind, RecordField
from runboard.shop.units import Unit, parse_length

_MINUTE = timedelta(minutes=1)


def value_of(field: RecordField, value: Any, units: Unit = "mm") -> Any:
    """What a value says for a field, or as one of its list."""
    if field.kind == "length":
        value = parse_length(_short(value), units) if isinstance(value, str) else value
        return _number(field, value, "millimetres, as a number or a text such as '5 1/2 in'")
    return _READERS[field.kind](field, value)


def instead(field: RecordField) -> Any:
    """What is read on with where the value is wrong."""
    if field.kind == "choice":
        return field.choices[0] if field.default is REQUIRED else field.default
    return field.of.least if field.kind in ("count", "number") else _INSTEAD.get(field.kind)


def shown(value: object) -> str:
    """A JSON value as a sentence shows it, shortened."""
    said = json.dumps(value, ensure_ascii=True, default=str)
    return said if len(said) <= 40 else said[:37] + "..."


def text_of(value: Any, least: float = 1, most: float = TEXT_LENGTH) -> str:
    """A text that can be kept, of so many characters."""
    if not isinstance(value, str):
        raise Unreadable("wrong type", wanted="a text", found=shown(value))
    if len(value) < least:
        raise Unreadable("text empty")
    if len(value) > most:
        raise Unreadable("text too long", most=most, found=len(value))
    # No half of a surrogate pair and no null character: neither survives a database or a page.
    if "\0" in value or (not value.isascii() and any("\ud800" <= char <= "\udfff" for char in value)):
        raise Unreadable("not text")
    return value


def _text(field: RecordField, value: Any) -> str:
    return text_of(value, field.of.least, field.most)


def _date(field: RecordField, value: Any) -> str:
    said = _text(field, value)
    try:
        if not said or date.fromisoformat(said).isoformat() == said:
            return said
    except ValueError:
        pass
    raise Unreadable("wrong type", wanted="a date such as 2026-03-14", found=shown(said))


def _key(field: RecordField, value: Any) -> str:
    if not isinstance(value, str):
        raise Unreadable("wrong type", wanted="a text", found=shown(value))
    if not is_key(value):
        raise Unreadable("not a key", found=shown(value))
    return value


def _choice(field: RecordField, value: Any) -> str:
    if value not in field.choices:
        raise Unreadable("not a choice", found=shown(value), choices=", ".join(field.choices))
    return str(value)


def _flag(field: RecordField, value: Any) -> bool:
    if not isinstance(value, bool):
        raise Unreadable("wrong type", wanted="true or false", found=shown(value))
    return value


def _count(field: RecordField, value: Any) -> int:
    whole = int(value) if isinstance(value, float) and value.is_integer() else value
    if isinstance(whole, bool) or not isinstance(whole, int):
        raise Unreadable("wrong type", wanted="a whole number", found=shown(value))
    return int(_within(field, whole))


def _number(field: RecordField, value: Any, wanted: str = "a number") -> float:
    # NaN and infinity are no JSON, though Python's reader lets them in.
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        raise Unreadable("wrong type", wanted=wanted, found=shown(value))
    return float(_within(field, value))


def _within(field: RecordField, value: float) -> float:
    if value < field.of.least:
        raise Unreadable("too small", least=f"{field.of.least:g}", found=shown(value))
    if value > field.most:
        raise Unreadable("too large", most=f"{field.most:g}", found=shown(value))
    return value


def _minutes(field: RecordField, value: Any) -> timedelta:
    if not isinstance(value, str):
        return timedelta(minutes=_number(field, value, "minutes, as a number or a text such as '1h30'"))
    span = parse_duration(_short(value), OVERNIGHT if field.kind == "wait" else None)
    _within(field, span / _MINUTE)
    return span


def _short(text: str) -> str:
    if len(text) > NAME_LENGTH:
        raise Unreadable("text too long", most=NAME_LENGTH, found=len(text))
    return text


def _time(field: RecordField, value: Any) -> time:
    """A time of day. The end of a window may be 24:00, kept as 00:00."""
    if field.kind == "closing" and value == "24:00":
        return time(0)
    if not isinstance(value, str) or not re.fullmatch(CLOCK, value) or (field.kind == "closing" and value == "00:00"):
        raise Unreadable("not a time of day", found=shown(value))
    return time.fromisoformat(value)


def _pair(field: RecordField, value: Any) -> tuple[str, str]:
    if isinstance(value, list | tuple) and len(value) == 2 and all(isinstance(part, str) for part in value):
        return value[0], value[1]
    raise Unreadable("wrong type", wanted="a label and a text, in a list", found=shown(value))


_READERS: Mapping[Kind, Callable[[RecordField, Any], Any]] = {
    "text": _text, "long": _text, "picture": _text, "date": _date, "key": _key, "choice": _choice, "flag": _flag,
    "count": _count, "number": _number, "share": _number, "minutes": _minutes, "wait": _minutes, "time": _time, "closing": _time,
    "texts": lambda field, value: text_of(value), "keys": _key, "choices": _choice, "pairs": _pair, "counts": _count,
}  # fmt: skip
_INSTEAD: Mapping[Kind, Any] = {
    "text": "", "long": "", "picture": "", "date": "", "key": "", "flag": False,
    "minutes": timedelta(0), "wait": timedelta(0), "time": time(0), "closing": time(0), "records": (), "keys": (),
    "choices": (),
}  # fmt: skip
