"""What could be done now: every load that a person could begin, go on with or take off, by the rules."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cached_property
from itertools import islice
from typing import Any

from runboard.run.care.sight import watched_by
from runboard.run.fold.draft import Draft
from runboard.run.fold.names import load_ids
from runboard.run.fold.route import Step
from runboard.run.fold.state import EMPTY, Load, RunState, ShopState, Tray
from runboard.run.log.event import Event
from runboard.run.rules.begin import OF_ANY_TRAY, may_begin, not_offered
from runboard.run.rules.loads import LoadToBe, is_by_tray, loads_at, takes_several
from runboard.run.rules.resting import rest_before, rests_before
from runboard.shop.book import Book, Station
from runboard.shop.limits import MOST_LOADS
from runboard.shop.parts import LoadContents, attended_time, parts

# A latest end by then comes before anything else.
SOON = timedelta(minutes=30)

# For the hand work of a run over several trays, by (run, step), the trays that a plan wants on its next load.
Wanted = Mapping[tuple[str, str], Sequence[str]]


@dataclass(frozen=True)
class Candidate:
    """A load that could be begun, with how long it keeps hands or eyes, in ``minutes``, and what comes after."""

    run: RunState
    step: Step
    load: str
    pieces: Mapping[str, int]
    station: Station
    length: timedelta
    fresh: bool
    latest_at: datetime | None = None


@dataclass(frozen=True)
class WhoAsks:
    """Who asks, when, at which station their hands are, and what the shop is busy with. ``wanted`` is None without a plan;
    ``declined`` are moves that they said no to."""

    state: ShopState
    book: Book
    person: str
    now: datetime
    at: str = ""
    wanted: Wanted | None = None
    declined: Collection[str] = ()

    @cached_property
    def draft(self) -> Draft:
        """The state as the rules are asked about it."""
        return Draft(self.state, self.book)

    @property
    def watched(self) -> list[Load]:
        """Running loads that this person must keep in sight."""
        return watched_by(self.state, self.person)


def is_allowed(asks: WhoAsks, kind: str, run: RunState, load: str, body: Mapping[str, Any] = EMPTY) -> bool:
    """Whether the rules would take a press about a load from whoever asks, now."""
    return may_begin(asks.draft, _press(asks, kind, run, load, body)) is None


def _press(asks: WhoAsks, kind: str, run: RunState, load: str, body: Mapping[str, Any]) -> Event:
    return Event("zzzzzz", kind, asks.now, run=run.id, load=load, person=asks.person, body=body)


def time_left(asks: WhoAsks) -> timedelta:
    """How long the person still has for work; very long where nobody said."""
    seen, known = asks.state.people.get(asks.person), asks.book.person(asks.person)
    if seen is None or seen.until is None:
        return timedelta(days=1)
    return seen.until - (known.tidy_up if known else timedelta(0)) - asks.now


def candidates(asks: WhoAsks) -> list[Candidate]:
    """Every load that may be begun now, in no order: its pieces are there, and the rules would take it."""
    return [candidate for run in asks.state.open_runs() for candidate in _of_run(asks, run)]


def _of_run(asks: WhoAsks, run: RunState) -> Iterator[Candidate]:
    ready: dict[str, dict[str, int]] = {}
    for tray in run.trays.values():
        for key in tray.at:
            free, step = tray.free(key), run.route_of(tray).step(key)
            if free and step is not None and _is_rested(run, tray, step, asks.now):
                ready.setdefault(key, {})[tray.id] = free
    for key, pieces in ready.items():
        seen: set[str] = set()  # what does not go on a tray's first load comes after it
        no_tray_at: Step | None = None
        for whole in islice(loads_at(run, key, pieces), MOST_LOADS):
            station = asks.book.station(whole.step.operation.station)
            is_next = seen.isdisjoint(whole.pieces)
            seen.update(whole.pieces)
            if station is None or not is_next or whole.step is no_tray_at:
                continue
            batch = _as_wanted(asks, run, whole)
            if batch is None:
                continue
            press = _press(asks, "load started", run, batch.load, {"pieces": batch.pieces})
            refused = may_begin(asks.draft, press)
            if refused is None:
                fits = _that_fits(asks, run, batch)
                if fits is not None:
                    yield _candidate(asks, run, fits, station)
            elif refused is not None and refused.code in OF_ANY_TRAY:
                no_tray_at = batch.step


def _as_wanted(asks: WhoAsks, run: RunState, batch: LoadToBe) -> LoadToBe | None:
    """Of hand work over several trays as much as a plan wants on the next load, else the first tray alone: a plan has the
    others go on meanwhile. What must go on soon comes first all the same. None where all that was said no to."""
    if asks.wanted is None or len(batch.pieces) < 2 or not is_by_tray(batch.step):
        return batch
    latest = {tray: at for tray in batch.pieces if (at := _latest_at(run, tray, batch.step)) is not None}
    pressing = min((tray for tray, at in latest.items() if at - asks.now <= SOON), key=latest.__getitem__, default="")
    wanted = [tray for tray in batch.pieces if tray in asks.wanted.get((run.id, batch.step.key), ())]
    some = [wanted] if wanted and (not pressing or pressing in wanted) else [[pressing]] if pressing else []
    for trays in (*some, *([tray] for tray in batch.pieces)):
        load = next(load_ids(run, batch.step, tuple(trays)))
        if f"start|{run.id}|{load}" not in asks.declined:
            return LoadToBe(load, batch.step, {tray: batch.pieces[tray] for tray in trays})
    return None


def _that_fits(asks: WhoAsks, run: RunState, batch: LoadToBe) -> LoadToBe | None:
    """The load that is offered: with fewer trays where there are places left for some of them only; None where it is not."""
    trays = tuple(batch.pieces)
    while trays:
        load = batch.load if len(trays) == len(batch.pieces) else next(load_ids(run, batch.step, trays))
        pieces = {tray: batch.pieces[tray] for tray in trays}
        why = not_offered(asks.draft, _press(asks, "load started", run, load, {"pieces": pieces}))
        if not why:
            return LoadToBe(load, batch.step, pieces)
        trays = trays[:-1] if why == "service taken" and takes_several(batch.step) else ()
    return None


def _is_rested(run: RunState, tray: Tray, step: Step, now: datetime) -> bool:
    rest = rest_before(run.route_of(tray), tray, step)
    return rest is None or rest.ready_at <= now


def _candidate(asks: WhoAsks, run: RunState, batch: LoadToBe, station: Station) -> Candidate:
    step, pieces = batch.step, batch.pieces
    here = asks.state.stations.get(station.key)
    fresh = here is None or here.setup != (run.id, step.key)
    contents = LoadContents(step.pass_.key, sum(pieces.values()), needs_setup=fresh)
    length = attended_time(parts(step.operation, contents))
    latest = [at for tray in pieces if (at := _latest_at(run, tray, step)) is not None]
    return Candidate(run, step, batch.load, pieces, station, length, fresh, min(latest, default=None))


def _latest_at(run: RunState, key: str, step: Step) -> datetime | None:
    """By when a tray must go on at a step, after its waits."""
    tray = run.trays[key]
    rests = rests_before(run.route_of(tray), tray, step).values()
    return min((rest.latest_at for rest in rests if rest.latest_at), default=None)
