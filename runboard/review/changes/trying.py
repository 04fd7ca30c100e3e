"""What ideas would have saved of a run that is over: each is tried on its replay, and meets the same luck as the run did.

The replay goes through the run's own order with lengths drawn by name (common random numbers; any text on simulation, such as
Law, *Simulation Modeling and Analysis*, on comparing alternatives): so a difference is the change's, go by go. What only
allows more, or asks less time, is never shown as worse: whatever was done could be done with it as well. A change that makes
other loads has no load, and no session of one, whose luck it could share: there both sides keep only what is not known of each
element, and of two that become one not that either.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import combinations
from typing import Any

from runboard.plan.change import Change, OneVisit, several, singles
from runboard.plan.schedule.problem.nouns import FAR, TICK, Problem
from runboard.plan.schedule.problem.people import walks_of
from runboard.plan.schedule.rule.rule import Rule
from runboard.plan.schedule.told.forecast import Scatter
from runboard.review.changes.beaten import with_beaten
from runboard.review.changes.nouns import NOTHING, NOUGHT, Idea, Span3, Together, Tried, Worth
from runboard.review.changes.payback import payback_of
from runboard.review.changes.pieces import Counts, pieces_saved
from runboard.review.changes.replayed import about_the_same, only_allows, problem_with
from runboard.review.held.known import Scatters
from runboard.review.held.replay import Replay, drawn, finishes, replay, replay_of, usual_goes
from runboard.review.held.replayable import Replayable
from runboard.run.refusal import Refused

# Of so many ideas that help, the pairs and the order are looked for: sixteen more goes.
MOST_TOGETHER = 5
SHARES = (5, 50, 95)
# Of fewer of the goes that find a place for all the work a change says nothing.
FITS = 0.95
_A_TICK = 1.0


def tried(
    known: Replayable,
    ideas: Iterable[Idea],
    goes: int | None = None,
    seed: int = 1,
    worth: Worth | None = None,
    counts: Counts | None = None,
) -> tuple[Tried, ...]:
    """Each idea tried on a run, in their order. ``goes`` is how often the run is replayed by chance, by default as often as
    takes well under a second; the same seed meets the same luck. One that makes no sense for this run says why."""
    return _all_tried(Trial(known, goes, seed), ideas, worth or Worth(), counts or {})


def together(known: Replayable, found: Sequence[Tried], goes: int | None = None, seed: int = 1) -> Together:
    """The two of those that help which save most at once, and the order in which to buy all of them: the first saves most
    alone, each next one most beside those before it; what saves nothing any more beside them is left out."""
    return _together(Trial(known, goes, seed), found)


def tried_together(
    known: Replayable,
    ideas: Iterable[Idea],
    worth: Worth,
    counts: Counts,
    goes: int | None = None,
    seed: int = 1,
    before: Iterable[Tried] = (),
) -> tuple[tuple[Tried, ...], Together]:
    """Both, for a child process. What was tried ``before``, of the same run by as many goes, is taken from there."""
    trial, known_by_now = Trial(known, goes, seed), {one.idea.change: one for one in before}
    found = with_beaten(
        [
            _tried(trial, idea, worth, counts) if old is None else _worth(replace(old, idea=idea), worth, counts)
            for idea, old in ((idea, known_by_now.get(idea.change)) for idea in ideas)
        ]
    )
    return found, _together(trial, found)


def _all_tried(trial: "Trial", ideas: Iterable[Idea], worth: Worth, counts: Counts) -> tuple[Tried, ...]:
    return with_beaten([_tried(trial, idea, worth, counts) for idea in ideas])


def _together(trial: "Trial", found: Sequence[Tried]) -> Together:
    some = sorted((one for one in found if one.helps), key=lambda one: (one.earlier.mid, one.hands.mid), reverse=True)
    some = some[:MOST_TOGETHER]
    changes = {one.idea.id: one.idea.change for one in some}
    pairs = {
        pair: trial.saved(several(*(changes[each] for each in pair)))
        for pair in combinations(changes, 2)
        if not about_the_same(*(changes[each] for each in pair))
    }
    fits = {pair: saved for pair, saved in pairs.items() if saved is not None}
    pair = max(fits, key=lambda each: fits[each].key, default=None)
    order, steps = _order(trial, changes)
    if pair is None:
        return Together(None, None, None, order, steps)
    return Together(pair, fits[pair].earlier, fits[pair].hands, order, steps)


def _order(trial: "Trial", changes: Mapping[str, Change]) -> tuple[tuple[str, ...], tuple[tuple[Span3, Span3], ...]]:
    order: list[str] = []
    steps: list[tuple[Span3, Span3]] = []
    so_far: Saved | None = trial.nothing
    while so_far is not None and len(order) < len(changes):
        bought = [changes[each] for each in order]
        left = [each for each in changes if not any(about_the_same(changes[each], one) for one in bought)]
        tries = {each: trial.saved(several(*bought, changes[each])) for each in left if each not in order}
        gains = {each: saved.beside(so_far) for each, saved in tries.items() if saved is not None}
        best = max(gains, key=lambda each: gains[each].key, default=None)
        if best is None or not gains[best].helps:
            break
        order.append(best)
        steps.append((gains[best].earlier, gains[best].hands))
        so_far = tries[best]
    return tuple(order), tuple(steps)


def _tried(trial: "Trial", idea: Idea, worth: Worth, counts: Counts) -> Tried:
    try:
        saved = trial.saved_of(idea.change)
    except Refused as refused:
        return Tried(idea, NOTHING, NOTHING, refused=(refused.code, dict(refused.facts)))
    return _worth(Tried(idea, saved.earlier, saved.hands, sooner=saved.sooner), worth, counts)


def _worth(found: Tried, worth: Worth, counts: Counts) -> Tried:
    """The same with the pieces that it saves, and when it is paid back."""
    if found.refused is not None:
        return found
    pieces = pieces_saved(found.idea.change, counts)
    hours = found.hands.mid + (worth.a_good_piece or NOUGHT) * pieces
    runs = payback_of(found.idea.cost, hours, worth.hour_rate)
    months = runs / worth.runs_a_month if runs is not None and worth.runs_a_month else None
    return replace(found, pieces=pieces, payback_runs=runs, payback_months=months)


# go by go


@dataclass(frozen=True)
class Saved:
    """What a change saved in each go: ticks of the finish and of hands, arrays of one number a go."""

    finish: Any
    work: Any

    @property
    def earlier(self) -> Span3:
        return _range(self.finish)

    @property
    def hands(self) -> Span3:
        return _range(self.work)

    @property
    def sooner(self) -> float:
        """The share of the goes that were done sooner by a minute and more."""
        return float((self.finish >= 2 * _A_TICK).mean())

    @property
    def key(self) -> tuple[float, float]:
        """What more of it is better by: the finish, then hands, as likely as not, then on average."""
        return float(self.finish.mean()), float(self.work.mean())

    @property
    def helps(self) -> bool:
        """Whether all is done earlier on average, or no later and with less of hands."""
        finish, hands = self.key
        return finish > _A_TICK / 2 or (abs(finish) <= _A_TICK / 2 and hands > _A_TICK / 2)

    def beside(self, other: "Saved") -> "Saved":
        """What it saves beside another."""
        return Saved(self.finish - other.finish, self.work - other.work)


class Trial:
    """A run as it was, go by go, against which changes are tried. Refused 'try not replayed' where it cannot be replayed."""

    def __init__(self, known: Replayable, goes: int | None = None, seed: int = 1) -> None:
        self.known, self.seed = known, seed
        self._alike: dict[frozenset[str], tuple[Any, Any]] = {}
        self._saved: dict[Change, Saved] = {}
        as_it_was = replay(known)
        if as_it_was is None:
            raise Refused("try not replayed")
        self.as_it_was = as_it_was
        is_compiled = Rule(as_it_was.problem).is_compiled
        self.goes = goes or usual_goes(len(as_it_was.problem.blocks), is_compiled=is_compiled)

    @cached_property
    def before(self) -> tuple[Any, Any]:
        return self._ends_and_hands(self.as_it_was)

    def _before_alike(self, merged: frozenset[str]) -> tuple[Any, Any]:
        """The same with all loads of an element alike."""
        if merged not in self._alike:
            self._alike[merged] = self._ends_and_hands(_alike(self.as_it_was, merged))
        return self._alike[merged]

    @cached_property
    def _loads(self) -> frozenset[tuple[str, str]]:
        return _loads_of(self.as_it_was.problem)

    @property
    def nothing(self) -> Saved:
        """What no change saves."""
        ends, hands = self.before
        return Saved(ends - ends, hands - hands)

    def saved(self, change: Change) -> Saved | None:
        """What a change saves; None where it makes no sense."""
        try:
            return self.saved_of(change)
        except Refused:
            return None

    def saved_of(self, change: Change) -> Saved:
        """What a change saves, reckoned once. Refused where it makes no sense, and 'try fits nowhere' where the work found no place."""
        if change not in self._saved:
            self._saved[change] = self._reckoned(change)
        return self._saved[change]

    def _reckoned(self, change: Change) -> Saved:
        problem = problem_with(self.known, self.as_it_was.problem, change)
        if problem == self.as_it_was.problem:
            return self.nothing
        after = None if _leaves_out(problem, self.as_it_was) else replay_of(self.known, problem, self.as_it_was)
        if after is None:
            raise Refused("try fits nowhere")
        if _loads_of(problem) == self._loads:
            (before, worked), (ends, hands) = self.before, self._ends_and_hands(after)
        else:
            merged = self._merged_in(change)
            (before, worked), (ends, hands) = self._before_alike(merged), self._ends_and_hands(_alike(after, merged))
        fits = (ends < FAR) | (before >= FAR)
        if fits.mean() < FITS:
            raise Refused("try fits nowhere")
        finish = (before - ends) * fits
        return Saved(finish.clip(min=0) if only_allows(self.known.book, change) else finish, worked - hands)

    def _merged_in(self, change: Change) -> frozenset[str]:
        """The steps of operations that become one."""
        found: set[str] = set()
        for single in (single for single in singles(change) if isinstance(single, OneVisit)):
            route = self.known.state.runs[single.run].route
            keys = [operation.key for operation in route.product.operations]
            pair = keys[keys.index(single.first) :][:2]
            found |= {step.key for step in route.steps if step.operation.key in pair}
        return frozenset(found)

    def _ends_and_hands(self, one: Replay) -> tuple[Any, Any]:
        lengths = drawn(one, self.goes, self.seed)
        return finishes(one, self.goes, self.seed, lengths), _hands(one, lengths)


def _loads_of(problem: Problem) -> frozenset[tuple[str, str]]:
    return frozenset((block.step, block.load) for block in problem.blocks)


def _alike(one: Replay, merged: Collection[str]) -> Replay:
    """The replay with no more luck than what is not known of each element, and without that of some steps."""
    known = {
        (step, kind): Scatter(element=0.0 if step in merged else scatter.element)
        for (step, kind), scatter in one.spread.known.items()
    }
    return replace(one, spread=Scatters(known))


def _leaves_out(problem: Problem, before: Replay) -> bool:
    """Whether some of the work is in no plan with the change alone."""
    return len(problem.left_out) > len(before.problem.left_out)


def _hands(one: Replay, lengths: Any) -> Any:
    """Ticks of hands in each go, with the setups and the walks between rooms of the replay's own plan."""
    import numpy

    problem, plan = one.problem, one.plan
    asked = [stretch.attendance == "hands-on" for block in problem.blocks for stretch in block.stretches]
    asked += [placed.setup > 0 for placed in plan.placed]
    walks = sum(walk.end - walk.start for at in range(len(problem.people)) for walk in walks_of(problem, plan, at))
    found = lengths[:, numpy.array(asked, bool)].sum(axis=1, dtype=numpy.int64)
    return found + walks


def _range(ticks: Any) -> Span3:
    import numpy

    low, mid, high = (int(numpy.quantile(ticks, share / 100, method="inverted_cdf")) * TICK for share in SHARES)
    return Span3(low, mid, high)
