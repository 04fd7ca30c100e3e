"""The stored vocabulary of the log: every kind of event with its body. Kinds are words, free of class names.

The JSON Schema (``event.schema.json``) and the table in ``runboard/run/README.md`` are generated from here, and a test holds the
three together.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any, Literal, get_args

from runboard.run.log.shapes import (
    AMOUNT,
    COUNT,
    COUNTS,
    KEY,
    KEY_OR_NOBODY,
    LINE,
    LOAD,
    MEASURES,
    MINUTES,
    MOMENT,
    NAME,
    NAME_OF_ONE,
    NAMED,
    NUMBER,
    OBJECT,
    OPEN,
    ORDERS,
    PIECES,
    PLACED,
    PLACES,
    RANGE,
    SCRAP,
    STEP,
    TEXT,
    TEXTS,
    TRAY,
    TRAYS,
    TRAYS_NAMED,
    YES,
    one_of,
)
from runboard.shop.limits import MOST_BOARDS

Access = Literal["server", "lead", "crew", "guest"]
Subject = Literal["shop", "person", "station", "run", "load", "tray"]


@dataclass(frozen=True)
class Kind:
    """One kind of event: the least access that may press it, what it is about, one sentence, its body's fields."""

    least: Access
    subject: Subject
    about: str
    required: Mapping[str, dict[str, Any]]
    optional: Mapping[str, dict[str, Any]]


def _kind(
    least: Access, subject: Subject, about: str, required: dict[str, Any] | None = None, **optional: dict[str, Any]
) -> Kind:
    return Kind(least, subject, about, required or {}, optional)


# Who may press it: nobody, but the server and its sensors; the lead alone, for what the run is and what one person gives
# or shows another; crew too, for what Now and Trays offer; a guest too, for the steps, pieces and alerts of one tray.
_server, _lead, _crew, _guest = (partial(_kind, least) for least in get_args(Access))


