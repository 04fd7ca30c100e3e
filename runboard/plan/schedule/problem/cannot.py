"""What no plan can hold, and why: a station that is out of use, a skill that nobody has, no window long enough."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from runboard.plan.schedule.problem.fitting import Fitting
from runboard.plan.schedule.problem.nouns import TICK, Block, LeftOut
from runboard.plan.schedule.problem.one_run import numbered_anew
from runboard.run.begin import never_begins
from runboard.run.draft import Draft
from runboard.run.event import parse_moment
from runboard.run.route import Step
from runboard.run.state import RunState
from runboard.shop.book import Book


@dataclass(frozen=True)
class Wrong:
    """Why no plan can hold a block: the code and facts of a sentence, about ``step`` where that is not the block's own."""

    code: str
    facts: dict[str, object] = field(default_factory=dict)
    step: str = ""


def what_is_wrong(
    draft: Draft, fitting: Fitting, run: RunState, step: Step, block: Block, before: Sequence[Block]
) -> Wrong | None:
    """Why no plan can hold a block; None where one can. ``before`` are those that it waits for and that are not begun."""
    facts: dict[str, Any] = {"step": step.name}
    if block.station < 0:
        return Wrong("no station", facts)
    station = fitting.stations[block.station]
    facts["station"] = station.name
    if not station.runs:
        return _out_of_use(draft, station.key, facts)
    refused = never_begins(draft, run, step, block.load, block.trays)
    if refused is not None and (
        not block.begun or refused.code == "supply out"
    ):  # without it nothing begun is finished
        return Wrong(refused.code, {**facts, **refused.facts})
    held = [hold for tray in block.trays for hold in run.trays[tray].holds if hold.step == step.key]
    if any(hold.until is None for hold in held) and not block.begun:
        return Wrong("pieces held", {**facts, "why": held[0].why})
    too_small = _too_small(draft.book, run, step, block, before)
    if too_small is not None or block.begun:
        return too_small
    return _nobody(fitting, step, block, facts) or _no_time(fitting, block, facts)


def _out_of_use(draft: Draft, station: str, facts: dict[str, Any]) -> Wrong:
    until = (draft.station(station).out or {}).get("until")
    return Wrong("station due", {**facts, "until": parse_moment(until)}) if until else Wrong("station out", facts)


def _too_small(book: Book, run: RunState, step: Step, block: Block, before: Sequence[Block]) -> Wrong | None:
    """A service of which the work draws more than there is, or the wait before it holds more: that is the wait's step."""
    drawn = [(step, one.draws) for one in block.stretches]
    route = run.route_of(run.trays[block.trays[0]])
    drawn += [(route.step(one.step) or step, one.holds) for one in before]
    for by, service, wanted in ((by, *one) for by, draws in drawn for one in draws):
        if wanted > book.services[service].capacity:
            facts: dict[str, object] = {"step": by.name, "service": book.services[service].name, "wanted": wanted}
            return Wrong("service too small", facts, by.key)
    return None


def _nobody(fitting: Fitting, step: Step, block: Block, facts: dict[str, Any]) -> Wrong | None:
    if not block.attended:
        return None
    if not fitting.people:
        return Wrong("nobody in the book", facts)
    if not block.people:
        return Wrong("skill nobody has", {**facts, "skill": step.operation.skill or ""})
    if not fitting.longest_hours(block.people):
        return Wrong("nobody has hours", facts)
    return None


def _no_time(fitting: Fitting, block: Block, facts: dict[str, Any]) -> Wrong | None:
    """Where a block can begin at no tick: which of the hours it lasts longer than."""
    if fitting.fits(block):
        return None
    runs, hours = fitting.longest_run(block.station), fitting.longest_hours(block.people)
    wanted = max((one.offset + one.length for one in block.attended), default=0)
    if block.length > runs:
        return Wrong("quiet too long", {**facts, "minutes": block.length * TICK, "longest": runs * TICK})
    if wanted > hours:
        return Wrong("no window long enough", {**facts, "minutes": wanted * TICK, "longest": hours * TICK})
    return Wrong("never together", facts)


def too_soon(blocks: Sequence[Block]) -> Iterator[tuple[int, Wrong]]:
    """(block, why) of what has to begin, counted from the first piece, before the wait before it is over."""
    for block in blocks:
        for lag in block.lags:
            least = blocks[lag.before].length + lag.least
            if lag.latest is not None and lag.latest < least and not block.begun:
                facts: dict[str, object] = {"minutes": least * TICK, "longest": lag.latest * TICK}
                yield block.index, Wrong("latest too soon", facts)


def never_set_up(fitting: Fitting, blocks: Sequence[Block]) -> Iterator[tuple[int, Wrong]]:
    """(block, why) of all work of which none can come first, since its setup and it fit in no hours together."""
    for some in fitting.families(blocks):
        if any(fitting.fits(fitting.with_setup(block)) for block in some):
            continue
        least = min((fitting.with_setup(block) for block in some), key=lambda one: one.length)
        for block in some:
            station = fitting.stations[block.station].name
            if (wrong := _no_time(fitting, least, {"station": station})) is not None:
                yield block.index, wrong


def without_what_cannot_be(
    blocks: Sequence[Block], wrongs: Mapping[int, Wrong]
) -> tuple[tuple[Block, ...], tuple[LeftOut, ...]]:
    """The blocks that a plan can hold, numbered anew, and those it cannot: with them all that waits for them."""
    gone: set[int] = set()
    left_out: list[LeftOut] = []
    for block in blocks:
        waits_for = {*(lag.before for lag in block.lags), *({block.unloads} if block.unloads is not None else ())}
        wrong = wrongs.get(block.index)
        if wrong is None and not waits_for & gone:
            continue
        gone.add(block.index)
        if wrong is not None:
            left_out.append(LeftOut(block.run, wrong.step or block.step, block.trays, wrong.code, wrong.facts))
    if not gone:
        return tuple(blocks), ()
    return numbered_anew(block for block in blocks if block.index not in gone), tuple(left_out)
