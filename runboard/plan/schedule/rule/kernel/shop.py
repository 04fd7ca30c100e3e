"""A problem as the records that the dispatch rule works on, and a plan out of them."""

from collections.abc import Iterable, Iterator, Sequence
from typing import TypeVar

from runboard.plan.schedule.problem import nouns
from runboard.plan.schedule.rule.kernel.groups import groups_of
from runboard.plan.schedule.rule.kernel.records import (
    BIG,
    HANDS,
    MOST_WATCHERS,
    WATCH,
    Block,
    Draw,
    Follower,
    Go,
    Group,
    Hours,
    Kind,
    Lag,
    Person,
    Rival,
    Room,
    Shop,
    Span,
    Station,
    Stretch,
    Use,
    Watcher,
)

T = TypeVar("T")
_ATTENDANCE = {"hands-on": HANDS, "watched": WATCH, "none": 0}


def shop_of(problem: nouns.Problem) -> Shop:
    """A problem's records, as objects in lists long enough for any go."""
    return _Builder(problem).shop()


def plan_of(shop: Shop, source: str) -> nouns.Plan:
    """The plan of a go that placed every block."""
    watchers: dict[int, list[tuple[int, int]]] = {}
    for at in range(shop.go.watcher_count):
        one = shop.watchers[at]
        watchers.setdefault(int(one.block), []).append((int(one.person), int(one.start)))
    return nouns.Plan(tuple(_placed(one, watchers.get(at, ())) for at, one in enumerate(shop.blocks)), source)


def _placed(block: Block, watchers: Sequence[tuple[int, int]]) -> nouns.Placed:
    hands = None if block.hands < 0 else int(block.hands)
    return nouns.Placed(int(block.index), int(block.start), int(block.set_up), hands, tuple(watchers))


class _Builder:
    """Lists being filled: those of each block, station and person lie one behind the other."""

    def __init__(self, problem: nouns.Problem) -> None:
        self.problem = problem
        self.kinds: dict[object, int] = {}
        self.families = {"": -1}
        self.waits, self.ranks = _waits(problem), _ranks(problem)
        self.groups = groups_of(problem)
        self.group_of = {block: at for at, members in enumerate(self.groups) for block in members}
        self.stretches: list[Stretch] = []
        self.draws: list[Draw] = []
        self.lags: list[Lag] = []
        self.rivals: list[Rival] = []
        self.before = _before(problem)
        self.followers: list[Follower] = []
        self.hours: list[Hours] = []

    def shop(self) -> Shop:
        problem, stations = self.problem, self.problem.stations
        blocks = [self._block(one) for one in problem.blocks]
        spoiling = [stations[one.station].room for one in blocks if one.dusty or one.heats]
        watchers = MOST_WATCHERS * sum(one.attendance == WATCH for one in self.stretches)
        spans = 1 + len(blocks) + len(self.stretches) + watchers
        every = range(len(stations))
        return Shop(
            go=Go(farthest=max((walk for walks in problem.walks for walk in walks), default=0)),
            blocks=blocks,
            groups=[self._group(at, members, blocks) for at, members in enumerate(self.groups)],
            members=[block for members in self.groups for block in members],
            stations=[self._station(at, one) for at, one in enumerate(stations)],
            people=[Person(at, one.room, *self._hours(one.windows)) for at, one in enumerate(problem.people)],
            rooms=[Room(spoiling.count(at)) for at in range(len(problem.rooms))],
            stretches=self.stretches,
            draws=self.draws,
            rivals=self.rivals,
            lags=self.lags,
            followers=self.followers,
            hours=self.hours,
            openings=[*sorted({one.opens for one in self.hours}), BIG],
            kinds=[Kind() for _ in self.kinds],
            capacities=[capacity for _, capacity in problem.services],
            able=[[int(at in one.people) for at in range(len(problem.people))] for one in problem.blocks],
            walks=[list(walks) for walks in problem.walks],
            in_sight=[[int(at == other or other in stations[at].watched_from) for other in every] for at in every],
            together=[[int(_is_together(problem, at, other)) for other in every] for at in every],
            spans=[[Span() for _ in range(spans)] for _ in problem.people],
            taken=[Use() for _ in self.draws],
            air=[Use() for _ in range(4 * len(blocks))],
            watchers=[Watcher() for _ in range(watchers)],
            chosen=[Watcher() for _ in range(MOST_WATCHERS)],
            waiting=[0] * len(blocks),
            order=[0] * spans,
            places=[0] * (spans * (1 + len(problem.rooms))),
            front=[0] * (len(blocks) + len(self.groups)),
        )

    def _block(self, block: nouns.Block) -> Block:
        station = self.problem.stations[block.station]
        stretches = [
            Stretch(one.offset, one.length, _ATTENDANCE[one.attendance], *self._draws(one.draws))
            for one in block.stretches
        ]
        unloading = block.index in self.problem.unloaded_by
        takers = len(self.followers) + len(self.waits[block.index]) - unloading
        dustless = max(block.wet, block.airs or 0) if block.is_coat else -1
        return Block(
            block.index,
            *_put(self.stretches, stretches),
            *_put(self.lags, [Lag(one.before, one.least, _or_none(one.latest)) for one in block.lags]),
            *_put(self.followers, self.waits[block.index]),
            takers,
            *self._draws(block.holds),
            *_put(self.rivals, self._rivals(block)),
            station=block.station,
            has_hands=int(block.hands > 0),
            length=block.length,
            release=block.release,
            setup=block.setup,
            family=self._family(block.family),
            begun=int(block.begun),
            by=_or_none(block.by),
            unloads=_or_none(block.unloads),
            unloaded_by=self.problem.unloaded_by.get(block.index, -1),
            dustless=dustless,
            heatless=_or_none(block.airs),
            dusty=int(station.dusty),
            heats=int(station.heats),
            rank=self.ranks[block.index],
            kind=self._kind(block),
            group=self.group_of.get(block.index, -1),
            waits=len(block.lags) + (block.unloads is not None),
        )

    def _rivals(self, block: nouns.Block) -> Iterator[Rival]:
        """Who must be done before all that wait for a block begin, and needs of what it holds."""
        first = 0
        for follower in self.waits[block.index] if block.holds else ():
            first |= self.before[follower.block]
        first &= ~(self.before[block.index] | 1 << block.index)
        for other in self.problem.blocks:
            if first >> other.index & 1:
                needs = [*other.holds, *(draw for one in other.stretches for draw in one.draws)]
                for service, _ in block.holds:
                    most = max((count for what, count in needs if what == service), default=0)
                    if most:
                        yield Rival(other.index, service, most)

    def _kind(self, block: nouns.Block) -> int:
        asks = (
            block.station,
            block.stretches,
            block.setup,
            block.family,
            block.people,
            block.wet,
            block.airs,
            block.holds,
        )
        taken_off = tuple(lag.before for lag in block.lags if self.problem.blocks[lag.before].holds)
        holds = block.index if block.holds else -1
        ends = (block.unloads is None, block.index in self.problem.unloaded_by, taken_off, holds)
        return self.kinds.setdefault((asks, ends), len(self.kinds))

    def _family(self, family: str) -> int:
        return self.families.setdefault(family, len(self.families) - 1)

    def _draws(self, draws: Iterable[Sequence[int]]) -> tuple[int, int]:
        return _put(self.draws, [Draw(*one) for one in draws])

    def _hours(self, spans: Iterable[nouns.Span]) -> tuple[int, int]:
        return _put(self.hours, [Hours(*one) for one in sorted(spans)])

    def _station(self, at: int, station: nouns.Station) -> Station:
        return Station(at, station.room, self._family(station.stands_on), *self._hours(station.runs))

    def _group(self, at: int, members: list[int], blocks: list[Block]) -> Group:
        start = sum(len(group) for group in self.groups[:at])
        left = [blocks[one] for one in members if not blocks[one].begun]
        outside = [after for before, some in enumerate(self.waits) if before not in members for after in some]
        waits = sum(one.block == other.index for one in outside for other in left)
        return Group(at, start, start + len(members), waits, len(left), int(len(left) < len(members)))


