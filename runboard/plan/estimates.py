"""How long a time element takes on average: somebody's guess, moved by what was measured, with its spread.

Where a person overrules what was learned, that is the guess from then on, and only what is measured later moves it.

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
from collections.abc import Collection, Iterable, Mapping, MutableMapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta
from typing import Literal, NamedTuple

from runboard.plan.observed import guess_of, is_likely, observations, wood_of, word_before
from runboard.plan.schedule.problem.nouns import Block
from runboard.plan.schedule.told.forecast import Scatter, Spread, usual_spread
from runboard.run.fold.overruled import Overruled, TimeKey
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState, ShopState
from runboard.shop.book import Book
from runboard.shop.hours import local_day
from runboard.shop.machines import Reckoned
from runboard.shop.parts import Part

# How far off a guess may be: the standard deviation of its logarithm.
GUESS_SPREAD = 0.25
# The same of a time that was reckoned from a file: what the method leaves out, and how well the machine is described. Common
# practice, no source: 10 % is what people who check it against a clock speak of.
RECKONED_SPREAD = 0.10
# A spread is moved by as many times as this before it follows what was measured.
SPREAD_WEIGHT = 4


@dataclass(frozen=True)
class Usual:
    """How much times vary where nobody has measured them: from session to session, and from load to load."""

    session: float
    load: float


HANDS = Usual(session=0.25, load=0.25)
MACHINE = Usual(session=0.03, load=0.03)


def usual_of(kind: str) -> Usual:
    """How much times of a kind of element usually vary."""
    return MACHINE if kind == "machine" else HANDS


Source = Literal["guess", "measured", "said", "program", "engraving"]


@dataclass(frozen=True)
class KnownTime:
    """What is known of a time element. ``length`` is of a load, for hand time of a piece: what it takes on average.

    ``scatter`` is how much one more time will differ from it: by what is not known of the element itself, by the session,
    and by the load; ``spread`` is all of that, the standard deviation of the logarithm. ``overruled`` is what somebody said
    in place of all that was learned before, and why; ``source`` is 'said' while nothing has been measured since, and what was
    reckoned ('program') where the guess is from a ``file``.
    """

    length: timedelta
    scatter: Scatter
    source: Source = "guess"
    times: int = 0
    overruled: Overruled | None = None
    file: str = ""

    @property
    def spread(self) -> float:
        """The standard deviation of the logarithm of one more time."""
        return self.scatter.total

    @property
    def said(self) -> str:
        """'guess', 'program', 'said' or 'measured 9'."""
        return f"measured {self.times}" if self.source == "measured" else self.source


@dataclass(frozen=True)
class Measured:
    """One measured time of a load, for hand time of a piece of it: in which session, on which wood, begun when."""

    length: timedelta
    session: tuple[str, date]
    wood: str
    at: datetime | None = None


# Product, step, kind of time element.
Key = TimeKey
Times = Mapping[Key, Sequence[Measured]]
# For each run what was measured in it, as long as the run is the same.
MeasuredRuns = MutableMapping[str, tuple[RunState, Times]]


@dataclass
class Estimates:
    """The times of every element, as a scheduling problem asks for them: ``estimates(run, step, part)``. ``overruled`` are
    those that somebody said, of each element all, the newest last."""

    times: Times = field(default_factory=dict)
    overruled: Mapping[Key, Sequence[Overruled]] = field(default_factory=dict)
    _known: dict[tuple[Key, timedelta, str, Reckoned | None], KnownTime] = field(default_factory=dict)

    def __call__(self, run: RunState, step: Step, part: Part) -> timedelta:
        """How long a part of a load takes."""
        guess = guess_of(step, part.kind)
        return part.length * (self.of(run, step, part.kind).length / guess) if guess else part.length

    def before(self, run: RunState, day: date) -> "Estimates":
        """The times as they were known when that run was opened on a day of the shop: by other runs' sessions until then."""
        return Estimates(
            {
                key: earlier
                for key, times in self.times.items()
                if (earlier := [each for each in times if each.session[0] != run.id and each.session[1] <= day])
            },
            self.with_words_until(run.opened_at).overruled,
        )

    def with_words_until(self, moment: datetime) -> "Estimates":
        """The same times, without what somebody said after that moment."""
        said = {key: [word for word in words if word.at <= moment] for key, words in self.overruled.items()}
        return Estimates(self.times, said)

    def of(self, run: RunState, step: Step, kind: str) -> KnownTime:
        """What is known of one time element: setup, loading, machine, unloading of a load, or hand time of a piece."""
        key, guess = (run.product, step.key, kind), self.guess(run, step, kind)
        said = self.said(run, step, kind)
        reckoned = reckoned_from(step, kind) if said is None else None
        asked = (key, guess, run.wood, reckoned)
        if asked not in self._known:
            known = updated(guess, self.counted(run, step, kind), usual_of(kind), spread_of(reckoned))
            source: Source = "said" if said is not None else "guess" if reckoned is None else reckoned.what
            file = reckoned.name if reckoned is not None else ""
            self._known[asked] = replace(known, overruled=said, source="measured" if known.times else source, file=file)
        return self._known[asked]

    def guess(self, run: RunState, step: Step, kind: str) -> timedelta:
        """What measured times move: what somebody said, else what the route says."""
        said = self.said(run, step, kind)
        return guess_of(step, kind) if said is None else said.length

    def said(self, run: RunState, step: Step, kind: str) -> Overruled | None:
        """What somebody said last in place of what was learned."""
        words = self.words(run, step, kind)
        return words[-1] if words else None

    def words(self, run: RunState, step: Step, kind: str) -> Sequence[Overruled]:
        """All that somebody said of it, the newest last."""
        return self.overruled.get((run.product, step.key, kind), ())

    def guess_then(self, run: RunState, step: Step, kind: str, began_at: datetime | None) -> timedelta:
        """The guess of when a load was begun: by no other is its time judged."""
        word = word_before(self.words(run, step, kind), began_at)
        return guess_of(step, kind) if word is None else word.length

    def counted(self, run: RunState, step: Step, kind: str) -> list[Measured]:
        """The measured times that move the guess: on this run's wood, since somebody overruled it."""
        words, said = self.words(run, step, kind), self.said(run, step, kind)
        times = self.times.get((run.product, step.key, kind), ())
        return [one for one in times if is_of_wood(run, one.wood) and word_before(words, one.at) is said]


