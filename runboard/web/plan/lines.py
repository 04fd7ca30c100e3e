"""Who gets what of a run: each order line with what is ready of it, and its ticks."""

from collections.abc import Sequence
from itertools import groupby
from typing import Any

from flask import Blueprint, Response, request

from runboard.floor.changing.runs import tick_order
from runboard.floor.looking.at_hand import names_now
from runboard.run.fold.state import RunState, Ticked
from runboard.run.refusal import Refused
from runboard.run.rules.allotted import TICKS, LineNow, lines_of
from runboard.web.door.pages import page, refusal, see_other, workshop
from runboard.web.door.run_pages import day, known_person, known_run

part = Blueprint("plan_lines", __name__)


@part.get("/plan/runs/<key>/lines")
def lines(key: str) -> Response:
    """Every order line: what can be handed over stands first. ``only``: that line alone, as after a press on it, so that no
    other customer's buttons come to lie where it was pressed; ``ask``: whether it is ticked though not all of it is ready."""
    return _page(known_run(key), request.args.get("only", ""), request.args.get("ask", ""))


@part.post("/plan/runs/<key>/lines")
def tick(key: str) -> Response:
    """One is packed, collected, paid, or is not after all. It says which, so that a press from an old page turns nothing round."""
    run, asked = known_run(key), request.form
    on, line = "on" in asked, asked.get("line", "")
    ticked, only = asked.get("on") or asked.get("off", ""), f"/plan/runs/{run.id}/lines?only={line}"
    try:
        tick_order(workshop(), run.id, line, ticked, on, known_person(), some="some" in asked)
    except Refused as refused:
        if refused.code == "some ready":
            return see_other(f"{only}&ask={ticked}")
        return _page(known_run(key), line, problems=[refusal(refused)], status=422)
    return see_other(only)


def _page(run: RunState, only: str, ask: str = "", problems: Sequence[str] = (), status: int = 200) -> Response:
    found = lines_of(run)
    alone = [line for line in found if line.order.line == only]
    return page(
        "plan/lines.html",
        status=status,
        run=run,
        heaps=[(heap, [_shown(line, ask if alone else "") for line in some]) for heap, some in _heaps(alone or found)],
        counts={heap: len(some) for heap, some in _heaps(found)},
        alone=bool(alone),
        problems=problems,
    )


def _heaps(found: Sequence[LineNow]) -> list[tuple[str, list[LineNow]]]:
    """The lines by what they wait for: ('ready', 'making' or 'collected', lines)."""
    return [(heap, list(some)) for heap, some in groupby(found, key=_heap)]


def _heap(line: LineNow) -> str:
    return "ready" if line.is_for_now else "collected" if line.is_over else "making"


def _shown(line: LineNow, ask: str) -> dict[str, Any]:
    """A line with what is ticked of it, and whether it is asked for the part that is ready."""
    names = names_now(workshop())
    ticks = [
        (tick, names.person(done.person) or 0, day(done.at), _some(line, tick, done))
        for tick, done in line.ticks.items()
    ]
    asks = ask if ask in TICKS and line.done(ask) < line.ready < line.order.pieces else ""
    return {"line": line, "ticks": ticks, "ask": asks, "whole": {tick for tick, *_, some in ticks if not some}}


def _some(line: LineNow, tick: str, done: Ticked) -> int:
    """Of how many pieces it is ticked; 0: of all."""
    return done.pieces if line.done(tick) < line.order.pieces else 0
