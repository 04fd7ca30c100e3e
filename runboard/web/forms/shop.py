"""The forms of the shop's own things: its name, what no laser may touch and how noise is added up, rooms, stations, services,
people, small jobs, finishes and jigs."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any
from zoneinfo import available_timezones

from runboard.shop.book import Book, Person
from runboard.shop.book_json import BookError
from runboard.shop.keys import key_for
from runboard.shop.money import Money
from runboard.shop.problem import RecordProblem
from runboard.shop.record import REQUIRED, fields_of, to_json
from runboard.web.forms.asked import Record, fields_for, form_of, named
from runboard.web.forms.field import Choices, Field, Section
from runboard.words.facts import currencies_now, known_locale
from runboard.words.sentences import say, sentence

COMMON_PRACTICE = "common practice, read the label"

# Level of a day of eight hours, and by how many dB it rises as the hours halve.
NOISE_RULES: Mapping[str, tuple[float, float]] = {"85/3": (85, 3), "90/5": (90, 5), "85/5": (85, 5), "80/3": (80, 3)}
_NOISE_WORDS: Choices = (
    ("85/3", "85 dB, 3 dB: NIOSH"),
    ("90/5", "90 dB, 5 dB: OSHA, limit"),
    ("85/5", "85 dB, 5 dB: OSHA, action level"),
    ("80/3", "80 dB, 3 dB: EU, lower action value"),
    ("own", "my own figures, below"),
)
_NOISE = Field(
    "noise_rule",
    "Noise limit",
    "choice",
    "The level allowed for eight hours a day, and by how much it rises as the hours halve: the exchange rate.",
    _NOISE_WORDS,
)
_WATCH_USUAL = Field("watch_usual", "As usual: from any station in the room except cutters", "tick")


@dataclass(frozen=True)
class Thing:
    """A kind of thing that the shop has: where it is kept in the record, what one is called."""

    list: str
    one: str
    title: str

    @property
    def empty(self) -> str:
        """What an empty list says."""
        return say("thing", self.list)


_THINGS = (
    Thing("rooms", "room", "Rooms"),
    Thing("stations", "station", "Stations"),
    Thing("services", "piece of shared equipment", "Shared equipment"),
    Thing("people", "person", "People"),
    Thing("jobs", "odd job", "Odd jobs"),
    Thing("finishes", "finish", "Finishes"),
    Thing("stocks", "board or sheet", "Boards and sheets"),
    Thing("supplies", "supply", "Supplies"),
    Thing("screws", "screw", "Screws"),
    Thing("inserts", "insert or magnet", "Inserts and magnets"),
    Thing("cutters", "cutter", "Cutters, blades, discs"),
    Thing("feeds", "feed", "Feeds and speeds"),
    Thing("jigs", "jig", "Jigs"),
)
THINGS: Mapping[str, Thing] = {thing.list: thing for thing in _THINGS}


def head_form(record: Record) -> list[Section]:
    """The shop's name, time zone, units and emergency number, and what standard times have beyond the work."""
    zones = tuple((zone, zone) for zone in sorted(available_timezones()) if "/" in zone and not zone.startswith("Etc/"))
    head, standard, *_ = form_of(Book, record)
    return [
        replace(
            head,
            fields=tuple(
                replace(field, choices=zones) if field.name == "time_zone" else field for field in head.fields
            ),
        ),
        standard,
    ]


def limits_form(record: Record) -> list[Section]:
    """Materials that no laser may touch, and the rule by which noise is added up."""
    return form_of(Book, record, own=[_NOISE])[2:4]


def money_form(record: Record) -> list[Section]:
    """The shop's currency, margin, fees and packing."""
    currencies = (
        ("", sentence("ask-money-currency-nothing")),
        *((code, f"{code} – {name}") for code, name in currencies_now()),
    )
    own = next(field for field in fields_for(Book, record) if field.name == "money.currency")
    return form_of(Book, record, own=[replace(own, kind="choice", choices=currencies)])[4:]


def money_said(said: Record) -> Record:
    """The part of the book's record that it says: what is left empty is nothing. Refuses a locale that nobody knows: amounts would
    be written in English without a word. A book that has one is read all the same."""
    numbers = {name: field.default for name, field in fields_of(Money).items() if isinstance(field.default, float)}
    locale = said["money"]["locale"]
    if locale and known_locale(locale) is None:
        raise BookError([RecordProblem("money.locale", "", "not a locale", {"field": "locale", "found": locale})])
    kept = {name: 0.0 if value == "" and name in numbers else value for name, value in said["money"].items()}
    return {**said, "money": kept}


