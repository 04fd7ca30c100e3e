"""Typing in a tray's card: its rows, what they would make, and then it is entered."""

import hashlib
import re
from datetime import date, datetime, time, timedelta
from uuid import uuid4

from flask import Blueprint, Response, abort, request

from runboard.floor.looking.at_hand import names_now
from runboard.floor.pressing.paper import Outcome, TypedCard, enter_paper, try_paper
from runboard.floor.pressing.paper_rows import CardRow, RowRefused, totals
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState, Tray
from runboard.run.refusal import Refused
from runboard.web.door.pages import page, refusal, said, see_other, shop_zone, workshop
from runboard.web.door.run_pages import due_moment, known_person, known_run
from runboard.web.forms.field import Choices, Field, Section
from runboard.web.forms.form import Form, posted, shown

REASONS = ("tear-out", "crack", "broke", "size", "surface", "engraving", "burnt", "knot", "other")
_ONCE = re.compile(r"[0-9a-f]{32}")
_A_DAY = timedelta(days=1)

part = Blueprint("paper", __name__)


@part.get("/plan/runs/<key>/paper")
def trays(key: str) -> Response:
    """Whose card it is."""
    run = known_run(key)
    entered = request.args.get("entered", "")
    return page(
        "trays/paper.html", run=run, trays=list(run.trays.values()), entered=entered if entered in run.trays else ""
    )


@part.get("/plan/runs/<key>/trays/<tray>/paper")
def card(key: str, tray: str) -> Response:
    """The rows of a tray's card, with what is counted already."""
    run = known_run(key)
    return _page(run, _known_tray(run, tray), _form(run, run.trays[tray]))


@part.post("/plan/runs/<key>/trays/<tray>/paper")
def enter(key: str, tray: str) -> Response:
    """Look at what is typed; enter it once it was looked at and is still so."""
    run = known_run(key)
    found = _known_tray(run, tray)
    form = posted(_sections(run, found), request.form)
    paper = TypedCard(key, tray, _read(form, run, found), known_person(), _once())
    outcome = None
    if not form.is_wrong:
        outcome = _tried(form, run, found, paper)
    if outcome is None:
        return _page(run, found, form, 422)
    seen = _seen(found, paper)
    if request.form.get("how") != "enter" or request.form.get("seen") != seen:
        return _page(run, found, form, outcome=outcome, seen=seen)
    try:
        enter_paper(workshop(), paper)
    except Refused as refused:
        form.problems.append(refusal(refused))
    except RowRefused as row:
        _put_beside(form, run, found, row)
    else:
        return see_other(f"/plan/runs/{key}/paper?entered={tray}")
    return _page(run, found, form, 422)


def _tried(form: Form, run: RunState, tray: Tray, paper: TypedCard) -> Outcome | None:
    try:
        outcome = try_paper(workshop(), paper)
    except RowRefused as row:
        _put_beside(form, run, tray, row)
        return None
    if not any(line.how == "written" for line in outcome.lines):
        form.problems.append(said("refused", "nothing written", {"tray": tray.id}))
        return None
    return outcome


def _put_beside(form: Form, run: RunState, tray: Tray, row: RowRefused) -> None:
    at = _steps(run, tray)[row.step].index
    field = "time" if row.refused.code in ("moment to come", "earlier than row", "before the run") else "good"
    form.errors[f"r{at}.{field}"] = refusal(row.refused)


# the form


def _steps(run: RunState, tray: Tray) -> dict[str, Step]:
    return run.route_of(tray).by_key


