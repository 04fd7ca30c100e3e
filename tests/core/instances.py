"""Scheduling problems to try a planner on: instance number one, and small shops made by chance.

Instance number one is a run of key rails in a workshop, a house with the laser in it, and a finishing corner: trays of
five, three trays a sheet, worked in the evenings and at weekends.
"""

from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

from hypothesis import strategies as st

from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import Block, Lag, OrderDue, PlannedStation, Problem, Span, Stretch, Worker
from tests.core.pressing import Floor
from tests.scenario import a_pass, operation

FRIDAY = datetime(2026, 6, 5, 18, 0, tzinfo=UTC)
MONDAY = datetime(2026, 6, 1, 18, 0, tzinfo=UTC)

_WEEKDAYS = ["mon", "tue", "wed", "thu", "fri"]
_HOURS = [
    {"days": _WEEKDAYS, "from": "18:00", "to": "22:00"},
    {"days": ["sat", "sun"], "from": "09:00", "to": "12:30"},
    {"days": ["sat", "sun"], "from": "13:30", "to": "18:00"},
]


def rails() -> dict[str, Any]:
    """The rail of instance number one: nine operations, 58 minutes of hands a tray and 6 a sheet."""
    rout = a_pass(size="board", pieces=15, loading=4, machine=38, unloading=2)
    laser = a_pass(loading=2, machine=22, unloading=1)
    dry = {"why": "dry", "least_minutes": 720, "latest_minutes": None, "holds": {}}
    return {
        "key": "rail",
        "name": "Entry key rails",
        "pieces_a_tray": 5,
        "operations": [
            operation("rout", "cnc", rout, attendance="watched", services=["extraction"]),
            operation("trim", "bench", a_pass(hand=3 / 5)),
            operation("round", "router", a_pass(hand=1), services=["extraction"]),
            operation("sand", "sander", a_pass(hand=24 / 5)),
            operation("engrave", "laser", laser, attendance="watched"),
            operation("wipe", "finishing", a_pass(hand=2 / 5)),
            operation("oil", "finishing", a_pass(hand=6 / 5), wait=dry),
            operation("fit", "fitting", a_pass(hand=9 / 5)),
            operation("pack", "packing", a_pass(hand=6 / 5)),
        ],
    }


def shop_of(people: int) -> dict[str, Any]:
    """The shop of instance number one, with so many people who keep the same hours."""
    station = {"key": "", "name": "", "kind": "bench", "room": "shop"}
    return {
        "runboard_book": 1,
        "name": "Evenings and weekends",
        "time_zone": "UTC",
        "units": "mm",
        "emergency": "112",
        "rooms": [{"key": key, "name": key.capitalize()} for key in ("shop", "house", "corner")],
        "walks": [
            {"rooms": ["house", "shop"], "minutes": 2},
            {"rooms": ["corner", "shop"], "minutes": 1},
            {"rooms": ["corner", "house"], "minutes": 2},
        ],
        "services": [{"key": "extraction", "name": "Dust extraction", "capacity": 1}],
        "stations": [
            {**station, "key": "cnc", "name": "CNC", "kind": "cnc"},
            {**station, "key": "bench", "name": "Bench"},
            {**station, "key": "router", "name": "Router table", "kind": "hand cutter"},
            {**station, "key": "sander", "name": "Sander", "kind": "sander"},
            {**station, "key": "laser", "name": "Laser", "kind": "laser", "room": "house"},
            {**station, "key": "finishing", "name": "Finishing corner", "kind": "finishing", "room": "corner"},
            {**station, "key": "fitting", "name": "Fitting bench"},
            {**station, "key": "packing", "name": "Packing table", "room": "house"},
        ],
        "people": [{"key": key, "name": key.capitalize(), "hours": _HOURS} for key in ("ann", "ben", "cleo")[:people]],
        "jobs": [],
        "products": [rails()],
    }


