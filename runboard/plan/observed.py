"""What each load of a run tells of how long its time elements take: a length that teaches, or why it teaches none.

Only what was pressed or sensed from its beginning to its end is a length. Hands are added up: two people at a load for four
minutes are eight minutes of its hand time. Setup is the first loading after a change less the usual loading; where hands do
the work, the first hand time after a change holds the setup too.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from statistics import median

from runboard.run.fold.overruled import Overruled
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState, Span
from runboard.shop.product import ZERO

# What further off its guess was no work: a load that was pressed through afterwards, or one that stood over lunch.
MOST_FACTOR = 5.0

# Why a load tells no length of an element, as far as the load itself says it.
TAKEN_OFF, GOING_ON, INTERRUPTED, NO_LENGTH, NO_END = "taken off", "going on", "interrupted", "no length", "no end"
LOADED_AGAIN, WITH_SETUP, WITH_HANDS, ALL_USUAL = "loaded again", "with setup", "with hands", "all usual"


@dataclass(frozen=True)
class Observation:
    """One time element of a load. ``length`` is of the load, for hand time of a piece; None where nothing tells it. ``why``
    says why it teaches nothing, '' where it does."""

    load: Load
    step: Step
    kind: str
    length: timedelta | None
    why: str = ""

    @property
    def began_at(self) -> datetime | None:
        """When its load was begun, None of one that was never pressed."""
        return min((span.began_at for span in self.load.spans), default=None)


def observations(run: RunState) -> Iterator[Observation]:
    """Of every load that was begun, each element that its step asks for or somebody pressed."""
    usual = usual_loadings(run)
    for load in (*run.past.values(), *run.loads.values()):
        step = run.step_of(load)
        if step is not None:
            for kind, length, why in _of(load, step, usual.get(step.key, step.pass_.loading)):
                yield Observation(load, step, kind, length, why)


def usual_loadings(run: RunState) -> dict[str, timedelta]:
    """By step the median of the loadings that were measured and came without a change; of other steps the route has to say."""
    found: dict[str, list[float]] = {}
    for load in (*run.past.values(), *run.loads.values()):
        spans = () if load.set_up or load.state == "off" else load.spans
        loading = [span for span in spans if span.kind == "loading"]
        length, why = _sum(loading)
        if loading and not why and not _is_loaded_again(load):
            found.setdefault(load.step, []).append(length.total_seconds())
    return {step: timedelta(seconds=median(lengths)) for step, lengths in found.items()}


def is_likely(guess: timedelta, length: timedelta) -> bool:
    """Whether a length may be one of what was guessed at; without a guess there is nothing to tell it by."""
    return bool(guess) and 1 / MOST_FACTOR <= length / guess <= MOST_FACTOR


def word_before(words: Sequence[Overruled], began_at: datetime | None) -> Overruled | None:
    """Whose word held when a load was begun, of those that overruled an element in their order: by it the load is judged, and
    it moves no later one. So no word ever unmeasures what was measured before it. Of what is old nobody knows when it was
    begun; it lies before all."""
    return None if began_at is None else next((word for word in reversed(words) if word.at < began_at), None)


def wood_of(run: RunState, load: Load) -> str:
    """What a load was made of."""
    return next((run.trays[tray].wood for tray in load.pieces if tray in run.trays), "") or run.wood


def guess_of(step: Step, kind: str) -> timedelta:
    """What the route says of an element: of a load, for hand time of a piece."""
    found: timedelta = getattr(step.pass_, kind, ZERO)
    return found


Found = tuple[str, timedelta | None, str]


def _of(load: Load, step: Step, usual: timedelta) -> Iterator[Found]:
    spans: dict[str, list[Span]] = {}
    for span in load.spans:
        spans.setdefault(span.kind, []).append(span)
    for kind in ("loading", "machine", "unloading", "hand"):
        of_kind = spans.get(kind, [])
        if not of_kind:
            if load.state == "done" and guess_of(step, kind):
                yield kind, None, NO_LENGTH
        elif load.state == "off":
            yield kind, None, TAKEN_OFF
        else:
            yield from _pressed(load, step, kind, of_kind, usual)


def _pressed(load: Load, step: Step, kind: str, of_kind: list[Span], usual: timedelta) -> Iterator[Found]:
    length, why = _sum(of_kind)
    if not why and kind in ("unloading", "hand") and load.state != "done":
        why = GOING_ON
    if kind == "loading":
        yield from _loading(load, step, length, why or (LOADED_AGAIN if _is_loaded_again(load) else ""), usual)
    elif kind == "hand":
        yield from _by_hand(load, step, length, why)
    else:
        yield kind, None if why else length, why


def _is_loaded_again(load: Load) -> bool:
    """Whether hands loaded it once more after its machine had run."""
    kinds = [span.kind for span in load.spans]
    return "machine" in kinds and "loading" in kinds[kinds.index("machine") :]


def _sum(spans: list[Span]) -> tuple[timedelta, str]:
    """All of it, over everybody who was at it, and why it is no length where any of it was not measured."""
    length, is_measured = ZERO, True
    for span in spans:
        if span.ended_at is None:
            return ZERO, GOING_ON
        length += span.ended_at - span.began_at
        is_measured = is_measured and span.measured
    if not is_measured:
        return length, NO_END if spans[0].kind == "machine" else INTERRUPTED
    return length, "" if length else NO_LENGTH


def _loading(load: Load, step: Step, length: timedelta, why: str, usual: timedelta) -> Iterator[Found]:
    if not load.set_up:
        yield "loading", None if why else length, why
        return
    yield "loading", None, why or WITH_SETUP
    if step.pass_.setup:
        setup = length - usual
        why = why or ("" if setup > ZERO else ALL_USUAL)
        yield "setup", None if why else setup, why


def _by_hand(load: Load, step: Step, length: timedelta, why: str) -> Iterator[Found]:
    setup, pieces = step.pass_.setup if load.set_up else ZERO, sum(load.pieces.values())
    if setup:
        yield "setup", None, why or WITH_HANDS
    why = why or (ALL_USUAL if length <= setup else "" if pieces else NO_LENGTH)
    yield "hand", None if why else (length - setup) / pieces, why
