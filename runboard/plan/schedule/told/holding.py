"""What holds a plan: the longest chain back from its finish, what most of the chain's hours in the shop go to, and what
becomes of time that is won in it."""

from bisect import bisect_right
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from runboard.plan.schedule.problem.hours import Presence, open_spans
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem
from runboard.plan.schedule.problem.people import hands_of, watching_of

# The same under every problem: ('hands', person), ('station', station), ('wait', run, step).
Name = tuple[str, ...]

KINDS = ("hands", "station", "wait")
# What held it last is said until another has so much more of the chain.
CLEARLY = 0.1

# (until when, why, by which block)
_Earlier = tuple[int, str, int]
_ORDER = ("hands", "station", "before", "wait")


@dataclass(frozen=True)
class ChainLink:
    """A block of the chain and why it starts no earlier: ``wait`` and ``before`` (its pieces), ``station`` and ``hands``
    (what else is done there, or by that person), ``hours`` (nobody is there before), ``now``."""

    block: int
    why: str


@dataclass(frozen=True)
class Holder:
    """``what`` holds the plan: ``hands``, ``station`` (its machine) or ``wait``; ``which`` is the person, the station, or
    the block that is waited after. ``share`` of the chain's hours in the shop go to it. ``name`` outlives the problem."""

    what: str
    which: int
    share: float
    name: Name = ()


def chain(problem: Problem, plan: Plan, run: str = "") -> list[ChainLink]:
    """The longest chain, of all or to the end of one run, first things first; () where nothing is left."""
    some = [block.index for block in problem.blocks if not run or block.run == run]
    at = max(some, key=lambda block: (plan.end(problem, block), block), default=None)
    before, found = _Before(problem, plan), list[ChainLink]()
    while at is not None:
        placed = plan.placed[at]
        ended, why, other = max(before.all(placed), key=_rank, default=(0, "now", None))
        found.append(ChainLink(at, why if ended >= placed.start else "hours"))
        at = other
    return found[::-1]


def _rank(earlier: _Earlier) -> tuple[int, int, int]:
    return earlier[0], _ORDER.index(earlier[1]), -earlier[2]


class _Before:
    """What must be over before a block may start: its pieces', its station's and its people's, each kept by its end, so that
    of the thousands that a long plan has only the last are looked at."""

    def __init__(self, problem: Problem, plan: Plan) -> None:
        self.problem, self.plan = problem, plan
        # Each (end, the block counted from behind): of those that end together the first is the last in its row.
        self.stations: dict[int, list[tuple[int, int]]] = {}
        self.people: dict[tuple[int, int], list[tuple[int, int]]] = {}
        for block in problem.blocks:
            self.stations.setdefault(block.station, []).append((plan.end(problem, block.index), -block.index))
        for at in (*hands_of(problem, plan), *watching_of(problem, plan)):
            room = problem.stations[at.station].room
            self.people.setdefault((at.person, room), []).append((at.end, -at.block))
        for row in (*self.stations.values(), *self.people.values()):
            row.sort()

    def all(self, placed: Placed) -> Iterator[_Earlier]:
        """What is over before a block, and begun before it: of each station and person the last."""
        block, walks = self.problem.blocks[placed.block], self.problem.walks
        pieces = [(lag.before, lag.least) for lag in block.lags]
        if block.unloads is None:
            yield from self._last_in(self.stations[block.station], placed, "station")
        else:
            pieces.append((block.unloads, 0))
        for other, least in pieces:
            ended = self.plan.end(self.problem, other) + least
            if ended <= placed.start and self.plan.placed[other].start < placed.start:
                yield ended, "wait" if least else "before", other
        for person in _people(placed):
            for room in range(len(walks)):
                walk = walks[room][self.problem.stations[block.station].room]
                yield from self._last_in(self.people.get((person, room), []), placed, "hands", walk)

    def _last_in(self, row: list[tuple[int, int]], placed: Placed, why: str, walk: int = 0) -> Iterator[_Earlier]:
        """Of a row by its ends the last that is over ``walk`` before the block."""
        for at in range(bisect_right(row, (placed.start - walk, 0)) - 1, -1, -1):
            ended, other = row[at]
            if self.plan.placed[-other].start < placed.start:
                yield ended + walk, why, -other
                return


