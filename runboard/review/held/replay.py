"""A run replayed: the dispatch rule with the order in which the work was really begun, in the hours that really were.

A change meets the same luck: the lengths of a hundred goes are drawn by name (``drawn_lengths``), so what a change moves is
the change's own.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any

from runboard.plan.change import Change, HoursAdded, OnePersonMore
from runboard.plan.changed import SOMEBODY, changed_problem
from runboard.plan.schedule.problem.from_book import ticks_in
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.hours import joined
from runboard.plan.schedule.problem.nouns import FAR, Block, Plan, Problem, Span
from runboard.plan.schedule.rule.greedy import STEP, by_start, has_wet_dust
from runboard.plan.schedule.rule.rule import Knobs, Rule
from runboard.plan.schedule.told.forecast import days_of, drawn_lengths
from runboard.review.held.going import AsItWas, of_block
from runboard.review.held.known import AT_LAST, Replayable, Scatters
from runboard.run.refusal import Refused
from runboard.shop.hours import Window, open_windows

# By so much longer everybody may have been there each time than anything tells.
_LONGER = tuple(timedelta(minutes=minutes) for minutes in (0, 5, 10, 15, 20, 30))
_STAYS = (0, 10 * STEP, 100 * STEP, 10**7)
# Goes for an answer in well under a second: so many blocks placed, compiled and plain.
_BLOCKS_COMPILED, _BLOCKS_PLAIN = 60_000, 6_000
_MOST_GOES, _FEWEST_GOES, _FEWEST_PLAIN = 100, 30, 8


@dataclass(frozen=True)
class Replay:
    """A run as the rule replays it: the plan and its finish (a tick) with the mean lengths; ``days`` says for each block in
    which session it is, for the luck that a session shares."""

    problem: Problem
    priority: tuple[int, ...]
    knobs: Knobs
    plan: Plan
    finish: int
    days: tuple[str, ...]
    spread: Scatters


def problem_of(known: Replayable, change: Change | None = None) -> Problem:
    """What the run was to make, as a problem with the lengths that were measured and the hours that were; with one change.
    Refuses a change that makes no sense, with the reason."""
    if change is None or isinstance(change, HoursAdded):
        made = problem_for(known.state, known.book, known.opened_at, known.lengths)
    else:
        made = changed_problem(known.state, known.book, known.opened_at, known.lengths, change)
    spans = {key: _there(known, made, key) for key in known.there}
    if isinstance(change, HoursAdded):
        spans[change.person] = (*spans.get(change.person, ()), *_added(known, made, change))
    if isinstance(change, OnePersonMore):
        comes = 0 if change.start is None else made.tick(change.start)
        like = spans.get(change.like, ())
        spans[SOMEBODY] = tuple((max(opens, comes), closes) for opens, closes in like if closes > comes)
    people = (replace(person, windows=joined(spans.get(person.key, person.windows))) for person in made.people)
    stations = (
        replace(station, runs=joined((*ticks_in(made.start, free), _at_last(known, made))))
        if (free := known.free.get(station.key)) is not None
        else station
        for station in made.stations
    )
    return replace(made, people=tuple(people), stations=tuple(stations))


def _there(known: Replayable, problem: Problem, person: str) -> tuple[Span, ...]:
    """When somebody really was there, a little longer as that fits, and at last round the clock."""
    there = ((began, ended + known.longer) for began, ended in known.there.get(person, ()))
    return joined((*ticks_in(problem.start, there), _at_last(known, problem)))


def _at_last(known: Replayable, problem: Problem) -> Span:
    return max(0, problem.tick(known.ended_at + AT_LAST)), FAR


def _added(known: Replayable, problem: Problem, change: HoursAdded) -> tuple[Span, ...]:
    """The hours of a change, where the person was not there."""
    if known.book.person(change.person) is None:
        raise Refused("try nobody")
    window = Window(change.day.weekday(), change.opens, change.closes)
    day = datetime.combine(change.day, change.opens, known.opened_at.tzinfo)
    spans = open_windows((window,), known.book.time_zone, day - timedelta(days=1), day + timedelta(days=2))
    found = ticks_in(problem.start, [(max(opens, known.opened_at), closes) for opens, closes in spans])
    if not found:
        raise Refused("try hours")
    return found


# the order


def priorities(known: Replayable, problem: Problem) -> list[int]:
    """For each block its rank in the order in which the work was really begun. Where its tray was never begun at its step, it
    comes as those of its step came: the nth of these blocks with the nth share of them; where nobody knows that, after what
    it waits for."""
    by_step: dict[str, list[datetime]] = {}
    for (step, _), begun in known.order.items():
        by_step.setdefault(step, []).append(begun.at)
    for moments in by_step.values():
        moments.sort()
    many: dict[str, int] = {}
    for block in problem.blocks:
        many[block.step] = many.get(block.step, 0) + 1
    seen: dict[str, int] = {}
    found: list[datetime] = []
    for block in problem.blocks:
        nth = seen[block.step] = seen.get(block.step, -1) + 1
        moment = _moment(known, block)
        if moment is None and (moments := by_step.get(block.step, [])):
            moment = moments[nth * len(moments) // many[block.step]]
        if block.unloads is not None:
            moment = max(moment or known.opened_at, found[block.unloads])
        if moment is None:
            moment = max((found[before] for before in block.waits_for if before < block.index), default=known.opened_at)
        found.append(moment)
    return by_start(found)


def _moment(known: Replayable, block: Block) -> datetime | None:
    begun = of_block(known.order, block)
    if block.unloads is None:
        return min((each.at for each in begun), default=None)
    return min((each.unloaded_at or each.at for each in begun), default=None)


# the replay


def replay(known: Replayable, change: Change | None = None, as_it_was: Replay | None = None) -> Replay | None:
    """The run replayed, with one change. ``as_it_was`` is the replay without it: its knobs and sessions hold in this one too.
    None where nothing is to be made, or not all of it finds a place. Refuses a change that makes no sense."""
    return replay_of(known, problem_of(known, change), as_it_was)


def replay_of(known: Replayable, problem: Problem, as_it_was: Replay | None = None) -> Replay | None:
    """The same of a problem that somebody changed."""
    if not problem.blocks:
        return None
    rule, priority = Rule(problem), tuple(priorities(known, problem))
    knobs = as_it_was.knobs if as_it_was is not None else _nearest(known, rule, priority)
    finish = rule.finish(priority, knobs)
    if finish < 0 and knobs.late_wet:
        knobs = replace(knobs, late_wet=0)
        finish = rule.finish(priority, knobs)
    if finish < 0:
        return None
    plan = rule.plan("replayed")
    days = days_of(problem, plan) if as_it_was is None else _days_as(as_it_was, problem, plan)
    return Replay(problem, priority, knobs, plan, finish, tuple(days), known.spread)


def _nearest(known: Replayable, rule: Rule, priority: Sequence[int]) -> Knobs:
    """The knobs with which the rule begins everything nearest to when it was really begun."""
    others = (False, True) if len(rule.problem.people) > 1 else (False,)
    wets = (0, 60) if has_wet_dust(rule.problem) else (0,)
    tried = [Knobs(stay, other, wet) for wet in wets for stay in _STAYS for other in others]
    real = AsItWas(rule.problem, known.order).starts
    return min(tried, key=lambda knobs: _away(real, rule, priority, knobs))


def _away(real: Sequence[int], rule: Rule, priority: Sequence[int], knobs: Knobs) -> int:
    """The ticks between when everything is begun and when it really was, added up."""
    if rule.finish(priority, knobs) < 0:
        return FAR * len(real)
    starts = rule.begun()[0].tolist()
    return sum(abs(start - begun) for start, begun in zip(starts, real, strict=True) if begun < FAR)


def fitted(known: Replayable) -> Replayable:
    """The run with everybody there so many minutes longer each time as let the rule begin its work nearest to when it was really
    begun: a mean that is a minute too long would else put work off to another day that was done in this one."""
    problem = problem_of(known)
    if not problem.blocks:
        return known
    priority, real = priorities(known, problem), AsItWas(problem, known.order).starts
    knobs = _nearest(known, Rule(problem), priority)

    def away(longer: timedelta) -> int:
        people = (
            replace(one, windows=_there(replace(known, longer=longer), problem, one.key)) for one in problem.people
        )
        return _away(real, Rule(replace(problem, people=tuple(people))), priority, knobs)

    return replace(known, longer=min(_LONGER, key=away))


def _days_as(before: Replay, problem: Problem, plan: Plan) -> list[str]:
    """Sessions by those of the run as it was, so that what is moved to another day meets the same luck."""
    known: dict[object, str] = {}
    for block, day in zip(before.problem.blocks, before.days, strict=True):
        for name in _names(block):
            known.setdefault(name, day)
    own = days_of(problem, plan)
    return [
        next((known[name] for name in _names(block) if name in known), day)
        for block, day in zip(problem.blocks, own, strict=True)
    ]


def _names(block: Block) -> tuple[object, ...]:
    """What a block may be known by where trays and loads are others: its part of its load, its first tray at its step."""
    return (block.step, block.load, block.unloads is None), (block.step, block.trays[:1])


def usual_goes(blocks: int, *, is_compiled: bool) -> int:
    """How often a run is replayed by chance for an answer in well under a second."""
    if is_compiled:
        return max(_FEWEST_GOES, min(_MOST_GOES, _BLOCKS_COMPILED // max(1, blocks)))
    return max(_FEWEST_PLAIN, min(_FEWEST_GOES, _BLOCKS_PLAIN // max(1, blocks)))


def drawn(replay: Replay, goes: int, seed: int) -> Any:
    """goes × (lengths of stretches, then setups), named by what they are: the same work meets the same luck."""
    return drawn_lengths(replay.problem, goes, replay.spread, seed, replay.days)


def finishes(replay: Replay, goes: int | None = None, seed: int = 1, lengths: Any = None) -> Any:
    """The ticks at which all is done, an array with one for each go; FAR where something found no place. The same seed meets
    the same luck; ``lengths`` are drawn already, where they are given."""
    import numpy

    rule = Rule(replay.problem)
    goes = goes or usual_goes(len(replay.problem.blocks), is_compiled=rule.is_compiled)
    reals = drawn(replay, goes, seed) if lengths is None else lengths
    rows = numpy.array(rule.ends(reals, replay.priority, replay.knobs, []), numpy.int64)[:, 0]
    rows[rows < 0] = FAR
    return rows
