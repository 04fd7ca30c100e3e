"""Which blocks are alike: the same work with equal work before and after it, so that only their names tell them apart.

Alike blocks are counted instead of named where a plan is bounded, and keep their order where one is searched for: any plan
can be renamed so that they do, which takes nothing from the best finish.
"""

from collections import defaultdict
from collections.abc import Hashable, Iterable
from dataclasses import dataclass

from runboard.plan.schedule.problem.nouns import Block, Problem

# Before and after: (block before, block after, what the second keeps of the first).
Edge = tuple[int, int, Hashable]


@dataclass(frozen=True)
class Alike:
    """``groups`` are the blocks in order, ``group_of`` each one's group. ``links`` are the groups that wait for others:
    (before, after, how many of the first a block of the second waits for, how many of the second wait for one of the
    first). Groups in ``ordered`` may keep their order at no cost."""

    groups: tuple[tuple[int, ...], ...]
    group_of: tuple[int, ...]
    links: tuple[tuple[int, int, int, int], ...]
    ordered: frozenset[int]


def alike(problem: Problem) -> Alike:
    """The groups of alike blocks, and which of them may keep their order."""
    edges = list(edges_of(problem))
    colours = _refined(problem, edges)
    groups: dict[int, list[int]] = defaultdict(list)
    for block, colour in enumerate(colours):
        groups[colour].append(block)
    members = tuple(tuple(group) for group in groups.values())
    group_of = [0] * len(colours)
    for at, group in enumerate(members):
        for block in group:
            group_of[block] = at
    links, broken = _links(members, group_of, edges)
    return Alike(members, tuple(group_of), links, _ordered(len(members), links, broken))


def edges_of(problem: Problem) -> Iterable[Edge]:
    """What waits for what."""
    for block in problem.blocks:
        for lag in block.lags:
            yield lag.before, block.index, (lag.least, lag.latest)
        if block.unloads is not None:
            yield block.unloads, block.index, "unloads"


def _refined(problem: Problem, edges: list[Edge]) -> list[int]:
    """Colours that tell apart what is not alike: each round adds the colours before and after, until nothing changes."""
    before: list[list[tuple[int, Hashable]]] = [[] for _ in problem.blocks]
    after: list[list[tuple[int, Hashable]]] = [[] for _ in problem.blocks]
    for one, other, kept in edges:
        before[other].append((one, kept))
        after[one].append((other, kept))
    colours = _numbered([_work(block) for block in problem.blocks])
    while True:
        finer = _numbered(
            [
                (
                    colours[at],
                    tuple(sorted((colours[neighbour], repr(kept)) for neighbour, kept in before[at])),
                    tuple(sorted((colours[neighbour], repr(kept)) for neighbour, kept in after[at])),
                )
                for at in range(len(colours))
            ]
        )
        if finer == colours:
            return colours
        colours = finer


def _work(block: Block) -> Hashable:
    """All that counts of a block but its name and what it waits for. One that is begun is like no other."""
    return (
        block.index if block.begun else -1,
        *(block.run, block.operation, block.step, block.pieces, len(block.trays), block.station, block.stretches),
        *(block.people, block.family, block.setup, block.release, block.holds, block.wet, block.airs, block.last),
    )


def _numbered(keys: list[Hashable]) -> list[int]:
    known: dict[Hashable, int] = {}
    return [known.setdefault(key, len(known)) for key in keys]


def _links(
    groups: tuple[tuple[int, ...], ...], group_of: list[int], edges: list[Edge]
) -> tuple[tuple[tuple[int, int, int, int], ...], set[int]]:
    """The links between groups, and the groups whose order does not run along with that of what they wait for."""
    place = {block: at for group in groups for at, block in enumerate(group)}
    pairs: dict[tuple[int, int, Hashable], list[tuple[int, int]]] = defaultdict(list)
    for one, other, kept in edges:
        pairs[group_of[one], group_of[other], kept].append((place[other], place[one]))
    links, broken = [], set()
    for (one, other, _), found in pairs.items():
        each, follow = len(found) // len(groups[other]), len(found) // len(groups[one])
        links.append((one, other, each, follow))
        along = [(at, (at * each + nth) // follow) for at in range(len(groups[other])) for nth in range(each)]
        if sorted(found) != along:
            broken |= {one, other}
    return tuple(links), broken


def _ordered(count: int, links: tuple[tuple[int, int, int, int], ...], broken: set[int]) -> frozenset[int]:
    """Every group that no broken one is tied to."""
    tied: dict[int, set[int]] = defaultdict(set)
    for one, other, _, _ in links:
        tied[one].add(other)
        tied[other].add(one)
    reached, left = set(broken), list(broken)
    while left:
        for other in tied[left.pop()] - reached:
            reached.add(other)
            left.append(other)
    return frozenset(range(count)) - reached
