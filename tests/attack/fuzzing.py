"""``python -m tests.attack fuzz``: a million inputs from a seed, on so many processes, and what came of them."""

import argparse
import sys
import time
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

from tests.attack.fuzz import A_CHAPTER, Found, chapters, lines, together
from tests.attack.fuzz_wire import on_the_wire

_AT_ONCE = 20
_ON_THE_WIRE = 100  # one in so many goes by a real socket


def fuzz(inputs: int, seed: int, processes: int = 1, chapter: int | None = None) -> Found:
    """Throw so many inputs, or those of one chapter alone."""
    if chapter is not None:
        return together(chapters(seed, range(chapter, chapter + 1)))
    numbers = range(-(-inputs * (_ON_THE_WIRE - 1) // _ON_THE_WIRE // A_CHAPTER))
    parts = [(seed, numbers[at : at + _AT_ONCE]) for at in range(0, len(numbers), _AT_ONCE)]
    found = on_the_wire(seed, inputs // _ON_THE_WIRE)
    began = time.monotonic()
    with ProcessPoolExecutor(processes, mp_context=get_context("spawn")) as pool:
        for one in pool.map(_part, parts):
            found.add(one)
            rate = found.inputs / (time.monotonic() - began)
            print(
                f"{found.inputs:,} inputs, {rate:,.0f}/s, {len(found.troubles)} failures", file=sys.stderr, flush=True
            )
    return found


def _part(asked: tuple[int, Sequence[int]]) -> Found:
    seed, numbers = asked
    return together(chapters(seed, range(numbers[0], numbers[-1] + 1)))


def main(arguments: Sequence[str]) -> int:
    """Print what came of it; 1 if anything failed."""
    parser = argparse.ArgumentParser(prog="python -m tests.attack fuzz", description=__doc__)
    parser.add_argument("--inputs", type=int, default=20_000, help="the whole is 1,000,000")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--processes", type=int, default=1)
    parser.add_argument("--chapter", type=int, help="only this chapter of the seed, as a failure names it")
    asked = parser.parse_args(arguments)
    began = time.monotonic()
    found = fuzz(asked.inputs, asked.seed, asked.processes, asked.chapter)
    print("\n".join(lines(found, asked.seed, time.monotonic() - began)))
    return int(bool(found.troubles))
