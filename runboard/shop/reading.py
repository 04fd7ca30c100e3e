"""Reading a JSON record as its dataclass declares it, noting everything that is wrong instead of stopping at the first.

What no field can say alone (a tolerance needs its measure, a cutter is watched) are laws: one function for a dataclass.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from difflib import get_close_matches
from types import MappingProxyType
from typing import Any, TypeVar

from runboard.shop.keys import LONGEST
from runboard.shop.problem import RecordProblem, Unreadable
from runboard.shop.record import NAME_LENGTH, REQUIRED, Kind, RecordField, fields_of
from runboard.shop.units import Unit
from runboard.shop.values import instead, shown, value_of

# More than anybody reads: a file of nothing but faults is not told of in full.
MOST_PROBLEMS = 100
MOST_UNKNOWN = 5
MOST_LISTED = 5_000
_LONGEST_LIKE = 40

T = TypeVar("T")
Law = Callable[["Record", Any], None]
Things = Mapping[str, Any]


@dataclass
class Reading:
    """One reading: what is wrong so far, and what the shop has, by what one is called ('station') and by key. What is not
    there is not known: a run's snapshot is read without its shop, which may have changed since. ``at_the_end`` is asked once
    the whole shop is read."""

    laws: Mapping[type, Law]
    units: Unit = "mm"
    known: dict[str, Things] = field(default_factory=dict)
    problems: list[RecordProblem] = field(default_factory=list)
    at_the_end: list[Callable[[], None]] = field(default_factory=list)

    @property
    def is_full(self) -> bool:
        """Whether so much is wrong already that nothing more is noted."""
        return len(self.problems) > MOST_PROBLEMS


class Record:
    """One object of the file, with its fields as ``said``.

    ``path`` and ``place`` are put together only when something is wrong: reading a route is on the way of every fold.
    """

    __slots__ = ("_above", "_met", "_noun", "_part", "reading", "said")

    def __init__(
        self,
        said: Things,
        reading: Reading,
        above: "Record | None" = None,
        part: str = "",
        noun: str = "",
        met: set[object] | None = None,
    ) -> None:
        self.said, self.reading = said, reading
        self._above, self._part, self._noun = above, part, noun
        self._met = met  # in the records of its list before it

    # where we are

    @property
    def path(self) -> str:
        above = self._above.path if self._above else ""
        return f"{above}.{self._part}" if above else self._part

    @property
    def place(self) -> str:
        """ "product 'rail', operation 'sand'", or 'operations[2]' where the key itself is missing."""
        key = self.said.get("key") if self._noun else None
        mine = f"{self._noun} '{key[:LONGEST]}'" if isinstance(key, str) and key else self._part
        above = self._above.place if self._above else ""
        return ", ".join(part for part in (above, mine) if part)

    def wrong(self, code: str, at: str = "", /, **facts: Any) -> None:
        """Note a problem at the field ``at`` of this object; after a hundred, only that there are more."""
        problems = self.reading.problems
        if len(problems) < MOST_PROBLEMS:
            path = ".".join(part for part in (self.path, at) if part)
            problems.append(RecordProblem(path, self.place, code, {"field": at, **facts}))
        elif len(problems) == MOST_PROBLEMS:
            problems.append(RecordProblem("", "", "too many problems"))

    def is_new(self, what: object) -> bool:
        """Whether no record before it in its list was the same."""
        met = set() if self._met is None else self._met
        is_new = what not in met
        met.add(what)
        return is_new

    # the whole of it

    def read(self, record: type[T], besides: Iterable[str] = ()) -> T:
        """The dataclass that this object says, read on where something is wrong. ``besides`` are fields that somebody else
        reads."""
        known = fields_of(record)
        if not known.keys() >= self.said.keys():
            self.only((*known, *besides))
        found = record(**{field.attribute: self.take(field) for field in known.values()})
        law = self.reading.laws.get(record)
        if law is not None:
            law(self, found)
        return found

    def inside(self, said: object, part: str, noun: str = "", met: set[object] | None = None) -> "Record | None":
        """An object within this one, or ``None`` (noted) where it is no object."""
        if isinstance(said, Mapping):
            return Record(said, self.reading, self, part, noun, met)
        self.wrong("not an object", part, what=f"'{part}'", found=shown(said))
        return None

    def only(self, known: Sequence[str]) -> None:
        """Note the first fields that nobody knows, and how many more there are."""
        unknown = [str(name) for name in self.said if name not in known]
        for name in unknown[:MOST_UNKNOWN]:
            # Looking for what is like a long name takes long.
            near = get_close_matches(name, known, 1) if len(name) <= _LONGEST_LIKE else []
            hint = f" Did you mean '{near[0]}'?" if near else ""
            self.wrong("unknown field", name[:NAME_LENGTH], hint=hint, fields=", ".join(sorted(known)))
        if len(unknown) > MOST_UNKNOWN:
            self.wrong("unknown fields", found=f"{len(unknown) - MOST_UNKNOWN:,}")

    def refer(self, at: str, key: str, noun: str) -> None:
        """Note a key that names nothing the shop has, once it is known what it has."""
        known = self.reading.known.get(noun)
        if known is None:
            self.reading.at_the_end.append(lambda: self._refer(at, key, noun))
        elif key not in known:
            self._refer(at, key, noun)

    def _refer(self, at: str, key: str, noun: str) -> None:
        known = self.reading.known.get(noun, {})
        if key not in known:
            nouns, keys = f"{noun}es" if noun.endswith("sh") else f"{noun}s", ", ".join(known)
            these = f"{nouns.capitalize()} are: {keys}." if keys else f"There are no {nouns} yet."
            self.wrong("unknown reference", at, noun=noun, key=key, these=these)

    # a field

    def take(self, field: RecordField) -> Any:
        """What a field says, or what is read on with."""
        value = self.said.get(field.name, field.default)
        if value is REQUIRED:
            self.wrong("missing field", field.name)
            return instead(field)
        if value is field.default:
            return value
        if field.kind in _WITHIN:
            return _WITHIN[field.kind](self, field, value)
        found = self.value(field, value, field.name)
        if field.of.refers and found:
            self.refer(field.name, found, field.of.refers)
        return instead(field) if found is None else found

    def value(self, field: RecordField, value: Any, at: str) -> Any:
        """What one value says; ``None`` (noted) where it is wrong."""
        try:
            return value_of(field, value, self.reading.units)
        except Unreadable as unreadable:
            self.wrong(unreadable.code, at, **unreadable.facts)
            return None

    def _entries(self, field: RecordField, value: Any) -> Sequence[Any]:
        """The values of a list; none where it is no list, or one far too long."""
        if not isinstance(value, list | tuple):
            self.wrong("wrong type", field.name, wanted="a list", found=shown(value))
        elif len(value) > MOST_LISTED:
            self.wrong("list too long", field.name, most=f"{MOST_LISTED:,}", found=f"{len(value):,}")
        elif field.most and len(value) != field.most:
            self.wrong("wrong type", field.name, wanted=f"a list of two {field.name}", found=f"{len(value)}")
        else:
            if len(value) < field.of.least:
                self.wrong("list too short", field.name, least=f"{field.of.least:g} {field.noun}")
            return value
        return ()

    def _several(self, field: RecordField, value: Any) -> tuple[Any, ...]:
        found: list[Any] = []
        for number, entry in enumerate(self._entries(field, value)):
            read = self.value(field, entry, f"{field.name}[{number}]")
            if read is None:
                continue
            if field.kind in ("keys", "choices") and read in found:
                self.wrong("listed twice", field.name, found=shown(read))
            if field.of.refers:
                self.refer(field.name, read, field.of.refers)
            found.append(read)
        return tuple(found)

    def _record(self, field: RecordField, value: Any) -> Any:
        inside = self.inside(value, field.name)
        return inside.read(field.inner) if inside else None

    def _records(self, field: RecordField, value: Any) -> Any:
        met: set[object] = set()
        found: list[Any] = []
        for number, entry in enumerate(self._entries(field, value)):
            inside = self.inside(entry, f"{field.name}[{number}]", field.noun, met)
            if inside is not None:
                found.append(inside.read(field.inner))
                key = getattr(found[-1], "key", "")
                if key and not inside.is_new(key):
                    inside.wrong("key used twice", "key", key=key, field=field.name)
            if self.reading.is_full:
                break
        if self._above is None:  # what the shop has, for whatever names it
            self.reading.known[field.noun] = {each.key: each for each in found if getattr(each, "key", "")}
        return field.of.unpack(found)

    def _by_choice(self, field: RecordField, value: Any) -> Mapping[str, Any]:
        inside = self.inside(value, field.name)
        if inside is None:
            return MappingProxyType({})
        inside.only(field.choices)
        within = {
            choice: inside.inside(inside.said[choice], choice) for choice in field.choices if choice in inside.said
        }
        return MappingProxyType({choice: each.read(field.inner) for choice, each in within.items() if each})

    def _counts(self, field: RecordField, value: Any) -> Mapping[str, int]:
        inside, found = self.inside(value, field.name), dict[str, int]()
        if inside is not None:
            for key in inside.said:
                if self.reading.is_full:
                    break
                inside.refer(key, key, field.of.refers)
                found[key] = inside.value(field, inside.said[key], key) or 1
        return MappingProxyType(found)


_WITHIN: Mapping[Kind, Callable[[Record, RecordField, Any], Any]] = {
    "texts": Record._several, "keys": Record._several, "choices": Record._several, "pairs": Record._several,
    "record": Record._record, "records": Record._records, "by choice": Record._by_choice, "counts": Record._counts,
}  # fmt: skip
