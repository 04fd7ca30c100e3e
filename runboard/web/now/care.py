"""GET /care: every caution with its sign, its source and where it is shown, and what runboard is not."""

from flask import Blueprint, Response

from runboard.floor.looking.at_hand import book_now
from runboard.run.care.cautions import CATALOGUE, SIGNS, Caution
from runboard.web.door.pages import page, workshop
from runboard.words.sentences import say

# The page's parts in their order: the kind of entry.
PARTS = ("caution", "start", "reminder", "answer", "note")

part = Blueprint("care", __name__)


@part.get("/care")
def care() -> Response:
    """The page; whoever may read Now may read it."""
    parts = [(*(say("cautions", f"{what} {kind}") for what in ("part", "about")), _entries(kind)) for kind in PARTS]
    return page("now/care.html", parts=parts, signs=SIGNS, emergency=book_now(workshop()).emergency)


def _entries(kind: str) -> list[tuple[Caution, str]]:
    return [(caution, comes_with(caution)) for caution in CATALOGUE.values() if caution.kind == kind]


def comes_with(caution: Caution) -> str:
    """What brings an entry by itself, in words; empty where only the shop's own words do."""
    when = [say("cautions", f"when {caution.when}")] if caution.when else []
    return ", ".join([say("cautions", f"at {kind}") for kind in caution.stations] + when)
