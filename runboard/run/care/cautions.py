"""The cautions: which belong beside an operation, and what is ticked before its machine starts.

They are data with a source, in ``cautions.json``; the text of each is the message ``care-<key>`` of the catalogues
``static/words/<language>.care.ftl``. Their order in the file is their order on screen and card: what can hurt most
comes first. All of them defer to the machine's manual and the local codes.
"""

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from importlib.resources import files
from types import MappingProxyType
from typing import Any, Literal

from runboard.run.care.care import finished_before
from runboard.run.fold.route import Route, Step
from runboard.shop.book import STATION_KINDS, Book
from runboard.shop.care import finish_of
from runboard.shop.finish import plain_words
from runboard.shop.product import Operation

CautionKind = Literal["caution", "start", "reminder", "answer", "note"]
Basis = Literal["standard", "law", "published", "common practice, no source"]
NO_SOURCE: Basis = "common practice, no source"


@dataclass(frozen=True)
class Caution:
    """One entry. ``read`` says whether its source was 'opened' or is 'from memory'. ``signs`` are ISO 7010 numbers. ``stations`` (kinds) and ``when`` say where it comes by itself;
    ``words`` are what a shop writes for it. It is left out beside the one that it ``yields_to``. ``reminds``: the reminders
    that it is the text of, each a kind and what it is about. ``shown`` lists where people meet it."""

    key: str
    kind: CautionKind
    source: str
    basis: Basis
    read: str = ""
    url: str = ""
    signs: tuple[str, ...] = ()
    stations: tuple[str, ...] = ()
    when: str = ""
    words: tuple[str, ...] = ()
    yields_to: str = ""
    reminds: tuple[tuple[str, str], ...] = ()
    shown: tuple[str, ...] = ()


@dataclass(frozen=True)
class ShownCaution:
    """A caution as it stands beside an operation: an entry's ``key``, or the shop's own ``text`` without a key."""

    key: str
    text: str
    signs: tuple[str, ...]


def _read() -> tuple[Mapping[str, Caution], Mapping[str, str]]:
    whole = json.loads(files("runboard.run.care").joinpath("cautions.json").read_text(encoding="utf-8"))
    read = {caution["key"]: _caution(caution, whole["sources"][caution["source"]]) for caution in whole["cautions"]}
    return MappingProxyType(read), MappingProxyType(whole["signs"])


def _caution(entry: Mapping[str, Any], source: Mapping[str, str]) -> Caution:
    lists = {name: tuple(entry.get(name, ())) for name in ("signs", "stations", "words", "shown")}
    return Caution(
        key=entry["key"],
        kind=entry["kind"],
        source=source.get("text", NO_SOURCE),
        basis=source["basis"],  # type: ignore[arg-type]  # a test holds the file to the four
        read=source.get("read", ""),
        url=source.get("url", ""),
        when=entry.get("when", ""),
        yields_to=entry.get("yields_to", ""),
        reminds=tuple((kind, thing) for kind, thing in entry.get("reminds", ())),
        **lists,
    )


# ``SIGNS`` are the titles under which ISO 7010 registers the numbers.
CATALOGUE, SIGNS = _read()
_BY_WORDS: Mapping[str, str] = MappingProxyType(
    {word: caution.key for caution in CATALOGUE.values() for word in caution.words}
)


def _reminders() -> Mapping[str, Mapping[str, str]]:
    found: dict[str, dict[str, str]] = {}
    for caution in CATALOGUE.values():
        for kind, thing in caution.reminds:
            found.setdefault(kind, {})[thing] = caution.key
    return MappingProxyType(found)


# The key of the text of each kind of reminder, by what it is about: 'care end' of rags, of dust, of a cut that burnt.
REMINDERS = _reminders()


def entry_for(words: str) -> Caution | None:
    """The entry that a shop's own words mean, whatever their case, spaces and full stop; ``None`` where none does."""
    key = _BY_WORDS.get(" ".join(words.casefold().split()).rstrip(".!"))
    return CATALOGUE[key] if key else None


def cautions_at(book: Book, route: Route, step: Step) -> tuple[ShownCaution, ...]:
    """What stands beside a step of a route, on every screen and card."""
    return cautions_for(book, step.operation, finished_before(book, route, step) is not None)


