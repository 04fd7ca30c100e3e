"""GET /care: every caution with its sign, its source and where it is shown, and what runboard is not."""

from flask import Blueprint, Response

from runboard.floor.looking.at_hand import book_now
from runboard.run.care.cautions import CATALOGUE, SIGNS, Caution
from runboard.web.door.pages import page, workshop

# The page's parts in their order: the kind of entry, its heading, and a word about it.
PARTS = (
    ("caution", "Beside a step", "Before the step on the screen, and beside it on the card."),
    ("start", "Before a machine starts", "In full once a session and after any change; after that one press a load."),
    ("reminder", "Reminders", "They come when their time comes, and stay until somebody says what was done."),
    ("answer", "What can be answered", "A reminder is not put away without one of these."),
    ("note", "Always", "Said wherever it matters."),
)
_STATIONS = {
    "cnc": "a CNC router",
    "hand cutter": "a cutter worked by hand",
    "sander": "a sander",
    "laser": "a laser",
    "heater": "an oven or heater",
    "other machine": "another machine",
}
_WHEN = {
    "watched": "any machine that must be watched",
    "loud": "any station as loud as the shop's limit",
    "finish": "any coat of a finish",
    "self-heats": "a finish whose rags heat by themselves, or one that nobody wrote down",
    "solvent": "a finish with a solvent",
    "sprayed": "a finish that is sprayed on",
    "oiled before": "dusty work on wood that had a finish",
}

part = Blueprint("care", __name__)


@part.get("/care")
def care() -> Response:
    """The page; whoever may read Now may read it."""
    parts = [
        (title, about, [(one, comes_with(one)) for one in CATALOGUE.values() if one.kind == kind])
        for kind, title, about in PARTS
    ]
    return page("now/care.html", parts=parts, signs=SIGNS, emergency=book_now(workshop()).emergency)


def comes_with(one: Caution) -> str:
    """What brings an entry by itself, in words; empty where only the shop's own words do."""
    return ", ".join([_STATIONS[kind] for kind in one.stations] + ([_WHEN[one.when]] if one.when else []))
