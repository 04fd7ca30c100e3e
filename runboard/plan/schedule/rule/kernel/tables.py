"""A problem as one flat row of whole numbers, built once, for the dispatch rule to read."""

from collections.abc import Iterable, Sequence

from runboard.plan.schedule.problem.nouns import Block, Problem
from runboard.plan.schedule.rule.kernel import layout
from runboard.plan.schedule.rule.kernel.groups import groups_of
from runboard.plan.schedule.rule.kernel.layout import HANDS, WATCH

_ATTENDANCE = {"hands-on": HANDS, "watched": WATCH, "none": 0}


def tables(problem: Problem) -> list[int]:
    """The problem's row ``t``; see ``layout`` for what lies where."""
    return _Builder(problem).row()


class _Builder:
    """Sections being filled; their places are known once they all are."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.sections: dict[int, list[int]] = {at: [] for at in range(layout.BLOCKS, layout.OPENINGS + 1)}
        self.groups = groups_of(problem)
        self.group_of = {block: at for at, members in enumerate(self.groups) for block in members}
        self.kinds: dict[object, int] = {}
        self.families = {"": -1}
        self.holds = _holds(problem)

    def row(self) -> list[int]:
        problem = self.problem
        self._shop()
        followers = _followers(problem)
        for block in problem.blocks:
            self._block(block, followers[block.index])
        for members in self.groups:
            self._add(layout.GROUPS, *self._rows(layout.MEMBERS, 1, ((one,) for one in members)))
        farthest = max((walk for walks in problem.walks for walk in walks), default=0)
        counts = [len(problem.blocks), len(problem.people), len(problem.stations), len(problem.rooms), farthest]
        counts += [len(self.sections[layout.STRETCHES]) // 5, len(self.kinds), len(self.groups)]
        head, at = [], layout.TABLE_HEAD
        for section in self.sections.values():
            head.append(at)
            at += len(section)
        return [*counts, *head, *(value for section in self.sections.values() for value in section)]

    def _add(self, section: int, *values: int) -> None:
        self.sections[section] += values

    def _rows(self, section: int, width: int, rows: Iterable[Sequence[int]]) -> tuple[int, int]:
        """(from, to) of records put into a section."""
        start = len(self.sections[section]) // width
        for row in rows:
            self._add(section, *row)
        return start, len(self.sections[section]) // width

    def _shop(self) -> None:
        problem = self.problem
        for one, station in enumerate(problem.stations):
            runs = self._rows(layout.RUNS, 2, sorted(station.runs))
            spoils = int(station.heats or station.dusty)
            self._add(layout.STATIONS, station.room, spoils, *runs, self._family(station.stands_on))
            for at, other in enumerate(problem.stations):
                seen = at in station.watched_from
                self._add(layout.IN_SIGHT, int(seen or at == one))
                self._add(layout.TOGETHER, int(station.room == other.room or seen or one in other.watched_from))
        for worker in problem.people:
            self._add(layout.PEOPLE, worker.room, *self._rows(layout.WINDOWS, 2, sorted(worker.windows)))
        self._add(layout.WALKS, *(walk for walks in problem.walks for walk in walks))
        spans = [span for one in problem.people for span in one.windows]
        spans += [span for one in problem.stations for span in one.runs]
        self._add(layout.OPENINGS, *sorted({opens for opens, _ in spans}), layout.BIG)
        self._add(layout.CAPACITIES, *(capacity for _, capacity in problem.services))

    def _family(self, family: str) -> int:
        return self.families.setdefault(family, len(self.families) - 1)

    def _block(self, block: Block, followers: Sequence[tuple[int, int]]) -> None:
        station = self.problem.stations[block.station]
        stretches = [
            (one.offset, one.length, _ATTENDANCE[one.attendance], *self._rows(layout.DRAWS, 2, one.draws))
            for one in block.stretches
        ]
        lags = [(lag.before, lag.least, -1 if lag.latest is None else lag.latest) for lag in block.lags]
        wet = max(block.wet, block.airs or 0) if block.is_coat else -1
        self._add(
            layout.BLOCKS,
            block.station,
            int(block.hands > 0),
            block.length,
            block.release,
            block.setup,
            self._family(block.family),
            int(block.begun),
            -1 if block.by is None else block.by,
            -1 if block.unloads is None else block.unloads,
            self.problem.unloaded_by.get(block.index, -1),
            wet,
            self._kind(block),
            self.group_of.get(block.index, -1),
            *self._rows(layout.STRETCHES, 5, stretches),
            *self._rows(layout.LAGS, 3, lags),
            *self._rows(layout.FOLLOWERS, 2, followers),
            *self._rows(layout.HOLDS, 3, self.holds.get(block.index, ())),
            int(station.heats or station.dusty),
        )
        self._add(layout.ABLE, *(int(person in block.people) for person in range(len(self.problem.people))))

    def _kind(self, block: Block) -> int:
        """Blocks of one kind ask the same of the shop at any moment: what one cannot have, no other can."""
        held = tuple(self.holds.get(block.index, ()))
        asks = (block.station, block.stretches, block.setup, block.family, block.people, block.wet, block.airs)
        ends = (block.unloads is None, block.index in self.problem.unloaded_by, held)
        return self.kinds.setdefault((asks, ends), len(self.kinds))


def _followers(problem: Problem) -> list[list[tuple[int, int]]]:
    """For each block who waits for it, and how long after its end: one for each lag."""
    found: list[list[tuple[int, int]]] = [[] for _ in problem.blocks]
    for block in problem.blocks:
        for lag in block.lags:
            found[lag.before].append((block.index, lag.least))
        if block.unloads is not None:
            found[block.unloads].append((block.index, 0))
    return found


def _holds(problem: Problem) -> dict[int, list[tuple[int, int, int]]]:
    """For each block what its waits hold: (service, how many, for how long)."""
    least: dict[int, int] = {}
    for block in problem.blocks:
        for lag in block.lags:
            least[lag.before] = max(least.get(lag.before, 0), lag.least)
    return {at: [(*one, many) for one in problem.blocks[at].holds] for at, many in least.items()}
