"""What draws on services: loads at work, and what is in clamps or on the rack until somebody takes it off."""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime

from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import Load, Rest, RunState, ShopState, Tray
from runboard.run.rules.loads import shared_out, takes_several
from runboard.run.rules.resting import rests_before, wait_after
from runboard.shop.book import Book, Station


@dataclass(frozen=True)
class Resting:
    """Trays that came off together, wait or have waited after ``step`` and were not taken on: the wait of each, and what they
    hold of services until the last of them goes on."""

    run: str
    route: Route
    step: Step
    rests: Mapping[str, Rest]
    holds: Mapping[str, int]


def resting(run: RunState, book: Book) -> Iterator[Resting]:
    """All that rests in a run. A tray holds its places for itself, those of one load share its places."""
    groups: dict[tuple[str, int, str | datetime], dict[str, Rest]] = {}
    for tray in run.trays.values():
        for key, rest in _waits(run, tray).items():
            revision = rest.revision or tray.revision
            step = run.route_at(revision).by_key[key]
            is_one = step.pass_.size == "board" or takes_several(step, hands_by_tray=True)
            groups.setdefault((key, revision, rest.began_at if is_one else tray.id), {})[tray.id] = rest
    for (key, revision, _), rests in groups.items():
        route = run.route_at(revision)
        step = route.by_key[key]
        pieces = {tray: _rested(run, run.trays[tray], key) for tray in rests}
        yield Resting(run.id, route, step, rests, held_after(book, route, step, pieces))


def _waits(run: RunState, tray: Tray) -> dict[str, Rest]:
    """The waits of a tray that somebody has still to end, since pieces lie behind them."""
    if not tray.rests:
        return {}
    route = run.route_of(tray)
    steps = (step for key in tray.at if (step := route.step(key)) is not None)
    return {key: rest for step in steps for key, rest in rests_before(route, tray, step).items()}


def _rested(run: RunState, tray: Tray, key: str) -> int:
    """The pieces of a tray that are past a step and in no load."""
    route = run.route_of(tray)
    after = route.by_key[key].index
    steps = (step for at in tray.at if (step := route.step(at)) is not None and step.index > after)
    return sum(tray.at[step.key] - tray.busy.get(step.key, 0) for step in steps)


def held_after(book: Book, route: Route, step: Step, pieces: Mapping[str, int]) -> Mapping[str, int]:
    """What the wait after a step holds for pieces of some trays: its places once for each load that a plan takes them in."""
    wait = wait_after(book, route, step)
    if wait is None or not wait.holds:
        return {}
    times = 1 if step.pass_.size == "board" else len(list(shared_out(step, pieces, hands_by_tray=True)))
    return {service: count * times for service, count in wait.holds.items()}


def drawn_by(step: Step | None, station: Station | None) -> set[str]:
    """The services that work at a step draws on, one of each."""
    return {*(step.operation.services if step else ()), *(station.services if station else ())}


class Services:
    """How much of each service is taken: ``now`` by what is at work and what rests, ``soon`` by what rests and by what will
    rest when it comes off."""

    def __init__(self, state: ShopState, book: Book) -> None:
        self._book = book
        self._resting = [rested for run in state.open_runs() for rested in resting(run, book)]
        self.now: Counter[str] = Counter()
        for rested in self._resting:
            self.now.update(rested.holds)
        self.soon = self.now.copy()
        for run, load in state.open_loads():
            step = run.step_of(load)
            if step is not None and (load.state == "running" or load.people):
                self.now.update(drawn_by(step, book.station(load.station)))
                self.soon.update(held_after(book, run.route_at(run.revision_of(load)), step, load.pieces))

    def suffice(self, run: RunState, load: Load, step: Step, pieces: Mapping[str, int]) -> bool:
        """Whether there is enough left for a load of these pieces, and for the wait after it. What they lie in themselves is
        free once they go on."""
        capacity = {service.key: service.capacity for service in self._book.services}
        drawn = drawn_by(step, self._book.station(load.station))
        held = held_after(self._book, run.route_at(run.revision_of(load)), step, pieces)
        own: Counter[str] = Counter()
        for resting in self._resting if drawn or held else ():
            if resting.run == run.id and resting.step.index < step.index and resting.rests.keys() <= pieces.keys():
                own.update(resting.holds)
        return all(self.now[key] - own[key] + 1 <= capacity.get(key, 1) for key in drawn) and all(
            self.soon[key] - own[key] + count <= capacity[key] for key, count in held.items() if key in capacity
        )