def opened(trays: int, people: int = 1, start: datetime = FRIDAY) -> Floor:
    """Instance number one as a run that has just been opened at ``start``; the clock stands there."""
    floor = Floor(shop_of(people))
    floor.now = start
    orders = [{"line": "1", "pieces": 5 * trays, "text": "12"}]
    floor.open_run(trays, product=rails(), orders=orders, boards=_boards(trays))
    floor.now = start
    return floor


def _boards(trays: int) -> dict[str, dict[str, int]]:
    keys = [str(number) for number in range(1, trays + 1)]
    return {f"rout/{at // 3 + 1}": dict.fromkeys(keys[at : at + 3], 5) for at in range(0, trays, 3)}


def the_trial(trays: int = 9, people: int = 1, start: datetime = FRIDAY) -> Problem:
    """Instance number one: 9 trays are 87 operations and 540 minutes of hands."""
    floor = opened(trays, people, start)
    return problem_for(floor.state, floor.book, start)


# small shops made by chance

_DAY = 240


@st.composite
def problems(draw: st.DrawFn, most_loads: int = 5) -> Problem:
    """A small shop in which every rule may bind: rooms with walks, services, lags with a latest end, begun blocks, watched
    machines, quiet hours, setups and families, wet rooms, skills."""
    rooms = draw(st.integers(1, 3))
    services = tuple((f"service {at}", draw(st.integers(1, 2))) for at in range(draw(st.integers(0, 2))))
    stations = tuple(draw(_stations(at, rooms)) for at in range(draw(st.integers(1, 4))))
    people = tuple(draw(_workers(at, rooms)) for at in range(draw(st.integers(1, 3))))
    walks = draw(_walks(rooms))
    blocks = draw(_blocks(stations, len(people), services, most_loads))
    last = [block.pieces for block in blocks if block.last]
    orders = (OrderDue("r", "1", sum(last), sum(last), draw(st.none() | st.integers(0, 3 * _DAY))),) if last else ()
    names = tuple(f"room {at}" for at in range(rooms))
    return Problem(MONDAY, stations, people, services, names, walks, blocks, orders)


@st.composite
def _walks(draw: st.DrawFn, rooms: int) -> tuple[tuple[int, ...], ...]:
    far = [[0] * rooms for _ in range(rooms)]
    for one in range(rooms):
        for other in range(one):
            far[one][other] = far[other][one] = draw(st.integers(0, 5))
    return tuple(tuple(row) for row in far)


@st.composite
def _stations(draw: st.DrawFn, at: int, rooms: int) -> PlannedStation:
    seen_from = frozenset({at, *draw(st.sets(st.integers(0, 3)))})
    runs: tuple[Span, ...] = ((0, 100 * _DAY),)
    if draw(st.integers(0, 4)) == 0:  # quiet from tick 120 to the end of each day
        runs = tuple((day * _DAY, day * _DAY + 120) for day in range(30))
    stands_on = draw(st.sampled_from(["", "a", "b"]))
    heats, dusty = draw(st.sampled_from([(False, False), (False, False), (True, False), (False, True)]))
    room = draw(st.integers(0, rooms - 1))
    return PlannedStation(f"station {at}", f"Station {at}", room, seen_from, runs, stands_on, heats, dusty)


@st.composite
def _workers(draw: st.DrawFn, at: int, rooms: int) -> Worker:
    opens = draw(st.integers(0, 60))
    closes = draw(st.integers(150, _DAY))
    windows = [(day * _DAY + opens, day * _DAY + closes) for day in range(30)]
    if draw(st.booleans()):
        windows[0] = (0, draw(st.integers(1, 100)))
    return Worker(f"person {at}", f"Person {at}", tuple(windows), draw(st.integers(-1, rooms - 1)))


