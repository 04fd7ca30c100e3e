"""A replayed run with one thing easier: less of somebody's hands, of a machine's time, of a wait, of walking, more of a service,
longer hours. The work keeps its order, and meets the same luck."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from runboard.plan.schedule.problem.hours import joined
from runboard.plan.schedule.problem.nouns import FAR, Block, Problem, Span
from runboard.plan.schedule.problem.people import walks_of
from runboard.plan.schedule.told.effort import ticks
from runboard.review.held.nouns import What
from runboard.review.held.replay import Replay

# Of a block's stretch or setup: whether it gets shorter, by its kind of attendance.
Concerns = Callable[[Block, str], bool]
SETUP = "hands-on"


@dataclass(frozen=True)
class Eased:
    """The problem with one thing easier, its drawn lengths, and of how many ticks of that there is less."""

    problem: Problem
    lengths: Any
    less: float


def things(replay: Replay) -> list[What]:
    """All that can be eased in a run, in the order in which of two that move as much the first is said."""
    problem, plan = replay.problem, replay.plan
    wanted = {draw[0] for block in problem.blocks for draw in _draws(block)}
    running = {block.station for block in problem.blocks if _of(block, _machine)}
    waiting = dict.fromkeys(
        problem.blocks[lag.before].step for block in problem.blocks for lag in block.lags if lag.least
    )
    coated = {problem.stations[block.station].room for block in problem.blocks if block.is_coat}
    at_it = {placed.hands for placed in plan.placed if placed.hands is not None}
    return [
        *(("service", key) for at, (key, _) in enumerate(problem.services) if at in wanted),
        *(("station", station.key) for at, station in enumerate(problem.stations) if at in running),
        *(("wait", step) for step in waiting),
        *(("hands", person.key) for at, person in enumerate(problem.people) if at in at_it),
        *(("room", problem.rooms[room]) for room in sorted(coated)),
        *([("walking", "")] if any(map(any, problem.walks)) else []),
        ("hours", ""),
    ]


def eased(replay: Replay, lengths: Any, what: What, left: float) -> Eased:
    """The run with ``left`` of a thing's time (0.8: a fifth less; 0: as good as none). Of hours there is more by as much (0.8: by
    a quarter; 0: round the clock), and of a service there is no end."""
    problem, (kind, key) = replay.problem, what
    match kind:
        case "hands":
            who = [person.key for person in problem.people].index(key)
            mine = {placed.block for placed in replay.plan.placed if placed.hands == who}
            return _shorter(
                problem, lengths, left, lambda block, attendance: block.index in mine and attendance == "hands-on"
            )
        case "station":
            at = [station.key for station in problem.stations].index(key)
            return _shorter(
                problem, lengths, left, lambda block, attendance: block.station == at and attendance != "hands-on"
            )
        case "wait":
            return _waiting_less(problem, lengths, left, key)
        case "service":
            return endless(problem, lengths, key)
        case "room":
            return _drier(problem, lengths, left, problem.rooms.index(key))
        case "walking":
            walks = tuple(tuple(int(walk * left) for walk in row) for row in problem.walks)
            easier = replace(problem, walks=walks)
            return Eased(easier, lengths, _walked(replay, problem) - _walked(replay, easier))
    return _longer_hours(replay, lengths, left)


def _draws(block: Block) -> Iterator[Span]:
    yield from block.holds
    for stretch in block.stretches:
        yield from stretch.draws


def _of(block: Block, concerns: Concerns) -> int:
    return sum(stretch.length for stretch in block.stretches if concerns(block, stretch.attendance))


def _machine(_: Block, attendance: str) -> bool:
    return attendance != "hands-on"


def _shorter(problem: Problem, lengths: Any, left: float, concerns: Concerns) -> Eased:
    """Each stretch and setup that is concerned takes so much of its time, and never less than a tick."""
    import numpy

    columns = [concerns(block, stretch.attendance) for block in problem.blocks for stretch in block.stretches]
    columns += [block.setup > 0 and concerns(block, SETUP) for block in problem.blocks]
    means = [stretch.length for block in problem.blocks for stretch in block.stretches]
    means += [block.setup for block in problem.blocks]
    row = _so_much_of(numpy.array([means], numpy.int64), columns, left)[0].tolist()
    stretches, setups = iter(row), row[-len(problem.blocks) :]
    blocks = tuple(replace(with_lengths(block, stretches), setup=setups[block.index]) for block in problem.blocks)
    return Eased(replace(problem, blocks=blocks), _so_much_of(lengths, columns, left), sum(means) - sum(row))


def _so_much_of(lengths: Any, columns: list[bool], left: float) -> Any:
    """The rows with so much of these columns. What is rounded off one is taken from the next: short ones add up to their
    share."""
    import numpy

    found = lengths.copy()
    before = found[:, columns]
    ends = numpy.rint(numpy.cumsum(before * left, axis=1))
    found[:, columns] = numpy.minimum(before, numpy.maximum(1, numpy.diff(ends, axis=1, prepend=0)))
    return found


def with_lengths(block: Block, lengths: Iterator[int]) -> Block:
    """A block whose stretches are so long, each behind the one before."""
    stretches, offset = [], 0
    for stretch in block.stretches:
        stretches.append(replace(stretch, offset=offset, length=next(lengths)))
        offset += stretches[-1].length
    return replace(block, stretches=tuple(stretches))


def _waiting_less(problem: Problem, lengths: Any, left: float, step: str) -> Eased:
    """The wait after a step, of which there is less by what one wait gets shorter."""
    blocks, less = [], 0
    for block in problem.blocks:
        lags = []
        for lag in block.lags:
            is_it = lag.least and problem.blocks[lag.before].step == step
            lags.append(replace(lag, least=int(lag.least * left)) if is_it else lag)
            less = max(less, lag.least - lags[-1].least)
        blocks.append(replace(block, lags=tuple(lags)))
    return Eased(replace(problem, blocks=tuple(blocks)), lengths, less)


def endless(problem: Problem, lengths: Any, service: str) -> Eased:
    """As much of a service as everything together takes. What there is less of is not known before it is replayed with that
    (``used_beyond``)."""
    at = [key for key, _ in problem.services].index(service)
    most = sum(max((count for known, count in _draws(block) if known == at), default=0) for block in problem.blocks)
    return Eased(_with_capacity(problem, at, max(problem.services[at][1], most)), lengths, 0)


def _with_capacity(problem: Problem, at: int, capacity: int) -> Problem:
    services = ((key, capacity if each == at else many) for each, (key, many) in enumerate(problem.services))
    return replace(problem, services=tuple(services))


def used_beyond(uses: Iterable[tuple[int, int, int]], capacity: int) -> int:
    """The ticks of all units beyond ``capacity`` that are taken, added up: ``uses`` are (from, until, how many)."""
    turns: dict[int, int] = {}
    for start, end, count in uses:
        turns[start] = turns.get(start, 0) + count
        turns[end] = turns.get(end, 0) - count
    found, taken, since = 0, 0, 0
    for tick in sorted(turns):
        found += (tick - since) * max(0, taken - capacity)
        taken, since = taken + turns[tick], tick
    return found


def _drier(problem: Problem, lengths: Any, left: float, room: int) -> Eased:
    less, blocks = 0, []
    for block in problem.blocks:
        if block.is_coat and problem.stations[block.station].room == room:
            airs = None if block.airs is None else int(block.airs * left) or None
            wet = int(block.wet * left)
            less = max(less, block.wet - wet, (block.airs or 0) - (airs or 0))
            block = replace(block, wet=wet, airs=airs)
        blocks.append(block)
    return Eased(replace(problem, blocks=tuple(blocks)), lengths, less)


def _walked(replay: Replay, problem: Problem) -> int:
    walks = (walk for at in range(len(problem.people)) for walk in walks_of(problem, replay.plan, at))
    return sum(walk.end - walk.start for walk in walks)


def _longer_hours(replay: Replay, lengths: Any, left: float) -> Eased:
    """Everybody stays longer each time: by a quarter where four fifths are left; round the clock where nothing is."""
    problem, less, people = replay.problem, 0, []
    for person in problem.people:
        if left:
            longer = joined((opens, min(FAR, closes + round((closes - opens) * (1 / left - 1))))
                            for opens, closes in joined(person.windows))  # fmt: skip
        else:
            longer = ((0, FAR),) if person.windows else ()
        less += _until(longer, replay.finish) - _until(person.windows, replay.finish)
        people.append(replace(person, windows=longer))
    return Eased(replace(problem, people=tuple(people)), lengths, less)


def there_before(problem: Problem, finish: int) -> int:
    """The ticks of everybody's hours before a finish."""
    return sum(_until(person.windows, finish) for person in problem.people)


def _until(windows: Iterable[Span], finish: int) -> int:
    return ticks((opens, min(closes, finish)) for opens, closes in joined(windows) if opens < finish)
