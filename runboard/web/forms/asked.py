"""The fields by which a form asks for a record of the book, as its dataclass declares them (``shop/record``): name, kind,
choices, what an empty one stands for. What they are called stands in the catalogue (``en.forms.ftl``), and which of them stand
together in ``placed``; one that is named nowhere comes in the first part of its form, under its own name."""

import re
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from typing import Any

from runboard.shop import record as declared
from runboard.shop.book import STATION_KINDS, Book
from runboard.shop.care import SELDOM, SELDOM_HEAT
from runboard.shop.durations import format_duration
from runboard.shop.machines import Motion
from runboard.shop.record import to_json
from runboard.web.forms.field import Choices, Field, Kind, Section
from runboard.web.forms.placed import ELSEWHERE, HALF, PARTS, FormPart
from runboard.words.sentences import catalogue, message_name, sentence

Record = dict[str, Any]

_KINDS: Mapping[declared.Kind, Kind] = {
    "text": "text", "long": "long", "picture": "picture", "date": "date", "flag": "tick", "count": "count",
    "number": "number", "share": "percent", "length": "length", "minutes": "minutes", "wait": "minutes", "time": "time",
    "closing": "time", "texts": "lines", "keys": "several", "choices": "several", "choice": "choice", "key": "choice",
    "records": "rows", "pairs": "rows",
}  # fmt: skip
_PAIR = (Field("label", "What", hint="Program, cutter, zero …"), Field("text", "How", "long"))


def form_of(record: type, book: Record, key: str = "", own: Iterable[Field] = ()) -> list[Section]:
    """The form of a record of this kind, for what is in this book. ``key`` is that of the record itself, which is not among
    its own choices; ``own`` are fields of the form's own, or in place of one of the record's."""
    fields = {field.name: field for field in (*fields_for(record, book, key), *own)}
    parts = PARTS.get(record, (FormPart(),))
    placed = []
    for part in parts:
        named = [at for name in part.names.split() for at in fields if at == name or at.startswith(f"{name}.")]
        placed.append([fields.pop(name) for name in named])
    placed[0] += fields.values()
    return [Section(part.title, tuple(some), part.folded, part.note) for part, some in zip(parts, placed, strict=True)]


def fields_for(record: type, book: Record, key: str = "", within: str = "") -> Iterator[Field]:
    """The fields that ask for a record, their names after ``within``."""
    for name, field in declared.fields_of(record).items():
        if field.of.kind == "key" or name in ELSEWHERE.get(record, "").split():
            continue
        if field.kind == "by choice":  # a part of the form each, made where the choices are known
            continue
        if field.kind == "record":
            yield from fields_for(field.inner, book, within=f"{within}{name}.")
        elif field.kind == "counts":
            for thing, called in named(book, field.of.refers):
                label = f"{_label(record, name)}: {called}"
                yield Field(f"{within}{name}.{thing}", label, "count", empty=None)
        else:
            yield _field(record, field, book, key, within)


def _field(record: type, field: declared.RecordField, book: Record, key: str, within: str) -> Field:
    return Field(
        name=f"{within}{field.name}",
        label=_label(record, field.name),
        kind=_KINDS[field.kind],
        hint=_said(record, field.name, "hint"),
        choices=_choices(record, field, book, key),
        rows=_rows(field, book),
        empty=_empty(record, field),
        wrong=_said(record, field.name, "wrong"),
        one=_said(record, field.name, "one") or field.noun,
        ending=field.kind == "closing",
        half=field.name in HALF.get(record, "").split(),
    )


def _rows(field: declared.RecordField, book: Record) -> tuple[Field, ...]:
    if field.kind != "records":
        return _PAIR if field.kind == "pairs" else ()
    key = (Field("key", "", "kept"),) if "key" in declared.fields_of(field.inner) else ()
    return (*key, *fields_for(field.inner, book))


def _empty(record: type, field: declared.RecordField) -> Any:
    """What an empty input stands for: null where the field may be, a length's usual one, no time where none is usual, none used up
    a piece, nought where that is the default, of how a machine moves what is usual; else the empty text, which the book's reader
    refuses where there must be something."""
    if field.default is None:
        return None
    if record is Motion:
        return to_json(Motion())[field.name]
    if field.kind == "length" and field.default is not declared.REQUIRED:
        return field.default
    is_none = field.kind == ("number" if field.default is declared.REQUIRED else "minutes")
    is_nought = field.kind in ("count", "number", "length", "share") and field.default == 0
    return 0 if is_none or is_nought else ""


def _choices(record: type, field: declared.RecordField, book: Record, key: str) -> Choices:
    nothing = _said(record, field.name, "nothing")
    said = named(book, field.of.refers, key) if field.of.refers else ()
    words = tuple(
        (word, choice_word(record, field.name, word))
        for word in sorted(field.choices, key=lambda word: word != field.default)
    )
    return ((("", nothing),) if nothing else ()) + said + words


def named(book: Record, noun: str, but: str = "") -> Choices:
    """What the shop has of a kind of thing, by key and name, but the one with this key."""
    places = [name for name, of in declared.fields_of(Book).items() if of.kind == "records" and of.noun == noun]
    return tuple((thing["key"], thing["name"]) for name in places for thing in book[name] if thing["key"] != but)


def choice_word(record: type, name: str, word: str) -> str:
    """What a form calls a stored word."""
    return _said(record, name, word) or word


def _label(record: type, name: str) -> str:
    message = message_name("ask", f"{words_of(record)} {name}")
    plain = name.removesuffix("_minutes").replace("_", " ").capitalize()
    return sentence(message) if catalogue("en").has_message(message) else plain


@cache
def words_of(record: type) -> str:
    """'stock question' of StockQuestion."""
    return re.sub(r"(?<=[a-z])(?=[A-Z])", " ", record.__name__)


def _said(record: type, name: str, what: str) -> str:
    return sentence(message_name("ask", f"{words_of(record)} {name} {what}"), {"usual": _usual_watching()})


@cache
def _usual_watching() -> str:
    """'CNC router 10 min; laser 2 min; oven, heater 2 min. At what heats 5 min at most, elsewhere 30 min.'"""
    said = [
        f"{sentence(message_name('ask', f'station kind {key}')).partition(':')[0] or key} {format_duration(kind.watch_every)}"
        for key, kind in STATION_KINDS.items()
        if kind.watch_every is not None
    ]
    heat, other = format_duration(SELDOM_HEAT), format_duration(SELDOM)
    return f"{'; '.join(said)}. At what heats {heat} at most, elsewhere {other}."
