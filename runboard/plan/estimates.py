"""How long a time element takes on average: somebody's guess, moved by what was measured, with its spread.

A length is a mean, not the middle: a finish is a sum of many lengths, and the sum of means is the mean of the sum, while
the sum of middles is too short (times are skewed: a long one is longer than a short one is short). A guess is taken as
such a mean, and what was measured comes in as its arithmetic mean, as in time study.

The guess and each session's mean are weighed by how much they vary (credibility: Bühlmann & Gisler, A Course in
Credibility Theory, 3 and 4). What was measured in one session counts as one group, since a bad evening makes all its
times long: the mean of n times then varies by session² + load²/n. So a few sessions move a guess, and one that was bad
moves it only a little. Spreads are those of logarithms, which times are usually near to being normal in.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Mapping, MutableMapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Literal

from runboard.plan.schedule.problem.nouns import Block
from runboard.plan.schedule.told.forecast import Scatter, Spread, usual_spread
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState, ShopState
from runboard.shop.book import Book
from runboard.shop.hours import local_day
from runboard.shop.parts import Part
from runboard.shop.product import ZERO

# How far off a guess may be: the standard deviation of its logarithm.
GUESS_SPREAD = 0.25
# What further off was no work: a load that was pressed through afterwards, or one that stood over lunch.
MOST_FACTOR = 5.0
# A spread is moved by as many times as this before it follows what was measured.
SPREAD_WEIGHT = 4


@dataclass(frozen=True)
class Usual:
    """How much times vary where nobody has measured them: from session to session, and from load to load."""

    session: float
    load: float


HANDS = Usual(session=0.25, load=0.25)
MACHINE = Usual(session=0.03, load=0.03)


@dataclass(frozen=True)
class KnownTime:
    """What is known of a time element. ``length`` is of a load, for hand time of a piece: what it takes on average.

    ``scatter`` is how much one more time will differ from it: by what is not known of the element itself, by the session,
    and by the load; ``spread`` is all of that, the standard deviation of the logarithm.
    """

    length: timedelta
    scatter: Scatter
    source: Literal["guess", "measured"] = "guess"
    times: int = 0

    @property
    def spread(self) -> float:
        """The standard deviation of the logarithm of one more time."""
        return self.scatter.total

    @property
    def said(self) -> str:
        """'guess' or 'measured 9'."""
        return "guess" if self.source == "guess" else f"measured {self.times}"


@dataclass(frozen=True)
class Measured:
    """One measured time of a load, for hand time of a piece of it: in which session, on which wood."""

    length: timedelta
    session: tuple[str, date]
    wood: str


# Product, step, kind of time element.
Key = tuple[str, str, str]
Times = Mapping[Key, Sequence[Measured]]
# For each run what was measured in it, as long as the run is the same.
MeasuredRuns = MutableMapping[str, tuple[RunState, Times]]


@dataclass
class Estimates:
    """The times of every element, as a scheduling problem asks for them: ``estimates(run, step, part)``."""

    times: Times = field(default_factory=dict)
    _known: dict[tuple[Key, timedelta, str], KnownTime] = field(default_factory=dict)

    def __call__(self, run: RunState, step: Step, part: Part) -> timedelta:
        """How long a part of a load takes."""
        guess = _guess(step, part.kind)
        return part.length * (self.of(run, step, part.kind).length / guess) if guess else part.length

    def before(self, run: str, day: date) -> "Estimates":
        """The times as they were known when that run was opened on a day of the shop: by other runs' sessions until then."""
        return Estimates(
            {
                key: earlier
                for key, times in self.times.items()
                if (earlier := [each for each in times if each.session[0] != run and each.session[1] <= day])
            }
        )

    def of(self, run: RunState, step: Step, kind: str) -> KnownTime:
        """What is known of one time element: setup, loading, machine, unloading of a load, or hand time of a piece."""
        key, guess = (run.product, step.key, kind), _guess(step, kind)
        asked = (key, guess, run.wood)
        if asked not in self._known:
            fitting = [
                measured for measured in self.times.get(key, ()) if not run.wood or measured.wood in ("", run.wood)
            ]
            self._known[asked] = updated(guess, fitting, MACHINE if kind == "machine" else HANDS)
        return self._known[asked]


def spread_in(state: ShopState, estimates: Estimates) -> Spread:
    """How much each time element scatters, as it was learned; as usual for a step that its run's route no longer has."""

    def spread(block: Block, kind: str) -> Scatter:
        run = state.runs[block.run]
        step = run.route.step(block.step)
        return usual_spread(block, kind) if step is None else estimates.of(run, step, kind).scatter

    return spread


