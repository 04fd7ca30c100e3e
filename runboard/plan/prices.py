"""What a move would cost the finish of a plan, as the difference between two plans made in the same way.

One has the plan's own first thing in front, the other the alternative; both are made by the same rule. It is counted in
minutes in which somebody is there, so it is nothing where a wait or the hours hold the run anyway.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from runboard.plan.move import Move
from runboard.plan.schedule.problem.hours import open_minutes, open_spans
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.run.state import ShopState

# The tick at which all would be done with this block begun first; None where no plan was found.
FinishWith = Callable[[int], int | None]

MOST_ALTERNATIVES = 3
# A price below this is no reason to change what was shown.
SMALL = 5.0
WORK = ("start", "unload", "go on", "settle")


@dataclass(frozen=True)
class Price:
    """How much later all would be done: in minutes in which somebody is there, and in windows of people's hours."""

    minutes: float
    windows: int = 0

    @property
    def is_small(self) -> bool:
        return self.minutes < SMALL and not self.windows


@dataclass(frozen=True)
class Question:
    """A plan of a problem that a state is, and how others like it would end."""

    state: ShopState
    problem: Problem
    plan: Plan
    finish_with: FinishWith


def block_of(problem: Problem, move: Move) -> int | None:
    """The block that a move begins; for what was begun in part, what is left of it."""
    if move.code not in WORK:
        return None
    there = [block for block in problem.blocks if block.run == move.run and not block.begun]
    exact = next((block.index for block in there if block.load == move.load), None)
    if exact is not None or move.code != "start":
        return exact
    trays = set(move.trays)
    alike = (one for one in there if one.step == move.step and one.unloads is None and trays & set(one.trays))
    return next((block.index for block in alike), None)


def later(problem: Problem, finish: int, than: int) -> Price:
    """How much later one finish is than another: never less than nothing."""
    if finish <= than:
        return Price(0.0)
    return Price(open_minutes(problem, than, finish), windows_by(problem, finish) - windows_by(problem, than))


def windows_by(problem: Problem, tick: int) -> int:
    """How many stretches of hours have begun before ``tick``."""
    return sum(opens < tick for opens, _ in open_spans(problem))


def prices_of(
    question: Question, found: Sequence[Move], own: Move | None, shown: str, first: int | None
) -> dict[str, Price]:
    """What moves cost: ``own``, the plan's first thing, nothing; of the others as many sorts as are shown with a price,
    that of the one ``shown`` so far among them. ``first`` is the block that the plan begins first."""
    prices: dict[tuple[str, ...], Price] = {} if own is None else {_sort(own): Price(0.0)}
    base = question.plan.finish(question.problem) if first is None else question.finish_with(first)
    by_move: dict[str, Price] = {}
    for move in sorted(found, key=lambda one: one.id != shown):
        block = block_of(question.problem, move)
        if block is None or base is None:
            continue
        if _sort(move) not in prices and len(prices) <= MOST_ALTERNATIVES:
            finish = question.finish_with(block)
            if finish is not None:
                prices[_sort(move)] = later(question.problem, finish, base)
        if _sort(move) in prices:
            by_move[move.id] = prices[_sort(move)]
    return by_move


def _sort(move: Move) -> tuple[str, ...]:
    """What moves share that cost the same: the same step of a run for another tray."""
    return (move.code, move.run, move.step)
