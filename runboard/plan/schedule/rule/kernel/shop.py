"""A problem as the records that the dispatch rule works on, and a plan out of them."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any, TypeVar

from runboard.plan.schedule.problem import nouns
from runboard.plan.schedule.rule.kernel.records import (
    BIG,
    DUST,
    HANDS,
    HEAT,
    MOST_WATCHERS,
    SOLVENT,
    WATCH,
    WET,
    BlockRecord,
    Draw,
    Go,
    GroupRecord,
    HoursRecord,
    KindRecord,
    LagRecord,
    PersonRecord,
    Shop,
    SpanRecord,
    StationRecord,
    StretchRecord,
    UseRecord,
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
        watcher = shop.watchers[at]
        watchers.setdefault(int(watcher.block), []).append((int(watcher.person), int(watcher.start)))
    columns = (_column(shop.blocks, name) for name in ("index", "start", "set_up", "hands"))
    placed = (
        nouns.Placed(index, start, set_up, None if hands < 0 else hands, tuple(watchers.get(index, ())))
        for index, start, set_up, hands in zip(*columns, strict=True)
    )
    return nouns.Plan(tuple(placed), source)


def _column(records: Any, name: str) -> list[int]:
    """A field of each record: of arrays at once, which is ten times as fast."""
    if isinstance(records, list):
        return [getattr(record, name) for record in records]
    found: list[int] = records[name].tolist()
    return found


class _Builder:
    """Lists being filled: those of each block, station and person lie one behind the other."""

    def __init__(self, problem: nouns.Problem) -> None:
        self.problem = problem
        self.kinds: dict[object, int] = {}
        self.families = {"": -1}
        self.takers, self.ranks, self.groups = _takers(problem), _ranks(problem), groups_of(problem)
        self.group_of = {block: at for at, members in enumerate(self.groups) for block in members}
        self.stretches: list[StretchRecord] = []
        self.draws: list[Draw] = []
        self.lags: list[LagRecord] = []
        self.hours: list[HoursRecord] = []

    def shop(self) -> Shop:
        problem, stations = self.problem, self.problem.stations
        blocks = [self._block(block) for block in problem.blocks]
        watchers = MOST_WATCHERS * (1 + sum(stretch.attendance == WATCH for stretch in self.stretches))
        spans = 1 + len(blocks) + len(self.stretches) + watchers
        every = range(len(stations))
        return Shop(
            go=Go(farthest=max((walk for walks in problem.walks for walk in walks), default=0)),
            blocks=blocks,
            groups=[self._group(at, members) for at, members in enumerate(self.groups)],
            members=[block for members in self.groups for block in members],
            stations=[self._station(at, station) for at, station in enumerate(stations)],
            people=[
                PersonRecord(at, person.room, *self._hours(person.windows)) for at, person in enumerate(problem.people)
            ],
            stretches=self.stretches,
            draws=self.draws,
            lags=self.lags,
            hours=self.hours,
            openings=[*sorted({hours.opens for hours in self.hours}), BIG],
            kinds=[KindRecord() for _ in self.kinds],
            capacities=[0] * self._air(len(problem.rooms), 0) + [capacity for _, capacity in problem.services],
            able=[[int(at in block.people) for at in range(len(problem.people))] for block in problem.blocks],
            walks=[list(walks) for walks in problem.walks],
            in_sight=[[int(at == other or other in stations[at].watched_from) for other in every] for at in every],
            together=[[int(_is_together(problem, at, other)) for other in every] for at in every],
            spans=[[SpanRecord() for _ in range(spans)] for _ in problem.people],
            taken=[UseRecord() for _ in self.draws],
            watchers=[Watcher() for _ in range(watchers)],
            spoiling=[0] * len(problem.rooms),
            values=[0] * (len(blocks) + len(self.groups)),
            order=[0] * spans,
            places=[0] * (spans * (1 + len(problem.rooms))),
            waiting=[0] * len(blocks),
            front=[0] * (len(blocks) + len(self.groups)),
        )

    def _block(self, block: nouns.Block) -> BlockRecord:
        station, takers = self.problem.stations[block.station], self.takers[block.index]
        unloaded_by = self.problem.unloaded_by.get(block.index)
        stretches = [
            StretchRecord(stretch.offset, stretch.length, _ATTENDANCE[stretch.attendance], *self._draws(stretch.draws))
            for stretch in block.stretches
        ]
        return BlockRecord(
            block.index,
            *_put(self.stretches, stretches),
            *_put(self.lags, [LagRecord(lag.before, lag.least, _or_none(lag.latest)) for lag in block.lags]),
            _put(self.lags, takers)[1],
            _put(self.lags, [] if unloaded_by is None else [LagRecord(unloaded_by, 0, -1)])[1],
            *self._draws(block.holds),
            _put(self.draws, self._rivals(block))[1],
            _put(self.draws, self._airs(block, station))[1],
            station=block.station,
            has_hands=int(block.hands > 0),
            length=block.length,
            release=block.release,
            setup=block.setup,
            family=self._family(block.family),
            begun=int(block.begun),
            by=_or_none(block.by),
            unloads=_or_none(block.unloads),
            is_unloaded=int(unloaded_by is not None),
            wets=int(block.wet > 0 or (block.airs or 0) > 0),
            spoils=int(station.dusty or station.heats),
            rank=self.ranks[block.index],
            kind=self._kind(block),
            group=self.group_of.get(block.index, -1),
        )

    def _rivals(self, block: nouns.Block) -> Iterator[Draw]:
        """Who must be done before all that wait for a block begin, and needs of what it holds."""
        if not block.holds:
            return
        own = {block.index for block in nouns.leading_to(self.problem, [block.index])}
        firsts = {
            waited_for
            for taker in self.takers[block.index]
            for waited_for in self.problem.blocks[taker.block].waits_for
        }
        for other in nouns.leading_to(self.problem, firsts):
            needs = [*other.holds, *(draw for stretch in other.stretches for draw in stretch.draws)]
            for service, _ in block.holds if other.index not in own else ():
                most = max((count for what, count in needs if what == service), default=0)
                if most:
                    yield Draw(self._service(service), most, other.index)

    def _airs(self, block: nouns.Block, station: nouns.PlannedStation) -> Iterator[Draw]:
        """What a block is to the air in its room."""
        afters = {DUST: 0 if station.dusty else None, HEAT: 0 if station.heats else None, SOLVENT: block.airs}
        afters[WET] = max(block.wet, block.airs or 0) if block.is_coat else None
        for what, after in afters.items():
            if after is not None:
                yield Draw(self._air(station.room, what), 1, after=after)

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
        return _put(self.draws, [Draw(self._service(service), count) for service, count in draws])

    def _air(self, room: int, what: int) -> int:
        return 4 * room + what

    def _service(self, service: int) -> int:
        return self._air(len(self.problem.rooms), service)

    def _hours(self, spans: Iterable[nouns.Span]) -> tuple[int, int]:
        return _put(self.hours, [HoursRecord(*span) for span in sorted(spans)])

    def _station(self, at: int, station: nouns.PlannedStation) -> StationRecord:
        return StationRecord(at, station.room, self._family(station.stands_on), *self._hours(station.runs))

    def _group(self, at: int, members: list[int]) -> GroupRecord:
        start = sum(len(group) for group in self.groups[:at])
        left = [member for member in members if not self.problem.blocks[member].begun]
        outside = sum(before not in members for block in left for before, _ in self.problem.blocks[block].waits)
        return GroupRecord(at, start, start + len(members), outside, len(left))


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


def _takers(problem: nouns.Problem) -> list[list[LagRecord]]:
    """For each block who waits for it and takes off what it holds, and how long after its end."""
    found: list[list[LagRecord]] = [[] for _ in problem.blocks]
    for block in problem.blocks:
        for lag in block.lags:
            found[lag.before].append(LagRecord(block.index, lag.least, -1))
    return found


def _ranks(problem: nouns.Problem) -> list[int]:
    """For each block its place where trays are in ascending order."""
    blocks = sorted(problem.blocks, key=lambda block: ([(len(tray), tray) for tray in block.trays], block.index))
    found = [0] * len(blocks)
    for at, block in enumerate(blocks):
        found[block.index] = at
    return found


# groups


def groups_of(problem: nouns.Problem) -> list[list[int]]:
    """Blocks that must be placed together, each group in an order in which they can be placed, an unloading right after what it
    unloads: a wait that may not last too long ties what follows it to what came before, since once the first is begun the
    rest has its latest moment."""
    if not any(lag.latest is not None for block in problem.blocks for lag in block.lags):
        return []
    label = list(range(len(problem.blocks)))
    for block in problem.blocks:
        for lag in block.lags:
            if lag.latest is not None:
                _join(label, block.index, lag.before)
    _tie_loads(problem, label)
    while _close(problem, label):
        _tie_loads(problem, label)
    members: dict[int, list[int]] = {}
    for index, group in enumerate(label):
        members.setdefault(group, []).append(index)
    return [_in_order(problem, group) for group in members.values() if len(group) > 1]


def _join(label: list[int], one: int, other: int) -> None:
    kept, gone = sorted((label[one], label[other]))
    label[:] = [kept if group == gone else group for group in label]


def _tie_loads(problem: nouns.Problem, label: list[int]) -> None:
    """A load that would hold its station until a group is placed belongs to the group: the group may need the station."""
    for block in problem.blocks:
        if block.unloads is not None and (_is_tied(label, block.index) or _is_tied(label, block.unloads)):
            _join(label, block.index, block.unloads)


def _is_tied(label: list[int], block: int) -> bool:
    return label.count(label[block]) > 1


def _close(problem: nouns.Problem, label: list[int]) -> bool:
    """Take in what waits for one of a group while another of it waits for that; answers whether anything was."""
    after: dict[int, set[int]] = {group: set() for group in label}
    for block in problem.blocks:
        for before in block.waits_for:
            if label[before] != label[block.index]:
                after[label[before]].add(label[block.index])
    for group in after:
        reached = _reached(after, group)
        ring = [other for other in reached if group in after[other]]
        if ring:
            _join(label, group, ring[0])
            return True
    return False


def _reached(after: dict[int, set[int]], group: int) -> set[int]:
    found: set[int] = set()
    todo = list(after[group])
    while todo:
        further = todo.pop()
        if further not in found:
            found.add(further)
            todo += after[further]
    return found


def _in_order(problem: nouns.Problem, members: list[int]) -> list[int]:
    found: list[int] = []
    left = sorted(members)
    while left:
        free = [member for member in left if not problem.blocks[member].waits_for & set(left)]
        unloading = [member for member in free if problem.blocks[member].unloads in found[-1:]]
        found.append((unloading or free)[0])
        left.remove(found[-1])
    return found