def limits_shown(record: Record) -> Record:
    """What that form shows of the book's record."""
    said = (record["noise_limit_db"], record["noise_exchange_db"])
    return {**record, "noise_rule": next((name for name, figures in NOISE_RULES.items() if figures == said), "own")}


def limits_said(said: Record) -> Record:
    """The part of the book's record that it says: a rule that is chosen wins over the figures below it."""
    figures = NOISE_RULES.get(said.pop("noise_rule"))
    if figures is not None:
        said["noise_limit_db"], said["noise_exchange_db"] = figures
    return said


def thing_form(thing: str, record: Record, key: str) -> list[Section]:
    """The form of one room, station, service, person, job, finish or jig. ``key`` is empty for a new one."""
    own = {"stations": [_WATCH_USUAL], "rooms": _walks_from(record, key)}
    return form_of(fields_of(Book)[thing].inner, record, key, own.get(thing, ()))


def _walks_from(record: Record, key: str) -> list[Field]:
    others = named(record, "room", key)
    return [Field(f"walk.{other}", f"Minutes to walk to {name}", "minutes", empty=None) for other, name in others]


# between a form and the record


def thing_shown(thing: str, record: Record, key: str) -> Record:
    """What a form shows of one thing: its record, and what is said elsewhere or otherwise."""
    found = next((said for said in record[thing] if said["key"] == key), None)
    if found is None:
        usual = {
            field.name: field.default
            for field in fields_of(fields_of(Book)[thing].inner).values()
            if field.kind in ("flag", "count", "length") and field.default is not REQUIRED
        }
        return {**usual, "watch_usual": True, "access": "crew" if record["people"] else "lead"}
    if thing == "stations":
        return {**found, "watch_usual": found["watch_from"] is None, "watch_from": found["watch_from"] or []}
    if thing == "rooms":
        return {
            **found,
            "walk": {_other(walk, key): walk["minutes"] for walk in record["walks"] if key in walk["rooms"]},
        }
    return dict(found)


def put_thing(thing: str, record: Record, key: str, said: Record) -> int:
    """Put what a form said of one thing into the record; answers its place in the list."""
    said = dict(said)
    walks = said.pop("walk", {})
    if thing == "stations" and said.pop("watch_usual"):
        said["watch_from"] = None
    found = [at for at, each in enumerate(record[thing]) if each["key"] == key]
    at = found[0] if found else len(record[thing])
    if not found:
        key = new_key(thing, record, said.get("name") or _unnamed(thing, record, said))
        record[thing].append({"key": key})
    record[thing][at] = {**record[thing][at], **said}
    if thing == "rooms":
        kept = [walk for walk in record["walks"] if key not in walk["rooms"]]
        record["walks"] = [*kept, *_walks(key, walks)]
    return at


def _unnamed(thing: str, record: Record, said: Record) -> str:
    """By what something without a name gets its key."""
    return name_in(thing, record, {**said, "tore_out": False}) if thing == "feeds" else ""


def _walks(key: str, walks: Mapping[str, Any]) -> list[Record]:
    return [
        {"rooms": sorted((key, other)), "minutes": minutes} for other, minutes in walks.items() if minutes is not None
    ]


def _other(walk: Record, key: str) -> str:
    return next((str(room) for room in walk["rooms"] if room != key), key)


def name_in(thing: str, record: Record, each: Record) -> str:
    """What one thing is called: a feed by its wood and cutter, everything else by its name."""
    if thing != "feeds":
        return str(each["name"])
    cutter = next((name for key, name in named(record, "cutter") if key == each["cutter"]), each["cutter"])
    return sentence("thing-feed", {"wood": each["wood"] or "any", "cutter": cutter, "torn": each["tore_out"]})


def new_key(thing: str, record: Record, name: str) -> str:
    """The permanent key of something new. People get nameless ones: they stay in the log when the person goes."""
    taken = {each["key"] for each in record[thing]}
    if thing != "people":
        return key_for(name, taken)
    number = 1
    while f"p{number}" in taken:
        number += 1
    return f"p{number}"


def take_out(thing: str, record: Record, key: str) -> None:
    """Take one thing out of the record. A person leaves a nameless id behind, which the log's events go on naming."""
    if thing == "people":
        for at, person in enumerate(record[thing]):
            if person["key"] == key:
                record[thing][at] = to_json(Person(key, "somebody", person["access"], removed=True))
        return
    record[thing] = [each for each in record[thing] if each["key"] != key]
    if thing == "rooms":
        record["walks"] = [walk for walk in record["walks"] if key not in walk["rooms"]]
