"""How the compiled rule is called from Python: with arrays, which go in as addresses."""

from typing import Any

from runboard.plan.schedule.rule.kernel.replicate import replicate


def entry(
    t: Any,
    s: Any,
    fresh: Any,
    reals: Any,
    real: Any,
    width: int,
    priority: Any,
    knobs: Any,
    marks: Any,
    marked: int,
    found: Any,
    goes: int,
) -> None:
    """``replicate``, for arrays. From an address no place is counted from the end, which takes half the time."""
    replicate(
        t.ctypes,
        s.ctypes,
        fresh.ctypes,
        reals.ctypes,
        real.ctypes,
        width,
        priority.ctypes,
        knobs.ctypes,
        marks.ctypes,
        marked,
        found.ctypes,
        goes,
    )
