"""Whether somebody who went sooner than they had said could have begun anything: if not, they went because they were held."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime

from runboard.plan.schedule.problem.nouns import FAR, Block, Problem
from runboard.run.fold.state import RunState


@dataclass(frozen=True)
class Begun:
    """When a load of a tray was really begun, unloaded where anybody pressed that, and through."""

    at: datetime
    unloaded_at: datetime | None = None
    done_at: datetime | None = None


Order = Mapping[tuple[str, str], Begun]


def order_of(run: RunState) -> dict[tuple[str, str], Begun]:
    """By (load, '') when it was begun, and by (step, tray) when a load of it was begun first, as far as anything tells."""
    found: dict[tuple[str, str], Begun] = {}
    for load in (*run.past.values(), *run.loads.values()):
        moments = (*(span.began_at for span in load.spans), *(() if load.spans else (load.started_at or load.done_at,)))
        began = min((moment for moment in moments if moment is not None), default=None)
        if began is None:
            continue
        unloaded = min((span.began_at for span in load.spans if span.kind == "unloading"), default=None)
        ended = max((span.ended_at for span in load.spans if span.ended_at), default=None)
        begun = found[load.id, ""] = Begun(began, unloaded, load.done_at or ended)
        for tray in load.pieces:
            before = found.get((load.step, tray))
            if before is None or began < before.at:
                found[load.step, tray] = begun
    return found


def of_block(order: Order, block: Block) -> list[Begun]:
    """What is known of a block's load; where none was called so, of the first of each of its trays."""
    if (found := order.get((block.load, ""))) is not None:
        return [found]
    return [found for tray in block.trays if (found := order.get((block.step, tray))) is not None]


class AsItWas:
    """When each block of a problem really began and ended, FAR where it did not or nobody knows."""

    def __init__(self, problem: Problem, order: Order) -> None:
        self.problem = problem
        self._then: dict[int, tuple[set[int], dict[int, int]]] = {}
        self.starts: list[int] = []
        self.ends: list[int] = []
        for block in problem.blocks:
            begun = of_block(order, block)
            is_first = block.index in problem.unloaded_by
            starts = [(each.unloaded_at or each.done_at if block.unloads is not None else each.at) for each in begun]
            ends = [(each.unloaded_at or each.done_at if is_first else each.done_at) for each in begun]
            self.starts.append(min((problem.tick(moment) for moment in starts if moment is not None), default=FAR))
            self.ends.append(max((problem.tick(moment) for moment in ends if moment is not None), default=FAR))

    def could_begin(self, person: str, at: datetime, until: datetime) -> bool:
        """Whether anything that was begun later was there for a person to begin from a moment on, and fitted in until another."""
        keys, tick, ends = (
            [worker.key for worker in self.problem.people],
            self.problem.tick(at),
            self.problem.tick(until),
        )
        if person not in keys:
            return False
        who = keys.index(person)
        for block in self.problem.blocks:
            if tick < self.starts[block.index] < FAR and who in block.people:
                ready = max([tick, *(self.ends[before] + least for before, least in block.waits)])
                if ready + block.length <= ends and self._is_free(block, ready):
                    return True
        return False

    def short_of(self, block: Block, service: int, since: int, until: int) -> Iterator[tuple[int, int]]:
        """From when to when there was not enough of a service for a block, between two ticks."""
        count = max((many for known, many in _wanted(block) if known == service), default=0)
        turns = sorted({since, *(tick for tick in (*self.starts, *self.ends) if since < tick < until)})
        short: int | None = None
        for tick in turns if count else ():
            left = (
                self.problem.services[service][1] - self._taken(tick).get(service, 0) + self._own(block).get(service, 0)
            )
            if count > left and short is None:
                short = tick
            elif count <= left and short is not None:
                yield short, tick
                short = None
        if short is not None:
            yield short, until

    def _is_free(self, block: Block, tick: int) -> bool:
        """Whether there is its station, and enough of each service: what its own pieces hold is free then."""
        if tick not in self._then:
            self._then[tick] = self._at_work(tick), self._taken(tick)
        busy, taken = self._then[tick]
        if block.station in busy:
            return False
        own = self._own(block)
        return all(
            taken.get(service, 0) - own.get(service, 0) + count <= self.problem.services[service][1]
            for service, count in _wanted(block)
        )

    def _own(self, block: Block) -> dict[int, int]:
        """What its own pieces hold until it begins."""
        own: dict[int, int] = {}
        for before in block.waits_for:
            if self._last_taker(before) == self.starts[block.index]:
                for service, count in self.problem.blocks[before].holds:
                    own[service] = own.get(service, 0) + count
        return own

    def _at_work(self, tick: int) -> set[int]:
        return {
            block.station for block in self.problem.blocks if self.starts[block.index] <= tick < self.ends[block.index]
        }

    def _taken(self, tick: int) -> dict[int, int]:
        found: dict[int, int] = {}
        for block in self.problem.blocks:
            draws = {draw for stretch in block.stretches for draw in stretch.draws}
            at_work = self.starts[block.index] <= tick < self.ends[block.index]
            holds = self.ends[block.index] <= tick < self._last_taker(block.index)
            for service, count in (*(draws if at_work else ()), *(block.holds if holds else ())):
                found[service] = found.get(service, 0) + count
        return found

    def _last_taker(self, block: int) -> int:
        return max((self.starts[other] for other in self.problem.waiting[block]), default=0)


def _wanted(block: Block) -> list[tuple[int, int]]:
    return [draw for stretch in block.stretches for draw in stretch.draws] + list(block.holds)
