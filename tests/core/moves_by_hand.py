"""Programs made by hand as their moves, without a text that they were read from."""

from collections.abc import Iterable, Sequence
from math import atan2, hypot, pi
from typing import Any

from runboard.plan.program.moves import DWELL, FEED, PLANES, RAPID, STOP, TOOL, Moves, no_moves

Block = dict[str, Any]


def rapid(*to: float, **more: Any) -> Block:
    return {"kind": RAPID, "to": to, **more}


def feed(*to: float, speed: float = 20.0, **more: Any) -> Block:
    """Straight, at so many mm/s."""
    return {"kind": FEED, "to": to, "speed": speed, **more}


def arc(to: Sequence[float], centre: Sequence[float], turns: int = 1, speed: float = 20.0, plane: int = 0) -> Block:
    """Anticlockwise round ``centre``, ``turns`` > 0, or clockwise, < 0; a full circle where it ends where it began."""
    return {"kind": FEED, "to": tuple(to), "centre": tuple(centre), "speed": speed, "plane": plane, "turns": turns}


def dwell(seconds: float) -> Block:
    return {"kind": DWELL, "speed": seconds}


def tool(number: int) -> Block:
    return {"kind": TOOL, "tool": number}


def stop() -> Block:
    return {"kind": STOP}


def moves(*blocks: Block, start: Sequence[float] = (0.0, 0.0, 0.0)) -> Moves:
    """One line a block, from 1."""
    arrays = no_moves(len(blocks))
    at, held = tuple(start), 0
    for number, block in enumerate(blocks):
        held = block.get("tool", held)
        to = tuple(block.get("to", at))
        for name in ("kind", "speed", "exact", "plane", "centre"):
            if name in block:
                arrays[name][number] = block[name]
        if "plane" in block:
            arrays["sweep"][number] = _sweep(at, to, block)
        arrays["to"][number], arrays["tool"][number], arrays["line"][number] = to, held, number + 1
        at = to
    return Moves(**arrays, start=(start[0], start[1], start[2]), lines=len(blocks), units="mm")


def _sweep(at: Sequence[float], to: Sequence[float], block: Block) -> float:
    first, second, _ = PLANES[block["plane"]]
    (x, y), turns = block["centre"], block["turns"]
    angle = atan2(to[second] - y, to[first] - x) - atan2(at[second] - y, at[first] - x)
    if hypot(to[first] - at[first], to[second] - at[second]) < 1e-9:
        return 2 * pi * turns
    return angle % (2 * pi) + 2 * pi * (turns - 1) if turns > 0 else -((-angle) % (2 * pi)) + 2 * pi * (turns + 1)


def moved(program: Moves, by: Sequence[float]) -> Moves:
    """The same somewhere else."""
    from dataclasses import replace

    centre = program.centre.copy()
    for plane, (first, second, _) in enumerate(PLANES):
        centre[program.plane == plane] += by[first], by[second]
    start = tuple(one + other for one, other in zip(program.start, by, strict=True))
    return replace(program, to=program.to + by, centre=centre, start=start)


def polyline(points: Iterable[Sequence[float]], speed: float = 20.0) -> list[Block]:
    return [feed(*point, speed=speed) for point in points]
