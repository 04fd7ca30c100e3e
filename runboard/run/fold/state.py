"""The state that the fold makes: frozen records, changed only by ``replace``. Dicts in them are never changed in place.

The page gets the same records as JSON (``run/fold/record.py``) and folds its own presses onto them by the same table.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from runboard.run.fold.adopted import AdoptedChange
from runboard.run.fold.overruled import Overruled, TimeKey
from runboard.run.fold.route import Route, Step
from runboard.run.log.event import Event
from runboard.run.supplies.said import CutterChange, SupplySaid


class Empty(dict[Any, Any]):
    """A mapping with nothing in it that may be a default: nobody changes it."""

    __hash__ = object.__hash__  # type: ignore[assignment]


EMPTY: Mapping[Any, Any] = Empty()


@dataclass(frozen=True)
class Span:
    """A stretch of somebody's or a machine's time on a load.

    ``kind`` is setup, loading, machine, unloading or hand. ``measured`` is false where an end was assumed, typed from
    paper, interrupted or corrected: such a span never teaches a time.
    """

    kind: str
    person: str
    began_at: datetime
    ended_at: datetime | None = None
    measured: bool = True
    event: str = ""


@dataclass(frozen=True)
class Load:
    """A load that was begun. ``state``: loading, working, running, ended, unloading, stopped, done, off.

    ``people`` are those whose hands are at it; a load in loading, working or unloading with nobody at it is put
    aside. ``ends`` counts the estimates given for the machine's end, so that an alert can name the one it means.
    ``alone_since`` is from when nobody counts as near while it runs and must be watched: everybody was last seen
    elsewhere, or, ahead, the last session of those near is over. ``revision`` is the run's route that it began by.
    ``said`` is the press that says that it runs where the shop's own account knows of no such load. ``set_up`` is whether
    its station was set up for it, or while it was put in, whatever list has been ticked since.
    """

    id: str
    run: str
    step: str
    station: str
    state: str
    pieces: Mapping[str, int] = EMPTY
    people: tuple[str, ...] = ()
    watcher: str = ""
    started_at: datetime | None = None
    phase_at: datetime | None = None
    end_at: datetime | None = None
    ends: int = 0
    checked_at: datetime | None = None
    checks: int = 0
    done_at: datetime | None = None
    stop: Mapping[str, Any] | None = None
    fresh: bool = False
    set_up: bool = False
    alone_since: datetime | None = None
    revision: int = 0
    said: str = ""
    spans: tuple[Span, ...] = ()


@dataclass(frozen=True)
class Rest:
    """A wait that passes by itself for the pieces of a tray after a step of the route ``revision``. ``latest_at`` counts
    from the first piece."""

    why: str
    began_at: datetime
    ready_at: datetime
    latest_at: datetime | None = None
    ended_at: datetime | None = None
    early: bool = False
    revision: int = 0


@dataclass(frozen=True)
class Hold:
    """Pieces that wait for something. ``pieces`` is how many at ``step``."""

    step: str
    pieces: int
    why: str
    waiting_for: str = ""
    until: datetime | None = None
    since: datetime | None = None


@dataclass(frozen=True)
class Tray:
    """A numbered place and the pieces it holds.

    ``at`` has the pieces that have arrived at each step and not finished it; ``busy`` how many of them are in a begun
    load; ``counts`` the counted (good, scrap) for each step and load, which replace; ``scrap`` the reasons. ``good``
    have passed the last operation. ``gone`` and ``came`` are pieces moved out and in. ``places`` gives each position
    of the jig its order line and text once pieces are personal.
    """

    id: str
    started: int
    revision: int = 1
    at: Mapping[str, int] = EMPTY
    busy: Mapping[str, int] = EMPTY
    good: int = 0
    counts: Mapping[str, Mapping[str, tuple[int, int]]] = EMPTY
    scrap: Mapping[str, tuple[Mapping[str, Any], ...]] = EMPTY
    gone: int = 0
    came: int = 0
    holds: tuple[Hold, ...] = ()
    rests: Mapping[str, Rest] = EMPTY
    places: Mapping[int, tuple[str, str]] = EMPTY
    wood: str = ""
    board: str = ""
    of: str = ""
    print: int = 0

    @property
    def scrapped(self) -> int:
        return sum(reason["pieces"] for reasons in self.scrap.values() for reason in reasons)

    @property
    def in_process(self) -> int:
        return sum(self.at.values())

    def held(self, step: str) -> int:
        return sum(hold.pieces for hold in self.holds if hold.step == step)

    def free(self, step: str) -> int:
        """Pieces at ``step`` that are in no begun load and not held."""
        return max(0, self.at.get(step, 0) - self.busy.get(step, 0) - self.held(step))


@dataclass(frozen=True)
class OrderLine:
    line: str
    pieces: int
    whom: str = ""
    text: str = ""
    due: datetime | None = None


@dataclass(frozen=True)
class Passed:
    """Who looked at what a check found before the run, and went on: ``found`` is the mark of what stood there."""

    found: str
    initials: str
    person: str
    at: datetime
    event: str = ""


@dataclass(frozen=True)
class Ticked:
    """Who ticked something off, and when; of how many ``pieces``, 0 for all."""

    person: str
    at: datetime
    pieces: int = 0


@dataclass(frozen=True)
class Revision:
    """The route of a run from a tray on."""

    number: int
    from_tray: str
    route: Route


@dataclass(frozen=True)
class RunState:
    """One batch of one product. ``state``: open, finished, abandoned. ``loads`` are begun and not done, ``past`` are
    done or taken off. ``materials`` are those whose data sheet somebody looked at, ``passed`` the checks before the run that
    somebody went past. ``ticks`` has for an order line what it was ticked off as: packed, collected, paid."""

    id: str
    name: str
    state: str
    opened_at: datetime
    product: str
    product_name: str
    revisions: tuple[Revision, ...]
    orders: tuple[OrderLine, ...] = ()
    wood: str = ""
    certainty: float = 0.9
    good_rate: float = 1.0
    good_rate_from: str = ""
    trays: Mapping[str, Tray] = EMPTY
    loads: Mapping[str, Load] = EMPTY
    past: Mapping[str, Load] = EMPTY
    boards: Mapping[str, Mapping[str, int]] = EMPTY
    first_pieces: Mapping[str, str] = EMPTY
    stopped: Mapping[str, str] = EMPTY
    out: Mapping[str, datetime | None] = EMPTY
    given: Mapping[str, Mapping[str, Any]] = EMPTY
    looks: Mapping[str, str] = EMPTY
    materials: tuple[str, ...] = ()
    passed: Mapping[str, Passed] = EMPTY
    ticks: Mapping[str, Mapping[str, Ticked]] = EMPTY
    closed_at: datetime | None = None

    @property
    def by_due(self) -> list[OrderLine]:
        """The order lines, the earliest due first: those without a day come last."""
        return sorted(self.orders, key=lambda order: (order.due is None, order.due or self.opened_at))

    def route_of(self, tray: Tray) -> Route:
        return self.revisions[tray.revision - 1].route

    def step_of(self, load: Load) -> Step | None:
        """The step of a load by the route that it began by, whatever the newest says."""
        return self.route_at(self.revision_of(load)).step(load.step)

    def revision_of(self, load: Load) -> int:
        """The revision of the route that a load began by; that of its tray where no press said that it began."""
        trays = (self.trays[key] for key in load.pieces if key in self.trays)
        return load.revision or next((tray.revision for tray in trays), 0)

    def route_at(self, revision: int) -> Route:
        """The route of a revision, of the newest where that is not known."""
        return self.revisions[revision - 1].route if revision else self.route

    @property
    def route(self) -> Route:
        return self.revisions[-1].route


@dataclass(frozen=True)
class PersonState:
    """Where a person was last seen and what their hands are at: ``(run, load)`` or ``("", job)``.

    ``went_at`` is when they last locked up. ``last`` is the id of their last press, for undo. ``declined`` maps a move to until when it stays declined. ``name`` is
    a guest's, who is in no book; ``shown`` are the stations that the lead showed them.
    """

    key: str
    came_at: datetime | None = None
    until: datetime | None = None
    room: str = ""
    hands: tuple[str, str] | None = None
    hands_since: datetime | None = None
    away: bool = False
    seen_at: datetime | None = None
    went_at: datetime | None = None
    last: str = ""
    declined: Mapping[str, str] = EMPTY
    shown: tuple[str, ...] = ()
    name: str = ""


@dataclass(frozen=True)
class StationState:
    """``load`` is the ``(run, load)`` that holds the station. ``setup`` is the (run, step) it stands on, ``setups`` counts the
    changes, of which ``loaded`` were before what came last; ``listed`` is what the full start list was last ticked for: the
    day, the setup, the person."""

    key: str
    load: tuple[str, str] | None = None
    out: Mapping[str, Any] | None = None
    setup: tuple[str, str] | None = None
    setups: int = 0
    loaded: int = 0
    listed: str = ""
    signal: Mapping[str, Any] | None = None


@dataclass(frozen=True)
class Unsettled:
    """A press that did not fit: kept, listed, settled with one press. ``code`` and ``facts`` make the sentence."""

    event: str
    kind: str
    run: str
    subject: str
    person: str
    at: datetime
    code: str
    facts: Mapping[str, Any]
    source: Event


@dataclass(frozen=True)
class ShopState:
    """Everything the log says. One for the shop; a run's state is a part of it.

    ``care`` is what happened that must not be forgotten: rags, oily dust, a burnt cut; ``reminders`` what was said to have been
    done about it. ``said_running`` are machines that a press which did not fit says to run, by ``run|load``: they are watched
    until somebody says that they do not run. ``calls`` are calls for the lead that nobody answered yet, by their event;
    ``times`` says how often, where more than once. ``changes`` are those that were adopted, by their event; ``overruled`` are
    times that somebody said, of each element all, the newest last. ``supplies`` are what was said of each supply (by ``word_of``
    its name), ``cutters`` the changes at each station, in their order.
    """

    people: Mapping[str, PersonState] = EMPTY
    stations: Mapping[str, StationState] = EMPTY
    runs: Mapping[str, RunState] = EMPTY
    answers: Mapping[str, Mapping[str, Any]] = EMPTY
    reminders: Mapping[str, Mapping[str, Any]] = EMPTY
    care: Mapping[str, Mapping[str, Any]] = EMPTY
    said_running: Mapping[str, Load] = EMPTY
    calls: Mapping[str, Mapping[str, Any]] = EMPTY
    unsettled: Mapping[str, Unsettled] = EMPTY
    asks: Mapping[str, Mapping[str, Any]] = EMPTY
    jobs_done: Mapping[str, datetime] = EMPTY
    changes: Mapping[str, AdoptedChange] = EMPTY
    overruled: Mapping[TimeKey, tuple[Overruled, ...]] = EMPTY
    supplies: Mapping[str, tuple[SupplySaid, ...]] = EMPTY
    cutters: Mapping[str, tuple[CutterChange, ...]] = EMPTY

    def open_runs(self) -> Iterator[RunState]:
        """The runs that are open."""
        return (run for run in self.runs.values() if run.state == "open")

    def open_loads(self) -> Iterator[tuple[RunState, Load]]:
        """Every begun load of the runs that are open, with its run."""
        return ((run, load) for run in self.open_runs() for load in run.loads.values())
