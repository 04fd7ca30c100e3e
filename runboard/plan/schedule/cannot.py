"""What no plan can hold, and why: a station that is out of use, a skill that nobody has, no window long enough."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from runboard.plan.schedule.problem import TICK, Block, LeftOut, Station
from runboard.run.route import Step
from runboard.run.state import RunState
from runboard.shop.book import Book

Wrong = tuple[str, dict[str, object]]
# The longest window, in ticks, that any of some people has.
Longest = Callable[[tuple[int, ...]], int]


def what_is_wrong(
    book: Book, stations: Sequence[Station], longest_of: Longest, run: RunState, step: Step, block: Block
) -> Wrong | None:
    """Why no plan can hold a block, as the code and facts of a sentence; None where one can."""
    facts: dict[str, Any] = {"step": step.name}
    if block.station < 0:
        return "no station", facts
    station = stations[block.station]
    facts["station"] = station.name
    if not station.runs:
        return "station out", facts
    for use in step.operation.uses:
        if use.supply in run.out and run.out[use.supply] is None:
            return "supply out", {**facts, "supply": use.supply}
    held = [hold for tray in block.trays for hold in run.trays[tray].holds if hold.step == step.key]
    if any(hold.until is None for hold in held) and not block.begun:
        return "pieces held", {**facts, "why": held[0].why}
    drawn = [one.draws for one in block.stretches] + [lag.holds for lag in block.lags]
    for service, wanted in (one for draws in drawn for one in draws):
        if wanted > book.services[service].capacity:
            return "service too small", {**facts, "service": book.services[service].name, "wanted": wanted}
    if block.attended and not block.begun:
        return _nobody(longest_of, step, block, facts)
    return None


def _nobody(longest_of: Longest, step: Step, block: Block, facts: dict[str, Any]) -> Wrong | None:
    if not block.people:
        return "skill nobody has", {**facts, "skill": step.operation.skill or ""}
    longest = longest_of(block.people)
    if not longest:
        return "nobody has hours", facts
    wanted = max(one.offset + one.length for one in block.attended)
    if wanted > longest:
        return "no window long enough", {**facts, "minutes": wanted * TICK, "longest": longest * TICK}
    return None


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
            left_out.append(LeftOut(block.run, block.step, block.trays, wrong[0], wrong[1]))
    number = {block.index: at for at, block in enumerate(one for one in blocks if one.index not in gone)}
    kept = [
        replace(
            block,
            index=number[block.index],
            lags=tuple(replace(lag, before=number[lag.before]) for lag in block.lags),
            unloads=None if block.unloads is None else number[block.unloads],
        )
        for block in blocks
        if block.index in number
    ]
    return tuple(kept), tuple(left_out)
