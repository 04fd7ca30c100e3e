"""What the fields of a record are, read once off the dataclass that declares them: reading, writing, the JSON Schema and the
forms all follow from here.

The type of an attribute says its kind (a span is minutes, a ``Literal`` a choice, a tuple of a dataclass a list of records),
its default what holds where the field is missing (``None``: it may be null), and ``Of`` what neither can say. What does not
count when two are compared is no part of the record.
"""

import dataclasses
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import time, timedelta
from types import NoneType
from typing import Annotated, Any, Literal, get_args, get_origin, get_type_hints

from runboard.shop.durations import minutes_of
from runboard.shop.keys import KEY_PATTERN

Kind = Literal[
    "text", "long", "picture", "date", "key", "choice", "flag", "count", "number", "share", "length", "minutes", "wait",
    "time", "closing", "texts", "keys", "choices", "pairs", "counts", "record", "records", "by choice",
]  # fmt: skip

REQUIRED: Any = object()
CLOCK = r"(?:[01]\d|2[0-3]):[0-5]\d"
DATE = r"^$|^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$"
NAME_LENGTH = 200
TEXT_LENGTH = 2000
MOST_COUNT = 100_000
MOST_NUMBER = 1_000_000.0
_MOST: Mapping[Kind, float] = {
    "text": TEXT_LENGTH, "long": TEXT_LENGTH, "picture": TEXT_LENGTH, "date": NAME_LENGTH, "count": MOST_COUNT,
    "counts": MOST_COUNT, "number": MOST_NUMBER, "length": MOST_NUMBER, "share": 1, "minutes": 100_000, "wait": 100_000,
}  # fmt: skip
_PLAIN: Mapping[Any, Kind] = {
    str: "text", bool: "flag", int: "count", float: "number", timedelta: "minutes", time: "time",
}  # fmt: skip


@dataclass(frozen=True)
class Of:
    """What a type leaves open. ``says`` describes the field in the schema; ``least`` and ``most`` bound a text's characters, a
    number, a list's entries; ``refers`` is what a key names ('station'); ``choices`` are all that a text may be; ``named`` is
    its name in the record where that is another; ``last`` is written after the others. ``listed`` is the dataclass of the
    records in which a value is written down: ``pack`` makes them of it, ``unpack`` it of them."""

    says: str = ""
    least: float = 0
    most: float = 0
    kind: Kind | None = None
    refers: str = ""
    choices: tuple[str, ...] = ()
    named: str = ""
    last: bool = False
    listed: type | None = None
    pack: Callable[[Any], Iterable[Any]] = tuple
    unpack: Callable[[Iterable[Any]], Any] = tuple


# What several records hold.
Key = Annotated[str, Of(kind="key")]
Name = Annotated[str, Of(least=1, most=NAME_LENGTH)]
Line = Annotated[str, Of(least=1)]
Picture = Annotated[str, Of("A picture's name in the data folder.", kind="picture")]
Length = Annotated[float, Of(kind="length")]
Interval = Annotated[timedelta, Of(least=0.5)]


@dataclass(frozen=True)
class RecordField:
    """One field of a record: its ``name`` there, the ``attribute`` that it becomes; ``inner`` is the dataclass of the records
    within."""

    attribute: str
    name: str
    kind: Kind
    default: Any
    of: Of
    most: float
    choices: tuple[str, ...] = ()
    inner: type = object

    @property
    def noun(self) -> str:
        """What one entry of its list is called."""
        return self.inner.__name__.lower() if self.kind == "records" else self.name.removesuffix("s")


def fields_of(record: type) -> Mapping[str, RecordField]:
    """The fields of a dataclass's record by name, in the order in which they are written."""
    if record not in _KNOWN:
        hints = get_type_hints(record, include_extras=True)
        found = [
            _field(field, *_taken_apart(hints[field.name])) for field in dataclasses.fields(record) if field.compare
        ]
        _KNOWN[record] = {field.name: field for field in sorted(found, key=lambda field: field.of.last)}
    return _KNOWN[record]


_KNOWN: dict[type, Mapping[str, RecordField]] = {}


def _field(attribute: Any, plain: Any, of: Of) -> RecordField:
    kind, choices, inner = _kind(plain, of)
    default = attribute.default
    if attribute.default_factory is not dataclasses.MISSING:
        default = attribute.default_factory()
    in_minutes = kind in ("minutes", "wait") and attribute.name != "minutes"
    name = of.named or attribute.name + "_minutes" * in_minutes
    default = REQUIRED if default is dataclasses.MISSING else default
    return RecordField(attribute.name, name, kind, default, of, of.most or _MOST.get(kind, 0), choices, inner)


def _taken_apart(hint: Any) -> tuple[Any, Of]:
    """The type that is no ``None``, and all that is said beside it: what stands further out wins."""
    said: dict[str, Any] = {}
    while True:
        within = [arg for arg in get_args(hint) if arg is not NoneType]
        if get_origin(hint) is Annotated:
            marks = [of for of in reversed(hint.__metadata__) if isinstance(of, Of)]
            for name, value in ((name, value) for of in marks for name, value in vars(of).items()):
                if value != getattr(Of, name):
                    said.setdefault(name, value)
        elif NoneType not in get_args(hint):
            return hint, Of(**said)
        hint = within[0]


