"""What could be done now: every load that a person could begin, go on with or take off, by the rules."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cached_property
from typing import Any

from runboard.run.begin import may_begin, not_offered, open_loads, step_of_load
from runboard.run.draft import Draft
from runboard.run.event import Event
from runboard.run.names import next_load
from runboard.run.resting import rest_before, rests_before
from runboard.run.route import Step
from runboard.run.state import EMPTY, Load, RunState, ShopState, Tray
from runboard.shop.book import Book, Station
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

    @cached_property
    def draft(self) -> Draft:
        """The state as the rules are asked about it."""
        return Draft(self.state, self.book)

    @property
    def watched(self) -> list[Load]:
        """Running loads that this person must keep in sight."""
        return [
            load
            for run, load in open_loads(self.state)
            if load.state == "running" and load.watcher == self.person and attendance(run, load) == "watched"
        ]


def open_runs(state: ShopState) -> Iterator[RunState]:
    return (run for run in state.runs.values() if run.state == "open")


def attendance(run: RunState, load: Load) -> str:
    """What a running load asks of a person; the most careful where the route has lost the step."""
    step = step_of_load(run, load)
    return step.operation.attendance if step else "watched"


def is_allowed(scene: Scene, kind: str, run: RunState, load: str, body: Mapping[str, Any] = EMPTY) -> bool:
    """Whether the rules would take a press about a load from whoever asks, now."""
    return may_begin(scene.draft, _press(scene, kind, run, load, body)) is None


def _press(scene: Scene, kind: str, run: RunState, load: str, body: Mapping[str, Any]) -> Event:
    return Event("zzzzzz", kind, scene.now, run=run.id, load=load, person=scene.person, body=body)


def time_left(scene: Scene) -> timedelta:
    """How long the person still has for work; very long where nobody said."""
    seen, known = scene.state.people.get(scene.person), scene.book.person(scene.person)
    if seen is None or seen.until is None:
        return timedelta(days=1)
    return seen.until - (known.tidy_up if known else timedelta(0)) - scene.now


def candidates(scene: Scene) -> list[Candidate]:
    """Every load that may be begun now, in no order: its pieces are there, and the rules would take it."""
    return [one for run in open_runs(scene.state) for one in _of_run(scene, run)]


def _of_run(scene: Scene, run: RunState) -> Iterator[Candidate]:
    ready: dict[str, dict[str, int]] = {}
    steps: dict[str, Step] = {}
    for tray in run.trays.values():
        for key in tray.at:
            free = tray.free(key)
            step = run.route_of(tray).step(key)
            if free and step is not None and _is_rested(run, tray, step, scene.now):
                ready.setdefault(key, {})[tray.id] = free
                steps[key] = step
    for key, pieces in ready.items():
        for load, part in _loads(run, steps[key], pieces):
            press = _press(scene, "load started", run, load, {"pieces": part})
            if may_begin(scene.draft, press) is None and not not_offered(scene.draft, press):
                station = scene.book.station(steps[key].operation.station)
                if station is not None:
                    yield _candidate(scene, run, steps[key], station, load, part)


def _is_rested(run: RunState, tray: Tray, step: Step, now: datetime) -> bool:
    rest = rest_before(run.route_of(tray), tray, step)
    return rest is None or rest.ready_at <= now


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
    trays = [run.trays[tray] for tray in pieces]
    rests = [rest for tray in trays for rest in rests_before(run.route_of(tray), tray, step).values()]
    latest = [rest.latest_at for rest in rests if rest.latest_at]
    return Candidate(run, step, load, pieces, station, length, fresh, min(latest) if latest else None)
