"""How long everything might really take: many draws of each time element, the same ones for every plan and every idea.

Each time element of each load has its own chance numbers, named by run, step, load and kind: so two plans, or a run with and
without a change, meet the same luck, and what differs between them is the plan.
"""

import hashlib
from collections.abc import Callable
from typing import Any

from runboard.plan.schedule.problem import Block, Problem

# The spread of a time element: the standard deviation of the logarithm of its length.
Spread = Callable[[Block, str], float]

HAND_SPREAD = 0.27
MACHINE_SPREAD = 0.025


def usual_spread(block: Block, kind: str) -> float:
    """What times by hand and by machine usually spread, where nothing was measured."""
    return MACHINE_SPREAD if kind == "machine" else HAND_SPREAD


def drawn_lengths(problem: Problem, goes: int, spread: Spread = usual_spread, seed: int = 1) -> Any:
    """An array of goes × (stretches, then each block's setup), in whole ticks: lognormal, their mean what is estimated."""
    import numpy

    columns = [
        _drawn(block, one.kind, one.length, goes, spread, seed) for block in problem.blocks for one in block.stretches
    ]
    columns += [_drawn(block, "setup", block.setup, goes, spread, seed) for block in problem.blocks]
    return numpy.ascontiguousarray(numpy.array(columns, dtype=numpy.int64).reshape(len(columns), goes).T)


def _drawn(block: Block, kind: str, length: int, goes: int, spread: Spread, seed: int) -> Any:
    import numpy

    if length == 0:
        return numpy.zeros(goes)
    name = f"{seed}|{block.run}|{block.step}|{block.load}|{kind}".encode()
    key = int.from_bytes(hashlib.blake2b(name, digest_size=16).digest(), "big")
    normal = numpy.random.Generator(numpy.random.Philox(key=key)).standard_normal(goes)
    wide = spread(block, kind)
    return numpy.maximum(1, numpy.rint(length * numpy.exp(wide * normal - wide * wide / 2)))
