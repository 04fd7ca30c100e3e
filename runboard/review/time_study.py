"""A run's log as time elements: who or what worked on which load, from when to when, and whether it was measured.

The elements are the usual ones of work study: setup, loading, machine time, unloading, hand time, and the waits.
"""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from runboard.plan.observed import usual_loadings
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState, Tray
from runboard.run.log.event import Event
from runboard.shop.product import ZERO

# How a time is known. Only 'measured' ever teaches one.
MEASURED, FROM_SENSOR, INTERRUPTED, ASSUMED, FROM_PAPER, RUNNING, NOT_KNOWN = (
    "measured",
    "from a sensor",
    "not measured",
    "assumed",
    "from paper",
    "still going on",
    "not known",
)
_BASIS = {"assumed": ASSUMED, "paper": FROM_PAPER, "sensor": FROM_SENSOR}


@dataclass(frozen=True)
class Element:
    """One time element. ``ended_at`` is ``None`` while it goes on, ``began_at`` too where nothing is known of it.

    ``kind`` is setup, loading, machine, unloading, hand, wait, or ``done`` for pieces that were taken on without times.
    """

    step: str
    step_name: str
    load: str
    station: str
    trays: tuple[str, ...]
    pieces: int
    kind: str
    person: str = ""
    began_at: datetime | None = None
    ended_at: datetime | None = None
    known: str = MEASURED

    @property
    def length(self) -> timedelta | None:
        """How long it took; ``None`` where that is not known (yet)."""
        return None if self.began_at is None or self.ended_at is None else self.ended_at - self.began_at

    @property
    def order(self) -> tuple[bool, datetime | int, str, str]:
        """By beginning; what has none comes last."""
        return (self.began_at is None, self.began_at or 0, self.step, self.load)


def time_elements(
    run: RunState, events: Mapping[str, Event], now: datetime, changed: Collection[str] = ()
) -> list[Element]:
    """Every element of a run in the order of beginning. ``events`` are those that arrived, by id, for their basis;
    ``changed`` are the loads that began with a setup (see ``loads_after_a_change``)."""
    found: list[Element] = []
    usual = usual_loadings(run)
    for load in (*run.past.values(), *run.loads.values()):
        found += _of_load(run, load, events, changed, usual)
    for tray in run.trays.values():
        found += _waits(run, tray, now)
        found += _filled_in(run, tray)
    return sorted(found, key=lambda element: element.order)


def loads_after_a_change(run: RunState) -> set[str]:
    """The loads of a run that were the first at their station after a change: of step, of run, or of cutter, wood, jig
    or focus as somebody said."""
    return {load.id for load in (*run.past.values(), *run.loads.values()) if load.set_up}


def _of_load(
    run: RunState,
    load: Load,
    events: Mapping[str, Event],
    changed: Collection[str],
    usual: Mapping[str, timedelta],
) -> Iterator[Element]:
    step = run.step_of(load)
    loading = usual.get(load.step, step.pass_.loading if step else ZERO)
    pieces = sum(load.pieces.values())
    station = load.station
    plain = Element(load.step, step.name if step else load.step, load.id, station, tuple(load.pieces), pieces, "hand")
    first = next((span for span in load.spans if span.kind == "loading"), None)
    for span in load.spans:
        known = _known(span.measured, span.ended_at, events.get(span.event))
        element = replace(
            plain, kind=span.kind, person=span.person, began_at=span.began_at, ended_at=span.ended_at, known=known
        )
        yield from _with_setup(element, loading) if load.id in changed and span is first else (element,)
    if load.state == "done":
        yield from _unknown(plain, load, step)


def _unknown(plain: Element, load: Load, step: Step | None) -> Iterator[Element]:
    """Without 'at it', unloading is unknown, not nought; and a load of which only 'done' was pressed has no time at all."""
    kinds = {span.kind for span in load.spans}
    if not kinds:
        yield replace(plain, kind="done", known=NOT_KNOWN)
    elif step is not None and step.has_machine and "unloading" not in kinds:
        yield replace(plain, kind="unloading", known=NOT_KNOWN)


def _known(measured: bool, ended_at: datetime | None, begun: Event | None) -> str:
    if ended_at is None:
        return RUNNING
    basis = _BASIS.get(begun.basis) if begun is not None else None
    if basis == FROM_SENSOR and not measured:
        return INTERRUPTED
    return basis or (MEASURED if measured else INTERRUPTED)


def _with_setup(loading: Element, usual: timedelta) -> Iterator[Element]:
    """Setup is the first loading after a change less the usual loading."""
    if loading.began_at is None or loading.ended_at is None or loading.ended_at - loading.began_at <= usual:
        yield replace(loading, kind="loading" if loading.ended_at else "setup")
        return
    change = loading.ended_at - usual
    yield replace(loading, kind="setup", ended_at=change)
    if usual > ZERO:
        yield replace(loading, began_at=change)


def _waits(run: RunState, tray: Tray, now: datetime) -> Iterator[Element]:
    for key, rest in tray.rests.items():
        ended = rest.ended_at or (rest.ready_at if rest.ready_at <= now else None)
        known = RUNNING if ended is None else (INTERRUPTED if rest.early else MEASURED)
        pieces = sum(good for good, _ in tray.counts.get(key, {}).values())
        name = run.route_of(tray).step_name(key)
        yield Element(key, name, f"{key}/{tray.id}", "", (tray.id,), pieces, "wait", "", rest.began_at, ended, known)


def _filled_in(run: RunState, tray: Tray) -> Iterator[Element]:
    """Counts of loads that nobody pressed: they moved the tray on, and say nothing of time."""
    for key, counts in tray.counts.items():
        step = run.route_of(tray).step(key)
        station = step.operation.station if step else ""
        for load, (good, bad) in counts.items():
            if load not in run.past and load not in run.loads and good + bad:
                name = run.route_of(tray).step_name(key)
                yield Element(key, name, load, station, (tray.id,), good + bad, "done", known=ASSUMED)
