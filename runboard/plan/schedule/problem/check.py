"""An independent checker of plans: it knows the rules and the problem, and nothing of what makes a plan.

Slow and plain on purpose. What has happened has happened: where only begun blocks are in each other's way, or somebody is at
a begun block beyond their hours, nothing is broken.
"""

from bisect import bisect_left
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import combinations, pairwise

from runboard.plan.schedule.problem.hours import joined
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem


@dataclass(frozen=True)
class Broken:
    """A rule that a plan breaks: its code, the blocks that break it together, and the facts of it."""

    code: str
    blocks: tuple[int, ...]
    facts: Mapping[str, object] = field(default_factory=dict)


def broken(problem: Problem, plan: Plan) -> tuple[Broken, ...]:
    """Every rule that the plan breaks, with the blocks that break it; () where it keeps them all."""
    if [placed.block for placed in plan.placed] != list(range(len(problem.blocks))):
        return (Broken("not each block once", (), {"placed": len(plan.placed), "blocks": len(problem.blocks)}),)
    return tuple(_Checker(problem, plan).all())


@dataclass(frozen=True)
class There:
    """A span in which somebody's hands or eyes are at a block's station, which is in ``room``."""

    person: int
    block: Block
    room: int
    start: int
    end: int
    watches: bool

    @property
    def is_there(self) -> bool:
        """Whether they are at it already: whoever takes over what was begun has to come first, like anybody."""
        return self.block.begun and self.block.by == self.person


# Somebody at something, from tick to tick.
Stay = tuple[There, int, int]


