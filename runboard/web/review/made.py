"""The ledger of changes: what was adopted, what it promised, whether it worked."""

from dataclasses import dataclass

from flask import Blueprint, Response, request

from runboard.floor.changing.adopt import judge_change
from runboard.floor.looking.ledger import InLedger, changes_adopted
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.web.door.pages import page, see_other, workshop
from runboard.web.door.run_pages import known_person
from runboard.web.review.changes import LEDGER, range_of
from runboard.words.changes import range_in_words, verdict_in_words
from runboard.words.facts import date_in_words, zone_of
from runboard.words.sentences import say
from runboard.words.trying import words_of_change

part = Blueprint("review_made", __name__)


@dataclass(frozen=True)
class Shown:
    """A line as the page shows it. ``found`` is what the newest run says of it, '' where none can yet."""

    entry: InLedger
    sentence: str
    day: str
    promised: str
    saved: str
    found: str


@part.get(LEDGER)
def ledger() -> Response:
    """All of them, the newest first. ``back`` says what became of what a dropped one had altered."""
    book, entries = changes_adopted(workshop())
    back = request.args.get("back", "")
    said = (
        say("way-back", back, {"what": request.args.get("what", "")})
        if back in ("undone", "nothing", "by hand")
        else ""
    )
    return page("review/ledger.html", changes=[_shown(book, entry) for entry in entries], back=said)


@part.post(LEDGER)
def judge() -> Response:
    """Whether a change stays, by what the run after it says."""
    asked = request.form.get("adopted", "")
    entry = next((entry for entry in changes_adopted(workshop())[1] if entry.line.id == asked), None)
    if entry is None or entry.after is None or entry.verdict is None:
        raise Refused("change not tried")
    verdict = "dropped" if request.form.get("verdict") == "dropped" else "kept"
    back = judge_change(workshop(), asked, entry.after.id, verdict, known_person(), entry.verdict.saved)
    return see_other(f"{LEDGER}?back={back.code}&what={back.what}" if verdict == "dropped" else LEDGER)


def _shown(book: Book, entry: InLedger) -> Shown:
    line, run = entry.line, entry.run
    sentence = "" if line.change is None or run is None else words_of_change(book, run, line.change)
    facts = {"earlier": range_of(line.earlier), "hands": range_of(line.hands)}
    return Shown(
        entry,
        sentence or say("review-ledger", "unreadable"),
        date_in_words(line.at.astimezone(zone_of(book.time_zone)), with_year=True),
        say("review-ledger", "promise", facts),
        "" if line.saved is None else range_in_words(line.saved),
        "" if entry.verdict is None else verdict_in_words(entry.verdict),
    )