def reckoned_from(step: Step, kind: str) -> Reckoned | None:
    """The file that a time element of a step was reckoned from; None where it is somebody's guess."""
    return step.pass_.reckoned if kind == "machine" else None


def spread_of(reckoned: Reckoned | None) -> float:
    """How far off a guess may be, or what was reckoned from a file."""
    return GUESS_SPREAD if reckoned is None else RECKONED_SPREAD


def is_of_wood(run: RunState, wood: str) -> bool:
    """Whether what was measured on a wood says something of a run's."""
    return not run.wood or wood in ("", run.wood)


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
    return Estimates(found, state.overruled)


def measured_in(run: RunState, zone: str) -> Times:
    """What a run measured: only what was pressed or sensed from its beginning to its end, nothing assumed, interrupted
    or corrected."""
    found: dict[Key, list[Measured]] = defaultdict(list)
    for one in observations(run):
        if one.length is not None and not one.why:
            began = one.began_at or run.opened_at
            session = (run.id, local_day(began, zone))
            measured = Measured(one.length, session, wood_of(run, one.load), began)
            found[run.product, one.step.key, one.kind].append(measured)
    return found


def updated(guess: timedelta, times: Iterable[Measured], usual: Usual, spread: float = GUESS_SPREAD) -> KnownTime:
    """A guess, off by so much as a rule, moved by measured times, each session a group. Without a guess there is nothing to
    move."""
    return moved(guess, by_session(guess, times).values(), usual, spread)


class Session(NamedTuple):
    """The likely times of one session, as parts of the guess: how many, their mean, and how far their logarithms lie around
    their own mean (squares, added up)."""

    times: int
    mean: float
    around: float


def by_session(guess: timedelta, times: Iterable[Measured]) -> dict[tuple[str, date], Session]:
    """What was measured in each session."""
    found: dict[tuple[str, date], list[float]] = defaultdict(list)
    for measured in times:
        if is_likely(guess, measured.length):
            found[measured.session].append(measured.length / guess)
    return {session: _session(ratios) for session, ratios in found.items()}


def _session(ratios: Sequence[float]) -> Session:
    logs = [math.log(ratio) for ratio in ratios]
    mean = math.fsum(logs) / len(logs)
    return Session(len(ratios), math.fsum(ratios) / len(ratios), math.fsum((log - mean) ** 2 for log in logs))


def moved(guess: timedelta, sessions: Collection[Session], usual: Usual, spread: float = GUESS_SPREAD) -> KnownTime:
    """A guess moved by sessions, each a group. ``spread`` is how far off it may be.

    How much times of one session vary is the usual variance, moved by that around each session's own mean (the scaled inverse
    chi-squared update, its middle); how much sessions vary likewise, by what their means differ beyond their loads.
    """
    count = sum(session.times for session in sessions)
    around = math.fsum(session.around for session in sessions)
    load = (SPREAD_WEIGHT * usual.load**2 + around) / (SPREAD_WEIGHT + count - len(sessions))
    between = _between(sessions, load, usual)
    weights = [1 / (between + load / session.times) for session in sessions]
    guessed = spread**-2
    precision = guessed + math.fsum(weights)
    means = (weight * session.mean for weight, session in zip(weights, sessions, strict=True))
    mean = (guessed + math.fsum(means)) / precision
    scatter = Scatter(element=precision**-0.5, session=math.sqrt(between), load=math.sqrt(load))
    return KnownTime(guess * mean, scatter, "measured" if count else "guess", count)


def _between(sessions: Collection[Session], load: float, usual: Usual) -> float:
    """How much sessions vary (the variance of logarithms), with what the loads of a session alone would make taken off."""
    logs = [math.log(session.mean) for session in sessions]
    weights = [1 / (usual.session**2 + load / session.times) for session in sessions]
    free = max(0, len(logs) - 1)
    if not free:
        return usual.session**2
    mean = math.fsum(weight * log for weight, log in zip(weights, logs, strict=True)) / math.fsum(weights)
    of_loads = load * free / len(logs) * math.fsum(1 / session.times for session in sessions)
    around = math.fsum((log - mean) ** 2 for log in logs) - of_loads
    return max(0.0, SPREAD_WEIGHT * usual.session**2 + around) / (SPREAD_WEIGHT + free)
