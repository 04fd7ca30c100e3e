"""The run sheet: everything that is checked before a run starts, on one page."""

from flask import Blueprint, Response, request

from runboard.floor.changing.run_sheet import pass_look, run_sheet_of
from runboard.floor.looking.at_hand import book_now
from runboard.floor.looking.files_looked_at import files_looked_at
from runboard.run.refusal import Refused
from runboard.web.door.pages import page, refusal, see_other, shop_zone, workshop
from runboard.web.door.run_pages import known_person, known_run
from runboard.web.fittings import fittings
from runboard.words.before.run_sheet import found_in_words, head_of, level_in_words, passed_in_words

part = Blueprint("plan_run_sheet", __name__)


@part.get("/plan/runs/<key>/before")
def look(key: str) -> Response:
    """What is found, what is open of it, and where each is looked into."""
    return _page(key)


@part.post("/plan/runs/<key>/before")
def go_past(key: str) -> Response:
    """Somebody looked, and goes on: their initials stand beside what they saw."""
    asked = request.form
    known_run(key)
    try:
        pass_look(
            workshop(),
            key,
            asked.get("check", ""),
            asked.get("found", ""),
            asked.get("initials", ""),
            known_person(),
            files_looked_at(fittings().settings),
        )
    except Refused as refused:
        return _page(key, 422, refusal(refused), asked.get("check", ""))
    return see_other(f"/plan/runs/{key}/before")


def _page(key: str, status: int = 200, wrong: str = "", at: str = "") -> Response:
    run, book = known_run(key), book_now(workshop())
    sheet = run_sheet_of(workshop(), key, files_looked_at(fittings().settings))
    rows = [
        (
            each,
            level_in_words(each.finding.level),
            found_in_words(book, each.finding),
            passed_in_words(each, shop_zone()),
        )
        for each in sheet.checked
    ]
    return page(
        "plan/run_sheet.html",
        status=status,
        run=run,
        sheet=sheet,
        head=head_of(sheet),
        rows=rows,
        wrong=wrong,
        at=at,
        initials=_initials(),
    )


def _initials() -> str:
    person = workshop().book.person(known_person())
    return "".join(part[0] for part in person.name.split()[:3]).upper() if person else ""
