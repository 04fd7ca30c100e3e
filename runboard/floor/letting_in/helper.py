"""What a helper with one tray's card has before them: the tray's current operation, and how it stands."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from itertools import takewhile
from typing import Any

from runboard.run.care.cautions import start_points
from runboard.run.fold.names import next_load, step_of
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import Hold, Load, Rest, RunState, ShopState, Tray
from runboard.run.log.event import Event
from runboard.run.rules.resting import rest_before
from runboard.run.rules.texts import places_for
from runboard.shop.book import Book
from runboard.shop.hours import local_day
from runboard.shop.product import Check

OVER = ("none", "done", "off")


@dataclass(frozen=True)
class TrayWork:
    """A tray's current operation. ``step`` is None once no piece of it is in process any more.

    ``load`` is the begun load that it is on, ``load_id`` the one that a press means, begun or not; ``beside`` are the
    other trays on it, whose helper nobody is by this tray's card. ``bad`` says why of each piece that was called bad at
    this load and is not counted yet.
    """

    run: RunState
    tray: Tray
    step: Step | None = None
    load: Load | None = None
    load_id: str = ""
    beside: tuple[str, ...] = ()
    bad: tuple[str, ...] = ()

    @property
    def route(self) -> Route:
        return self.run.route_of(self.tray)

    @property
    def state(self) -> str:
        """The load's state; 'none' before it is begun."""
        return self.load.state if self.load else "none"

    @property
    def pieces(self) -> int:
        """The pieces that the load has, or would take."""
        if self.load is not None:
            return self.load.pieces.get(self.tray.id, 0)
        if self.step is None:
            return 0
        return self.step.on_a_load(self.tray.free(self.step.key))

    @property
    def rest(self) -> Rest | None:
        """The wait before this step that nobody has ended."""
        return None if self.step is None else rest_before(self.route, self.tray, self.step)

    @property
    def hold(self) -> Hold | None:
        """What all free pieces at this step wait for."""
        held = [hold for hold in self.tray.holds if self.step is not None and hold.step == self.step.key]
        return held[0] if held and not self.pieces else None

    @property
    def before(self) -> Step | None:
        """The step before this one; the last one where the tray is through."""
        index = len(self.route.steps) if self.step is None else self.step.index
        return self.route.steps[index - 1] if index else None

    @property
    def given(self) -> Mapping[str, Any]:
        """To whom the lead gave this operation of the tray, and whether its first piece is to be shown."""
        return self.run.given.get(self.key, {})

    @property
    def looked(self) -> str:
        """What the lead's look at the first piece said: pass, fail, or nothing yet."""
        return self.run.looks.get(self.key, "")

    @property
    def key(self) -> str:
        return f"{self.step.key if self.step else ''}|{self.tray.id}"


def work_at(state: ShopState, run: str, tray: str) -> TrayWork | None:
    """The current operation of a tray: where its last pieces are. ``None`` where there is no such tray."""
    found = state.runs.get(run)
    if found is None or tray not in found.trays:
        return None
    held = found.trays[tray]
    route = found.route_of(held)
    step = min((there for key in held.at if (there := route.step(key))), key=lambda there: there.index, default=None)
    if step is None:
        return TrayWork(found, held)
    on = next(
        (load for load in found.loads.values() if load.step == step.key and tray in load.pieces and is_open(load)), None
    )
    if on is not None:
        return TrayWork(found, held, step, on, on.id, _others(on.pieces, tray))
    board, feeds = _board(found, held, step)
    if board:
        return TrayWork(found, held, step, None, board, _others(feeds, tray))
    return TrayWork(found, held, step, None, next_load(found, step, (tray,)))


def with_bad(work: TrayWork, held: Sequence[Event]) -> TrayWork:
    """The work with the pieces that were called bad since its load was begun. ``held`` are the events that hold, in order."""
    begun = work.load.started_at if work.load is not None else None
    if work.step is None or begun is None:
        return work
    said = [
        str(event.get("note") or "")
        for event in since(held, begun)
        if event.kind == "lead called"
        and (event.run, event.tray, event.operation) == (work.run.id, work.tray.id, work.step.key)
        and event.get("why") == "bad piece"
    ]
    counted = sum(work.tray.counts.get(work.step.key, {}).get(work.load_id, (0, 0)))
    return replace(work, bad=tuple(reversed(said))[: max(0, work.pieces - counted)])


def since(held: Sequence[Event], begun: datetime | None) -> Iterator[Event]:
    """The events that hold from a moment on, the latest first; none without one."""
    return takewhile(lambda event: begun is not None and event.moment >= begun, reversed(held))


def is_open(load: Load) -> bool:
    return load.state not in OVER


def _others(trays: Mapping[str, int], tray: str) -> tuple[str, ...]:
    return tuple(key for key in trays if key != tray)


def _board(run: RunState, tray: Tray, step: Step) -> tuple[str, Mapping[str, int]]:
    """The board that a tray is still to be cut from, and the trays that it feeds."""
    for key, feeds in run.boards.items():
        known = run.past.get(key)
        if step_of(key) == step.key and tray.id in feeds and (known is None or known.state == "off"):
            return key, feeds
    return "", {}


def places_of(work: TrayWork) -> dict[str, Any]:
    """The texts that this load puts on positions of the jig, by tray; empty where none does, or they stand already."""
    if work.step is None or work.load is not None:
        return {}
    return places_for(work.run, {work.tray.id: work.pieces}, work.step.key)


def list_of(book: Book, step: Step) -> tuple[tuple[str, str], ...]:
    """(key, text) of everything that is ticked before this step's machine starts: the catalogue's, then the shop's own."""
    own = tuple(("", text) for text in step.operation.checklist)
    return (*((key, "") for key in start_points(book, step.operation)), *own)


def is_listed(state: ShopState, book: Book, station: str, person: str, now: datetime) -> bool:
    """Whether this person ticked the full start list at this station today, since its last change."""
    seen = state.stations.get(station)
    return seen is not None and seen.listed == f"{local_day(now, book.time_zone)}|{seen.setups}|{person}"


def open_checks(state: ShopState, book: Book, work: TrayWork, now: datetime) -> Iterator[Check]:
    """The first-piece checks of the step that have not passed for this run, setup or load."""
    if work.step is None:
        return
    station = state.stations.get(work.step.operation.station)
    setup = f"{station.setups if station else 0}|{local_day(now, book.time_zone)}"
    scopes = {"run": "run", "load": work.load_id, "setup": setup}
    for check in work.step.operation.checks:
        if work.run.first_pieces.get(f"{work.step.key}|{scopes[check.per]}|{check.key}") != "pass":
            yield check