def estimates_from(state: ShopState, book: Book, kept: MeasuredRuns | None = None) -> Estimates:
    """Estimates from every run that the log knows. ``kept`` holds what was read of runs before; give the same again."""
    kept = {} if kept is None else kept
    found: dict[Key, list[Measured]] = defaultdict(list)
    for run in state.runs.values():
        before = kept.get(run.id)
        if before is None or before[0] is not run:
            before = kept[run.id] = (run, measured_in(run, book.time_zone))
        for key, times in before[1].items():
            found[key] += times
    return Estimates(found)


def measured_in(run: RunState, zone: str) -> Times:
    """What a run measured: only what was pressed or sensed from its beginning to its end, nothing assumed, interrupted
    or corrected."""
    found: dict[Key, list[Measured]] = defaultdict(list)
    for load in (*run.past.values(), *run.loads.values()):
        step = run.step_of(load)
        if step is None or load.state == "off":
            continue
        wood = next((run.trays[tray].wood for tray in load.pieces if tray in run.trays), "") or run.wood
        for kind, length in _lengths(load, step):
            began = min(span.began_at for span in load.spans)
            found[run.product, step.key, kind].append(Measured(length, (run.id, local_day(began, zone)), wood))
    return found


def updated(guess: timedelta, times: Iterable[Measured], usual: Usual) -> KnownTime:
    """A guess moved by measured times, each session a group. Without a guess there is nothing to move."""
    sessions: dict[object, list[float]] = defaultdict(list)
    for measured in times:
        ratio = measured.length / guess if guess else 0.0
        if 1 / MOST_FACTOR <= ratio <= MOST_FACTOR:
            sessions[measured.session].append(ratio)
    count = sum(len(ratios) for ratios in sessions.values())
    load = _load_variance(([math.log(ratio) for ratio in ratios] for ratios in sessions.values()), usual)
    guessed = GUESS_SPREAD**-2
    weights = [1 / (usual.session**2 + load / len(ratios)) for ratios in sessions.values()]
    means = [math.fsum(ratios) / len(ratios) for ratios in sessions.values()]
    precision = guessed + math.fsum(weights)
    mean = (guessed + math.fsum(weight * mean for weight, mean in zip(weights, means, strict=True))) / precision
    scatter = Scatter(element=precision**-0.5, session=usual.session, load=math.sqrt(load))
    return KnownTime(guess * mean, scatter, "measured" if count else "guess", count)


def _load_variance(sessions: Iterable[Sequence[float]], usual: Usual) -> float:
    """How much times of one session vary: the usual variance, moved by that around each session's own mean (the scaled
    inverse chi-squared update, its middle)."""
    around, free = 0.0, 0
    for logs in sessions:
        mean = math.fsum(logs) / len(logs)
        around += math.fsum((log - mean) ** 2 for log in logs)
        free += len(logs) - 1
    return (SPREAD_WEIGHT * usual.load**2 + around) / (SPREAD_WEIGHT + free)


def _lengths(load: Load, step: Step) -> Iterable[tuple[str, timedelta]]:
    """The measured time elements of a load. One of which any part was not measured is not known at all."""
    sums = {kind: _sum(load, kind) for kind in ("loading", "machine", "unloading", "hand")}
    setup = step.pass_.setup if load.fresh else ZERO
    pieces = sum(load.pieces.values())
    if sums["machine"]:
        yield "machine", sums["machine"]
    if load.state == "done" and sums["unloading"]:
        yield "unloading", sums["unloading"]
    # The first loading after a change is the setup with a usual loading; the first hand work is both as well.
    if sums["loading"] and not load.fresh:
        yield "loading", sums["loading"]
    if sums["loading"] > step.pass_.loading and load.fresh and setup:
        yield "setup", sums["loading"] - step.pass_.loading
    if load.state == "done" and pieces and sums["hand"] > setup:
        yield "hand", (sums["hand"] - setup) / pieces


def _sum(load: Load, kind: str) -> timedelta:
    """All of it, over everybody who was at it; nought where any of it was not measured, or goes on."""
    spans = [span for span in load.spans if span.kind == kind]
    lengths = [span.ended_at - span.began_at for span in spans if span.measured and span.ended_at is not None]
    return sum(lengths, ZERO) if len(lengths) == len(spans) else ZERO


def _guess(step: Step, kind: str) -> timedelta:
    found: timedelta = getattr(step.pass_, kind, ZERO)
    return found
