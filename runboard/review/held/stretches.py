"""What held a replayed run from its start to its finish, short moments put to what they lie beside."""

from collections.abc import Iterator

from runboard.plan.schedule.problem.hours import Presence, common, joined, open_spans
from runboard.plan.schedule.problem.nouns import TICK, Plan, Problem
from runboard.plan.schedule.told.holding import HeldSpan, held_spans, name_of
from runboard.review.held.nouns import HeldStretch, What

# What is shorter than this share of all hours, or than ten minutes, is not told of by itself.
_SHARE, _SHORT = 0.02, 20
# (what, from, until, open ticks)
_Stretch = tuple[What, int, int, int]


def whats(problem: Problem, span: HeldSpan) -> What:
    """What holds in a span, as it is called in every run. A walk is of the hands that it leads to something."""
    match span.what:
        case "walk":
            return "hands", problem.people[span.which].key
        case "hours" if span.which < 0:
            return "hours", ""
        case "hours" | "wait":
            return "wait", problem.blocks[span.which].step
    return span.what, name_of(problem, span.what, span.which)[-1]


def held_stretches(problem: Problem, plan: Plan) -> tuple[HeldStretch, ...]:
    """One after the other from the start to the finish: what held it, in moments."""
    spans = joined(open_spans(problem))
    found = list(_joined(_told(problem, plan, Presence.of([spans]))))
    shortest = max(_SHORT, int(_SHARE * sum(open_ for *_, open_ in found)))
    while len(found) > 1:
        open_, at = min(
            (open_ or (0 if what[0] != "hours" else shortest), at) for at, (what, _, _, open_) in enumerate(found)
        )
        if open_ >= shortest:
            break
        found = _without(found, at)
    return tuple(
        HeldStretch(
            what, problem.moment(start), problem.moment(end), open_ * TICK,
            tuple((problem.moment(opens), problem.moment(closes)) for opens, closes in common(((start, end),), spans)),
        )
        for what, start, end, open_ in found
    )  # fmt: skip


def _told(problem: Problem, plan: Plan, there: Presence) -> Iterator[_Stretch]:
    """Where nobody was there at all, that held it, whatever was waited for."""
    for span in held_spans(problem, plan):
        what, open_ = whats(problem, span), there.between(span.start, span.end)
        yield what if open_ else ("hours", ""), span.start, span.end, open_


def _joined(some: Iterator[_Stretch]) -> Iterator[_Stretch]:
    last: _Stretch | None = None
    for each in some:
        if last is not None and last[0] == each[0]:
            last = (last[0], last[1], each[2], last[3] + each[3])
        else:
            if last is not None:
                yield last
            last = each
    if last is not None:
        yield last


def _without(found: list[_Stretch], at: int) -> list[_Stretch]:
    """The one at a place put to the longer of its open neighbours; hours in which nobody is there stay what they are."""
    beside = [other for other in (at - 1, at + 1) if 0 <= other < len(found)]
    to = max(beside, key=lambda other: (found[other][3] > 0, found[other][3]))
    first, last = sorted((at, to))
    one = (found[to][0], found[first][1], found[last][2], found[at][3] + found[to][3])
    return list(_joined(iter([*found[:first], one, *found[last + 1 :]])))
