"""The records of the dispatch rule: whole numbers, what is asked for beside where the last go put it.

Each record class stands for objects in lists, or for a structured array with the same names (``compiled``). Fields below
'go' are written anew by each go. Places in lists are whole numbers; -1 is none.
"""

from dataclasses import dataclass
from typing import NamedTuple

# Later than any tick; and behind any priority.
BIG, LAST = 1 << 30, 1 << 60
HANDS, WATCH = 1, 2
MOST_WATCHERS = 4
# In a room's air, each beside what may not be there with it: of each pair of numbers one may not be where the other is.
WET, DUST, SOLVENT, HEAT = range(4)


@dataclass(slots=True)
class Go:
    """What one go is about, how full its lists are, and what a try at a group is taken back to."""

    farthest: int = 0  # the longest walk
    stay: int = 0  # what a tick of walking costs beside priorities
    others_watch: int = 0
    late_wet: int = 0
    front_count: int = 0
    waiting_count: int = 0
    not_joined: int = 0  # in ``waiting`` the first that did not join the front
    taken_count: int = 0
    taken_until: int = 0  # when the first draw ends
    watcher_count: int = 0
    chosen_count: int = 0  # behind them in ``watchers`` whoever was found to watch
    open_until: int = 0  # the first end of the hours and runs that are open or come next
    next_opening: int = 0
    was_taken_count: int = 0
    was_taken_until: int = 0
    was_watcher_count: int = 0
    careful: int = 0  # whether what holds a service leaves enough of it to those without whom nobody takes it off
    walks: int = 0
    sum_of_ends: int = 0


@dataclass(slots=True)
class BlockRecord:
    """A block; parts of lists that are its own go from where the part before ends, the first from ``_from``."""

    index: int = 0
    stretch_from: int = 0
    stretch_to: int = 0
    lag_from: int = 0  # in ``lags``: what it waits for,
    lag_to: int = 0
    taker_to: int = 0  # who waits for it and takes what it holds,
    follower_to: int = 0  # who else waits for it
    hold_from: int = 0  # in ``draws``: what it holds,
    hold_to: int = 0
    rival_to: int = 0  # who needs of that before it can be taken off,
    air_to: int = 0  # what it is to the air in its room
    station: int = 0
    has_hands: int = 0
    length: int = 0
    release: int = 0
    setup: int = 0
    family: int = 0
    begun: int = 0
    by: int = 0
    unloads: int = 0
    is_unloaded: int = 0
    wets: int = 0
    spoils: int = 0  # heats or makes dust
    rank: int = 0  # trays in ascending order, where priorities tie
    kind: int = 0
    group: int = 0
    # go
    real_setup: int = 0  # how long its setup will be, which nobody knows before
    start: int = 0
    set_up: int = 0
    hands: int = 0
    end: int = 0
    ready: int = 0
    left: int = 0  # what it still waits for
    takers: int = 0  # lags on it of blocks that are not placed
    next: int = 0  # of its kind, that may begin soon
    not_before: int = 0  # while its group is tried


@dataclass(slots=True)
class StretchRecord:
    """A part of a block; ``attendance`` is HANDS, WATCH or 0."""

    offset: int = 0
    length: int = 0
    attendance: int = 0
    draw_from: int = 0
    draw_to: int = 0
    # go
    real: int = 0  # how long it will be


@dataclass(slots=True)
class Draw:
    """So much of a service: of a stretch, held from a block's end on, or needed by ``block``, a rival. Or what a block is to
    the air in its room, until so long ``after`` its end. Of each room the air's four come before all services."""

    what: int = 0
    count: int = 0
    block: int = 0
    after: int = 0


@dataclass(slots=True)
class LagRecord:
    """What a block waits for, or who waits for it; ``latest`` is -1 where there is none."""

    block: int = 0
    least: int = 0
    latest: int = 0


@dataclass(slots=True)
class KindRecord:
    """Blocks that ask the same of the shop at any moment: what one cannot have, no other can."""

    # go
    first: int = 0  # the block that stands in the front for it
    failed: int = 0  # the moment at which it could not be begun


@dataclass(slots=True)
class GroupRecord:
    """Blocks placed together, as (from, to) in ``members``; and for how many others outside it they wait."""

    index: int = 0
    member_from: int = 0
    member_to: int = 0
    waits: int = 0
    unbegun: int = 0  # where a part of it was begun, that one waits for the rest
    # go
    left: int = 0
    wake: int = 0  # when it may be tried again
    failed: int = 0


@dataclass(slots=True)
class StationRecord:
    """A station; its runs are (from, to) in ``hours``."""

    index: int = 0
    room: int = 0
    stood_on: int = 0
    hour_from: int = 0
    hour_to: int = 0
    # go
    stands_on: int = 0
    free: int = 0
    open: int = 0  # the first of its hours that is not over
    was_free: int = 0
    was_on: int = 0


@dataclass(slots=True)
class PersonRecord:
    """A person; their windows are (from, to) in ``hours``. Their first span is where they were ``seen`` last, -1 nowhere."""

    index: int = 0
    seen: int = 0
    hour_from: int = 0
    hour_to: int = 0
    # go
    open: int = 0
    span_from: int = 0
    span_to: int = 0
    was_span_to: int = 0


@dataclass(slots=True)
class HoursRecord:
    """When somebody is there or a station may run."""

    opens: int = 0
    closes: int = 0


@dataclass(slots=True)
class SpanRecord:
    """Somebody's hands or eyes at a station; ``what`` is HANDS or WATCH."""

    start: int = 0
    end: int = 0
    what: int = 0
    station: int = 0
    room: int = 0


@dataclass(slots=True)
class UseRecord:
    """So much taken of a service, or something in a room's air. ``holder`` is the block whose pieces hold it."""

    what: int = 0
    start: int = 0
    end: int = 0
    count: int = 0
    holder: int = 0


@dataclass(slots=True)
class Watcher:
    """Who watches a block's machine from a tick on."""

    block: int = 0
    person: int = 0
    start: int = 0


class Shop(NamedTuple):
    """All records. Lists hold objects, or are arrays where the rule is compiled; ``go`` is one record."""

    go: Go
    blocks: list[BlockRecord]
    groups: list[GroupRecord]
    members: list[int]  # blocks of groups, each in the order in which it is placed
    stations: list[StationRecord]
    people: list[PersonRecord]
    stretches: list[StretchRecord]
    draws: list[Draw]
    lags: list[LagRecord]
    hours: list[HoursRecord]
    openings: list[int]  # when hours open, in order, and BIG
    kinds: list[KindRecord]
    capacities: list[int]  # of services, by what a draw is of
    able: list[list[int]]  # block, person
    walks: list[list[int]]  # room, room
    in_sight: list[list[int]]  # station, station: hands there while this one is watched
    together: list[list[int]]  # station, station: both watched by one person
    # go
    spans: list[list[SpanRecord]]  # of each person
    taken: list[UseRecord]
    watchers: list[Watcher]
    spoiling: list[int]  # in each room, blocks that heat or make dust and are not begun
    values: list[int]  # priorities of blocks, and behind them of groups
    order: list[int]  # of somebody's spans
    places: list[int]  # where somebody is, one after another
    waiting: list[int]  # blocks that wait for nothing but time, by when they are ready
    # By priority: of each kind the first block that may begin soon, and groups behind the blocks' numbers.
    front: list[int]
