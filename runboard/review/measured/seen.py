"""What a run's log tells of each time element, cleaned by stated rules: nothing is left out without its why.

A length teaches where it was pressed or sensed from beginning to end. Left out is what was
- interrupted, and what was put aside because the same hands went to another load ('overlapping': nobody knows how long both took);
- taken back, corrected, assumed, typed from a card; not ended yet, taken off; loaded again after a stop;
- pressed at one end alone, or not at all;
- the first loading after a change (the setup is in it), and setup that hands did with their first work;
- on another wood than the run's; beyond five times the guess, or below a fifth of it.
Two people at one load are no overlap: their hands add up. What a load tells by itself says ``plan/observed``, as the estimates
learn it; the rest is found here.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cached_property

from runboard.plan.estimates import is_of_wood
from runboard.plan.observed import (
    ALL_USUAL,
    GOING_ON,
    INTERRUPTED,
    LOADED_AGAIN,
    NO_END,
    NO_LENGTH,
    TAKEN_OFF,
    WITH_HANDS,
    WITH_SETUP,
    Observation,
    guess_of,
    is_likely,
    observations,
    usual_loadings,
    wood_of,
)
from runboard.review.past import Past
from runboard.review.time_study import ASSUMED as KNOWN_ASSUMED
from runboard.review.time_study import FROM_PAPER, MEASURED, NOT_KNOWN, RUNNING, Element
from runboard.review.time_study import INTERRUPTED as KNOWN_INTERRUPTED
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, Span
from runboard.run.log.corrections import voided
from runboard.run.log.event import Event
from runboard.shop.product import ZERO

OVERLAPPING, UNDONE, AMENDED, ASSUMED, PAPER = "overlapping", "undone", "amended", "assumed", "paper"
OUT_OF_RANGE, OTHER_WOOD = "out of range", "other wood"
WHY_LEFT_OUT = (
    INTERRUPTED,
    OVERLAPPING,
    UNDONE,
    AMENDED,
    ASSUMED,
    PAPER,
    GOING_ON,
    TAKEN_OFF,
    LOADED_AGAIN,
    NO_LENGTH,
    NO_END,
    WITH_SETUP,
    WITH_HANDS,
    ALL_USUAL,
    OTHER_WOOD,
    OUT_OF_RANGE,
)
_KNOWN = {
    INTERRUPTED: KNOWN_INTERRUPTED,
    OVERLAPPING: KNOWN_INTERRUPTED,
    AMENDED: KNOWN_INTERRUPTED,
    NO_END: KNOWN_INTERRUPTED,
    ASSUMED: KNOWN_ASSUMED,
    PAPER: FROM_PAPER,
    GOING_ON: RUNNING,
    NO_LENGTH: NOT_KNOWN,
}
# Of these the time that passed is known though it teaches nothing: what was corrected is right now.
_STILL_TOLD = frozenset((PAPER, AMENDED, WITH_SETUP, WITH_HANDS, ALL_USUAL, OTHER_WOOD, LOADED_AGAIN))
# Of these how long the one took and how long the other is reckoned, not seen.
_RECKONED = frozenset((WITH_SETUP, WITH_HANDS, ALL_USUAL))
# These were pressed from end to end.
_MEASURED = frozenset(("", WITH_SETUP, WITH_HANDS, ALL_USUAL, OTHER_WOOD, LOADED_AGAIN))
_BEGINNINGS = {"load started": "loading", "machine started": "machine", "unloading started": "unloading"}


@dataclass(frozen=True)
class Seen:
    """One time element of a load. ``length`` teaches where ``why`` is '' (of a load, of a piece by hand), else it is None.
    ``units`` is how many of them the load is, pieces or 1, and ``taken`` how long all of them took, None where that is not
    known. ``counts`` is whether it was work of the run that is over. ``seems`` is the length that it would
    teach, were it not left out."""

    element: Element
    step: Step
    length: timedelta | None
    why: str
    units: int
    taken: timedelta | None = None
    counts: bool = True
    seems: timedelta | None = None

    @property
    def kind(self) -> str:
        return self.element.kind

    @property
    def is_measured(self) -> bool:
        """Whether it was pressed from beginning to end, be it of use or not."""
        return self.why in _MEASURED


def seen_in(past: Past) -> list[Seen]:
    """Everything in the order of beginning; what has none comes last."""
    log = _Log(past)
    found = [_seen(past, log, one) for one in observations(past.run)]
    found += _not_pressed(past)
    found += _taken_back(past)
    return sorted(found, key=lambda one: one.element.order)


def _seen(past: Past, log: "_Log", one: Observation) -> Seen:
    load, run = one.load, past.run
    spans = [
        span
        for span in load.spans
        if span.kind == one.kind or (one.kind == "setup" and span.kind in ("loading", "hand"))
    ]
    step = run.route.step(one.step.key) or one.step
    why = log.why(one, spans) if one.why in (INTERRUPTED, NO_END) else one.why
    if not why and one.length is not None:
        if not is_of_wood(run, wood_of(run, load)):
            why = OTHER_WOOD
        elif not is_likely(past.estimates.guess_then(run, step, one.kind, one.began_at), one.length):
            why = OUT_OF_RANGE
    pieces = sum(load.pieces.values())
    units = pieces if one.kind == "hand" else 1
    element = Element(
        one.step.key,
        one.step.name,
        load.id,
        load.station,
        tuple(load.pieces),
        pieces,
        one.kind,
        next((span.person for span in spans), ""),
        min((span.began_at for span in spans), default=None),
        None
        if any(span.ended_at is None for span in spans)
        else max((span.ended_at for span in spans if span.ended_at), default=None),
        _KNOWN.get(why, MEASURED),
    )
    taken = _taken(one, spans, why, log.usual.get(one.step.key, one.step.pass_.loading))
    seems = one.length or (taken / units if taken and units and why not in _RECKONED else None)
    is_over = why not in (GOING_ON, TAKEN_OFF)
    return Seen(element, step, None if why else one.length, why, units, taken, is_over, seems)


def _taken(one: Observation, spans: list[Span], why: str, loading: timedelta) -> timedelta | None:
    """What passed, where that is known. An interrupted load was gone on with where its last stretch was pressed to its end."""
    is_told = not why or why in _STILL_TOLD or (why in (INTERRUPTED, OVERLAPPING) and spans[-1].measured)
    if not is_told or not spans:
        return None
    whole = sum((span.ended_at - span.began_at for span in spans if span.ended_at), ZERO)
    setup = one.step.pass_.setup
    if not one.load.set_up or one.kind in ("machine", "unloading"):
        return whole
    if one.kind == "loading":
        return min(whole, loading) if setup else whole
    if one.kind == "setup":
        return whole - min(whole, loading) if spans[0].kind == "loading" else min(whole, setup)
    return whole - min(whole, setup)


def _not_pressed(past: Past) -> Iterator[Seen]:
    """Loads that were filled in, since what came after them was pressed: all that they took is not known."""
    pieces: dict[tuple[str, str], dict[str, int]] = {}
    run = past.run
    for tray in run.trays.values():
        for key, counts in tray.counts.items():
            for load, (good, bad) in counts.items():
                if load not in run.past and load not in run.loads and good + bad:
                    pieces.setdefault((key, load), {})[tray.id] = good + bad
    for (key, load), of in pieces.items():
        step = run.route.step(key)
        for kind in ("loading", "machine", "unloading", "hand") if step else ():
            if step is not None and guess_of(step, kind):
                made = sum(of.values())
                station = step.operation.station
                element = Element(key, step.name, load, station, tuple(of), made, kind, known=KNOWN_ASSUMED)
                yield Seen(element, step, None, ASSUMED, made if kind == "hand" else 1)


def _taken_back(past: Past) -> Iterator[Seen]:
    """Beginnings that never happened. Whatever was pressed in their place is an observation of its own."""
    void = voided(past.arrived)
    run = past.run
    for key in void:
        event = past.arrived[key]
        kind = _BEGINNINGS.get(event.kind)
        step = run.route.step(event.load.split("/", 1)[0]) if kind and event.run == run.id else None
        if kind is None or step is None:
            continue
        if kind == "loading" and not step.has_machine:
            kind = "hand"
        trays = tuple((event.get("pieces") or {}).keys())
        element = Element(
            step.key, step.name, event.load, step.operation.station, trays, 0, kind, event.person, event.moment
        )
        yield Seen(element, step, None, UNDONE, 0, counts=False)


class _Log:
    """What the run's events say of a span that its load calls interrupted."""

    def __init__(self, past: Past) -> None:
        self._past = past
        self._own = [event for event in past.events if event.run == past.run.id]
        self.usual = usual_loadings(past.run)

    def why(self, one: Observation, spans: list[Span]) -> str:
        """The first reason that any of the spans has."""
        found = {self._of(one.load, span) for span in spans if not span.measured}
        return next((why for why in WHY_LEFT_OUT if why in found and why != INTERRUPTED), INTERRUPTED)

    def _of(self, load: Load, span: Span) -> str:
        ended = self._ends.get((load.id, span.ended_at), ())
        begun = self._past.arrived.get(span.event)
        if span.event in self._amended or any(event.id in self._amended for event in ended):
            return AMENDED
        bases = {event.basis for event in (begun, *ended) if event is not None}
        if PAPER in bases:
            return PAPER
        if ASSUMED in bases:
            return ASSUMED
        if span.kind == "machine":
            return INTERRUPTED if any(event.kind == "load stopped" for event in ended) else NO_END
        if any(other != load.id for other in self._begun.get((span.person, span.ended_at), ())):
            return OVERLAPPING
        return INTERRUPTED

    @cached_property
    def _ends(self) -> Mapping[tuple[str, datetime | None], list[Event]]:
        """By load and moment what may have ended a span otherwise than by a press: a stop, a card, a correction."""
        found: dict[tuple[str, datetime | None], list[Event]] = {}
        for event in self._own:
            if event.load and (event.basis != "tapped" or event.kind == "load stopped" or event.id in self._amended):
                found.setdefault((event.load, event.moment), []).append(event)
        return found

    @cached_property
    def _amended(self) -> frozenset[str]:
        """Presses that were corrected, and spans of which somebody said what they really were."""
        named = {"event amended": "event", "span answered": "span"}
        return frozenset(str(event.get(named[event.kind])) for event in self._past.events if event.kind in named)

    @cached_property
    def _begun(self) -> Mapping[tuple[str, datetime | None], list[str]]:
        """By person and moment: the loads that their hands came to, of every run of the shop."""
        found: dict[tuple[str, datetime | None], list[str]] = {}
        for run in self._past.state.runs.values():
            for load in (*run.past.values(), *run.loads.values()):
                for span in load.spans:
                    found.setdefault((span.person, span.began_at), []).append(load.id)
        return found