def _put(where: list[T], records: Iterable[T]) -> tuple[int, int]:
    """(from, to) of records put at the end of a list."""
    start = len(where)
    where += records
    return start, len(where)


def _or_none(value: int | None) -> int:
    return -1 if value is None else value


def _is_together(problem: nouns.Problem, one: int, other: int) -> bool:
    """Whether one person can watch both."""
    first, second = problem.stations[one], problem.stations[other]
    return first.room == second.room or other in first.watched_from or one in second.watched_from


def _waits(problem: nouns.Problem) -> list[list[Follower]]:
    """For each block who waits for it, and how long after its end: one for each lag, then its unloading."""
    found: list[list[Follower]] = [[] for _ in problem.blocks]
    for block in problem.blocks:
        for lag in block.lags:
            found[lag.before].append(Follower(block.index, lag.least))
    for block in problem.blocks:
        if block.unloads is not None:
            found[block.unloads].append(Follower(block.index, 0))
    return found


def _before(problem: nouns.Problem) -> list[int]:
    """For each block the set of those that it waits for, straight or not, as bits."""
    found = [0] * len(problem.blocks)
    again = True
    while again:
        again = False
        for block in problem.blocks:
            firsts = [lag.before for lag in block.lags] + ([] if block.unloads is None else [block.unloads])
            every = found[block.index]
            for one in firsts:
                every |= found[one] | 1 << one
            again, found[block.index] = again or every != found[block.index], every
    return found


def _ranks(problem: nouns.Problem) -> list[int]:
    """For each block its place where trays are in ascending order."""
    blocks = sorted(problem.blocks, key=lambda one: ([(len(tray), tray) for tray in one.trays], one.index))
    found = [0] * len(blocks)
    for at, block in enumerate(blocks):
        found[block.index] = at
    return found