@st.composite
def _blocks(
    draw: st.DrawFn, stations: tuple[PlannedStation, ...], people: int, services: tuple[tuple[str, int], ...], most: int
) -> tuple[Block, ...]:
    blocks: list[Block] = []
    free = set(range(len(stations)))
    idle = set(range(people))
    for number in range(draw(st.integers(1, most))):
        load = draw(_loads(len(blocks), number, len(stations), people, services))
        before = [block.index for block in blocks if block.index not in {one.unloads for one in blocks}]
        load = (replace(load[0], lags=draw(_lags(before, blocks))), *load[1:])
        if not load[0].lags and load[0].station in free and draw(st.integers(0, 3)) == 0:
            load = _begun(load, idle, draw(st.integers(0, people - 1)))
            free.discard(load[0].station)
        blocks += load
    waited_for = {lag.before for block in blocks for lag in block.lags} | {block.unloads for block in blocks}
    return tuple(replace(block, last=block.index not in waited_for) for block in blocks)


def _begun(load: tuple[Block, ...], idle: set[int], by: int) -> tuple[Block, ...]:
    """The load as it is when it runs already, or hands are at it: whoever is at one thing is at no other."""
    first = load[0]
    machine = [one for one in first.stretches if one.kind == "machine"]
    if machine:
        first = replace(first, stretches=(replace(machine[0], offset=0),))
    if first.attended and by not in idle:
        return load
    idle.discard(by if first.attended else -1)
    return (replace(first, begun=True, setup=0, release=0, by=by if first.attended else None), *load[1:])


@st.composite
def _loads(
    draw: st.DrawFn, index: int, number: int, stations: int, people: int, services: tuple[tuple[str, int], ...]
) -> tuple[Block, ...]:
    """Hand work, or a machine's load with its unloading."""
    drawn = tuple(
        (service, draw(st.integers(1, capacity)))
        for service, (_, capacity) in enumerate(services)
        if draw(st.booleans())
    )
    lengths = st.integers(1, 15)
    able = tuple(sorted(draw(st.sets(st.integers(0, people - 1), min_size=1))))
    wet = draw(st.sampled_from([0, 0, 0, 20, 150]))
    one = Block(
        index,
        "r",
        f"load {number}",
        f"step {number}",
        f"operation {number}",
        (str(number),),
        draw(st.integers(1, 5)),
        draw(st.integers(0, stations - 1)),
        (Stretch("hand", 0, draw(lengths), "hands-on", drawn),),
        able,
        family=draw(st.sampled_from(["", "a", "b"])),
        setup=draw(st.sampled_from([0, 0, 3])),
        release=draw(st.sampled_from([0, 0, 30])),
        wet=wet,
        airs=draw(st.sampled_from([None, None, None, 0, 30, 150])),
        holds=draw(_holds(services)),
    )
    if draw(st.booleans()):
        return (one,)
    loading, run, unloading = draw(st.integers(0, 5)), draw(st.integers(1, 50)), draw(st.integers(1, 5))
    stretches = [Stretch("loading", 0, loading, "hands-on")] if loading else []
    stretches.append(Stretch("machine", loading, run, draw(st.sampled_from(["watched", "none"])), drawn))
    after = Stretch("unloading", 0, unloading, "hands-on")
    first = replace(one, stretches=tuple(stretches), wet=0, airs=None, holds=())
    return first, replace(one, index=index + 1, stretches=(after,), setup=0, release=0, unloads=index, wet=0, airs=None)


def _holds(services: tuple[tuple[str, int], ...]) -> st.SearchStrategy[tuple[tuple[int, int], ...]]:
    return st.sampled_from([(), (), ((0, 1),)]) if services else st.just(())


@st.composite
def _lags(draw: st.DrawFn, before: list[int], blocks: list[Block]) -> tuple[Lag, ...]:
    chosen = draw(st.sets(st.sampled_from(before), max_size=2)) if before else set()
    found = []
    for one in sorted(chosen):
        known = next((lag for block in blocks for lag in block.lags if lag.before == one), None)
        least = known.least if known else draw(st.sampled_from([0, 0, 10, 200]))
        latest = blocks[one].length + least + 60 if least < 200 and draw(st.integers(0, 3)) == 0 else None
        found.append(Lag(one, least, latest))
    return tuple(found)
