"""The good rate: which share of the pieces comes good, of an operation and of a route, and where that is known from."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from runboard.run.refusal import Refused
from runboard.shop.product import Operation

# What to think of an operation about which nobody has said or counted anything.
USUAL_GOOD_RATE = 0.99
# A guess weighs as much as this many counted pieces: two trays may move it, one bad piece may not overturn it.
GUESS_WEIGHT = 10
LEAST_GOOD_RATE = 0.01


@dataclass(frozen=True)
class GoodRate:
    """A good rate and where it comes from: ``guess``, or ``counted`` over so many ``pieces``."""

    rate: float
    source: Literal["guess", "counted"]
    pieces: int = 0

    @property
    def said(self) -> str:
        """'guess' or 'counted 40': as an opened run keeps it."""
        return "guess" if self.source == "guess" else f"counted {self.pieces}"


def check_good_rate(rate: float) -> None:
    """Refuses what is no good rate (0.01 to 1)."""
    if not LEAST_GOOD_RATE <= rate <= 1:
        raise Refused("good rate out of range", rate=rate, least=LEAST_GOOD_RATE)


def good_rate_from_counts(good: int, bad: int, guess: float | None = None) -> GoodRate:
    """The good rate of an operation from its counted pieces, beginning at a guess.

    The conjugate update of a Beta distribution by binomial counts (Bayes-Laplace; any text on Bayesian statistics):
    prior Beta(w·g, w·(1-g)) with the guess g weighing w = 10 pieces, posterior mean (w·g + good) / (w + good + bad).
    """
    g = USUAL_GOOD_RATE if guess is None else guess
    check_good_rate(g)
    if good < 0 or bad < 0:
        raise Refused("pieces out of range", pieces=min(good, bad), most=None, load=1)
    counted = good + bad
    if not counted:
        return GoodRate(g, "guess")
    return GoodRate(max(LEAST_GOOD_RATE, (GUESS_WEIGHT * g + good) / (GUESS_WEIGHT + counted)), "counted", counted)


def rolled_throughput_yield(rates: Iterable[float]) -> float:
    """The share that passes every step good: the product of the steps' yields (rolled throughput yield, M. Harry)."""
    return math.prod(rates)


def until_personal(operations: Sequence[Operation]) -> tuple[Operation, ...]:
    """The operations that blanks go through: up to and with the one at which pieces become personal, else all."""
    for at, operation in enumerate(operations):
        if operation.personal:
            return tuple(operations[: at + 1])
    return tuple(operations)


def route_good_rate(operations: Sequence[Operation], counted: Mapping[str, tuple[int, int]] | None = None) -> GoodRate:
    """The good rate of a route as far as extras are chosen for it (see ``until_personal``).

    ``counted`` has (good, bad) for an operation's key. The rate is the product of the steps' rates; it is called
    counted where at least one step is, with the pieces of the least counted among those.
    """
    counts = counted or {}
    steps = [
        good_rate_from_counts(*counts.get(operation.key, (0, 0)), guess=operation.good_rate)
        for operation in until_personal(operations)
    ]
    rate = max(LEAST_GOOD_RATE, rolled_throughput_yield(step.rate for step in steps))
    pieces = [step.pieces for step in steps if step.source == "counted"]
    return GoodRate(rate, "counted", min(pieces)) if pieces else GoodRate(rate, "guess")
