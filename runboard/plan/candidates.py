"""What could be done now: every load that a person could begin, go on with or take off, by the rules."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from runboard.run.air import clear_at, heating_there
from runboard.run.event import Event
from runboard.run.names import next_load
from runboard.run.refusal import Refused
from runboard.run.route import Step
from runboard.run.rules import check_rules
from runboard.run.state import EMPTY, Load, Rest, RunState, ShopState, Tray
from runboard.shop.book import Book, Station, may_work_while_watching
from runboard.shop.care import finish_of
from runboard.shop.hours import is_open
from runboard.shop.parts import LoadContents, attended_time, parts


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
class Scene:
    """Who asks, when, at which station their hands are, and what the shop is busy with."""

    state: ShopState
    book: Book
    person: str
    now: datetime
    at: str = ""

    @property
    def watched(self) -> list[Load]:
        """Running loads that this person must keep in sight."""
        return [
            load
            for run, load in open_loads(self.state)
            if load.state == "running" and load.watcher == self.person and attendance(run, load) == "watched"
        ]

    @property
    def wet_rooms(self) -> set[str]:
        """Rooms where a finish is wet or a solvent in the air: no sanding there, and nothing that heats."""
        return set(clear_at(self.state, self.book, self.now))

    @property
    def services_used(self) -> dict[str, int]:
        """How much of each service the begun loads draw."""
        used: dict[str, int] = {}
        for run, load in open_loads(self.state):
            if load.state == "running" or load.people:
                for service in services_of(self.book, run, load.step, load.station):
                    used[service] = used.get(service, 0) + 1
        return used


def open_runs(state: ShopState) -> Iterator[RunState]:
    return (run for run in state.runs.values() if run.state == "open")


def open_loads(state: ShopState) -> Iterator[tuple[RunState, Load]]:
    return ((run, load) for run in open_runs(state) for load in run.loads.values())


def attendance(run: RunState, load: Load) -> str:
    """What a running load asks of a person; the most careful where the route has lost the step."""
    step = run.route.step(load.step)
    return step.operation.attendance if step else "watched"


def services_of(book: Book, run: RunState, step_key: str, station_key: str) -> set[str]:
    """The services that work on this step draws on: the operation's and its station's."""
    step = run.route.step(step_key)
    station = book.station(station_key)
    return {*(step.operation.services if step else ()), *(station.services if station else ())}


def is_allowed(scene: Scene, kind: str, run: RunState, load: Load, body: Mapping[str, Any] = EMPTY) -> bool:
    """Whether the rules would take a press about a load from whoever asks, now."""
    event = Event("zzzzzz", kind, scene.now, run=run.id, load=load.id, person=scene.person, body=body)
    try:
        check_rules(scene.state, event, scene.book)
    except Refused:
        return False
    return True


def time_left(scene: Scene) -> timedelta:
    """How long the person still has for work; very long where nobody said."""
    seen, known = scene.state.people.get(scene.person), scene.book.person(scene.person)
    if seen is None or seen.until is None:
        return timedelta(days=1)
    return seen.until - (known.tidy_up if known else timedelta(0)) - scene.now


def candidates(scene: Scene) -> list[Candidate]:
    """Every load that may be begun now, in no order: pieces there, waits over, station and services free."""
    return [one for run in open_runs(scene.state) for one in _of_run(scene, run, scene.wet_rooms)]


def _of_run(scene: Scene, run: RunState, wet: set[str]) -> Iterator[Candidate]:
    ready: dict[str, dict[str, int]] = {}
    steps: dict[str, Step] = {}
    for tray in run.trays.values():
        for key in tray.at:
            free = tray.free(key)
            step = run.route_of(tray).step(key)
            if free and step is not None and _is_rested(run, tray, step, scene.now):
                ready.setdefault(key, {})[tray.id] = free
                steps[key] = step
    used, watched = scene.services_used, scene.watched
    for key, pieces in ready.items():
        station = scene.book.station(steps[key].operation.station)
        if station is not None and _is_allowed(scene, run, steps[key], station, wet, used, watched):
            for load, part in _loads(run, steps[key], pieces):
                if not _is_others(run, steps[key], part, scene.person):
                    yield _candidate(scene, run, steps[key], station, load, part)


def _is_rested(run: RunState, tray: Tray, step: Step, now: datetime) -> bool:
    rest = _rest_before(run, tray, step)
    return rest is None or rest.ended_at is not None or rest.ready_at <= now


def _rest_before(run: RunState, tray: Tray, step: Step) -> Rest | None:
    if not tray.rests or step.index == 0:
        return None
    return tray.rests.get(run.route_of(tray).steps[step.index - 1].key)


def _is_allowed(
    scene: Scene,
    run: RunState,
    step: Step,
    station: Station,
    wet: set[str],
    used: Mapping[str, int],
    watched: list[Load],
) -> bool:
    here = scene.state.stations.get(station.key)
    if here is not None and (here.load is not None or here.out is not None):
        return False
    if step.key in run.stopped or any(use.supply in run.out for use in step.operation.uses):
        return False
    if station.room in wet and (station.heats or station.kind == "sander"):
        return False
    finish = finish_of(scene.book, step.operation)
    if finish is not None and finish.solvent and heating_there(scene.state, scene.book, station.room):
        return False
    if station.quiet and is_open(station.quiet, scene.book.time_zone, scene.now):
        return False
    if not all(may_work_while_watching(scene.book, load.station, station.key) for load in watched):
        return False
    return _has_skill(scene, step) and _services_free(scene.book, step, station, used)


def _has_skill(scene: Scene, step: Step) -> bool:
    needed = step.operation.skill
    person = scene.book.person(scene.person)
    return not needed or person is None or person.access == "lead" or needed in person.skills


def _services_free(book: Book, step: Step, station: Station, used: Mapping[str, int]) -> bool:
    capacity = {service.key: service.capacity for service in book.services}
    wanted = {*step.operation.services, *station.services}
    return all(used.get(service, 0) < capacity.get(service, 1) for service in wanted)


def _is_others(run: RunState, step: Step, pieces: Mapping[str, int], person: str) -> bool:
    given = {run.given[f"{step.key}|{tray}"]["to"] for tray in pieces if f"{step.key}|{tray}" in run.given}
    return bool(given) and person not in given


def _loads(run: RunState, step: Step, pieces: Mapping[str, int]) -> Iterator[tuple[str, dict[str, int]]]:
    """How the ready pieces of a step make loads: boards, jigs-full, trays, or all at once."""
    left = dict(pieces)
    if step.pass_.size == "board":
        for board, fed in run.boards.items():
            part = {tray: left[tray] for tray in fed if tray in left}
            if part and board.split("/", 1)[0] == step.key and not _was_begun(run, step, board):
                for tray in part:
                    left.pop(tray)
                yield board, part
    if step.pass_.size == "run":
        for part in _batches(left, step.pass_.pieces):
            yield next_load(run, step, tuple(part)), part
        return
    for tray, count in left.items():
        capped = min(count, step.pass_.pieces) if step.pass_.pieces and step.pass_.size != "piece" else count
        yield next_load(run, step, (tray,)), {tray: capped}


def _was_begun(run: RunState, step: Step, board: str) -> bool:
    """Whether a board is at its machine or was counted in all its trays; one that was taken off is offered again."""
    counts = [board in run.trays[tray].counts.get(step.key, ()) for tray in run.boards[board] if tray in run.trays]
    return board in run.loads or all(counts)


def _batches(pieces: Mapping[str, int], most: int | None) -> Iterator[dict[str, int]]:
    """Trays in order, as many as one load takes; a tray is not cut unless it is larger than a load."""
    batch: dict[str, int] = {}
    for tray, count in pieces.items():
        if batch and most and sum(batch.values()) + count > most:
            yield batch
            batch = {}
        batch[tray] = min(count, most) if most else count
    if batch:
        yield batch


def _candidate(
    scene: Scene, run: RunState, step: Step, station: Station, load: str, pieces: dict[str, int]
) -> Candidate:
    here = scene.state.stations.get(station.key)
    fresh = here is None or here.setup != (run.id, step.key)
    contents = LoadContents(step.pass_.key, sum(pieces.values()), needs_setup=fresh)
    length = attended_time(parts(step.operation, contents))
    rests = [_rest_before(run, run.trays[tray], step) for tray in pieces]
    latest = [rest.latest_at for rest in rests if rest is not None and rest.latest_at and rest.ended_at is None]
    return Candidate(run, step, load, pieces, station, length, fresh, min(latest) if latest else None)
