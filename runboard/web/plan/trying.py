"""Trying a change before making it: a form for each kind of change, and the answer side by side."""

from dataclasses import dataclass
from functools import partial
from urllib.parse import urlencode

from flask import Blueprint, Response, request

from runboard.floor.changing.kept_changes import drop_change, keep_change, kept_changes
from runboard.floor.looking.at_hand import as_read
from runboard.floor.planning.plans import holding_with_change
from runboard.floor.planning.try_change import what_can_be_tried
from runboard.plan.change import Change
from runboard.plan.schedule.told.compared import Compared
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.web.door.pages import page, refusal, see_other, shop_zone, workshop
from runboard.web.door.run_pages import known_person
from runboard.web.fittings import fittings
from runboard.web.forms.changes import change_asked, choices
from runboard.words.trying import ShopNow, answer_of, change_in_words, table_of

_HERE = "/plan/try"

part = Blueprint("plan_try", __name__)


@dataclass(frozen=True)
class TriedChange:
    """What was asked, and what came of it: ``wrong`` says why there is no answer, ``is_coming`` that there is none yet."""

    change: str = ""
    answer: tuple[str, ...] = ()
    rows: tuple[tuple[str, str, str], ...] = ()
    wrong: str = ""
    is_coming: bool = False


@part.get(_HERE)
def look() -> Response:
    """The forms, and above them the answer where a change was asked for."""
    found = what_can_be_tried(workshop(), request.args.get("run", ""))
    run = found.run
    return page(
        "plan/try.html",
        run=run,
        open_runs=found.open_runs,
        tried=_tried(run) if run is not None and request.args.get("what") else None,
        given=request.args,
        ticked=request.args.getlist("skills"),
        sent=[pair for pair in request.args.items(multi=True) if pair[0] != "run"],
        again=request.full_path,
        skills=found.skills,
        pairs=found.pairs,
        visits=found.visits,
        **choices(found.book),
        to_try=kept_changes(fittings().settings, run.id) if run is not None else [],
    )


@part.post(_HERE)
def keep() -> Response:
    """Keep the change for the Review, as it was answered; where that is too long ago, it is answered anew first."""
    run = request.form.get("run", "")
    change, found = _answered(run)
    if found is None:
        return see_other(f"{_HERE}?{urlencode(list(request.form.items(multi=True)))}")
    words = {
        "change": change_in_words(_tried_in(), run, change),
        "answer": " ".join(answer_of(_tried_in(), run, change, found)),
    }
    if found.after is None or found.left_out:
        raise Refused("try fits nowhere")
    keep_change(workshop(), fittings().settings, run, words, known_person(), change)
    return see_other(f"/review/runs/{run}/changes")


@part.post(f"{_HERE}/drop")
def drop() -> Response:
    """Take a change off a run's list."""
    run = request.form.get("run", "")
    drop_change(workshop(), fittings().settings, run, request.form.get("change", ""))
    return see_other(f"/review/runs/{run}/changes")


def _tried(run: RunState) -> TriedChange:
    try:
        change, found = _answered(run.id)
    except Refused as refused:
        return TriedChange(wrong=refusal(refused))
    shop = _tried_in()
    asked = change_in_words(shop, run.id, change)
    if found is None:
        return TriedChange(asked, is_coming=True)
    return TriedChange(asked, tuple(answer_of(shop, run.id, change, found)), tuple(table_of(shop, found)))


def _tried_in() -> ShopNow:
    return ShopNow(*as_read(workshop()), partial(holding_with_change, workshop()))


def _answered(run: str) -> tuple[Change, Compared | None]:
    change = change_asked(request.values, run, shop_zone())
    return change, fittings().trials.answer(run, change)
