"""What a schedule has to keep: stations, people, services, rooms, and the blocks of work that are still to be done.

All times are whole ticks from ``start``. A block is a contiguous stretch of a load that somebody begins and nothing
interrupts: setup, loading and the machine's run are one; unloading is a block of its own, since an ended machine may
wait for it. The rules are those of ``runboard.run.rules`` and ``runboard.plan.candidates``, said without a state.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from functools import cached_property

from runboard.run.rules.air import kept_off

TICK = timedelta(seconds=30)
# Ticks that nothing reaches: thirty weeks.
FAR = 30 * 7 * 24 * 60 * 2

Span = tuple[int, int]
Draws = tuple[tuple[int, int], ...]


@dataclass(frozen=True)
class Stretch:
    """A part of a block: from ``offset`` on, so long. ``attendance`` is hands-on, watched or none; ``draws`` are the
    services that it takes meanwhile: (service, how many)."""

    kind: str
    offset: int
    length: int
    attendance: str
    draws: Draws = ()


@dataclass(frozen=True)
class Lag:
    """What a block has to wait for: it starts at least ``least`` ticks after the end of block ``before``, and, where
    there is a ``latest``, at most so many after its start (the first piece)."""

    before: int
    least: int = 0
    latest: int | None = None


@dataclass(frozen=True)
class Block:
    """One stretch of work.

    ``setup`` ticks come before it where its station stands on another ``family``. ``people`` are those who may put their
    hands to it. ``unloads`` is the block that its machine ran: from that one's start to this one's end the station is
    held. ``begun`` says that it runs already, or that hands are at it: it starts at 0, with ``by`` if somebody is at it.
    ``holds`` are services that its pieces take from its end until the last of those that wait for it begins: what is in clamps
    or on the rack stays there until somebody takes it off. ``wet`` is for how many ticks after its end a finish is wet in
    its room, so that dust must stay away; ``airs`` for how many its solvent is in the air, which keeps off whatever heats as
    well: ``None`` where it has none.
    """

    index: int
    run: str
    load: str
    step: str
    operation: str
    trays: tuple[str, ...]
    pieces: int
    station: int
    stretches: tuple[Stretch, ...]
    people: tuple[int, ...]
    family: str = ""
    setup: int = 0
    lags: tuple[Lag, ...] = ()
    release: int = 0
    unloads: int | None = None
    begun: bool = False
    by: int | None = None
    holds: Draws = ()
    wet: int = 0
    airs: int | None = None
    last: bool = False

    @cached_property
    def length(self) -> int:
        """Ticks from its start to its end, without a setup."""
        return max((stretch.offset + stretch.length for stretch in self.stretches), default=0)

    @cached_property
    def hands(self) -> int:
        """Ticks of hands, without a setup."""
        return sum(stretch.length for stretch in self.stretches if stretch.attendance == "hands-on")

    @cached_property
    def waits(self) -> tuple[tuple[int, int], ...]:
        """What it waits for: (block, least ticks from its end), one for each lag, then what it unloads."""
        unloads = () if self.unloads is None else ((self.unloads, 0),)
        return (*((lag.before, lag.least) for lag in self.lags), *unloads)

    @cached_property
    def waits_for(self) -> frozenset[int]:
        """The blocks that must be through before it begins."""
        return frozenset(before for before, _ in self.waits)

    @cached_property
    def attended(self) -> tuple[Stretch, ...]:
        """What somebody must be there for."""
        return tuple(stretch for stretch in self.stretches if stretch.attendance != "none")

    @property
    def is_coat(self) -> bool:
        """Whether it brings on a finish, or is what is left of one."""
        return self.wet > 0 or self.airs is not None

    def keeps_off(self, *, heats: bool, dusty: bool) -> int | None:
        """For how many ticks after its end nothing that heats or makes dust may be at work in its room; ``None`` where it
        may all the time."""
        return kept_off(self.wet, self.airs, heats=heats, dusty=dusty)

    @cached_property
    def watched(self) -> Stretch | None:
        """The machine's run, where it must be watched."""
        return next((stretch for stretch in self.stretches if stretch.attendance == "watched"), None)


@dataclass(frozen=True)
class PlannedStation:
    """``watched_from`` are the stations where hands may be while this one is watched. ``runs`` are the spans in which it
    may be used: not in quiet hours, not while it is out of use. ``stands_on`` is the family that it is set up for."""

    key: str
    name: str
    room: int
    watched_from: frozenset[int] = frozenset()
    runs: tuple[Span, ...] = ((0, FAR),)
    stands_on: str = ""
    heats: bool = False
    dusty: bool = False


@dataclass(frozen=True)
class Worker:
    """``windows`` are the spans in which they work, start-up and tidy-up taken off. ``room`` is where they were last
    seen, -1 where nobody knows."""

    key: str
    name: str
    windows: tuple[Span, ...]
    room: int = -1


@dataclass(frozen=True)
class OrderDue:
    """``pieces`` good ones of a run by ``due``: the earliest due first, so ``by_then`` counts those before it too."""

    run: str
    line: str
    pieces: int
    by_then: int
    due: int | None = None


