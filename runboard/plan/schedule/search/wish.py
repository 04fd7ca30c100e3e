"""What a model is to look for, for how long, and what came of it."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from runboard.plan.schedule.problem.nouns import Plan, Span

# By one person from start to end; with one change of watcher; or by whoever is free: nobody is named, so such a plan is one
# only once it is staffed, but its bound holds.
Watching = Literal["named", "by turns", "anyone"]


@dataclass(frozen=True)
class Early:
    """Instead of the least finish: as little as possible still to begin at each of ``ticks``, by ``weights`` of blocks."""

    ticks: tuple[int, ...]
    weights: dict[int, int]


@dataclass(frozen=True)
class Wish:
    """What a model is to look for: a finish before ``before``, and not before ``at_least``, which is known already.
    ``between`` narrows when blocks may begin. ``watching`` is by one person a run, by turns, or by anybody who is free.
    ``late`` is by how many ticks order lines may be late, all together; None: nobody asks. ``dues`` asks for the least of
    that instead of the least finish."""

    before: int
    at_least: int = 0
    between: dict[int, Span] = field(default_factory=dict)
    watching: Watching = "named"
    setups: bool = True
    early: Early | None = None
    late: int | None = None
    dues: bool = False


@dataclass(frozen=True)
class Limits:
    """How long a solve may take. ``work`` is the solver's own measure, which is the same on every computer."""

    seconds: float
    workers: int = 1
    seed: int = 1
    work: float | None = None


@dataclass(frozen=True)
class Answer:
    """What a solve came to: a plan, a bound on what was asked for, whether everything was tried; and the seconds it took."""

    plan: Plan | None
    bound: int
    is_all: bool
    seconds: float


class Stop:
    """Ends a solve from another thread: ``ask`` returns at once, and the solve that was given this ends within some
    hundredths of a second with what it has. Once asked, no solve begins: other loops look at ``asked`` between their goes.
    ``ask`` may be called again and again, before a solve, in it and after it; a search takes a new one for each problem.
    """

    def __init__(self) -> None:
        self.asked = False
        self._ends: Callable[[], object] | None = None

    def ask(self) -> None:
        """End what goes on, and begin nothing more."""
        self.asked = True
        ends = self._ends
        if ends is not None:
            ends()

    def ends(self, ends: Callable[[], object] | None) -> None:
        """How what goes on now is ended; None where nothing does."""
        self._ends = ends
