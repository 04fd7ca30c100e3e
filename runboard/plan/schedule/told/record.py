"""A plan as a record for other programs: each load with its parts, moments in ISO 8601 UTC."""

from collections.abc import Iterator
from typing import Any

from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.people import hands_of, watching_of
from runboard.run.event import write_moment


def operations_record(problem: Problem, plan: Plan, run: str) -> list[dict[str, Any]]:
    """What is still to be done of a run, a load each, by its start. A part has the people who are at it: whose hands, or
    who watches; watching that changes hands is a part each. What is done and only dries still is not in it."""
    chains: dict[int, list[int]] = {}
    first: dict[int, int] = {}
    for block in problem.blocks:
        if block.run == run:
            first[block.index] = first.get(block.unloads, block.index) if block.unloads is not None else block.index
            chains.setdefault(first[block.index], []).append(block.index)
    parts = _parts(problem, plan)
    found = [_load(problem, plan, chain, parts) for chain in chains.values() if any(parts[one] for one in chain)]
    return sorted(found, key=lambda one: (one["start"], one["load"]))


def _load(problem: Problem, plan: Plan, chain: list[int], parts: dict[int, list[dict[str, Any]]]) -> dict[str, Any]:
    block = problem.blocks[chain[0]]
    return {
        "operation": block.operation,
        "step": block.step,
        "load": block.load,
        "trays": list(block.trays),
        "station": problem.stations[block.station].key,
        "start": write_moment(problem.moment(plan.placed[chain[0]].start)),
        "end": write_moment(problem.moment(max(plan.end(problem, one) for one in chain))),
        "parts": [part for one in chain for part in parts[one]],
    }


def _parts(problem: Problem, plan: Plan) -> dict[int, list[dict[str, Any]]]:
    """The parts of each block, in order."""
    found: dict[int, list[tuple[int, int, str, tuple[int, ...]]]] = {block.index: [] for block in problem.blocks}
    for at in (*hands_of(problem, plan), *watching_of(problem, plan)):
        found[at.block].append((at.start, at.end, "machine" if at.kind == "watching" else at.kind, (at.person,)))
    for placed in plan.placed:
        found[placed.block] += _unattended(problem, plan, placed.block, {one[2] for one in found[placed.block]})
    return {block: [_part(problem, *one) for one in sorted(parts)] for block, parts in found.items()}


def _unattended(
    problem: Problem, plan: Plan, block: int, known: set[str]
) -> Iterator[tuple[int, int, str, tuple[int, ...]]]:
    for one in problem.blocks[block].stretches:
        if one.kind not in known:
            start = plan.placed[block].begins() + one.offset
            yield start, start + one.length, one.kind, ()


def _part(problem: Problem, start: int, end: int, kind: str, people: tuple[int, ...]) -> dict[str, Any]:
    return {
        "kind": kind,
        "start": write_moment(problem.moment(start)),
        "end": write_moment(problem.moment(end)),
        "people": [problem.people[one].key for one in people],
    }
