"""What no plan can hold, and why: a station that is out of use, a skill that nobody has, no window long enough."""

from collections import defaultdict
from collections.abc import Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Any

from runboard.plan.schedule.problem.hours import starts_of
from runboard.plan.schedule.problem.nouns import (
    TICK,
    Block,
    LeftOut,
    PlannedStation,
    Problem,
    Stretch,
    Worker,
    numbered_anew,
)
from runboard.run.fold.draft import Draft
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState
from runboard.run.log.event import parse_moment
from runboard.run.rules.begin import never_begins

# Two weeks of ticks: what fits into no hours that begin before is looked for in all of them.
_SOON = 14 * 24 * 60 * 2


@dataclass(frozen=True)
class Wrong:
    """Why no plan can hold a block: the code and facts of a sentence, about ``step`` where that is not the block's own."""

    code: str
    facts: dict[str, Any] = field(default_factory=dict)
    step: str = ""


class Cannot:
    """A shop and its hours, asked about block by block; equal questions are answered once."""

    def __init__(
        self, draft: Draft, now: datetime, stations: tuple[PlannedStation, ...], people: tuple[Worker, ...]
    ) -> None:
        self.draft, self.stations, self.people = draft, stations, people
        whole = Problem(now, stations, people, (), (), (), ())
        soon = replace(
            whole,
            people=tuple(
                replace(person, windows=tuple(span for span in person.windows if span[0] < _SOON)) for person in people
            ),
            stations=tuple(
                replace(station, runs=tuple(span for span in station.runs if span[0] < _SOON)) for station in stations
            ),
        )
        self._hours = (soon, whole)
        self._fits: dict[Hashable, bool] = {}

    def why(self, run: RunState, step: Step, block: Block, before: Sequence[Block]) -> Wrong | None:
        """Why no plan can hold a block; None where one can. ``before`` are those that it waits for and that are not begun."""
        facts: dict[str, Any] = {"step": step.name}
        if block.station < 0:
            return Wrong("no station", facts)
        station = self.stations[block.station]
        facts["station"] = station.name
        if not station.runs:
            until = (self.draft.station(station.key).out or {}).get("until")
            return (
                Wrong("station due", {**facts, "until": parse_moment(until)}) if until else Wrong("station out", facts)
            )
        refused = never_begins(self.draft, run, step, block.load, block.trays)
        # Without its supply nothing that was begun is finished.
        if refused is not None and (not block.begun or refused.code == "supply out"):
            return Wrong(refused.code, {**facts, **refused.facts})
        held = [hold for tray in block.trays for hold in run.trays[tray].holds if hold.step == step.key]
        if any(hold.until is None for hold in held) and not block.begun:
            return Wrong("pieces held", {**facts, "why": held[0].why})
        too_small = self._too_small(run, step, block, before)
        if too_small is not None or block.begun:
            return too_small
        return self._nobody(step, block, facts) or self._no_time(block, facts)

    def _too_small(self, run: RunState, step: Step, block: Block, before: Sequence[Block]) -> Wrong | None:
        """A service of which the work draws more than there is, or the wait before it holds more: that is the wait's step."""
        route = run.route_of(run.trays[block.trays[0]])
        drawn = [(step, stretch.draws) for stretch in block.stretches]
        drawn += [(route.step(block.step) or step, block.holds) for block in before]
        for by, service, wanted in ((by, *draw) for by, draws in drawn for draw in draws):
            known = self.draft.book.services[service]
            if wanted > known.capacity:
                facts = {"step": by.name, "service": known.name, "wanted": wanted}
                return Wrong("service too small", facts, by.key)
        return None

    def _nobody(self, step: Step, block: Block, facts: dict[str, Any]) -> Wrong | None:
        if not block.attended or any(self.people[person].windows for person in block.people):
            return None
        if block.people:
            return Wrong("nobody has hours", facts)
        if not self.people:
            return Wrong("nobody in the book", facts)
        return Wrong("skill nobody has", {**facts, "skill": step.operation.skill or ""})

    def _no_time(self, block: Block, facts: dict[str, Any]) -> Wrong | None:
        """Where a block can begin at no tick, its release aside: which of the hours it lasts longer than."""
        key = (block.station, block.people, block.stretches)
        if key not in self._fits:
            self._fits[key] = any(starts_of(hours, replace(block, release=0)) for hours in self._hours)
        if self._fits[key]:
            return None
        wanted = max((stretch.offset + stretch.length for stretch in block.attended), default=0)
        runs = max(closes - opens for opens, closes in self.stations[block.station].runs)
        windows = (window for person in block.people for window in self.people[person].windows)
        hours = max((closes - opens for opens, closes in windows), default=0)
        if block.length > runs:
            return Wrong("quiet too long", {**facts, "minutes": block.length * TICK, "longest": runs * TICK})
        if wanted > hours:
            return Wrong("no window long enough", {**facts, "minutes": wanted * TICK, "longest": hours * TICK})
        return Wrong("never together", facts)

    def together(self, blocks: Sequence[Block], wrong: Mapping[int, Wrong]) -> dict[int, Wrong]:
        """What none of several blocks can keep together, though each could alone; ``wrong`` are known already."""
        return dict(_too_soon(blocks)) | dict(
            self._never_set_up([block for block in blocks if block.index not in wrong])
        )

    def _never_set_up(self, blocks: Sequence[Block]) -> Iterator[tuple[int, Wrong]]:
        """(block, why) of all work of one family of which none can come first, since its setup and it fit in no hours
        together, where its station stands on another."""
        families: dict[tuple[int, str], list[Block]] = defaultdict(list)
        for block in blocks:
            if block.family and block.unloads is None and block.family != self.stations[block.station].stands_on:
                families[block.station, block.family].append(block)
        for some in families.values():
            if not all(block.setup and not block.begun for block in some):
                continue
            facts = {"station": self.stations[some[0].station].name}
            found = [self._no_time(_with_setup(block), facts) for block in sorted(some, key=lambda block: block.length)]
            if found[0] is not None and all(found):
                yield from ((block.index, found[0]) for block in some)


def _with_setup(block: Block) -> Block:
    """The block with its setup as its first stretch."""
    later = (replace(stretch, offset=stretch.offset + block.setup) for stretch in block.stretches)
    return replace(block, stretches=(Stretch("setup", 0, block.setup, "hands-on"), *later))


def _too_soon(blocks: Sequence[Block]) -> Iterator[tuple[int, Wrong]]:
    """(block, why) of what has to begin, counted from the first piece, before the wait before it is over."""
    for block in blocks:
        for lag in block.lags:
            least = blocks[lag.before].length + lag.least
            if lag.latest is not None and lag.latest < least and not block.begun:
                yield block.index, Wrong("latest too soon", {"minutes": least * TICK, "longest": lag.latest * TICK})


def without_what_cannot_be(
    blocks: Sequence[Block], wrongs: Mapping[int, Wrong]
) -> tuple[tuple[Block, ...], tuple[LeftOut, ...]]:
    """The blocks that a plan can hold, numbered anew, and those it cannot: with them all that waits for them."""
    gone: set[int] = set()
    left_out: list[LeftOut] = []
    for block in blocks:
        wrong = wrongs.get(block.index)
        if wrong is not None:
            left_out.append(LeftOut(block.run, wrong.step or block.step, block.trays, wrong.code, wrong.facts))
        if wrong is not None or block.waits_for & gone:
            gone.add(block.index)
    kept = tuple(blocks) if not gone else numbered_anew(block for block in blocks if block.index not in gone)
    return kept, tuple(left_out)