def cautions_for(book: Book, operation: Operation, after_finish: bool = False) -> tuple[ShownCaution, ...]:
    """What stands beside an operation: by its station, its attendance and its finish, then by its own words, each
    entry once and in the catalogue's order; what the catalogue does not know comes last, as it was written.

    ``after_finish``: the wood it works had a finish earlier in the route, so that dust of it is oily.
    """
    keys = {caution.key for caution in CATALOGUE.values() if _comes_by_itself(caution, book, operation, after_finish)}
    own: list[ShownCaution] = []
    for words in dict.fromkeys(operation.cautions):
        entry = entry_for(words)
        if entry is None:
            own.append(ShownCaution("", words, ()))
        else:
            keys.add(entry.key)
    known = (caution for caution in CATALOGUE.values() if caution.key in keys and caution.yields_to not in keys)
    return (*(ShownCaution(caution.key, "", caution.signs) for caution in known), *own)


def start_points(book: Book, operation: Operation) -> tuple[str, ...]:
    """Keys of what must be ticked before a machine of that kind starts; none for a bench."""
    station = book.station(operation.station)
    return start_points_of(station.kind) if station else ()


def start_points_of(kind: str) -> tuple[str, ...]:
    """The same for a kind of station."""
    return tuple(caution.key for caution in CATALOGUE.values() if caution.kind == "start" and kind in caution.stations)


def watch_check_of(kind: str) -> str:
    """Key of what somebody confirms who looks at a running station of that kind: its own things, as a CNC has no air assist."""
    return next(
        (
            caution.key
            for caution in CATALOGUE.values()
            if caution.key.startswith("watch-check-") and kind in caution.stations
        ),
        "watch-check",
    )


def _comes_by_itself(caution: Caution, book: Book, operation: Operation, after_finish: bool) -> bool:
    if caution.kind != "caution":
        return False
    station = book.station(operation.station)
    if station is not None and station.kind in caution.stations:
        return True
    if caution.when == "oiled before":
        return after_finish and _makes_dust(book, operation)
    return bool(caution.when) and WHEN[caution.when](book, operation)


def _is_watched(book: Book, operation: Operation) -> bool:
    """Whether it is watched or should be: also where a route from before a rule asks for less than its station's kind."""
    station = book.station(operation.station)
    least = STATION_KINDS[station.kind].least if station else "none"
    return "watched" in (operation.attendance, least)


def _is_loud(book: Book, operation: Operation) -> bool:
    station = book.station(operation.station)
    return station is not None and station.noise_db is not None and station.noise_db >= book.noise_limit_db


def _self_heats(book: Book, operation: Operation) -> bool:
    finish = finish_of(book, operation)
    return finish is not None and finish.self_heats


def _has_solvent(book: Book, operation: Operation) -> bool:
    finish = finish_of(book, operation)
    return finish is not None and finish.solvent


def _is_sprayed(book: Book, operation: Operation) -> bool:
    """Whether its words, or the name of its finish, say that it is sprayed on, in one of the four languages."""
    finish = finish_of(book, operation)
    said = plain_words(f"{operation.name} {operation.finish or ''} {finish.name if finish else ''}")
    return finish is not None and any(word in said for word in ("spray", "spruh", "spritz", "pulveri", "aerosol"))


# As ``plain_words`` writes them.
_SANDING = ("sand", "scuff", "nib", "schleif", "schlif", "lij", "ponc", "egren")


def _makes_dust(book: Book, operation: Operation) -> bool:
    """Whether it makes dust of wood: at a station that does, at a machine of which nobody said what it does, and by hand
    wherever its words say so, in one of the four languages."""
    station = book.station(operation.station)
    if station is None or station.dusty or station.kind == "other machine":
        return True
    said = plain_words(" ".join((operation.name, *(one.name for one in operation.passes))))
    return any(word in said for word in _SANDING)


# What an entry's ``when`` may say, besides 'oiled before', which asks the route too.
WHEN: Mapping[str, Callable[[Book, Operation], bool]] = MappingProxyType(
    {
        "watched": _is_watched,
        "loud": _is_loud,
        "finish": lambda book, operation: finish_of(book, operation) is not None,
        "self-heats": _self_heats,
        "solvent": _has_solvent,
        "sprayed": _is_sprayed,
    }
)
