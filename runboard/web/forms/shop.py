"""The forms of the shop's own things: its name, rooms, stations, services, people, small jobs and finishes."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any
from zoneinfo import available_timezones

from runboard.shop.keys import key_for
from runboard.web.forms.care import finish_form, station_care, watching
from runboard.web.forms.field import Choices, Field, Section
from runboard.web.forms.words import ACCESS, KINDS, LATE_COUNTS, UNITS, hours

Record = dict[str, Any]


@dataclass(frozen=True)
class Thing:
    """A kind of thing that the shop has: where it is kept in the record, what one is called, what an empty list says."""

    list: str
    one: str
    title: str
    empty: str


THINGS: Mapping[str, Thing] = {
    "rooms": Thing("rooms", "room", "Rooms", "Rooms come first: where do you work? Add the first, such as 'Shop'."),
    "services": Thing(
        "services",
        "service",
        "Services",
        "A service is what several stations or waits share: dust extraction, clamps, places on the rack.",
    ),
    "stations": Thing(
        "stations",
        "station",
        "Stations",
        "A station is a machine or a bench where one load at a time is done. Add the bench first.",
    ),
    "people": Thing("people", "person", "People", "Who works here? Add yourself first."),
    "jobs": Thing(
        "jobs",
        "small job",
        "Small jobs",
        "What fills a gap of five minutes: empty the bin, cut cartons. They are offered while something dries.",
    ),
    "finishes": Thing(
        "finishes",
        "finish",
        "Finishes",
        "Oil, varnish, wax: what the label says of drying, of rags and of the air. Until one is written down, every rag "
        "from a finishing station counts as one that can take fire by itself.",
    ),
}


def head_form() -> list[Section]:
    """The shop's name, time zone, units and emergency number."""
    zones = tuple((zone, zone) for zone in sorted(available_timezones()) if "/" in zone and not zone.startswith("Etc/"))
    return [
        Section(
            "",
            (
                Field("name", "Name of the shop"),
                Field("time_zone", "Time zone", hint="As in Europe/Berlin or America/New_York.", choices=zones),
                Field(
                    "units",
                    "Lengths are in",
                    "choice",
                    choices=UNITS,
                    hint="Both are read everywhere: 5 1/2 in, 12.5 mm.",
                ),
                Field("emergency", "Emergency number"),
                Field(
                    "late_counts",
                    "When not all can be in time",
                    "choice",
                    choices=LATE_COUNTS,
                    hint="Least lateness: two order lines a little late rather than one very late. Fewest: the other way round.",
                ),
            ),
        )
    ]


def thing_form(thing: str, record: Record, key: str) -> list[Section]:
    """The form of one room, station, service, person, job or finish. ``key`` is empty for a new one."""
    return _FORMS[thing](record, key)


def _named(record: Record, thing: str, but: str = "") -> Choices:
    return tuple((one["key"], one["name"]) for one in record[thing] if one["key"] != but)


def _room(record: Record, key: str) -> list[Section]:
    walks = tuple(
        Field(f"walk.{other}", f"Minutes to walk to {name}", "minutes", empty=None)
        for other, name in _named(record, "rooms", key)
    )
    return [Section("", (Field("name", "Name"), *walks))]


def _service(record: Record, key: str) -> list[Section]:
    return [
        Section(
            "",
            (
                Field("name", "Name"),
                Field("capacity", "How many at once", "count", hint="An extractor with one hose: 1."),
            ),
        )
    ]


def _station(record: Record, key: str) -> list[Section]:
    others = _named(record, "stations", key)
    return [
        Section(
            "",
            (
                Field("name", "Name"),
                Field("kind", "What it is", "choice", choices=KINDS),
                Field("room", "Room", "choice", choices=_named(record, "rooms")),
                Field("services", "It draws on", "several", choices=_named(record, "services")),
            ),
        ),
        Section(
            "Watching it",
            (
                Field("watch_usual", "As usual: from every station of its room that is no cutter", "tick"),
                Field("watch_from", "Else it may be watched while working at", "several", choices=others),
                watching(),
            ),
            folded=True,
        ),
        station_care(),
        Section(
            "Quiet hours",
            (hours("quiet", "It must be quiet", "Neighbours, sleep: it is not started then."),),
            folded=True,
        ),
    ]


def _person(record: Record, key: str) -> list[Section]:
    return [
        Section(
            "",
            (
                Field("name", "Name"),
                Field("access", "May do", "choice", choices=ACCESS),
                Field("skills", "Can do", "lines", hint="One a line, as the operations name them: laser, finishing."),
            ),
        ),
        Section(
            "Usual hours", (hours("hours", "Usually here", "They plan the days ahead; for today everybody says."),)
        ),
        Section(
            "Start-up and tidy-up",
            (
                Field("start_up_minutes", "Start-up takes", "minutes", hint="Minutes, off each session.", empty=0),
                Field("tidy_up_minutes", "Tidy-up takes", "minutes", hint="Minutes, off each session.", empty=0),
            ),
        ),
    ]


def _job(record: Record, key: str) -> list[Section]:
    rooms = (("", "anywhere"), *_named(record, "rooms"))
    return [
        Section(
            "",
            (
                Field("name", "Name"),
                Field("minutes", "It takes about", "minutes", hint="Minutes."),
                Field("room", "Room", "choice", choices=rooms, empty=None),
            ),
        )
    ]


def _finish(record: Record, key: str) -> list[Section]:
    return finish_form()


_FORMS = {
    "rooms": _room,
    "services": _service,
    "stations": _station,
    "people": _person,
    "jobs": _job,
    "finishes": _finish,
}


# between a form and the record


def thing_shown(thing: str, record: Record, key: str) -> Record:
    """What a form shows of one thing: its record, and what is said elsewhere or otherwise."""
    found = next((one for one in record[thing] if one["key"] == key), None)
    if found is None:
        return {"watch_usual": True, "access": "crew" if record["people"] else "lead", "self_heats": True}
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
    found = [at for at, one in enumerate(record[thing]) if one["key"] == key]
    at = found[0] if found else len(record[thing])
    if not found:
        key = new_key(thing, record, said.get("name") or "")
        record[thing].append({"key": key})
    record[thing][at] = {**record[thing][at], **said}
    if thing == "rooms":
        kept = [walk for walk in record["walks"] if key not in walk["rooms"]]
        record["walks"] = [*kept, *_walks(key, walks)]
    return at


def _walks(key: str, walks: Mapping[str, Any]) -> list[Record]:
    return [
        {"rooms": sorted((key, other)), "minutes": minutes} for other, minutes in walks.items() if minutes is not None
    ]


def _other(walk: Record, key: str) -> str:
    return next((str(one) for one in walk["rooms"] if one != key), key)


def new_key(thing: str, record: Record, name: str) -> str:
    """The permanent key of something new. People get nameless ones: they stay in the log when the person goes."""
    taken = {one["key"] for one in record[thing]}
    if thing != "people":
        return key_for(name, taken)
    number = 1
    while f"p{number}" in taken:
        number += 1
    return f"p{number}"


def take_out(thing: str, record: Record, key: str) -> None:
    """Take one thing out of the record. A person leaves a nameless id behind, which the log's events go on naming."""
    if thing == "people":
        for one in record["people"]:
            if one["key"] == key:
                one |= {"name": "somebody", "skills": [], "hours": [], "start_up_minutes": 0, "tidy_up_minutes": 0}
                one["removed"] = True
        return
    record[thing] = [one for one in record[thing] if one["key"] != key]
    if thing == "rooms":
        record["walks"] = [walk for walk in record["walks"] if key not in walk["rooms"]]