@dataclass(frozen=True)
class LeftOut:
    """Work that no plan can hold, with the code and facts of the sentence that says why."""

    run: str
    step: str
    trays: tuple[str, ...]
    code: str
    facts: dict[str, object] = field(default_factory=dict)


@dataclass(frozen=True)
class Problem:
    """Everything that a plan has to keep. ``walks[a][b]`` are the ticks from room to room; ``services`` the capacities.
    ``late_counts`` says what is to be least where order lines are late: the ``minutes`` in sum, or first the ``lines``."""

    start: datetime
    stations: tuple[PlannedStation, ...]
    people: tuple[Worker, ...]
    services: tuple[tuple[str, int], ...]
    rooms: tuple[str, ...]
    walks: tuple[tuple[int, ...], ...]
    blocks: tuple[Block, ...]
    orders: tuple[OrderDue, ...] = ()
    left_out: tuple[LeftOut, ...] = ()
    late_counts: str = "minutes"

    @cached_property
    def waiting(self) -> tuple[tuple[int, ...], ...]:
        """For each block those that have a lag behind it: what it holds is held until the last of them begins."""
        found: list[list[int]] = [[] for _ in self.blocks]
        for block in self.blocks:
            for before in dict.fromkeys(lag.before for lag in block.lags):
                found[before].append(block.index)
        return tuple(map(tuple, found))

    @cached_property
    def followers(self) -> tuple[tuple[int, ...], ...]:
        """For each block those that wait for it."""
        found: list[list[int]] = [[] for _ in self.blocks]
        for block in self.blocks:
            for before in block.waits_for:
                found[before].append(block.index)
        return tuple(map(tuple, found))

    @cached_property
    def last(self) -> dict[str, tuple[tuple[int, int], ...]]:
        """For each run the blocks that make its pieces, and how many: (block, pieces)."""
        found: dict[str, list[tuple[int, int]]] = {}
        for block in self.blocks:
            if block.last:
                found.setdefault(block.run, []).append((block.index, block.pieces))
        return {run: tuple(some) for run, some in found.items()}

    @cached_property
    def unloaded_by(self) -> dict[int, int]:
        """For each block whose machine is unloaded: the block that does it."""
        return {block.unloads: block.index for block in self.blocks if block.unloads is not None}

    def moment(self, tick: int) -> datetime:
        """The moment of a tick."""
        return self.start + tick * TICK

    def tick(self, moment: datetime) -> int:
        """The first tick that is not before a moment."""
        return -((self.start - moment) // TICK)


def of_run(problem: Problem, run: str) -> Problem:
    """The problem with only the blocks, orders and left-out work of ``run``: no plan of everything can finish the run
    before the best plan of this."""
    orders = tuple(order for order in problem.orders if order.run == run)
    left_out = tuple(left for left in problem.left_out if left.run == run)
    return replace(
        only(problem, (block for block in problem.blocks if block.run == run)), orders=orders, left_out=left_out
    )


def only(problem: Problem, kept: Iterable[Block]) -> Problem:
    """The problem with no other blocks than these, which wait for none that is left out; no orders."""
    return replace(problem, blocks=numbered_anew(kept), orders=(), left_out=())


def leading_to(problem: Problem, wanted: Iterable[int]) -> list[Block]:
    """The blocks that must be through before these are, and these, in order."""
    left = list(wanted)
    reached = set(left)
    while left:
        before = problem.blocks[left.pop()].waits_for - reached
        left += before
        reached |= before
    return [problem.blocks[at] for at in sorted(reached)]


def numbered_anew(kept: Iterable[Block]) -> tuple[Block, ...]:
    """Blocks as those of a problem that has no others; what they wait for is among them."""
    some = list(kept)
    number = {block.index: at for at, block in enumerate(some)}
    return tuple(
        replace(
            block,
            index=number[block.index],
            lags=tuple(replace(lag, before=number[lag.before]) for lag in block.lags),
            unloads=None if block.unloads is None else number[block.unloads],
        )
        for block in some
    )


@dataclass(frozen=True)
class Placed:
    """A block in a plan: when it starts (its setup first, where ``setup`` is not nought), who puts hands to it, and who
    watches its machine, with the tick from which on, if somebody takes over."""

    block: int
    start: int
    setup: int = 0
    hands: int | None = None
    watchers: tuple[tuple[int, int], ...] = ()

    def begins(self) -> int:
        """The tick at which its own first stretch begins."""
        return self.start + self.setup


@dataclass(frozen=True)
class Plan:
    """Where every block is. ``source`` says what made it."""

    placed: tuple[Placed, ...]
    source: str = "greedy"

    def end(self, problem: Problem, block: int) -> int:
        """The tick at which a block ends."""
        return self.placed[block].begins() + problem.blocks[block].length

    def held_until(self, problem: Problem, block: int) -> int:
        """The tick until which what a block holds is held: its own end where nothing waits for it."""
        return max([self.end(problem, block), *(self.placed[earlier].start for earlier in problem.waiting[block])])

    def finish(self, problem: Problem) -> int:
        """The tick at which all is done: 0 where nothing is left to do."""
        return max((self.end(problem, block) for block in range(len(problem.blocks))), default=0)
