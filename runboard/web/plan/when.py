"""When it will be done, in words and drawings: the section of the Plan page, and that of a run's page."""

from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from runboard.floor.planning.plans import ShownPlan, cannot_hold
from runboard.floor.planning.plans import latest as newest
from runboard.plan.schedule.told.compared import Calmer
from runboard.plan.schedule.told.effort import PersonLoad, StationLoad
from runboard.plan.schedule.told.figures import Figures, Share
from runboard.plan.schedule.told.forecast import Forecast
from runboard.run.fold.state import RunState
from runboard.web.door.pages import workshop
from runboard.web.door.run_pages import known_person
from runboard.web.plan.chart import Chart, chart, opens_on
from runboard.web.plan.schedule import gave_up, names_for, older_sentence
from runboard.words.dues import late_said, whom_of
from runboard.words.facts import span_in_words
from runboard.words.plan import Names, done_sentence, holds_sentence, left_out_sentences, range_sentence, span_of
from runboard.words.sentences import sentence, share_in_words

# What is said where there is no plan, by why.
_WHY_NONE = {
    "too much": "plan-too-much",
    "none": "plan-no-place",
    "not found": "plan-not-found",
    "looking": "plan-looking",
}


@dataclass(frozen=True)
class When:
    """The whole shop's plan in words and drawings; what is '' or () is not shown. ``is_coming`` where it is worked out;
    ``before`` and ``after`` (from which sitting on, in words) lead to the chart's sittings that are not on this page. ``loads`` are (station, its time at work,
    its share of the hours in per cent)."""

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
    loads: tuple[tuple[str, str, int], ...] = ()
    chart: Chart = field(default_factory=Chart)
    before: str = ""
    after: tuple[int, str] | None = None
    is_planned: bool = False
    gave_up: bool = False


@dataclass(frozen=True)
class DueLine:
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
    lines: tuple[DueLine, ...] = ()
    hands: str = ""
    left_out: tuple[str, ...] = ()


def _without_plan() -> When:
    """What is said where there is no plan, or no figures of it yet."""
    planned = newest(workshop())
    why = planned.why_none if planned is not None else None
    if planned is None or why is None:
        return When(none=sentence("plan-not-yet"), is_coming=True, gave_up=gave_up())
    left_out = left_out_sentences(names_for(planned.answer.problem), cannot_hold(planned))
    return When(none=sentence(_WHY_NONE[why]), is_coming=why == "looking", left_out=tuple(left_out), gave_up=gave_up())


def when_done(shown: ShownPlan | None, first: int = 0) -> When:
    """The section of the Plan page, its chart from the sitting ``first`` on."""
    if shown is None or shown.figures is None:
        return _without_plan()
    problem, found, names = shown.problem, shown.figures, names_for(shown.problem)
    drawn = chart(found, first, names)
    return When(
        older=older_sentence(shown, names),
        runs=tuple((run, _done(names, shown, found, run)) for run in names.runs.values() if run.state == "open"),
        late=tuple(late_said(names, found.late)),
        range=range_sentence(names, found.whole.finish, found.whole.outlook) if problem.blocks else "",
        evenings=_evenings(names, found.whole.outlook),
        holds=holds_sentence(names, found.holder),
        left_out=tuple(left_out_sentences(names, problem.left_out)),
        hours=tuple(_hours(names, load) for load in found.whole.loads if load.sessions),
        calmer=_calmer(names, found, shown.planned.calmer),
        loads=tuple(_load(names, load) for load in found.stations),
        chart=drawn,
        before=names.say("chart-before") if first and found.charts else "",
        after=_after(found, first + len(drawn.sittings), names),
        is_planned=True,
        gave_up=gave_up(),
    )


def _after(found: Figures, at: int, names: Names) -> tuple[int, str] | None:
    left = len(found.charts) - at
    return (at, names.say("chart-after", count=left, day=opens_on(found, at, names))) if left > 0 else None


def run_when(shown: ShownPlan | None, run: RunState) -> RunWhen | None:
    """The section of a run's page; None for one that is over, or where no plan is there yet."""
    if shown is None or run.state != "open":
        return None
    if shown.figures is None:
        return RunWhen(done=sentence("plan-not-yet"))
    names, found = names_for(shown.problem), shown.figures
    share = found.runs.get(run.id, Share())
    return RunWhen(
        done=_done(names, shown, found, run),
        older=older_sentence(shown, names),
        late=tuple(late_said(names, found.late, run.id)),
        range=range_sentence(names, share.finish, share.outlook) if share.finish else "",
        evenings=_evenings(names, share.outlook),
        lines=tuple(_lines(run, share.outlook)),
        hands=names.say("hands", hands=_span(share.hands)) if share.hands else "",
        left_out=tuple(left_out_sentences(names, [out for out in shown.problem.left_out if out.run == run.id])),
    )


def _done(names: Names, shown: ShownPlan, found: Figures, run: RunState) -> str:
    if run.id not in shown.planned.answer.state.runs:
        return names.say("not-yet")
    out, share = any(entry.run == run.id for entry in shown.problem.left_out), found.runs.get(run.id)
    if share is None:
        return names.say("nothing-fits" if out else "done-already")
    done = done_sentence(names, share.finish, share.outlook, share.loads, known_person())
    return f"{done} {names.say('part')}" if out else done


def _load(names: Names, load: StationLoad) -> tuple[str, str, int]:
    return names.problem.stations[load.station].name, _span(load.works), round(load.share * 100)


def _hours(names: Names, load: PersonLoad) -> str:
    person = names.problem.people[load.person].name
    watching = _span(load.watching) if load.watching else "no"
    return names.say(
        "hours-person", person=person, presence=_span(load.presence), hands=_span(load.hands), watching=watching,
        walks=load.walks,
    )  # fmt: skip


def _calmer(names: Names, found: Figures, calmer: Calmer | None) -> str:
    """How many walks there are, and what fewer would cost; '' where nobody knows of a calmer plan."""
    if calmer is None:
        return ""
    walks, later = sum(load.walks for load in found.whole.loads), span_in_words(timedelta(minutes=calmer.minutes))
    return names.say("calmer", walks=walks, fewer=calmer.walks, later=later)


def _evenings(names: Names, outlook: Forecast | None) -> tuple[str, ...]:
    """The chance to be done by each evening, from the first that has one to the first that is nearly sure."""
    found = []
    for tick, chance in outlook.by_evening if outlook is not None else ():
        if chance >= 0.01:
            found.append(names.say("evening", day=names.day(tick - 1), share=share_in_words(chance, "chance")))
        if chance >= 0.99:
            break
    return tuple(found)


def _lines(run: RunState, outlook: Forecast | None) -> list[DueLine]:
    chances = outlook.by_due if outlook is not None else {}
    found: dict[tuple[datetime, str], DueLine] = {}
    due = [(order.due, order) for order in run.orders if order.due is not None]
    for moment, order in sorted(due, key=lambda pair: pair[0]):
        at = (run.id, order.line)
        key = (moment, share_in_words(chances[at], "chance") if at in chances else "")
        line = found.get(key) or DueLine(*key, (), 0)
        found[key] = replace(line, whom=(*line.whom, whom_of(order)), pieces=line.pieces + order.pieces)
    return list(found.values())


def _span(ticks: int) -> str:
    return span_in_words(span_of(ticks))