def _people(placed: Placed) -> set[int]:
    return {watcher for watcher in (placed.hands, *(who for who, _ in placed.watchers)) if watcher is not None}


def holder(problem: Problem, plan: Plan, run: str = "", before: Name = ()) -> Holder | None:
    """Who or what most of the chain's hours in the shop go to; None where nothing is left. ``before`` is what held it last:
    it stays unless another has clearly more, so that plans that are as good are said alike."""
    sums: dict[Name, int] = {}
    which: dict[Name, int] = {}
    there = Presence.of([open_spans(problem)])
    for link in chain(problem, plan, run):
        for what, at, ticks in _hours(problem, plan, link, there):
            name = _name(problem, what, at)
            sums[name] = sums.get(name, 0) + ticks
            which[name] = min(which.get(name, at), at)
    whole = sum(sums.values())
    if not whole:
        return None
    most = min(sums, key=lambda name: (-sums[name], KINDS.index(name[0]), name))
    if before in sums and sums[most] - sums[before] <= CLEARLY * whole:
        most = before
    return Holder(most[0], which[most], sums[most] / whole, most)


def _hours(problem: Problem, plan: Plan, link: ChainLink, there: Presence) -> Iterator[tuple[str, int, int]]:
    """(what, which, ticks in which somebody is there) of a link."""
    placed, block = plan.placed[link.block], problem.blocks[link.block]
    if placed.hands is not None:
        yield "hands", placed.hands, placed.setup + block.hands
    for stretch in block.stretches:
        if stretch.attendance != "hands-on":
            starts = placed.begins() + stretch.offset
            yield "station", block.station, there.between(starts, starts + stretch.length)
    for lag in block.lags if link.why == "wait" else ():
        ended = plan.end(problem, lag.before)
        if ended + lag.least == placed.start:
            yield "wait", lag.before, there.between(ended, placed.start)


def _name(problem: Problem, what: str, which: int) -> Name:
    if what == "wait":
        return what, problem.blocks[which].run, problem.blocks[which].step
    return what, (problem.people if what == "hands" else problem.stations)[which].key


# time that is won


@dataclass(frozen=True)
class Slack:
    """``is_off`` where the longest chain does not go through the work; ``waits`` is the last block of the chain that waits
    for hours to begin, and ``is_lost`` where it comes behind the work, so that what is won is lost in that wait."""

    is_off: bool
    waits: int | None
    is_lost: bool


def slack_of(problem: Problem, plan: Plan, is_it: Callable[[Block], bool], run: str = "") -> Slack:
    """What the longest chain, to the end of a run, does with the work that ``is_it`` names."""
    is_off, waits, is_lost, ended = True, None, False, 0
    for link in chain(problem, plan, run):
        if link.why == "hours" and _opens_for(problem, plan.placed[link.block], ended):
            waits, is_lost = link.block, not is_off
        if is_it(problem.blocks[link.block]):
            is_off, is_lost = False, False
        ended = plan.end(problem, link.block)
    return Slack(is_off, waits, is_lost)


def _opens_for(problem: Problem, placed: Placed, ended: int) -> bool:
    """Whether the hours of whoever does a block, or of its station, open after what is before it in the chain has ended."""
    runs = problem.stations[problem.blocks[placed.block].station].runs
    hours = [runs, *(problem.people[person].windows for person in _people(placed))]
    return any(ended < opens <= placed.start for spans in hours for opens, _ in spans)


def is_part(plan: Plan, run: str, operation: str, kind: str = "") -> Callable[[Block], bool]:
    """Whether a block has a time element of an operation of a run, or with ``kind`` '' any of its work."""

    def found(block: Block) -> bool:
        if (block.run, block.operation) != (run, operation):
            return False
        set_up = kind == "setup" and plan.placed[block.index].setup > 0
        return not kind or set_up or any(stretch.kind == kind for stretch in block.stretches)

    return found
