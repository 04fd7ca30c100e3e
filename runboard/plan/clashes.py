"""What no plan can hold although nobody pressed anything that keeps it out: a skill nobody has, a load larger than a
service. What is out of use, out of stock, stopped or held says so itself, where it was pressed."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from runboard.plan.schedule.problem.nouns import LeftOut, Problem
from runboard.plan.why import step_name
from runboard.run.fold.state import ShopState

PRESSED = ("station out", "station due", "supply out", "pieces held", "first piece failed")


@dataclass(frozen=True)
class Clash:
    """The code and facts of the sentence that names what clashes."""

    code: str
    facts: dict[str, Any] = field(default_factory=dict)


def clashes(left_out: Sequence[LeftOut]) -> list[Clash]:
    """Each clash once, in the order of the work."""
    found = {(left.run, left.step, left.code): Clash(left.code, left.facts) for left in reversed(left_out)}
    order = dict.fromkeys((left.run, left.step, left.code) for left in left_out if left.code not in PRESSED)
    return [found[key] for key in order]


def in_the_way(state: ShopState, problem: Problem, blocks: Sequence[int]) -> tuple[LeftOut, ...]:
    """The same of blocks that are proved to be in each other's way, or in that of what is begun."""
    found = []
    for block in (problem.blocks[at] for at in sorted(blocks)):
        facts: dict[str, object] = {"step": step_name(state, block)}
        found.append(LeftOut(block.run, block.step, block.trays, "no place left", facts))
    return tuple(found)
