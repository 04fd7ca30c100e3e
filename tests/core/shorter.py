"""Problems with a time element shorter or longer, and those of which it can be said what that does to the best finish."""

from collections.abc import Callable
from dataclasses import replace

from runboard.plan.schedule.problem.nouns import FAR, Block, Lag, Problem, Stretch

KINDS = ("setup", "loading", "machine", "unloading", "hand", "wait")


def shorter(problem: Problem, kind: str, ticks: int) -> Problem:
    """The element shorter by so many ticks wherever it is, and never nothing."""
    return _each(problem, kind, lambda length: max(1, length - ticks) if length else 0)


def longer(problem: Problem, kind: str, block: int, ticks: int) -> Problem:
    """The element of one block longer by so many ticks; the same problem where the block has none."""
    found = _each(problem, kind, lambda length: length + ticks if length else 0)
    if kind == "wait":  # the wait after the block: all that waits for it
        mine = {one.index for one in problem.blocks if any(lag.before == block for lag in one.lags)}
        return _only(problem, found, lambda one: one.index in mine, block)
    return _only(problem, found, lambda one: one.index == block, block)


def has_it(problem: Problem, kind: str) -> bool:
    """Whether any block has the element."""
    return shorter(problem, kind, 1) != problem


def sum_of_changes(now: Problem, then: Problem, kind: str) -> int:
    """The changes of all blocks that have the element, added up: a wait once for what waits."""
    return sum(_ticks(one, kind) - _ticks(other, kind) for one, other in zip(now.blocks, then.blocks, strict=True))


def _ticks(block: Block, kind: str) -> int:
    if kind == "setup":
        return block.setup
    if kind == "wait":
        return sum(lag.least for lag in block.lags)
    return sum(one.length for one in block.stretches if one.kind == kind)


def _each(problem: Problem, kind: str, length_of: Callable[[int], int]) -> Problem:
    return replace(problem, blocks=tuple(_changed(one, kind, length_of) for one in problem.blocks))


def _changed(block: Block, kind: str, length_of: Callable[[int], int]) -> Block:
    if kind == "setup":
        return replace(block, setup=length_of(block.setup))
    if kind == "wait":
        return replace(block, lags=tuple(replace(lag, least=length_of(lag.least)) for lag in block.lags))
    stretches: list[Stretch] = []
    for one in block.stretches:
        offset = stretches[-1].offset + stretches[-1].length if stretches else one.offset
        stretches.append(replace(one, offset=offset, length=length_of(one.length) if one.kind == kind else one.length))
    return replace(block, stretches=tuple(stretches))


def _only(problem: Problem, changed: Problem, is_meant: Callable[[Block], bool], before: int) -> Problem:
    blocks = []
    for one, other in zip(problem.blocks, changed.blocks, strict=True):
        if not is_meant(one):
            blocks.append(one)
        elif one.lags != other.lags:
            lags = [new if new.before == before else old for old, new in zip(one.lags, other.lags, strict=True)]
            blocks.append(replace(one, lags=tuple(lags)))
        else:
            blocks.append(other)
    return replace(problem, blocks=tuple(blocks))


def steady(problem: Problem, kind: str) -> Problem:
    """The problem without what may make a shorter element end later: see the statements."""
    problem = _seen_in_the_room(problem)
    holding = {one.index for one in problem.blocks if one.holds and problem.waiting[one.index]}

    def freed(block: Block) -> Block:
        at_front = kind == "loading" or (kind == "setup" and block.setup > 0)
        if at_front or (kind == "hand" and block.index in holding):
            block = replace(block, lags=tuple(replace(lag, latest=None) for lag in block.lags))
        if kind == "hand" and block.index in holding:
            block = replace(block, begun=False, by=None)
        return block

    return replace(problem, blocks=tuple(map(freed, problem.blocks)))


def in_one_window(problem: Problem) -> Problem:
    """The problem in a shop that never closes, with nothing begun and no latest ends."""
    problem = _seen_in_the_room(problem)
    blocks = tuple(
        replace(one, begun=False, by=None, lags=tuple(map(_without_latest, one.lags))) for one in problem.blocks
    )
    people = tuple(replace(one, windows=((0, FAR),)) for one in problem.people)
    stations = tuple(replace(one, runs=((0, FAR),)) for one in problem.stations)
    return replace(problem, people=people, stations=stations, blocks=blocks)


def _without_latest(lag: Lag) -> Lag:
    return replace(lag, latest=None)


def _seen_in_the_room(problem: Problem) -> Problem:
    rooms = [one.room for one in problem.stations]
    stations = tuple(
        replace(one, watched_from=frozenset(at for at in one.watched_from if at < len(rooms) and rooms[at] == one.room))
        for one in problem.stations
    )
    return replace(problem, stations=stations)
