"""The ledger of changes: what was adopted, what it promised, whether it worked."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from flask import Blueprint, Response, request

from runboard.floor.changing.adopt import judge_change, take_back_change
from runboard.floor.looking.ledger import InLedger, changes_adopted
from runboard.plan.change import Capacity, singles
from runboard.review.changes.nouns import NOUGHT
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.web.door.pages import page, see_other, workshop
from runboard.web.door.run_pages import known_person
from runboard.web.review.changes import LEDGER, some_of
from runboard.words.changes import range_in_words, verdict_in_words
from runboard.words.facts import date_in_words, list_in_words, unbroken, zone_of
from runboard.words.ideas import habit_in_words
from runboard.words.making import moved_in_words
from runboard.words.review_things import begun
from runboard.words.sentences import say
from runboard.words.trying import words_of_change

part = Blueprint("review_made", __name__)


@dataclass(frozen=True)
class Shown:
    """A line as the page shows it. ``moves`` is what it made another; ``status`` what became of it, '' where no run can say yet;
    ``found`` what the run after it says."""

    entry: InLedger
    sentence: str
    day: str
    moves: list[str]
    promised: str
    status: str
    found: str
    product: str


@part.get(LEDGER)
def ledger() -> Response:
    """All of them, the newest first. ``back`` says what became of what a dropped one had altered, ``made`` which was made just now."""
    book, entries = changes_adopted(workshop())
    back = request.args.get("back", "")
    known = ("undone", "nothing", "by hand", "taken back")
    said = say("way-back", back, {"what": request.args.get("what", "")}) if back in known else ""
    changes = [_shown(book, entry) for entry in entries]
    return page("review/ledger.html", changes=changes, back=said, made=request.args.get("made", ""))


@part.post(LEDGER)
def judge() -> Response:
    """Whether a change stays, by what the run after it says; or it is taken back before anybody said so."""
    asked, verdict = request.form.get("adopted", ""), request.form.get("verdict", "")
    if verdict == "back":
        take_back_change(workshop(), asked, known_person())
        return see_other(f"{LEDGER}?back=taken+back")
    entry = next((entry for entry in changes_adopted(workshop())[1] if entry.line.id == asked), None)
    if entry is None or entry.after is None or entry.verdict is None:
        raise Refused("change not tried")
    verdict = "dropped" if verdict == "dropped" else "kept"
    back = judge_change(workshop(), asked, entry.after.id, verdict, known_person(), entry.verdict.saved)
    return see_other(f"{LEDGER}?back={back.code}&what={back.what}" if verdict == "dropped" else LEDGER)


def _shown(book: Book, entry: InLedger) -> Shown:
    line, run = entry.line, entry.run
    sentence = "" if line.change is None or run is None else _sentence(book, entry)
    moves = [unbroken(said) for said in moved_in_words(entry.moved)]
    if sentence and moves and all(moved.what == "capacity" for moved in entry.moved):
        sentence, moves = list_in_words(moves), []
    product = book.product(line.product)
    facts = {"earlier": some_of(line.earlier), "hands": some_of(line.hands)}
    return Shown(
        entry,
        sentence or say("review-ledger", "unreadable"),
        date_in_words(line.at.astimezone(zone_of(book.time_zone)), with_year=True),
        moves,
        unbroken(say("review-ledger", "promise", facts)),
        _status(entry),
        unbroken(" ".join(_found(book, entry))),
        product.name if product else run.route.product.name if run else line.product,
    )


def _sentence(book: Book, entry: InLedger) -> str:
    if entry.line.change is None or entry.run is None:
        return ""
    return begun(habit_in_words(book, entry.run, entry.line.change)) or words_of_change(
        book, entry.run, entry.line.change
    )


def _status(entry: InLedger) -> str:
    line = entry.line
    if not line.verdict:
        return say("review-ledger", "nobody said") if entry.after is not None else ""
    saved = line.saved
    how = (
        "unknown" if saved is None else "worked" if saved.low > NOUGHT else "worse" if saved.high < NOUGHT else "unseen"
    )
    return say("review-ledger", f"{how} {line.verdict}")


def _found(book: Book, entry: InLedger) -> Iterator[str]:
    """What the run after it says, as it was found when somebody judged it."""
    line, verdict = entry.line, entry.verdict
    if verdict is not None:
        changed = {one.service for one in singles(line.change) if isinstance(one, Capacity)} if line.change else ()
        services = [service.name for service in book.services if service.key in changed]
        known = replace(verdict, saved=line.saved) if line.verdict and verdict.saved else verdict
        yield verdict_in_words(known, services)
    elif line.saved is not None:
        yield say("review-ledger", "saved", {"saved": range_in_words(line.saved)})
