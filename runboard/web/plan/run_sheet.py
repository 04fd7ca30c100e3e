"""The run sheet: everything that is checked before a run starts, on one page."""

from dataclasses import dataclass
from urllib.parse import quote

from flask import Blueprint, Response, request

from runboard.floor.changing.run_sheet import MOST_INITIALS, pass_look, run_sheet_of, take_look_back
from runboard.floor.looking.at_hand import book_now
from runboard.floor.looking.files_looked_at import files_looked_at
from runboard.floor.pressing.access import LEAD
from runboard.plan.before.looked_at import LookedAt
from runboard.plan.before.run_sheet import Checked
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.keys import key_for
from runboard.web.door.pages import page, refusal, see_other, shop_zone, workshop
from runboard.web.door.run_pages import known_person, known_run
from runboard.web.door.sessions import access
from runboard.web.fittings import fittings
from runboard.words.before.run_sheet import (
    found_in_words,
    head_of,
    level_in_words,
    passed_in_words,
    unchecked_in_words,
)


@dataclass(frozen=True)
class Row:
    """A check as the page shows it; ``anchor`` is the name of its place."""

    checked: Checked
    anchor: str
    level: str
    text: str
    passed: str


part = Blueprint("plan_run_sheet", __name__)


@part.get("/plan/runs/<key>/before")
def look(key: str) -> Response:
    """What is found, what is open of it, and where each is looked into."""
    return _page(key)


@part.post("/plan/runs/<key>/before")
def go_past(key: str) -> Response:
    """Somebody looked, and goes on: their initials stand beside what they saw."""
    asked = request.form
    check, initials = asked.get("check", ""), asked.get("initials", "").strip()
    known_run(key)
    try:
        pass_look(workshop(), key, check, asked.get("found", ""), initials, known_person(), _looked())
    except Refused as refused:
        return _page(key, 422, refusal(refused), check)
    return see_other(f"/plan/runs/{key}/before?initials={quote(initials)}#{anchor_of(check)}")


@part.post("/plan/runs/<key>/before/taken-back")
def take_back(key: str) -> Response:
    """Nobody looked, after all: the initials were given by mistake."""
    check = request.form.get("check", "")
    known_run(key)
    try:
        take_look_back(workshop(), key, check, known_person())
    except Refused as refused:
        return _page(key, 422, refusal(refused), check)
    return see_other(f"/plan/runs/{key}/before#{anchor_of(check)}")


def anchor_of(check: str) -> str:
    """The name of a check's place on the page."""
    return key_for(check, ())


def _looked() -> LookedAt:
    return files_looked_at(fittings().settings)


def _page(key: str, status: int = 200, wrong: str = "", at: str = "") -> Response:
    run, book, sheet = known_run(key), book_now(workshop()), run_sheet_of(workshop(), key, _looked())
    shown = [each for each in sheet.checked if access() == LEAD or not each.finding.check.startswith("price")]
    return page(
        "plan/run_sheet.html",
        status=status,
        run=run,
        sheet=sheet,
        head=head_of(sheet),
        unchecked=unchecked_in_words(sheet),
        rows=[_row(book, each) for each in shown if each.finding.level != "green"],
        right=[_row(book, each) for each in shown if each.finding.level == "green"],
        wrong=wrong,
        at=anchor_of(at) if at else "",
        initials=request.values.get("initials", "")[:MOST_INITIALS] or _initials(),
    )


def _row(book: Book, each: Checked) -> Row:
    return Row(
        each,
        anchor_of(each.finding.check),
        level_in_words(each),
        found_in_words(book, each.finding),
        passed_in_words(each, shop_zone()),
    )


def _initials() -> str:
    person = workshop().book.person(known_person())
    return "".join(part[0] for part in person.name.split()[:3]).upper() if person else ""
