"""Why a plan is no earlier with less of some work: what became of the time that was won."""

from collections.abc import Callable
from dataclasses import dataclass

from runboard.plan.schedule.problem.nouns import Block, Plan, Problem
from runboard.plan.schedule.told.holding import chain


@dataclass(frozen=True)
class Slack:
    """``is_off`` where the longest chain does not go through the work; ``waits`` is the last block of the chain that waits
    for hours to begin, and ``is_lost`` where it comes behind the work, so that what is won is lost in that wait."""

    is_off: bool
    waits: int | None
    is_lost: bool


def slack_of(problem: Problem, plan: Plan, is_it: Callable[[Block], bool], run: str = "") -> Slack:
    """What the longest chain, to the end of a run, does with the work that ``is_it`` names."""
    links = chain(problem, plan, run)
    at = max((nth for nth, link in enumerate(links) if is_it(problem.blocks[link.block])), default=None)
    ends = [0, *(plan.end(problem, link.block) for link in links)]
    opened = [
        nth
        for nth, link in enumerate(links)
        if link.why == "hours" and _opens_for(problem, plan, link.block, ends[nth])
    ]
    gap = max(opened, default=None)
    waits = None if gap is None else links[gap].block
    return Slack(at is None, waits, at is not None and gap is not None and gap > at)


def _opens_for(problem: Problem, plan: Plan, block: int, ended: int) -> bool:
    """Whether the hours of whoever does a block, or of its station, open after what is before it in the chain has ended."""
    placed = plan.placed[block]
    people = {one for one in (placed.hands, *(who for who, _ in placed.watchers)) if one is not None}
    hours = [problem.stations[problem.blocks[block].station].runs, *(problem.people[one].windows for one in people)]
    return any(ended < opens <= placed.start for spans in hours for opens, _ in spans)


def is_part(plan: Plan, run: str, operation: str, kind: str = "") -> Callable[[Block], bool]:
    """Whether a block has a time element of an operation of a run, or with ``kind`` '' any of its work."""

    def found(block: Block) -> bool:
        if (block.run, block.operation) != (run, operation):
            return False
        set_up = kind == "setup" and plan.placed[block.index].setup > 0
        return not kind or set_up or any(one.kind == kind for one in block.stretches)

    return found