class _Checker:
    """One plan: ``starts``, ``begins`` (after a setup) and ``ends`` are the ticks of each block."""

    def __init__(self, problem: Problem, plan: Plan) -> None:
        self.problem, self.blocks, self.stations = problem, problem.blocks, problem.stations
        self.pairs: list[tuple[Block, Placed]] = list(zip(problem.blocks, plan.placed, strict=True))
        self.starts = [placed.start for placed in plan.placed]
        self.begins = [placed.begins() for placed in plan.placed]
        self.ends = [self.begins[block.index] + block.length for block in problem.blocks]

    def all(self) -> Iterator[Broken]:
        """What is broken, rule by rule."""
        for rule in (self._alone, self._setups, self._held, self._lags, self._people, self._services, self._air):
            yield from rule()

    def _alone(self) -> Iterator[Broken]:
        """What a block breaks by itself."""
        for block, placed in self.pairs:
            name = (block.index,)
            if block.begun:
                if placed.start or placed.setup:
                    yield Broken("begun block moved", name, {"start": placed.start})
                continue
            start, end = placed.start, self.ends[block.index]
            if not any(opens <= start and end <= closes for opens, closes in self.stations[block.station].runs):
                yield Broken("station may not run", name, {"station": block.station})
            if start < block.release:
                yield Broken("before its release", name, {"release": block.release})

    def _setups(self) -> Iterator[Broken]:
        for at, station in enumerate(self.stations):
            stands_on = station.stands_on
            here = [block for block in self.blocks if block.station == at]
            # An unload belongs to what it unloads; blocks without length lie before those that begin with them.
            for block in sorted(
                here, key=lambda there: (self.starts[there.index], self.ends[there.index], there.index)
            ):
                setup = self.begins[block.index] - self.starts[block.index]
                changes = bool(block.family) and block.family != stands_on
                wanted = block.setup if changes and block.unloads is None and not block.begun else 0
                if setup != wanted:
                    yield Broken("setup", (block.index,), {"setup": setup, "wanted": wanted})
                stands_on = block.family or stands_on

    def _held(self) -> Iterator[Broken]:
        """A station is held from a machine's load to the end of its unloading."""
        held = []
        for block in self.blocks:
            if block.unloads is None:
                last = block.index
                while last in self.problem.unloaded_by:
                    last = self.problem.unloaded_by[last]
                held.append((block, self.starts[block.index], self.ends[last]))
        for (there, start, end), (other, starts, ends) in combinations(held, 2):
            if there.station == other.station and start < ends and starts < end and not (there.begun and other.begun):
                yield Broken("station held twice", (there.index, other.index), {"station": there.station})

    def _lags(self) -> Iterator[Broken]:
        for block in self.blocks:
            at, start = block.index, self.starts[block.index]
            if block.begun:
                continue
            if block.unloads is not None and start < self.ends[block.unloads]:
                yield Broken("unloaded before its end", (at, block.unloads), {})
            for lag in block.lags:
                if start < self.ends[lag.before] + lag.least:
                    yield Broken("too early", (at, lag.before), {"least": lag.least})
                if lag.latest is not None and start > self.begins[lag.before] + lag.latest:
                    yield Broken("too late", (at, lag.before), {"latest": lag.latest})

    # services and air

    def _draws(self) -> Iterator[tuple[int, Block, int, int, int]]:
        """(service, block, from, to, how many): what blocks draw on, and what their pieces hold until they are taken off."""
        taken_off = [0] * len(self.blocks)
        for block in self.blocks:
            for lag in block.lags:
                taken_off[lag.before] = max(taken_off[lag.before], self.starts[block.index])
        for block in self.blocks:
            for stretch in block.stretches:
                start = self.begins[block.index] + stretch.offset
                yield from ((service, block, start, start + stretch.length, many) for service, many in stretch.draws)
            end, until = self.ends[block.index], taken_off[block.index]
            yield from ((service, block, end, until, many) for service, many in block.holds if until > end)

    def _services(self) -> Iterator[Broken]:
        draws = list(self._draws())
        for service, (key, capacity) in enumerate(self.problem.services):
            here = [draw[1:] for draw in draws if draw[0] == service]
            for tick in sorted({start for _, start, _, _ in here}):
                at_once = [(block, many) for block, start, end, many in here if start <= tick < end]
                if sum(many for _, many in at_once) > capacity and not all(block.begun for block, _ in at_once):
                    blocks = sorted({block.index for block, _ in at_once})
                    yield Broken("service beyond its capacity", tuple(blocks), {"service": key, "tick": tick})

    def _air(self) -> Iterator[Broken]:
        """While a finish is brought on and wet: no dust there. While its solvent is in the air: nothing that heats or sparks
        either."""
        for coat in self.blocks:
            room, start, end = self.stations[coat.station].room, self.begins[coat.index], self.ends[coat.index]
            for other in self.blocks if coat.wet or coat.airs is not None else ():
                station = self.stations[other.station]
                if coat is other or station.room != room or (coat.begun and other.begun):
                    continue
                dust = [end + coat.wet, end + (coat.airs or 0)] if station.dusty else []
                heat = [end + coat.airs] if station.heats and coat.airs is not None else []
                begins, ends = self.begins[other.index], self.ends[other.index]
                if start < ends and begins < max(dust + heat, default=0) and begins < ends:
                    yield Broken("in wet air", (other.index, coat.index), {"room": room})

    # people

    def _people(self) -> Iterator[Broken]:
        for block, placed in self.pairs:
            yield from self._who(block, placed)
        there = [
            there for block, placed in self.pairs for there in (*self._hands(block, placed), *self._eyes(block, placed))
        ]
        for stay in there:
            windows = self.problem.people[stay.person].windows
            if not stay.is_there and not any(opens <= stay.start and stay.end <= closes for opens, closes in windows):
                facts = {"person": stay.person, "start": stay.start, "end": stay.end}
                yield Broken("outside hours", (stay.block.index,), facts)
        for person in range(len(self.problem.people)):
            yield from self._one_person(person, [stay for stay in there if stay.person == person])

    def _who(self, block: Block, placed: Placed) -> Iterator[Broken]:
        """Whether the right people are at a block, and its machine is watched throughout."""
        name, needed = (block.index,), block.hands > 0 or placed.setup > 0
        if needed != (placed.hands is not None):
            yield Broken("hands", name, {"needed": needed})
        elif placed.hands is not None and block.begun and block.by not in (None, placed.hands):
            yield Broken("somebody else's hands", name, {"person": placed.hands, "by": block.by})
        elif placed.hands is not None and not block.begun and placed.hands not in block.people:
            yield Broken("may not do it", name, {"person": placed.hands})
        watched, ticks = block.watched, [tick for _, tick in placed.watchers]
        if watched is None or (block.begun and block.by is None and not ticks):
            if ticks:
                yield Broken("nothing to watch", name)
            return
        start = placed.begins() + watched.offset
        if not ticks or ticks[0] != start or ticks != sorted(set(ticks)) or ticks[-1] >= start + watched.length:
            yield Broken("not watched throughout", name, {"ticks": ticks, "start": start})

    def _hands(self, block: Block, placed: Placed) -> Iterator[There]:
        if placed.hands is None:
            return
        spans = [
            (stretch.offset, stretch.offset + stretch.length)
            for stretch in block.stretches
            if stretch.attendance == "hands-on"
        ]
        for start, end in joined([(-placed.setup, 0), *spans]):
            start, end = placed.begins() + start, placed.begins() + end
            yield There(placed.hands, block, self.stations[block.station].room, start, end, False)

    def _eyes(self, block: Block, placed: Placed) -> Iterator[There]:
        if block.watched is None:
            return
        until = placed.begins() + block.watched.offset + block.watched.length
        for (person, start), (_, end) in pairwise((*placed.watchers, (-1, until))):
            yield There(person, block, self.stations[block.station].room, start, end, True)

    def _one_person(self, person: int, there: list[There]) -> Iterator[Broken]:
        for (one, *_), (other, *_) in _near([(stay, stay.start, stay.end) for stay in there], 0):
            both_begun = one.block.begun and other.block.begun
            if one.start < other.end and other.start < one.end and not both_begun and not self._together(one, other):
                code = "out of sight" if one.watches or other.watches else "hands twice"
                yield Broken(code, (one.block.index, other.block.index), {"person": person})
        stays = [(stay, *span) for stay in there for span in _stays(stay, there)]
        farthest = max((max(row) for row in self.problem.walks), default=0)
        for (one, start, end), (other, starts, ends) in _near(stays, farthest):
            gap = max(starts - end, start - ends)
            if gap < self.problem.walks[one.room][other.room] and one.room != other.room and not _in_reach(one, other):
                yield Broken("walk", (one.block.index, other.block.index), {"person": person, "gap": gap})
        room = self.problem.people[person].room
        for stay, start, _ in stays:
            if room >= 0 and not stay.is_there and start < self.problem.walks[room][stay.room]:
                yield Broken("walk", (stay.block.index,), {"person": person, "gap": start})

    def _together(self, one: There, other: There) -> bool:
        """Whether one person may do both at once."""
        here, there = one.block.station, other.block.station
        in_sight = there in self.stations[here].watched_from, here in self.stations[there].watched_from
        if one.watches and other.watches:
            return one.room == other.room or any(in_sight)
        return (one.watches and (here == there or in_sight[0])) or (other.watches and (here == there or in_sight[1]))


