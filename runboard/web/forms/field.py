"""The fields of a form: how each shows a value of the record as text, and reads the text back."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Any, Literal

from runboard.shop.durations import format_duration
from runboard.shop.numbers import any_number
from runboard.shop.units import Unit, format_length, parse_length

Kind = Literal[
    "text", "long", "lines", "count", "number", "percent", "minutes", "length", "time", "date", "tick", "choice",
    "several", "rows", "kept", "picture",
]  # fmt: skip
Choices = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Field:
    """One field. ``empty`` is what a text left empty stands for in the record; ``wrong`` a sentence of the form's own
    for whatever is wrong there; ``rows`` the fields of each row; ``ending`` marks a time of day that may be 24:00;
    ``half`` puts a short one beside the next in its row; ``beside`` are lines that those written here say again, one by one."""

    name: str
    label: str
    kind: Kind = "text"
    hint: str = ""
    choices: Choices = ()
    rows: tuple["Field", ...] = ()
    empty: Any = ""
    wrong: str = ""
    one: str = ""
    ending: bool = False
    half: bool = False
    beside: tuple[str, ...] = ()


@dataclass(frozen=True)
class Section:
    """Fields under a heading; ``folded`` ones open by a press, and by themselves where something is wrong. ``note`` is
    said before them."""

    title: str
    fields: tuple[Field, ...]
    folded: bool = False
    note: str = ""


def to_texts(field: Field, value: Any, units: Unit) -> list[str]:
    """A value of the record as the texts of its input, such as a browser would post."""
    if value is None or value == "":
        return []
    match field.kind:
        case "tick":
            return ["yes"] if value else []
        case "several":
            return [str(line) for line in value]
        case "lines":
            return ["\n".join(value)]
        case "minutes" if not isinstance(value, str):
            return [format_duration(timedelta(minutes=value))]
        case "length" if not isinstance(value, str):
            return [length_text(value, units)]
        case "percent":
            return [_plain(round(value * 100, 6))]
        case "time" if field.ending and value == "24:00":
            return ["00:00"]
        case "count" | "number":
            return [_plain(value)]
    return [str(value)]


def length_text(mm: float, units: Unit) -> str:
    """A length in the shop's units where they say it exactly, else in millimetres: saving a form unread changes nothing."""
    for text in (format_length(mm, units), format_length(mm, "mm")):
        if abs(parse_length(text, units) - mm) < 1e-6:
            return text
    return f"{mm!r} mm"


def _plain(value: Any) -> str:
    return (
        f"{value:g}" if isinstance(value, float) and abs(value) < 1e6 and float(f"{value:g}") == value else str(value)
    )


def from_texts(field: Field, texts: Sequence[str]) -> Any:
    """The value that a posted input says. What is no number stays text, for the validator to say so."""
    text = texts[0].strip() if texts else ""
    if field.kind == "tick":
        return bool(texts)
    if field.kind == "several":
        return list(texts)
    if field.kind == "lines" and field.beside:
        return _line_by_line(texts[0] if texts else "", field.beside)
    if field.kind == "lines":
        return [line.strip() for line in text.splitlines() if line.strip()]
    if not text:
        return field.empty
    if field.kind in ("count", "number", "percent"):
        return _number(text, field.kind)
    if field.kind == "time" and field.ending and text == "00:00":
        return "24:00"
    return text.replace("\r\n", "\n")


def _line_by_line(text: str, beside: Sequence[str]) -> list[str]:
    """The lines, each in its place; one left empty between others says what stands beside it."""
    lines = [line.strip() for line in text.splitlines()]
    while lines and not lines[-1]:
        lines.pop()
    original = dict(enumerate(beside))
    return [line or original.get(at, "") or "–" for at, line in enumerate(lines)]


_NUMBER_SIGN = re.compile(r"^(?:#|n[or]\.)\s*", re.IGNORECASE)


def _number(text: str, kind: str) -> Any:
    """A count may be written as on a packet: '#6', 'No. 6'."""
    number = any_number(_NUMBER_SIGN.sub("", text, count=1) if kind == "count" else text)
    if number is None:
        return text
    if kind == "percent":
        number = round(number / 100, 8)
    return int(number) if number.is_integer() and abs(number) < 1e15 else number
