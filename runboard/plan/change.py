"""Kinds of changes that can be tried: to the hours, to what is shared, to a run's route. Each goes to JSON and back, so that
it can be kept, stand in an event, and come with a file."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from datetime import date, datetime, time
from typing import Any, Literal, get_args

from runboard.run.log.event import parse_moment, write_moment
from runboard.run.refusal import Refused

MOST_CAPACITY = 99
MOST_PIECES = 1000
LEAST_PER_CENT, MOST_PER_CENT = 10, 1000
MOST_MINUTES = 10_000
MOST_TOGETHER = 6
LEAST_GOOD_RATE = 0.01
KINDS_OF_TIME = ("setup", "loading", "machine", "unloading", "hand")
_LONGEST_NAME, _MOST_SKILLS = 200, 50

Means = Literal["tool", "abrasive", "wood", "board", "hour"]


@dataclass(frozen=True)
class HoursAdded:
    """Somebody is in the shop on one day more, or longer: by the clock there, until 24:00 where ``closes`` is 00:00."""

    person: str
    day: date
    opens: time
    closes: time


@dataclass(frozen=True)
class OnePersonMore:
    """Somebody with the hours of ``like``, from a moment on."""

    like: str
    skills: tuple[str, ...] = ()
    start: datetime | None = None


@dataclass(frozen=True)
class Helper:
    """Somebody more whose hands are at one operation only: in the hours of ``like``, from a moment on, ``minutes`` in all."""

    run: str
    operation: str
    like: str
    minutes: int
    start: datetime | None = None


@dataclass(frozen=True)
class Capacity:
    """So many of a service at once."""

    service: str
    capacity: int


@dataclass(frozen=True)
class TraySize:
    """So many pieces a tray, in the trays on which nothing was begun."""

    run: str
    pieces: int


@dataclass(frozen=True)
class LoadSize:
    """At most so many pieces on a load of a step. Its machine time ``grows`` with them (a cutter's, a laser's), or stays as it
    is (an oven's)."""

    run: str
    step: str
    pieces: int
    grows: bool = True


@dataclass(frozen=True)
class Times:
    """A time element of an operation, or of one step of it ('sand:120'), or with ``kind`` '' each of them, takes ``per_cent`` of
    what it takes now."""

    run: str
    operation: str
    kind: str
    per_cent: int

    @property
    def kinds(self) -> tuple[str, ...]:
        """The kinds of the elements that it is about."""
        return (self.kind,) if self.kind else KINDS_OF_TIME


@dataclass(frozen=True)
class Instead:
    """Another tool, abrasive, wood or board at an operation, or another hour of the day: all its times take ``per_cent`` of what they
    take now, and its good rate is ``good_rate``; None where that stays. ``name`` is '' where nobody said which."""

    run: str
    operation: str
    means: Means
    name: str
    per_cent: int = 100
    good_rate: float | None = None


@dataclass(frozen=True)
class Rested:
    """The wait after an operation with a finish takes so many minutes by the route: no less than its label asks."""

    run: str
    operation: str
    minutes: int


@dataclass(frozen=True)
class Swapped:
    """Operation ``first`` and the one after it change places."""

    run: str
    first: str


@dataclass(frozen=True)
class OneVisit:
    """The hand work of the operation after ``first`` is done right after it, on the same load: no setup, no loading and no walk
    of its own."""

    run: str
    first: str


Single = (
    HoursAdded | OnePersonMore | Helper | Capacity | TraySize | LoadSize | Times | Instead | Rested | Swapped | OneVisit
)


@dataclass(frozen=True)
class Several:
    """Changes at the same time, made in this order."""

    changes: tuple[Single, ...]


Change = Single | Several

# The stored words: renaming a class renames none of them.
_WORDS: Mapping[str, type[Any]] = {
    "hours": HoursAdded,
    "person": OnePersonMore,
    "helper": Helper,
    "capacity": Capacity,
    "trays": TraySize,
    "load": LoadSize,
    "times": Times,
    "instead": Instead,
    "wait": Rested,
    "order": Swapped,
    "visit": OneVisit,
}
_WORD_OF = {kind: word for word, kind in _WORDS.items()}


def word_of(change: Change) -> str:
    """The stored word of a change's kind."""
    return "several" if isinstance(change, Several) else _WORD_OF[type(change)]


def singles(change: Change) -> tuple[Single, ...]:
    """The changes that a change is made of, in order."""
    return change.changes if isinstance(change, Several) else (change,)


def in_order(change: Change) -> list[Single]:
    """The same in the order in which they can be made: what changes the operations themselves comes last, since the others name
    them."""
    return sorted(singles(change), key=lambda single: isinstance(single, Swapped | OneVisit))


def services_in(change: Change) -> set[str]:
    """The services whose capacity is another with a change."""
    return {single.service for single in singles(change) if isinstance(single, Capacity)}


def several(*changes: Change) -> Change:
    """Changes together, each once; one alone is itself."""
    parts = tuple(dict.fromkeys(single for change in changes for single in singles(change)))
    return parts[0] if len(parts) == 1 else Several(parts)


def change_record(change: Change) -> dict[str, Any]:
    """The change as JSON: its word as ``what``, and its fields."""
    if isinstance(change, Several):
        return {"what": "several", "changes": [change_record(single) for single in change.changes]}
    return {"what": word_of(change), **{field.name: _written(getattr(change, field.name)) for field in fields(change)}}


def _written(value: Any) -> Any:
    if isinstance(value, datetime):
        return write_moment(value)
    if isinstance(value, time):
        return value.isoformat("minutes")
    if isinstance(value, date):
        return value.isoformat()
    return list(value) if isinstance(value, tuple) else value


def change_from_record(record: object) -> Change:
    """The change that a record says. Refused 'change wrong' with ``where``, the first field that is missing, unknown or out of
    bounds; nothing is taken for something near it."""
    what = record.get("what") if isinstance(record, Mapping) else None
    if not isinstance(record, Mapping) or not isinstance(what, str):
        raise Refused("change wrong", where="what")
    if what == "several":
        return _several(record)
    kind = _WORDS.get(what)
    if kind is None:
        raise Refused("change wrong", where="what")
    known = [field.name for field in fields(kind)]
    for name in (*known, *record):
        if name not in record or (name not in known and name != "what"):
            raise Refused("change wrong", where=str(name)[:80])
    made: Single = kind(**{name: _read(name, record[name]) for name in known})
    return made


def _several(record: Mapping[str, Any]) -> Several:
    some = record.get("changes")
    if set(record) != {"what", "changes"} or not isinstance(some, list) or not 2 <= len(some) <= MOST_TOGETHER:
        raise Refused("change wrong", where="changes")
    read = [change_from_record(one) for one in some]
    parts = tuple(one for one in read if not isinstance(one, Several))
    if len(parts) != len(some) or len(set(parts)) != len(parts):
        raise Refused("change wrong", where="changes")
    return Several(parts)


def _read(name: str, value: Any) -> Any:
    found = _value(name, value)
    if found is _WRONG:
        raise Refused("change wrong", where=name)
    return found


_WRONG = object()
_WHOLE: Mapping[str, tuple[int, int]] = {
    "capacity": (1, MOST_CAPACITY),
    "pieces": (1, MOST_PIECES),
    "per_cent": (LEAST_PER_CENT, MOST_PER_CENT),
    "minutes": (1, MOST_MINUTES),
}


def _value(name: str, value: Any) -> Any:
    """A field's value; ``_WRONG`` where it is none."""
    if name in _WHOLE:
        least, most = _WHOLE[name]
        return value if type(value) is int and least <= value <= most else _WRONG
    match name:
        case "grows":
            return value if isinstance(value, bool) else _WRONG
        case "good_rate":
            is_rate = type(value) in (int, float) and LEAST_GOOD_RATE <= value <= 1
            return None if value is None else float(value) if is_rate else _WRONG
        case "means":
            return value if value in get_args(Means) else _WRONG
        case "kind":
            return value if value in ("", *KINDS_OF_TIME) else _WRONG
        case "skills":
            is_list = isinstance(value, list) and len(value) <= _MOST_SKILLS and all(map(_is_name, value))
            return tuple(value) if is_list else _WRONG
        case "day" | "opens" | "closes" | "start":
            return None if name == "start" and value is None else _when(name, value)
    return value if _is_name(value) and (value or name == "name") else _WRONG


def _is_name(value: Any) -> bool:
    return isinstance(value, str) and len(value) <= _LONGEST_NAME and value.isprintable()


def _when(name: str, value: Any) -> Any:
    readers: Mapping[str, Any] = {"day": date.fromisoformat, "start": parse_moment}
    try:
        read = readers.get(name, time.fromisoformat)(value)
    except (TypeError, ValueError, OverflowError):
        return _WRONG
    # Only as it is written: a clock with seconds or a day of another calendar is no such field.
    return read if name == "start" or _written(read) == value else _WRONG