def _near(stays: list[Stay], apart: int) -> list[tuple[Stay, Stay]]:
    """Every two of which one begins less than so many ticks after the other ends, in the order in which they are given."""
    rows = sorted((start, end, at) for at, (_, start, end) in enumerate(stays))
    found = []
    for number, (_, end, at) in enumerate(rows, 1):
        until = bisect_left(rows, (end + apart,))
        found += [(min(at, other), max(at, other)) for _, _, other in rows[number:until]]
    return [(stays[at], stays[other]) for at, other in sorted(found)]


def _stays(stay: There, there: list[There]) -> list[tuple[int, int]]:
    """When somebody must be in a room: whoever watches is in the machine's but while their hands are in another, where it may
    be watched from."""
    left = [(stay.start, stay.end)]
    for other in there if stay.watches else ():
        if not other.watches and other.room != stay.room:
            cut = [((a, min(b, other.start)), (max(a, other.end), b)) for a, b in left]
            left = [span for pair in cut for span in pair if span[0] < span[1]]
    return left


def _in_reach(there: There, other: There) -> bool:
    """Whether one of them is watched from the other meanwhile, so that no walk lies between; or both were begun."""
    if there.block.begun and other.block.begun:
        return True
    return there.start < other.end and other.start < there.end and (there.watches or other.watches)
