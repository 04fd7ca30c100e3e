"""What a program would save in travel if its visits had another order: advice, the program stays as it is.

Asked are two things, part by part (``places``): all the work at a place in one visit, and then the places in a better order. What
overlaps keeps the file's order, so that an outline comes after all that lies within it; a visit goes to one before at its place only where
nothing between the two overlaps either. Travel is the rapid move across from where one visit goes up to where the next comes down, from rest to rest
by the station's limits; what lies within a visit, its ups and downs among them, stays as it is in any order.

No more than ``most`` seconds can be saved: few groups are tried through, up to a hundred or so a solver proves the best order or a bound, for more
each group's shortest way in is the bound.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from runboard.plan.program.moves import Array, Moves
from runboard.plan.program.places import MOST_VISITS, Part, Point, Visit, parts
from runboard.shop.machines import Motion

# Tenths of milliseconds: what a solver reckons in.
TICKS = 10_000
# More groups in one part than this are put in no other order than their places give.
MOST_GROUPS = 500
_TOUCH = 0.01
Way = tuple[Point, Point]


@dataclass(frozen=True)
class VisitOrder:
    """Seconds of travel between visits: ``now`` as the file has it, ``by_place`` with one visit a place, ``ordered`` with the places in
    a better order too, ``bound`` below which no order comes. ``before`` are the visits as the file has them, ``after`` as they
    are advised, equal where nothing is won; ``way_before`` and ``way_after`` are the moves that these seconds are of, from and to.
    ``is_searched`` is False where there were too many."""

    places: int
    now: float
    by_place: float
    ordered: float
    bound: float
    before: tuple[Visit, ...]
    after: tuple[Visit, ...]
    way_before: tuple[Way, ...] = ()
    way_after: tuple[Way, ...] = ()
    is_searched: bool = True

    @property
    def saving(self) -> float:
        """Seconds a load."""
        return self.now - self.ordered

    @property
    def saving_by_place(self) -> float:
        """Seconds a load, of that, by one visit a place alone."""
        return max(0.0, self.now - self.by_place)

    @property
    def most(self) -> float:
        """Seconds a load that no order could save more than."""
        return self.now - self.bound

    @property
    def is_proved(self) -> bool:
        """Whether there is no better order."""
        return self.most - self.saving <= 2 * len(self.before) / TICKS


@dataclass(frozen=True)
class Task:
    """Groups of one part to be put in order. ``ticks``: whole numbers of (n + 2, n + 2), from each group to each; row n is from where the
    part begins, column n + 1 to where it ends. ``before``: bool of (n, n), whether one has to come before the other."""

    ticks: Array
    before: Array

    def cost(self, order: Sequence[int]) -> int:
        """Ticks of travel in this order."""
        many = len(self.before)
        return int(sum(self.ticks[one, other] for one, other in zip([many, *order], [*order, many + 1], strict=True)))


def visit_order(moves: Moves, motion: Motion, seconds: float = 1.0) -> VisitOrder:
    """What another order would save; the search takes about so many ``seconds`` in all."""
    found = parts(moves)
    before = tuple(visit for part in found for visit in part.visits)
    places = len({visit.place for visit in before})
    if len(before) > MOST_VISITS:
        now = sum(_seconds(_ways(part, part.visits), motion) for part in found)
        return VisitOrder(places, now, now, now, 0.0, before, before, is_searched=False)
    answers = [_of_part(part, motion, seconds * len(part.visits) / max(1, len(before))) for part in found]
    return VisitOrder(
        places,
        sum(one.now for one in answers),
        sum(one.by_place for one in answers),
        sum(one.ordered for one in answers),
        sum(one.bound for one in answers),
        before,
        tuple(visit for one in answers for visit in one.after),
        tuple(way for one in answers for way in one.way_before),
        tuple(way for one in answers for way in one.way_after),
        all(one.is_searched for one in answers),
    )


def _of_part(part: Part, motion: Motion, seconds: float) -> VisitOrder:
    from runboard.plan.program.routes import bound_by_ways_in, put_in_order

    groups = grouped(part.visits)
    by_place = [visit for group in groups for visit in group]
    now, one_visit = (_seconds(_ways(part, visits), motion) for visits in (part.visits, by_place))
    best, after = (now, list(part.visits)) if now <= one_visit else (one_visit, by_place)
    task = task_of(part, groups, motion)
    inside = sum(_seconds(_ways_between(group), motion) for group in groups)
    is_searched = len(groups) <= MOST_GROUPS
    if is_searched:
        order, ticks = put_in_order(task, seconds)
        ordered = [visit for at in order for visit in groups[at]]
        if (reached := _seconds(_ways(part, ordered), motion)) < best:
            best, after = reached, ordered
    else:
        ticks = bound_by_ways_in(task)
    bound = min(best, ticks / TICKS + inside)
    ways = (_ways(part, part.visits), _ways(part, after))
    return VisitOrder(0, now, one_visit, best, bound, part.visits, tuple(after), *ways, is_searched)


def grouped(visits: Sequence[Visit]) -> list[list[Visit]]:
    """The visits that may be one, in the order of the first of each."""
    groups: list[list[int]] = []
    last: dict[int, int] = {}
    boxes = np.array([visit.box for visit in visits])
    overlap = overlaps(boxes)
    for number, visit in enumerate(visits):
        at = last.get(visit.place)
        if at is not None and not _is_between(groups[at], number, overlap):
            groups[at].append(number)
        else:
            last[visit.place] = len(groups)
            groups.append([number])
    return [[visits[number] for number in group] for group in groups]


def _is_between(group: list[int], number: int, overlap: Array) -> bool:
    between = np.ones(number - group[0], bool)
    between[[member - group[0] for member in group]] = False
    rows = overlap[[*group, number], group[0] : number]
    return bool((rows & between).any())


def overlaps(boxes: Array) -> Array:
    """bool of (n, n): which boxes touch or overlap."""
    low, high = boxes[:, None, :2], boxes[:, None, 2:]
    found: Array = np.all((low <= boxes[None, :, 2:] + _TOUCH) & (boxes[None, :, :2] <= high + _TOUCH), axis=2)
    return found


def task_of(part: Part, groups: Sequence[Sequence[Visit]], motion: Motion) -> Task:
    """The groups of a part as a task for ``routes``."""
    end = [part.end or (0.0, 0.0)]
    leave = np.array([*(group[-1].exit for group in groups), part.start, *end])
    come = np.array([*(group[0].entry for group in groups), part.start, *end])
    seconds = hop_seconds(come[None, :, :] - leave[:, None, :], motion)
    if part.end is None:
        seconds[:, -1] = 0.0
    overlap = overlaps(np.array([visit.box for group in groups for visit in group]))
    starts = np.cumsum([0, *(len(group) for group in groups)])[:-1]
    touching = np.logical_or.reduceat(np.logical_or.reduceat(overlap, starts, axis=0), starts, axis=1)
    return Task(np.rint(seconds * TICKS).astype(np.int64), np.triu(touching, 1))


def hop_seconds(way: Array, motion: Motion) -> Array:
    """Seconds of rapid moves across by these (…, 2) mm, from rest to rest."""
    length = np.hypot(way[..., 0], way[..., 1])
    share = np.maximum(np.abs(way) / np.where(length > 0, length, 1.0)[..., None], 1e-12)
    v = np.min(motion.rapid / 60.0 / share, axis=-1)
    a = np.minimum(motion.accel_x / share[..., 0], motion.accel_y / share[..., 1])
    is_long = (length > 0) & (length >= v * v / a)
    found: Array = np.zeros(length.shape)
    found[is_long] = length[is_long] / v[is_long] + v[is_long] / a[is_long]
    short = (length > 0) & ~is_long
    found[short] = 2.0 * np.sqrt(length[short] / a[short])
    return found


def _ways(part: Part, visits: Sequence[Visit]) -> tuple[Way, ...]:
    begin: Way = (part.start, visits[0].entry)
    end: Way = (visits[-1].exit, part.end or visits[-1].exit)
    return tuple((one, other) for one, other in (begin, *_ways_between(visits), end) if one != other)


def _ways_between(visits: Sequence[Visit]) -> list[Way]:
    return [(one.exit, other.entry) for one, other in pairwise(visits)]


def _seconds(ways: Sequence[Way], motion: Motion) -> float:
    both = np.array(ways, dtype=np.float64).reshape(-1, 2, 2)
    return float(hop_seconds(both[:, 1] - both[:, 0], motion).sum())