KINDS: Mapping[str, Kind] = {
    # people: no run owns these
    "person came": _crew(
        "person", "Somebody is in the shop, and says until when; a guest by name.", until=MOMENT, room=KEY, name=NAME
    ),
    "person went": _crew("person", "The session is over; what was ticked at lock-up.", ticked=TEXTS),
    "person called away": _crew("person", "Hands off at once; no reason asked."),
    "person came back": _crew("person", "Back from being called away."),
    "room changed": _crew("person", "Somebody is in another room.", {"room": KEY}),
    "time said": _crew("person", "How long somebody has today.", {"until": MOMENT}),
    "job started": _crew("person", "A small job of the shop's own is taken up.", {"job": KEY}),
    "job done": _crew("person", "A small job of the shop's own is done.", {"job": KEY}),
    "move declined": _crew("person", "Not this, because.", {"move": NAMED, "because": TEXT}, until=MOMENT),
    "span answered": _crew(
        "person",
        "What a span over twice its estimate really was.",
        {"span": NAMED, "answer": one_of("all", "about", "unknown")},
        minutes=MINUTES,
    ),
    # stations
    "station out of use": _crew("station", "A station cannot be used.", why=TEXT, until=MOMENT),
    "station back in use": _crew("station", "A station can be used again."),
    "setup changed": _crew(
        "station",
        "A new cutter, wood, focus or jig seat: the full list and the first piece come again.",
        {"what": one_of("cutter", "wood", "jig", "focus", "other")},
        note=TEXT,
        cutter=KEY,
    ),
    "checklist ticked": _guest(
        "station", "The start list was ticked.", {"list": one_of("full", "short", "operation")}, items=TEXTS
    ),
    "signal received": _server(
        "station", "A sensor says that a station draws power or does not.", {"on": YES}, source=TEXT, value=NUMBER
    ),
    # alerts, reminders, questions
    "alert claimed": _guest("shop", "Somebody is on the way to an alert.", {"alert": NAMED}),
    "alert answered": _guest(
        "shop",
        "An alert is answered, and stops everywhere.",
        {"alert": NAMED, "answer": one_of("ended", "still running", "stopped", "seen", "done")},
        ask_again_at=MOMENT,
        note=TEXT,
    ),
    "watch checked": _guest("load", "Somebody looked: no flame, work flat, air and exhaust on.", at_check=COUNT),
    "watch taken": _guest("load", "Another person watches this machine now."),
    "reminder answered": _crew(
        "shop", "A reminder of care is answered with what was done.", {"reminder": NAMED, "done": TEXT}
    ),
    "server restarted": _server(
        "shop", "The server came back after work was left open.", {"open": OPEN}, last_at=MOMENT
    ),
    "restart answered": _crew("shop", "Somebody said what was running.", {"restart": NAMED}),
    # what is used up
    "supply counted": _crew("shop", "So much of a supply is there.", {"supply": NAME_OF_ONE, "have": AMOUNT}),
    "supply bought": _crew(
        "shop",
        "So much of a supply was bought, and is there.",
        {"supply": NAME_OF_ONE, "amount": AMOUNT | {"exclusiveMinimum": 0}},
    ),
    # a run
    "run opened": _lead(
        "run",
        "A run begins: product, route as it is now, orders, trays and boards.",
        {"name": NAME, "product": OBJECT, "orders": ORDERS, "trays": TRAYS},
        boards={"type": "object", "propertyNames": LOAD, "additionalProperties": PIECES, "maxProperties": MOST_BOARDS},
        wood=NAME,
        pieces_a_tray=COUNT,
        certainty={"type": "number", "minimum": 0, "maximum": 1},
        good_rate={"type": "number", "minimum": 0, "maximum": 1},
        good_rate_from=TEXT,
        book_revision=COUNT,
        copied_from=KEY,
    ),
    "run finished": _lead("run", "The run is over.", note=TEXT),
    "run abandoned": _lead("run", "The run is given up.", why=TEXT),
    "orders changed": _lead("run", "The order lines are now these.", {"orders": ORDERS}),
    "order ticked": _crew(
        "run",
        "An order line is packed, collected or paid, so many ``pieces`` of it where not all, or is not after all; also after the run is over.",
        {"line": LINE, "tick": one_of("packed", "collected", "paid"), "on": YES},
        pieces=COUNT,
    ),
    "route revised": _lead(
        "run", "The route changes from a tray on.", {"product": OBJECT, "from_tray": TRAY}, why=TEXT
    ),
    "board added": _lead("run", "One more board with the trays it feeds.", {"board": LOAD, "pieces": PIECES}),
    "board lost": _crew("run", "A board is lost: its pieces not yet cut are scrap.", {"board": LOAD}, why=TEXT),
    "supply out": _crew("run", "Something ran out: the operation waits.", {"supply": NAME}, until=MOMENT),
    "supply in": _crew("run", "It is there again.", {"supply": NAME}),
    "first piece checked": _guest(
        "run",
        "The first piece passed or failed.",
        {"result": one_of("pass", "fail")},
        check=KEY,
        measures=MEASURES,
        note=TEXT,
    ),
    "first piece decided": _crew(
        "run", "After a first piece failed, somebody decides.", {"what": one_of("go on", "check again")}, note=TEXT
    ),
    "operation given": _lead(
        "run",
        "An operation on some trays is given to a person; to nobody: it is anybody's again.",
        {"to": KEY_OR_NOBODY, "trays": TRAYS_NAMED},
        look=YES,
    ),
    "look given": _lead(
        "run", "The lead looked at a helper's first piece.", {"result": one_of("pass", "fail")}, note=TEXT
    ),
    "look passed": _lead(
        "run",
        "Before it starts: somebody looked at what a check found, and goes on; 'found' is what stood there.",
        {"check": NAMED, "found": NAME, "initials": NAME | {"minLength": 1, "maxLength": 8}},
    ),
    "note written": _guest("run", "A note.", {"text": TEXT}),
    "lead called": _guest(
        "tray",
        "Somebody at a tray calls the lead.",
        {"why": one_of("look", "help", "bad piece", "stopped", "hurt")},
        note=TEXT,
    ),
    # a load
    "load started": _guest(
        "load",
        "Hands are at a load: setting up and loading, or working by hand. A second person joins.",
        pieces=PIECES,
        early=YES,
        places={"type": "object", "propertyNames": TRAY, "additionalProperties": PLACED, "maxProperties": 500},
    ),
    "machine started": _guest(
        "load",
        "The machine runs; about so many minutes are left; of these materials somebody looked at the data sheet.",
        minutes=MINUTES,
        materials=TEXTS,
    ),
    "machine ended": _guest("load", "The machine has stopped by itself, its work done."),
    "unloading started": _guest("load", "At it: hands are at the ended machine."),
    "load done": _guest("load", "The load is through; counts for each tray, all good unless said.", counts=COUNTS),
    "load stopped": _guest(
        "load",
        "Stopped early.",
        {"why": one_of("power", "cutter", "slip", "failed", "other")},
        good=PLACES,
        half=PLACES,
        untouched=PLACES,
        spoilt=PLACES,
        note=TEXT,
    ),
    "stop settled": _crew(
        "load",
        "What becomes of a load that stopped early.",
        {"how": one_of("resume", "again", "save", "scrap")},
        counts=COUNTS,
    ),
    "load put aside": _guest("load", "Hands off; the load keeps its station."),
    "load taken off": _crew("load", "The load leaves its station unfinished."),
    # a tray
    "pieces counted": _guest(
        "tray", "So many good and scrap of this tray at this operation; replaces.", {"good": COUNT}, scrap=SCRAP
    ),
    "pieces moved": _crew(
        "tray",
        "Pieces go to another tray or back in the route: split, merge, borrow, rework.",
        {"to": TRAY, "pieces": COUNT, "to_operation": STEP},
        why=one_of("split", "merge", "borrow", "fill", "rework", "other"),
        cause_operation=STEP,
        positions=PLACES,
        note=TEXT,
    ),
    "pieces held": _crew(
        "tray", "Pieces wait for something.", {"why": TEXT}, pieces=COUNT, waiting_for=TEXT, until=MOMENT
    ),
    "pieces released": _crew("tray", "Held pieces go on."),
    "wait ended": _crew("tray", "A wait is over, or was cut short.", early=YES, note=TEXT),
    "wood noted": _crew("tray", "The wood and the board of a tray.", wood=NAME, board=NAME),
    "texts placed": _crew("tray", "Which text is at which position of the jig.", {"places": PLACED}),
    "card printed": _lead("tray", "A traveller was printed.", {"print": COUNT}),
    "shown how": _lead("person", "The lead showed a person how to run a station.", {"person": KEY}),
    # what is changed after a run, for the next
    "change adopted": _lead(
        "shop",
        "A change holds from the next run on; what it promises of a run, in minutes.",
        {"of": KEY, "change": OBJECT, "earlier": RANGE, "hands": RANGE, "did": one_of("route", "book", "noted")},
        cost=NUMBER | {"minimum": 0},
        revision=COUNT,
        because=NAME,
    ),
    "change judged": _lead(
        "shop",
        "Whether an adopted change stays, and what it saved of a run, in minutes.",
        {"adopted": NAMED, "verdict": one_of("kept", "dropped")},
        saved=RANGE,
    ),
    "time overruled": _lead(
        "shop",
        "So long a step's time element takes from now on, whatever was measured: of a load, hand time of a piece.",
        {
            "of": KEY,
            "step": STEP,
            "kind": one_of("setup", "loading", "machine", "unloading", "hand"),
            "minutes": {"type": "number", "exclusiveMinimum": 0, "maximum": 100000},
            "why": TEXT | {"minLength": 1, "pattern": "\\S"},
        },
    ),
    # corrections
    "event undone": _guest("shop", "The event named never happened.", {"event": NAMED}),
    "event amended": _crew("shop", "The event named was different.", {"event": NAMED}, at=MOMENT, body=OBJECT),
    "entry settled": _crew(
        "shop", "What becomes of a press that did not fit.", {"event": NAMED, "keep": one_of("shop", "press")}
    ),
}