def _sections(run: RunState, tray: Tray) -> list[Section]:
    """One for each row of the card; what is counted already is folded away."""
    people = _people()
    reasons = tuple((word, word) for word in (said("scrap", reason) for reason in REASONS))
    found = []
    for step in run.route_of(tray).steps:
        known = step.key in tray.counts
        note = said("paper", "counted", dict(zip(("good", "scrap"), totals(tray, step.key), strict=True)))
        name = f"r{step.index}"
        fields = (
            Field(f"{name}.good", said("paper", "good"), "count", empty=None, half=True),
            Field(f"{name}.scrap", said("paper", "scrap"), "count", empty=None, half=True),
            Field(f"{name}.why", said("paper", "why scrap"), choices=reasons, half=True),
            Field(f"{name}.person", said("paper", "who"), "choice", choices=people, half=True),
            Field(f"{name}.day", said("paper", "day"), "date", half=True),
            Field(f"{name}.time", said("paper", "finished at"), "time", half=True),
        )
        found.append(Section(step.name, fields, folded=known, note=note if known else ""))
    return found


def _people() -> Choices:
    return (("", said("paper", "nobody")), *names_now(workshop()).who_can_be_named())


def _form(run: RunState, tray: Tray) -> Form:
    return shown(_sections(run, tray), {})


def _read(form: Form, run: RunState, tray: Tray) -> list[CardRow]:
    """The rows on which something is written; what cannot be read gets its sentence."""
    rows: list[CardRow] = []
    record = form.record()
    day, known = "", dict(_people())
    for step in run.route_of(tray).steps:
        name, typed = f"r{step.index}", record[f"r{step.index}"]
        day = typed["day"] or day
        if all(value in ("", None) for value in typed.values()):
            continue
        good, scrap = _count(form, f"{name}.good", typed["good"]), _count(form, f"{name}.scrap", typed["scrap"])
        if good is None and f"{name}.good" not in form.errors:
            form.errors[f"{name}.good"] = said("paper", "how many good")
        why = typed["why"] or (said("scrap", "other") if scrap else "")
        at = _moment(form, name, day, typed["time"])
        rows.append(CardRow(step.key, good or 0, scrap, why, typed["person"], at))
        if typed["person"] not in known:
            form.errors[f"{name}.person"] = said("refused", "person unknown", {"person": typed["person"]})
    return rows


def _count(form: Form, name: str, value: object) -> int | None:
    if value is None or (isinstance(value, int) and 0 <= value <= 100_000):
        return value
    form.errors[name] = said("paper", "whole number")
    return None


def _moment(form: Form, name: str, day: str, clock: str) -> datetime | None:
    """The moment of a row: on its day, else on that of the row above, else on the last day on which it can have been."""
    if not clock:
        if form.text(f"{name}.day"):
            form.errors[f"{name}.time"] = said("paper", "no time")
        return None
    now = workshop().clock.now()
    zone = shop_zone()
    try:
        local = time.fromisoformat(clock).replace(tzinfo=None)
        meant = date.fromisoformat(day) if day else now.astimezone(zone).date()
        if not day and datetime.combine(meant, local, zone) > now:
            meant -= _A_DAY
        return due_moment(meant.isoformat(), f"{local:%H:%M}", workshop().book.time_zone)
    except (ValueError, OverflowError):
        form.errors[f"{name}.time"] = said("paper", "unreadable moment")
        return None


def _once() -> str:
    """The id of this typing, from its form."""
    given = request.form.get("once", "")
    return given if _ONCE.fullmatch(given) else uuid4().hex


def _seen(tray: Tray, paper: TypedCard) -> str:
    """What was looked at, shortened: the tray as it was, and what was typed."""
    return hashlib.sha256(repr((tray, paper.rows)).encode()).hexdigest()[:16]


def _known_tray(run: RunState, tray: str) -> Tray:
    return run.trays.get(tray) or abort(404)


def _page(
    run: RunState, tray: Tray, form: Form, status: int = 200, outcome: Outcome | None = None, seen: str = ""
) -> Response:
    typed = {section.title for section in form.sections if any(form.text(field.name) for field in section.fields)}
    return page(
        "trays/paper_card.html", status=status, run=run, tray=tray, form=form, outcome=outcome, seen=seen, once=_once(),
        people=dict(_people()), typed=typed,
    )  # fmt: skip
