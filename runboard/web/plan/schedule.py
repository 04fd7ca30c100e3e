"""When it will be done: the section of the Plan page, of a run's page, and the search one press further down."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any, cast

from flask import Blueprint, Flask, Response

from runboard.floor.planning.planner import Planner
from runboard.floor.planning.plans import Shown, cannot_hold
from runboard.floor.planning.plans import latest as newest
from runboard.plan.schedule.problem.nouns import Problem
from runboard.plan.schedule.told.compared import Calmer
from runboard.plan.schedule.told.effort import PersonLoad, StationLoad
from runboard.plan.schedule.told.figures import Figures, Share
from runboard.plan.schedule.told.forecast import Forecast
from runboard.run.fold.state import RunState
from runboard.web.door.pages import page, see_other, workshop
from runboard.web.door.run_pages import known_person
from runboard.web.fittings import fittings
from runboard.web.plan.chart import Sitting, opens_on, sittings
from runboard.words.dues import late_said, limit_sentences, whom_of
from runboard.words.pace import PaceWords, pace_words
from runboard.words.plan import (
    Names,
    done_sentence,
    holds_sentence,
    left_out_sentences,
    range_sentence,
    share,
    span_of,
)
from runboard.words.sentences import sentence, zone_of
from runboard.words.spans import span_in_words

part = Blueprint("plan_schedule", __name__)


@dataclass(frozen=True)
class After:
    """The rest of the chart: from which sitting on, and in words."""

    at: int
    words: str


@dataclass(frozen=True)
class When:
    """The whole shop's plan in words and drawings; what is '' or () is not shown. ``is_coming`` where it is worked out;
    ``before`` and ``after`` lead to the chart's sittings that are not on this page."""

    none: str = ""
    is_coming: bool = False
    older: str = ""
    runs: tuple[tuple[RunState, str], ...] = ()
    late: tuple[str, ...] = ()
    range: str = ""
    evenings: tuple[str, ...] = ()
    holds: str = ""
    left_out: tuple[str, ...] = ()
    hours: tuple[str, ...] = ()
    calmer: str = ""
    loads: tuple[StationLoad, ...] = ()
    sittings: tuple[Sitting, ...] = ()
    before: str = ""
    after: After | None = None
    names: Names | None = None


@dataclass(frozen=True)
class Line:
    """The order lines that are due at one moment and are as likely to be there in time: for whom, and how many pieces."""

    due: datetime
    in_time: str
    whom: tuple[str, ...]
    pieces: int


@dataclass(frozen=True)
class RunWhen:
    """One run: when it is done, how sure that is, what it asks."""

    done: str = ""
    older: str = ""
    late: tuple[str, ...] = ()
    range: str = ""
    evenings: tuple[str, ...] = ()
    lines: tuple[Line, ...] = ()
    hands: str = ""
    left_out: tuple[str, ...] = ()


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)
    app.jinja_env.globals.update(span_of=span_of, pace_of=pace_of, search_gave_up=gave_up)


def planner() -> Planner | None:
    """This server's planner; None where it has none."""
    return fittings().planner


# What is said where there is no plan, by why.
_WHY_NONE = {
    "too much": "plan-too-much",
    "none": "plan-no-place",
    "not found": "plan-not-found",
    "looking": "plan-looking",
}


def _without_plan() -> When:
    """What is said where there is no plan, or no figures of it yet."""
    planned = newest(workshop())
    why = planned.why_none if planned is not None else None
    if planned is None or why is None:
        return When(none=sentence("plan-not-yet"), is_coming=True)
    left_out = left_out_sentences(names_for(planned.answer.problem), cannot_hold(planned))
    return When(none=sentence(_WHY_NONE[why]), is_coming=why == "looking", left_out=tuple(left_out))


def gave_up() -> bool:
    """Whether the search needed more memory than it may use, so that none goes on."""
    found = planner()
    return found is not None and found.gave_up()


def latest() -> Shown | None:
    """The plan at hand; nobody waits for a better one."""
    found = planner()
    return found.latest() if found is not None else None


def names_for(problem: Problem) -> Names:
    """What the plan's things are called in this shop."""
    shop = workshop()
    return Names(problem, shop.ledger.state.runs, shop.book, zone_of(shop.book.time_zone), shop.clock.now())


def when_done(shown: Shown | None, first: int = 0) -> When:
    """The section of the Plan page, its chart from the sitting ``first`` on."""
    if shown is None or shown.figures is None:
        return _without_plan()
    problem, found, names = shown.problem, shown.figures, names_for(shown.problem)
    drawn = tuple(sittings(found, first, names))
    return When(
        older=_older(shown, names),
        runs=tuple((run, _done(names, shown, found, run)) for run in names.runs.values() if run.state == "open"),
        late=tuple(late_said(names, found.late)),
        range=range_sentence(names, found.whole.finish, found.whole.outlook) if problem.blocks else "",
        evenings=_evenings(names, found.whole.outlook),
        holds=holds_sentence(names, found.holder),
        left_out=tuple(left_out_sentences(names, problem.left_out)),
        hours=tuple(_hours(names, one) for one in found.whole.loads if one.sessions),
        calmer=_calmer(names, found, shown.planned.calmer),
        loads=found.stations,
        sittings=drawn,
        before=_before(found, first, names),
        after=_after(found, first + len(drawn), names),
        names=names,
    )


