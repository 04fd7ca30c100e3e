"""Who gets what of a run: each order line with what is ready of it, and its ticks."""

from flask import Blueprint, Response, request

from runboard.floor.changing.runs import tick_order
from runboard.floor.looking.at_hand import names_now
from runboard.run.fold.state import OrderLine, RunState
from runboard.run.refusal import Refused
from runboard.run.rules.allotted import LineNow, lines_of
from runboard.web.door.pages import page, refusal, see_other, workshop
from runboard.web.door.run_pages import day, known_person, known_run
from runboard.words.dues import whom_of
from runboard.words.sentences import sentence

part = Blueprint("plan_lines", __name__)


@part.get("/plan/runs/<key>/lines")
def lines(key: str) -> Response:
    """Every order line: what can be handed over stands first."""
    return _page(known_run(key))


@part.post("/plan/runs/<key>/lines")
def tick(key: str) -> Response:
    """One is packed, collected, paid, or is not after all. It says which, so that a press from an old page turns nothing round."""
    run, asked = known_run(key), request.form
    on, line = "on" in asked, asked.get("line", "")
    try:
        tick_order(workshop(), run.id, line, asked.get("on") or asked.get("off", ""), on, known_person())
    except Refused as refused:
        return _page(known_run(key), [refusal(refused)], 422)
    return see_other(f"/plan/runs/{run.id}/lines#line-{line}")


def called(order: OrderLine) -> str:
    """What an order line is called: its text and for whom, else 'Order 3'."""
    return whom_of(order) if order.text or order.whom else sentence("order-called", {"line": order.line})


def _page(run: RunState, problems: list[str] | None = None, status: int = 200) -> Response:
    found = lines_of(run)
    shown = [{"line": line, "called": called(line.order), "ticks": _ticks(line)} for line in found]
    return page("plan/lines.html", status=status, run=run, lines=shown, problems=problems or [])


def _ticks(line: LineNow) -> dict[str, tuple[str, str]]:
    """(who, when) of what is ticked."""
    names = names_now(workshop())
    return {tick: (names.person(done.person), day(done.at)) for tick, done in line.ticks.items()}
