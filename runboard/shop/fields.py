"""Reading the fields of one JSON object, noting everything that is wrong instead of stopping at the first."""

import json
import math
from collections.abc import Collection, Iterator, Mapping
from datetime import timedelta
from difflib import get_close_matches
from typing import Any, cast

from runboard.shop.durations import parse_duration
from runboard.shop.keys import LONGEST, is_key
from runboard.shop.problem import Problem, Unreadable
from runboard.shop.units import Unit, parse_length

NAME_LENGTH = 200
TEXT_LENGTH = 2000
MOST_MINUTES = 100_000
MOST_COUNT = 100_000
MOST_NUMBER = 1_000_000.0
# More than anybody reads: a file of nothing but faults is not told of in full.
MOST_PROBLEMS = 100
MOST_UNKNOWN = 5
MOST_LISTED = 5_000
_LONGEST_LIKE = 40

_REQUIRED: Any = object()
_ABSENT: Any = object()


def shown(value: object) -> str:
    """A JSON value as a sentence shows it, shortened."""
    said = json.dumps(value, ensure_ascii=True, default=str)
    return said if len(said) <= 40 else said[:37] + "..."


class Fields:
    """One object of the file. Each method takes a field out, or notes a problem and answers the default.

    ``path`` and ``place`` are put together only when something is wrong: reading a route is on the way of every fold.
    """

    __slots__ = ("_above", "_noun", "_part", "problems", "record", "units")

    def __init__(self, record: Mapping[str, Any], problems: list[Problem], units: Unit = "mm") -> None:
        self.record, self.problems, self.units = record, problems, units
        self._above: Fields | None = None
        self._part = ""
        self._noun = ""

    # where we are

    @property
    def path(self) -> str:
        above = self._above.path if self._above else ""
        return f"{above}.{self._part}" if above else self._part

    @property
    def place(self) -> str:
        """ "product 'rail', operation 'sand'", or 'operations[2]' where the key itself is missing."""
        key = self.record.get("key") if self._noun else None
        mine = f"{self._noun} '{key[:LONGEST]}'" if isinstance(key, str) and key else self._part
        above = self._above.place if self._above else ""
        return ", ".join(part for part in (above, mine) if part)

    @property
    def is_full(self) -> bool:
        """Whether so much is wrong already that nothing more is noted."""
        return len(self.problems) > MOST_PROBLEMS

    def wrong(self, code: str, at: str = "", /, **facts: Any) -> None:
        """Note a problem at the field ``at`` of this object; after a hundred, only that there are more."""
        if len(self.problems) < MOST_PROBLEMS:
            self.problems.append(Problem(self._path_of(at), self.place, code, {"field": at, **facts}))
        elif len(self.problems) == MOST_PROBLEMS:
            self.problems.append(Problem("", "", "too many problems"))

    def _path_of(self, field: str) -> str:
        path = self.path
        return f"{path}.{field}" if path and field else path or field

    # one value each

    def take(self, field: str, default: Any = _REQUIRED) -> Any:
        value = self.record.get(field, _ABSENT)
        if value is not _ABSENT:
            return value
        if default is _REQUIRED:
            self.wrong("missing field", field)
        return _ABSENT

    def text(self, field: str, default: Any = _REQUIRED, *, least: int = 0, most: int = TEXT_LENGTH) -> Any:
        """A text of ``least`` to ``most`` characters; null only where the default is ``None``."""
        value = self.take(field, default)
        if value is _ABSENT or (value is None and default is None):
            return "" if default is _REQUIRED else default
        return value if self._is_text(field, value, least, most) else ""

    def _is_text(self, field: str, value: object, least: int, most: int) -> bool:
        if not isinstance(value, str):
            self.wrong("wrong type", field, wanted="a text", found=shown(value))
        elif len(value) < least:
            self.wrong("text empty", field)
        elif len(value) > most:
            self.wrong("text too long", field, most=most, found=len(value))
        elif not _can_be_stored(value):
            self.wrong("not text", field)
        else:
            return True
        return False

    def name(self) -> str:
        return str(self.text("name", least=1, most=NAME_LENGTH))

    def key(self, field: str = "key") -> str:
        """A well-formed key, or ``''``."""
        value = self.take(field)
        if value is _ABSENT or self._is_key(field, value):
            return "" if value is _ABSENT else cast(str, value)
        return ""

    def _is_key(self, field: str, value: object) -> bool:
        if not isinstance(value, str):
            self.wrong("wrong type", field, wanted="a text", found=shown(value))
        elif not is_key(value):
            self.wrong("not a key", field, found=shown(value))
        else:
            return True
        return False

    def choice(self, field: str, choices: Collection[str], default: Any = _REQUIRED) -> Any:
        """One of ``choices``; where it is none, the default or the first."""
        value = self.take(field, default)
        if isinstance(value, str) and value in choices:
            return value
        if value is not _ABSENT:
            self.wrong("not a choice", field, found=shown(value), choices=", ".join(choices))
        return next(iter(choices)) if default is _REQUIRED else default

    def flag(self, field: str, default: bool) -> bool:
        value = self.take(field, default)
        if value is _ABSENT:
            return default
        if not isinstance(value, bool):
            self.wrong("wrong type", field, wanted="true or false", found=shown(value))
        return value is True

    def count(self, field: str, default: Any = _REQUIRED, *, least: int = 0, most: int = MOST_COUNT) -> Any:
        """A whole number; null only where the default is ``None``."""
        value = self.take(field, default)
        if value is _ABSENT or (value is None and default is None):
            return least if default is _REQUIRED else default
        if isinstance(value, float) and value.is_integer():
            value = int(value)
        if isinstance(value, bool) or not isinstance(value, int):
            self.wrong("wrong type", field, wanted="a whole number", found=shown(value))
            return least
        return value if self._is_within(field, value, least, most) else least

    def number(self, field: str, default: Any = _REQUIRED, *, least: float = 0, most: float = MOST_NUMBER) -> Any:
        """A number; null only where the default is ``None``."""
        value = self.take(field, default)
        if value is _ABSENT or (value is None and default is None):
            return least if default is _REQUIRED else default
        if not self._is_number(field, value, "a number") or not self._is_within(field, value, least, most):
            return least
        return float(value)

    def _is_number(self, field: str, value: object, wanted: str) -> bool:
        # NaN and infinity are no JSON, though Python's reader lets them in.
        if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
            self.wrong("wrong type", field, wanted=wanted, found=shown(value))
            return False
        return True

    def _is_within(self, field: str, value: float, least: float, most: float) -> bool:
        if value < least:
            self.wrong("too small", field, least=f"{least:g}", found=shown(value))
        elif value > most:
            self.wrong("too large", field, most=f"{most:g}", found=shown(value))
        else:
            return True
        return False

    def minutes(
        self, field: str, default: Any = _REQUIRED, overnight: timedelta | None = None, *, least: float = 0
    ) -> Any:
        """A span of at least so many minutes: minutes as a number, or a text such as '1h30'."""
        value = self.take(field, default)
        if value is _ABSENT or (value is None and default is None):
            return timedelta(0) if default is _REQUIRED else default
        if isinstance(value, str):
            read = self._read(field, value, lambda text: parse_duration(text, overnight), timedelta(minutes=least))
            return read if self._is_within(field, read / timedelta(minutes=1), least, MOST_MINUTES) else timedelta(0)
        wanted = "minutes, as a number or a text such as '1h30'"
        if not self._is_number(field, value, wanted) or not self._is_within(field, value, least, MOST_MINUTES):
            return timedelta(0)
        return timedelta(minutes=value)

    def length(self, field: str) -> float | None:
        """Millimetres: a number, or a text such as '5 1/2 in'; null where there is none."""
        value = self.take(field, None)
        if value is _ABSENT or value is None:
            return None
        if isinstance(value, str):
            value = self._read(field, value, lambda text: parse_length(text, self.units), 0.0)
        wanted = "millimetres, as a number or a text such as '5 1/2 in'"
        if not self._is_number(field, value, wanted) or not self._is_within(field, value, 0, MOST_NUMBER):
            return None
        return float(value)

    def _read(self, field: str, text: str, read: Any, default: Any) -> Any:
        if len(text) > NAME_LENGTH:
            self.wrong("text too long", field, most=NAME_LENGTH, found=len(text))
            return default
        try:
            return read(text)
        except Unreadable as unreadable:
            self.wrong(unreadable.code, field, **unreadable.facts)
            return default

    # several

    def items(self, field: str, *, required: bool = False, least: int = 0, of: str = "") -> list[Any]:
        """The list at ``field``, as it stands; empty where there is none."""
        value = self.take(field, _REQUIRED if required else ())
        if value is _ABSENT:
            return []
        if not isinstance(value, list | tuple):
            self.wrong("wrong type", field, wanted="a list", found=shown(value))
            return []
        if len(value) < least:
            self.wrong("list too short", field, least=f"{least} {of}".strip())
        if len(value) > MOST_LISTED:
            self.wrong("list too long", field, most=f"{MOST_LISTED:,}", found=f"{len(value):,}")
            return []
        return list(value)

    def texts(self, field: str) -> tuple[str, ...]:
        """A list of texts that are not empty."""
        if field not in self.record:
            return ()
        return tuple(
            value
            for at, value in enumerate(self.items(field))
            if self._is_text(f"{field}[{at}]", value, 1, TEXT_LENGTH)
        )

    def keys(self, field: str) -> tuple[str, ...]:
        """A list of keys, each once."""
        if field not in self.record:
            return ()
        found: list[str] = []
        for at, value in enumerate(self.items(field)):
            if self._is_key(f"{field}[{at}]", value):
                if value in found:
                    self.wrong("listed twice", field, found=shown(value))
                found.append(value)
        return tuple(found)

    def each(self, field: str, noun: str, *, required: bool = False, least: int = 0) -> Iterator["Fields"]:
        """The objects of the list at ``field``, as readers of their own; what is no object is noted and passed over."""
        for at, record in enumerate(self.items(field, required=required, least=least, of=noun)):
            inside = self.inside(record, f"{field}[{at}]", noun)
            if inside is not None:
                yield inside
            if self.is_full:
                return

    def inside(self, record: object, part: str, noun: str = "") -> "Fields | None":
        """A reader for an object within this one, or ``None`` (noted) where it is no object."""
        if not isinstance(record, Mapping):
            self.wrong("not an object", part, what=f"'{part}'", found=shown(record))
            return None
        inside = Fields(record, self.problems, self.units)
        inside._above, inside._part, inside._noun = self, part, noun
        return inside

    def only(self, known: frozenset[str]) -> None:
        """Note the first fields that nobody knows, and how many more there are."""
        if known.issuperset(self.record):
            return
        unknown = [str(field) for field in self.record if field not in known]
        for field in unknown[:MOST_UNKNOWN]:
            hint = f" Did you mean '{near}'?" if (near := _alike(field, known)) else ""
            self.wrong("unknown field", field[:NAME_LENGTH], hint=hint, fields=", ".join(sorted(known)))
        if len(unknown) > MOST_UNKNOWN:
            self.wrong("unknown fields", found=f"{len(unknown) - MOST_UNKNOWN:,}")


def _alike(field: str, known: frozenset[str]) -> str:
    """A known field whose name is much like this one: looking for it in a long name takes long."""
    near = get_close_matches(field, known, 1) if len(field) <= _LONGEST_LIKE else []
    return near[0] if near else ""


def _can_be_stored(text: str) -> bool:
    """No half of a surrogate pair and no null character: neither survives a database or a page."""
    return (text.isascii() and "\0" not in text) or not any(
        char == "\0" or "\ud800" <= char <= "\udfff" for char in text
    )
