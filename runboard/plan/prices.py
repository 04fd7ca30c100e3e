"""What it would cost to begin a move now: the plan at hand beside the best found in which somebody does begin it.

Plans are compared in their order of importance: how late order lines are, then the finish, then walks. The finish is
counted in minutes in which somebody is there, so it is nothing where a wait or the hours hold the run anyway.
"""

from collections import Counter
from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from runboard.plan.move import Move
from runboard.plan.schedule.problem.hours import open_minutes, open_spans
from runboard.plan.schedule.problem.nouns import TICK, OrderDue, Plan, Problem
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import Made, dated, ends_of, lateness_of
from runboard.run.fold.state import ShopState

# (block, person)
Asked = tuple[int, int]

MOST_ALTERNATIVES = 3
# A finish later by less than this is no reason to change what was shown.
SMALL = 5.0
WORK = ("start", "unload", "go on", "settle")


@dataclass(frozen=True)
class Later:
    """So many ``pieces`` of an order line that are late, by so many minutes more than in the plan at hand; ``more`` says
    that the line is late in that one, too."""

    run: str
    line: str
    pieces: int
    minutes: float
    more: bool = False


@dataclass(frozen=True)
class Price:
    """What would be lost: order lines ``late``, the largest delay first; how much later all would be done, in ``minutes`` in
    which somebody is there and in ``windows`` of people's hours; how many ``walks`` more. All nought where nothing is."""

    late: tuple[Later, ...] = ()
    minutes: float = 0.0
    windows: int = 0
    walks: int = 0

    @property
    def is_small(self) -> bool:
        """Whether it breaks no promise: no order line later, no window lost, a few minutes at most."""
        return not self.late and not self.windows and self.minutes < SMALL

    @property
    def record(self) -> Mapping[str, Any]:
        """As a page is told of it."""
        late = [
            {
                "run": later.run,
                "line": later.line,
                "pieces": later.pieces,
                "minutes": round(later.minutes),
                "more": later.more,
            }
            for later in self.late
        ]
        found: dict[str, Any] = {"minutes": round(self.minutes, 1), "windows": self.windows}
        return found | ({"late": late} if late else {}) | ({"walks": self.walks} if self.walks else {})


def _unknown(blocks: Sequence[int], person: int) -> Price | None:
    return None


@dataclass(frozen=True)
class Question:
    """A plan of a problem that a state is, and what it costs that somebody begins a block now: (block, person), None where
    nobody knows; ``together`` is what several blocks of hand work cost as one load."""

    state: ShopState
    problem: Problem
    plan: Plan
    price: Callable[[int, int], Price | None]
    together: Callable[[Sequence[int], int], Price | None] = _unknown

    def sort(self, move: Move) -> Hashable:
        """What moves share that cost the same: they begin the same step of trays of which the same is left."""
        block = block_of(self.problem, move)
        return move.code, move.run, move.step, None if block is None else self.left[block]

    @cached_property
    def left(self) -> list[Hashable]:
        """For each block a number that it shares with those that are the same work with the same work after it."""
        numbers: dict[Hashable, int] = {}
        found = [0] * len(self.problem.blocks)
        waits = Counter(follower for row in self.problem.followers for follower in row)
        for block in reversed(self.problem.blocks):
            after = sorted((found[follower], waits[follower]) for follower in self.problem.followers[block.index])
            work = (block.run, block.step, block.pieces, len(block.trays), block.stretches, block.people, block.release)
            found[block.index] = numbers.setdefault((work, tuple(after)), len(numbers))
        return list(found)


def block_of(problem: Problem, move: Move) -> int | None:
    """The block that a move begins; for what was begun in part, what is left of it."""
    if move.code not in WORK:
        return None
    there = [block for block in problem.blocks if block.run == move.run and not block.begun]
    exact = next((block.index for block in there if block.load == move.load), None)
    if exact is not None or move.code != "start":
        return exact
    trays = set(move.trays)
    alike = (block for block in there if block.step == move.step and block.unloads is None and trays & set(block.trays))
    return next((block.index for block in alike), None)


