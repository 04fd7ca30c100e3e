"""What held a run and what an hour of each thing is worth: the run replayed with that thing a fifth easier, by the same luck.
A service has no fifth: what counts is what it costs that there is an end of it.

Only what the longest chain of some replays goes through can move the finish (an hour won anywhere else is lost in a wait); the
rest is worth exactly nothing. What is easier allows the old plan too, so no go is counted as later: where the rule, which
does not look ahead, ends later, the old order would be kept.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import timedelta
from typing import Any

from runboard.plan.schedule.problem.hours import Presence, open_spans
from runboard.plan.schedule.problem.nouns import FAR, TICK, Plan, Problem
from runboard.plan.schedule.rule.rule import Rule
from runboard.plan.schedule.told.holding import held_spans
from runboard.plan.schedule.told.shared import uses
from runboard.review.held.because import because
from runboard.review.held.known import Replayable
from runboard.review.held.nouns import Held, HourValue, What
from runboard.review.held.relief import Eased, eased, there_before, things, used_beyond, with_lengths
from runboard.review.held.replay import Replay, drawn, replay, usual_goes
from runboard.review.held.replayable import replayable
from runboard.review.held.stretches import held_stretches, whats
from runboard.review.past import Past

FIFTH = 0.8
# Of so many goes the longest chain is looked at, beside that of the mean.
_CHAINS_COMPILED, _CHAINS_PLAIN = 6, 2
# What moves the finish by so much of the most is as good a guess: the first in order of ``things`` is said.
_AS_MUCH = 0.9
# Hours are what everything goes through: they are said only where they move so many times what anything else does.
_HOURS_MORE = 2
# From so long on a cost is said to so much.
_STEPS = (
    (timedelta(hours=4), timedelta(hours=1)),
    (timedelta(hours=1), timedelta(minutes=5)),
    (timedelta(minutes=1), timedelta(minutes=1)),
)
_HOUR_TICKS = timedelta(hours=1) / TICK
# What is rounded off an hour leaves an hour.
_ABOUT_AN_HOUR = 0.95


def held(past: Past) -> Held | None:
    """What held a run; None where it cannot be replayed."""
    known = replayable(past)
    return None if known is None else held_of(known)


def held_of(known: Replayable, goes: int | None = None, seed: int = 1) -> Held | None:
    """The same of a run that can be replayed, from so many ``goes``; the same seed answers the same."""
    as_it_was = replay(known)
    if as_it_was is None:
        return None
    worth = Worth(as_it_was, goes, seed)
    values = sorted(worth.values(), key=lambda value: -value.earlier)
    most = worth.most()
    problem = as_it_was.problem
    return Held(
        most,
        None if most is None else _as_said(worth.never_in_the_way(most)),
        held_stretches(problem, as_it_was.plan),
        tuple(values),
        problem.moment(as_it_was.finish),
        known.finished,
        None if most is None else because(known, as_it_was, most),
    )


class Worth:
    """By how much each thing moves the finish of a replayed run, on average over the same goes."""

    def __init__(self, as_it_was: Replay, goes: int | None = None, seed: int = 1) -> None:
        self.replay = as_it_was
        rule = Rule(as_it_was.problem)
        many = goes or usual_goes(len(as_it_was.problem.blocks), is_compiled=rule.is_compiled)
        self.lengths = drawn(as_it_was, many, seed)
        self.finishes = self._finishes(rule, self.lengths)
        chains = _CHAINS_COMPILED if rule.is_compiled else _CHAINS_PLAIN
        self.in_chain = set(self._in_chains(chains))
        self._moved: dict[What, float] = {}
        self._there = Presence.of([open_spans(as_it_was.problem)])

    def moved(self, what: What) -> float:
        """The ticks by which the finish comes earlier where a thing is a fifth easier: 0 off every chain. Of a service, where
        there is no end of it: trays come by the board, and a place more for one of three moves nothing."""
        if what not in self._moved:
            left = 0 if what[0] == "service" else FIFTH
            self._moved[what] = (
                self._earlier(eased(self.replay, self.lengths, what, left)) if self._counts(what) else 0.0
            )
        return self._moved[what]

    def values(self) -> Iterator[HourValue]:
        """What an hour of each is worth."""
        for what in things(self.replay):
            yield self._value(what) if self._counts(what) else HourValue(what, timedelta(0))

    def most(self) -> What | None:
        """What moves the finish most; None where nothing does."""
        found = {what: self.moved(what) for what in things(self.replay)}
        others = {what: by for what, by in found.items() if what[0] != "hours"}
        top = max(others.values(), default=0.0)
        if found["hours", ""] > _HOURS_MORE * top:
            return "hours", ""
        return next((what for what, by in others.items() if by and by >= _AS_MUCH * top), None)

    def never_in_the_way(self, what: What) -> timedelta:
        """How much earlier the run would have been done had a thing never held it: of a service there is no end, people are
        there round the clock; hands, machine, wait, air or walks of it take no time."""
        return _span(max(self._earlier(eased(self.replay, self.lengths, what, 0)), self.moved(what)))

    def _counts(self, what: What) -> bool:
        return what in self.in_chain

    def _value(self, what: What) -> HourValue:
        """What an hour of it moves the finish by, in the shop's hours; where there is less of it, all of that. Nothing is made
        more of than was tried."""
        if what[0] == "service":
            easier = eased(self.replay, self.lengths, what, 0)
            taken = self._taken_beyond(easier, what[1])
        else:
            easier = eased(self.replay, self.lengths, what, self._but_an_hour(what))
            taken = easier.less
        earlier = self._earlier(easier, self._passed)
        if taken <= 0:
            return HourValue(what, timedelta(0))
        if taken < _ABOUT_AN_HOUR * _HOUR_TICKS and what[0] != "hours":
            return HourValue(what, _span(earlier), _span(taken))
        return HourValue(what, _span(earlier * min(1.0, _HOUR_TICKS / taken)))

    def _but_an_hour(self, what: What) -> float:
        """How much of a thing is left where an hour of it is taken away, or of hours come to them."""
        if what[0] == "hours":
            there = there_before(self.replay.problem, self.replay.finish)
            return there / (there + _HOUR_TICKS)
        whole = eased(self.replay, self.lengths, what, 0).less
        return max(0.0, 1 - _HOUR_TICKS / whole) if whole else 0.0

    def _taken_beyond(self, easier: Eased, service: str) -> float:
        """The ticks of units of a service that are taken where there is no end of it and that there are not, while somebody is
        there; where nobody ever is, all."""
        rule, was = Rule(easier.problem), self.replay.problem
        if rule.finish(self.replay.priority, self.replay.knobs) < 0:
            return 0
        taken = _uses(easier.problem, rule.plan(), service)
        many = dict(was.services)[service]
        there = ((self._there.passed(start), self._there.passed(end), count) for start, end, count in taken)
        return used_beyond(there, many) or used_beyond(taken, many)

    def _passed(self, finishes: Any) -> Any:
        """Finishes in ticks of the shop's own hours."""
        import numpy

        return numpy.array([self._there.passed(tick) for tick in finishes.tolist()], numpy.int64)

    def _finishes(self, rule: Rule, lengths: Any) -> Any:
        import numpy

        rows = numpy.array(rule.ends(lengths, self.replay.priority, self.replay.knobs, []), numpy.int64)[:, 0]
        rows[rows < 0] = FAR
        return rows

    def _earlier(self, easier: Eased, counted: Callable[[Any], Any] = lambda finishes: finishes) -> float:
        """The mean of the ticks by which its goes end earlier, as they are ``counted``."""
        import numpy

        return float(numpy.mean(self._each_earlier(easier, counted)))

    def _each_earlier(self, easier: Eased, counted: Callable[[Any], Any] = lambda finishes: finishes) -> Any:
        import numpy

        found = self._finishes(Rule(easier.problem), easier.lengths)
        is_whole = (self.finishes < FAR) & (found < FAR)
        return numpy.where(is_whole, numpy.maximum(0, counted(self.finishes) - counted(found)), 0)

    def _in_chains(self, many: int) -> Iterator[What]:
        """What the longest chain of the mean and of some goes goes through."""
        problem = self.replay.problem
        yield from _through(problem, self.replay.plan)
        for row in self.lengths[:many].tolist():
            lengths, setups = iter(row), row[sum(len(block.stretches) for block in problem.blocks) :]
            blocks = (replace(with_lengths(block, lengths), setup=setups[block.index]) for block in problem.blocks)
            real = replace(problem, blocks=tuple(blocks))
            rule = Rule(real)
            if rule.finish(self.replay.priority, self.replay.knobs) >= 0:
                yield from _through(real, rule.plan())


def _through(problem: Problem, plan: Plan) -> Iterator[What]:
    for span in held_spans(problem, plan):
        yield whats(problem, span)
        if span.what in ("walk", "hours"):
            yield "walking" if span.what == "walk" else "hours", ""


def _as_said(span: timedelta) -> timedelta:
    """As exactly as it is known: what is said of it anywhere is then the same."""
    for least, step in _STEPS:
        if span >= least:
            return round(span / step) * step
    return span


def _uses(problem: Problem, plan: Plan, service: str) -> list[tuple[int, int, int]]:
    """(from, until, how many) of a service that a plan takes."""
    at = [key for key, _ in problem.services].index(service)
    every = (use for placed in plan.placed for use in uses(problem, plan, placed))
    return [(start, until, count) for start, until, _, known, count in every if known == at]


def _span(ticks: float) -> timedelta:
    return timedelta(seconds=round(ticks * TICK.total_seconds()))