def _before(found: Figures, first: int, names: Names) -> str:
    return names.say("chart-before") if first and found.charts else ""


def _after(found: Figures, at: int, names: Names) -> After | None:
    left = len(found.charts) - at
    return After(at, names.say("chart-after", count=left, day=opens_on(found, at, names))) if left > 0 else None


def run_when(shown: Shown | None, run: RunState) -> RunWhen | None:
    """The section of a run's page; None for one that is over, or where no plan is there yet."""
    if shown is None or run.state != "open":
        return None
    if shown.figures is None:
        return RunWhen(done=sentence("plan-not-yet"))
    names, found = names_for(shown.problem), shown.figures
    share = found.runs.get(run.id, Share())
    return RunWhen(
        done=_done(names, shown, found, run),
        older=_older(shown, names),
        late=tuple(late_said(names, found.late, run.id)),
        range=range_sentence(names, share.finish, share.outlook) if share.finish else "",
        evenings=_evenings(names, share.outlook),
        lines=tuple(_lines(run, share.outlook)),
        hands=names.say("hands", hands=_span(share.hands)) if share.hands else "",
        left_out=tuple(left_out_sentences(names, [one for one in shown.problem.left_out if one.run == run.id])),
    )


def _done(names: Names, shown: Shown, found: Figures, run: RunState) -> str:
    if run.id not in shown.planned.answer.state.runs:
        return names.say("not-yet")
    out, share = any(one.run == run.id for one in shown.problem.left_out), found.runs.get(run.id)
    if share is None:
        return names.say("nothing-fits" if out else "done-already")
    done = done_sentence(names, share.finish, share.outlook, share.loads, known_person())
    return f"{done} {names.say('part')}" if out else done


def _older(shown: Shown, names: Names) -> str:
    return names.say("older", at=shown.made_at) if shown.is_older else ""


def _hours(names: Names, one: PersonLoad) -> str:
    person = names.problem.people[one.person].name
    watching = _span(one.watching) if one.watching else "no"
    return names.say(
        "hours-person", person=person, presence=_span(one.presence), hands=_span(one.hands), watching=watching,
        walks=one.walks,
    )  # fmt: skip


def _calmer(names: Names, found: Figures, calmer: Calmer | None) -> str:
    """How many walks there are, and what fewer would cost; '' where nobody knows of a calmer plan."""
    if calmer is None:
        return ""
    walks, later = sum(one.walks for one in found.whole.loads), span_in_words(timedelta(minutes=calmer.minutes))
    return names.say("calmer", walks=walks, fewer=calmer.walks, later=later)


def _evenings(names: Names, outlook: Forecast | None) -> tuple[str, ...]:
    """The chance to be done by each evening, from the first that has one to the first that is nearly sure."""
    found = []
    for tick, chance in outlook.by_evening if outlook is not None else ():
        if chance >= 0.01:
            found.append(names.say("evening", day=names.day(tick - 1), share=share(chance, "times in")))
        if chance >= 0.99:
            break
    return tuple(found)


def _lines(run: RunState, outlook: Forecast | None) -> list[Line]:
    chances = outlook.by_due if outlook is not None else {}
    found: dict[tuple[datetime, str], Line] = {}
    for one in sorted(
        (order for order in run.orders if order.due is not None), key=lambda order: cast(datetime, order.due)
    ):
        at = (run.id, one.line)
        key = (cast(datetime, one.due), share(chances[at], "times in") if at in chances else "")
        line = found.get(key) or Line(*key, (), 0)
        found[key] = replace(line, whom=(*line.whom, whom_of(one)), pieces=line.pieces + one.pieces)
    return list(found.values())


def _span(ticks: int) -> str:
    return span_in_words(span_of(ticks))


# one press further down


def pace_of(shown: Shown) -> PaceWords:
    """How fast it goes; put into words only where it is shown, not each second while a search is looked at."""
    return PaceWords() if shown.figures is None else pace_words(shown.figures, names_for(shown.problem))


@part.get("/plan/search")
def search() -> Response:
    """What no plan can beat, and the search for a better one."""
    found = planner()
    shown = found.latest() if found is not None else None
    task = found.search() if found is not None else None
    return page("plan/search.html", "search", plans=found is not None, shown=shown, task=task, **_bound(shown))


@part.post("/plan/search")
def look_further() -> Response:
    """Look for a better plan."""
    found = planner()
    if found is not None:
        found.look_further()
    return see_other("/plan/search")


@part.post("/plan/search/end")
def end() -> Response:
    """Stop looking; the best plan so far stays."""
    found = planner()
    if found is not None:
        found.stop()
    return see_other("/plan/search")


def _bound(shown: Shown | None) -> dict[str, Any]:
    if shown is None or not shown.problem.blocks:
        return {"done": "", "limits": [], "older": ""}
    names, finish = names_for(shown.problem), shown.plan.finish(shown.problem)
    done = names.say("itself", at=names.tick(finish))
    limits = [] if shown.bound is None else list(limit_sentences(names, shown.plan, shown.bound))
    return {"done": done, "limits": limits, "older": _older(shown, names)}