def _kind(plain: Any, of: Of) -> tuple[Kind, tuple[str, ...], type]:
    """(kind, choices, dataclass of the records within) of a type."""
    origin, within = get_origin(plain), get_args(plain)
    if of.listed is not None:
        return "records", (), of.listed
    if origin is Mapping:
        return ("counts", (), object) if within[1] is int else ("by choice", of.choices, within[1])
    if origin is Literal or of.choices:
        return "choice", within or of.choices, object
    if origin is tuple:
        kind, choices, inner = _kind(within[0], Of(refers=of.refers))
        several: Mapping[Kind, Kind] = {"text": "texts", "key": "keys", "choice": "choices", "record": "records"}
        return several.get(kind, "pairs"), choices, inner
    if plain in _PLAIN:
        return of.kind or ("key" if of.refers else _PLAIN[plain]), (), object
    return "record", (), plain


def to_json(thing: Any) -> dict[str, Any]:
    """The record of a dataclass, every field written out; ``reading`` makes the same of it again."""
    found = {}
    for name, field in fields_of(type(thing)).items():
        value = getattr(thing, field.attribute)
        found[name] = value if value is None or field.kind not in _WRITERS else _WRITERS[field.kind](field, value)
    return found


_WRITERS: Mapping[Kind, Callable[[RecordField, Any], Any]] = {
    "minutes": lambda field, span: minutes_of(span),
    "wait": lambda field, span: minutes_of(span),
    "time": lambda field, clock: f"{clock:%H:%M}",
    "closing": lambda field, clock: "24:00" if clock == time(0) else f"{clock:%H:%M}",
    "texts": lambda field, texts: list(texts),
    "keys": lambda field, keys: list(keys),
    "choices": lambda field, choices: list(choices),
    "pairs": lambda field, pairs: [list(pair) for pair in pairs],
    "counts": lambda field, counts: dict(counts),
    "record": lambda field, record: to_json(record),
    "records": lambda field, records: [to_json(each) for each in field.of.pack(records)],
    "by choice": lambda field, records: {key: to_json(each) for key, each in records.items()},
}


def schema_of(record: type, records: dict[str, Any]) -> dict[str, Any]:
    """The JSON Schema of a dataclass's record; those within it are put into ``records`` and referred to."""
    fields = fields_of(record)
    return {
        "description": " ".join(str(record.__doc__).split()),
        "type": "object",
        "required": [name for name, field in fields.items() if field.default is REQUIRED],
        "additionalProperties": False,
        "properties": {name: _described(field, records) for name, field in fields.items()},
    }


def _described(field: RecordField, records: dict[str, Any]) -> dict[str, Any]:
    if field.inner is not object and field.inner.__name__.lower() not in records:
        records[field.inner.__name__.lower()] = {}  # a record may hold its like
        records[field.inner.__name__.lower()] = schema_of(field.inner, records)
    shape = _shape(field)
    if field.default is None:
        shape = {"anyOf": [shape, {"type": "null"}]}
    return {"description": field.of.says, **shape} if field.of.says else shape


def _shape(field: RecordField) -> dict[str, Any]:
    inner = {"$ref": f"#/$defs/{field.inner.__name__.lower()}"}
    number = {"type": "number", "minimum": field.of.least, "maximum": field.most}
    text = {"type": "string", "minLength": field.of.least, "maxLength": field.most}
    shapes: Mapping[Kind, dict[str, Any]] = {
        "date": text | {"pattern": DATE},
        "key": {"type": "string", "pattern": KEY_PATTERN},
        "choice": {"enum": list(field.choices)},
        "flag": {"type": "boolean"},
        "count": number | {"type": "integer"},
        "number": number,
        "share": number,
        "time": {"type": "string", "pattern": f"^{CLOCK}$"},
        "closing": {"type": "string", "pattern": f"^(?:{CLOCK}|24:00)$", "not": {"const": "00:00"}},
        "counts": {"type": "object", "additionalProperties": number | {"type": "integer"}},
        "record": inner,
        "by choice": {
            "type": "object",
            "additionalProperties": False,
            "properties": dict.fromkeys(field.choices, inner),
        },
    }
    if field.kind in ("minutes", "wait", "length"):
        return {"anyOf": [number, {"type": "string", "maxLength": NAME_LENGTH}]}
    entries: Mapping[Kind, dict[str, Any]] = {
        "records": inner,
        "texts": {"type": "string", "minLength": 1, "maxLength": TEXT_LENGTH},
        "keys": shapes["key"],
        "choices": shapes["choice"],
        "pairs": {"type": "array", "items": {"type": "string"}, "minItems": 2, "maxItems": 2},
    }
    if field.kind not in entries:
        return shapes.get(field.kind, text)
    bounds = {"minItems": field.of.least, "maxItems": field.most, "uniqueItems": field.kind in ("keys", "choices")}
    return {"type": "array", "items": entries[field.kind], **{name: bound for name, bound in bounds.items() if bound}}
