"""One load that what held a run most kept back, as the log shows it: which, from when, and until when."""

from collections.abc import Iterator
from dataclasses import dataclass

from runboard.plan.schedule.problem.hours import Presence
from runboard.plan.schedule.problem.nouns import FAR, Block
from runboard.review.held.going import AsItWas
from runboard.review.held.known import Replayable
from runboard.review.held.nouns import Because, What
from runboard.review.held.replay import Replay

# Ticks in the shop: what waited for less was not kept.
_KEPT = 10
# A load that lay so many times as long as its work takes was not worked on all the while.
_LAY = 2


@dataclass(frozen=True)
class _Kept:
    block: Block
    since: int
    until: int
    by: Block | None = None

    @property
    def is_of_another_step(self) -> bool:
        """What is told rather: two loads of one step wait for each other anyway."""
        return self.by is not None and self.by.step != self.block.step


def because(known: Replayable, replay: Replay, what: What) -> Because | None:
    """Of a service the first load that found all of it taken; of hands and a station the one that waited longest while they
    were at another; of a wait the last that had to wait so long. None where the log shows none."""
    log = _Log(known, replay)
    kind, key = what
    found: _Kept | None = None
    match kind:
        case "service":
            found = min(log.kept_by_service(key), key=lambda kept: kept.since, default=None)
        case "hands" | "station":
            some = log.kept_by_hands(key) if kind == "hands" else log.kept_at(key)
            found = max(some, key=lambda kept: (kept.is_of_another_step, log.open(kept), -kept.since), default=None)
        case "wait":
            found = max(log.kept_waiting(key), key=lambda kept: kept.until, default=None)
    if found is None:
        return None
    moment, by = replay.problem.moment, found.by
    return Because(
        found.block.step, found.block.trays, moment(found.since), moment(found.until),
        by.step if by else "", by.trays if by else (),
    )  # fmt: skip


class _Log:
    """The blocks of a replay with when they were really ready, begun and done."""

    def __init__(self, known: Replayable, replay: Replay) -> None:
        self.problem, self.plan = replay.problem, replay.plan
        self.was = AsItWas(replay.problem, known.order)
        tick = replay.problem.tick
        self.there = [(tick(start), tick(end)) for spans in known.there.values() for start, end in spans]
        self.presence = Presence.of([self.there])

    def open(self, kept: _Kept) -> int:
        return self.presence.between(kept.since, kept.until)

    def kept_by_service(self, key: str) -> Iterator[_Kept]:
        service = [name for name, _ in self.problem.services].index(key)
        for block, ready in self._ready():
            began = self.was.starts[block.index]
            for since, until in self.was.short_of(block, service, ready, began):
                come = min((max(since, opens) for opens, closes in self.there if closes > since), default=FAR)
                kept = _Kept(block, come, began)
                if come < until and self.open(kept) >= _KEPT:
                    yield kept
                    break

    def kept_by_hands(self, key: str) -> Iterator[_Kept]:
        who = [person.key for person in self.problem.people].index(key)
        mine = {placed.block for placed in self.plan.placed if placed.hands == who}
        ready = [(block, since) for block, since in self._ready() if block.index in mine]
        for by in self._worked_on():
            if by.index in mine and all(stretch.attendance == "hands-on" for stretch in by.stretches):
                yield from self._kept_by(by, ready)

    def kept_at(self, key: str) -> Iterator[_Kept]:
        at = [station.key for station in self.problem.stations].index(key)
        ready = [(block, since) for block, since in self._ready() if block.station == at and block.unloads is None]
        for by in self._worked_on():
            if by.station == at:
                yield from self._kept_by(by, ready)

    def kept_waiting(self, step: str) -> Iterator[_Kept]:
        for block in self.problem.blocks:
            for lag in block.lags:
                before = self.problem.blocks[lag.before]
                ended, began = self.was.ends[lag.before], self.was.starts[block.index]
                if before.step == step and lag.least and ended + lag.least <= began < FAR:
                    yield _Kept(before, ended, ended + lag.least)

    def _kept_by(self, by: Block, ready: list[tuple[Block, int]]) -> Iterator[_Kept]:
        for block, since in ready:
            start = max(since, self.was.starts[by.index])
            kept = _Kept(block, start, min(self.was.ends[by.index], self.was.starts[block.index]), by)
            if not {*block.trays} & {*by.trays} and self.open(kept) >= _KEPT:
                yield kept

    def _ready(self) -> Iterator[tuple[Block, int]]:
        """What was begun later than it could have been, as far as what it waits for goes."""
        for block in self.problem.blocks:
            ready = max((self.was.ends[before] + least for before, least in block.waits), default=block.release)
            if ready < self.was.starts[block.index] < FAR:
                yield block, ready

    def _worked_on(self) -> Iterator[Block]:
        for block in self.problem.blocks:
            start, end = self.was.starts[block.index], self.was.ends[block.index]
            if start < end < FAR and end - start <= _LAY * (block.length + block.setup):
                yield block