def blocks_of(problem: Problem, move: Move) -> list[int]:
    """The blocks that a move begins: of hand work over several trays one for each."""
    first = block_of(problem, move)
    if first is None:
        return []
    if problem.blocks[first].load == move.load or any(
        stretch.kind != "hand" for stretch in problem.blocks[first].stretches
    ):
        return [first]
    alone = (block_of(problem, replace(move, load="", trays=(tray,))) for tray in move.trays)
    return list(dict.fromkeys(block for block in alone if block is not None))


def price_of(problem: Problem, plan: Plan, begun: Problem, with_it: Plan) -> Price:
    """What is lost with ``with_it``, a plan of the problem in which something was begun, beside ``plan``: a finish that
    is later is said also where order lines are less late."""
    late, was = lateness_of(begun, with_it), lateness_of(problem, plan)
    finish, before = with_it.finish(begun), plan.finish(problem)
    return Price(
        tuple(_later(begun, ends_of(begun, with_it), ends_of(problem, plan))) if late > was else (),
        open_minutes(problem, before, finish),
        max(0, windows_by(problem, finish) - windows_by(problem, before)),
        max(0, walks_in(begun, with_it) - walks_in(problem, plan)),
    )


def windows_by(problem: Problem, tick: int) -> int:
    """How many stretches of hours have begun before ``tick``."""
    return sum(opens < tick for opens, _ in open_spans(problem))


def prices_of(
    question: Question, person: int, found: Sequence[Move], own: Move | None, shown: str
) -> dict[str, Price | None]:
    """What it costs ``person`` to begin moves now: ``own``, which the plan begins now, nothing; of the others as many sorts
    as are shown with a price, that of the one ``shown`` so far among them. None where nobody knows."""
    prices: dict[Hashable, Price | None] = {} if own is None else {question.sort(own): Price()}
    by_move: dict[str, Price | None] = {}
    for move in sorted(found, key=lambda move: move.id != shown):
        block = block_of(question.problem, move)
        if block is None:
            continue
        blocks = blocks_of(question.problem, move)
        if len(blocks) > 1:
            by_move[move.id] = question.together(blocks, person)
            continue
        if move != own and _is_part(question.problem, move, block):
            by_move[move.id] = None
            continue
        sort = question.sort(move)
        if sort not in prices and len(prices) <= MOST_ALTERNATIVES:
            prices[sort] = question.price(block, person)
        by_move[move.id] = prices.get(sort)
    return by_move


def _is_part(problem: Problem, move: Move, block: int) -> bool:
    """Whether a move begins some pieces of its block alone, since the others are not there yet: no plan knows such a load."""
    return move.code == "start" and sum(move.pieces.values()) < problem.blocks[block].pieces


def _later(problem: Problem, ends: Sequence[int], before: Sequence[int]) -> list[Later]:
    """The order lines that are later than before, and late."""
    found = []
    now, then = Made(problem, ends), Made(problem, before)
    for order, due in dated(problem):
        there, was = (_there(made, order, row) for made, row in ((now, ends), (then, before)))
        by = there - max(due, was)
        if by > 0:
            minutes = by * TICK.total_seconds() / 60
            found.append(Later(order.run, order.line, _missing(problem, ends, order, due), minutes, more=was > due))
    return sorted(found, key=lambda later: -later.minutes)


def _there(made: Made, order: OrderDue, ends: Sequence[int]) -> int:
    there = made.there(order)
    return max(ends, default=0) if there is None else there


def _missing(problem: Problem, ends: Sequence[int], order: OrderDue, due: int) -> int:
    """How many pieces of an order line are not there when it is due."""
    made = sum(pieces for at, pieces in problem.last.get(order.run, ()) if ends[at] <= due)
    return max(1, min(order.pieces, order.by_then - made))
