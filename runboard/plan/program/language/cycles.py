"""Canned cycles, G81 to G89, in the three planes (NISTIR 6556, 3.5.16)."""

from dataclasses import dataclass

from runboard.plan.program.language.codes import named
from runboard.plan.program.language.doubts import LeftOut
from runboard.plan.program.language.limits import MOST_REPEATS, NEAR_WHOLE, PECK_SHORT, SAME_HEIGHT
from runboard.plan.program.language.line import Line
from runboard.plan.program.language.moving import AXES, Moving
from runboard.plan.program.moves import PLANES
from runboard.run.refusal import Refused

_CYCLES = range(810, 900, 10)
_WAITING = (820, 860, 880, 890)
_TURNING = (840, 860, 870, 880)  # those that want the spindle to turn
_OFFSETS = "ijk"


@dataclass(frozen=True)
class _Hole:
    """Heights along the plane's third axis, mm: where feeding begins, where it ends, where the tool goes back to."""

    code: int
    start: float
    bottom: float
    clear: float
    line: Line


def run_cycle(moving: Moving, line: Line, code: int) -> None:
    """One line of a canned cycle: as many holes as its L says."""
    state = moving.state
    numbers = _numbers(moving, line, code)
    third = PLANES[state.plane][2]
    moving.know(line, AXES[third])
    across = "".join(letter for letter in AXES if letter in line.words and letter != AXES[third])
    old = state.at[third]
    start, bottom = _heights(moving, numbers, third)
    if start < bottom:
        raise LeftOut("cycle-upside-down", word=AXES[third].upper())
    hole = _Hole(code, start, bottom, max(old, start) if state.goes_back_up else start, line)
    if state.motion not in _CYCLES:
        state.series_from = old
    elif state.goes_back_up and state.series_from > hole.clear + SAME_HEIGHT:
        moving.doubts.once(line.number, "cycle-returns", z=hole.clear, by=state.series_from)
    if old < start:
        _travel(moving, line, third, start)
    for _ in range(_repeats(line)):
        to = moving.place(line)
        moving.blocks.have_room(16, line.number)
        moving.find(to, across)
        to[third] = state.at[third]
        if to != state.at:
            moving.rapid(line.number, to)
        _travel(moving, line, third, start)
        _drill(moving, hole, numbers)


def _numbers(moving: Moving, line: Line, code: int) -> dict[str, float]:
    """The sticky numbers (3.5.16): those of the line, and of lines before it of the same cycle. They are kept as they were
    written."""
    state, third = moving.state, PLANES[moving.state.plane][2]
    if state.is_inverse:
        raise LeftOut("cycle-in-g93")
    going_on = dict(state.sticky) if state.motion == code else {}
    sticky = "rpq" + AXES[third] + (_OFFSETS if code == 870 else "")
    found = {**going_on, **{letter: line.words[letter] for letter in sticky if letter in line.words}}
    needed = "r" + AXES[third] + ("p" if code in _WAITING else "") + ("q" if code == 830 else "")
    needed += _OFFSETS if code == 870 else ""
    missing = [letter.upper() for letter in needed if letter not in found]
    if missing:
        raise LeftOut("cycle-without", cycle=named(code), word=missing[0])
    if (code == 830 and found["q"] <= 0) or found.get("p", 0.0) < 0:
        raise LeftOut("cycle-without", cycle=named(code), word="Q" if code == 830 else "P")
    if code in _TURNING and state.spindle == 5:
        moving.doubts.add(line.number, "spindle-stands", cycle=named(code))
    state.sticky = found
    return found


def _heights(moving: Moving, numbers: dict[str, float], third: int) -> tuple[float, float]:
    """R and the bottom. In incremental mode R counts from where the tool is, the bottom from R."""
    state = moving.state
    start = state.given(third, numbers["r"])
    bottom = numbers[AXES[third]]
    return start, state.given(third, bottom) if state.is_absolute else start + bottom * state.scale


def _repeats(line: Line) -> int:
    repeats = line.words.get("l", 1.0)
    if repeats > MOST_REPEATS:
        raise Refused("program-repeats", line=line.number, most=MOST_REPEATS)
    if abs(repeats - round(repeats)) > NEAR_WHOLE or round(repeats) < 1:
        raise LeftOut("cycle-repeats")
    return round(repeats)


def _at_height(moving: Moving, third: int, height: float) -> list[float]:
    to = list(moving.state.at)
    to[third] = height
    return to


def _travel(moving: Moving, line: Line, third: int, height: float) -> None:
    """Along the third axis, unless the tool is there."""
    if moving.state.at[third] != height:
        moving.rapid(line.number, _at_height(moving, third, height))


def _cut(moving: Moving, hole: _Hole, third: int, height: float) -> None:
    to = _at_height(moving, third, height)
    speed = moving.speed(hole.line, abs(height - moving.state.at[third]))
    moving.feed(hole.line, to, speed)


def _drill(moving: Moving, hole: _Hole, numbers: dict[str, float]) -> None:
    """One hole, from over it at the height of R until the tool is clear of it."""
    third, number = PLANES[moving.state.plane][2], hole.line.number
    if hole.code == 870:
        _bore_back(moving, hole, numbers)
        return
    if hole.code == 830:
        _peck(moving, hole, numbers["q"] * moving.state.scale)
    _cut(moving, hole, third, hole.bottom)
    if hole.code in _WAITING:
        moving.dwell(number, numbers["p"])
    if hole.code == 880:  # the machine stops, and a person takes the tool out by hand
        moving.stop(number)
        moving.doubts.once(number, "out-by-hand", changes_time=True)
    if hole.code in (840, 850, 890):
        _cut(moving, hole, third, hole.clear)
    else:
        _travel(moving, hole.line, third, hole.clear)


def _peck(moving: Moving, hole: _Hole, step: float) -> None:
    """All pecks but the last (G83): back to R after each, from memory, and rapid down to a bit above where it ended."""
    third = PLANES[moving.state.plane][2]
    pecks = (hole.start - hole.bottom) / step
    moving.blocks.have_room(3 * int(min(pecks, 1e8)), hole.line.number)
    depth = hole.start - step
    while depth > hole.bottom:
        _cut(moving, hole, third, depth)
        _travel(moving, hole.line, third, hole.start)
        _travel(moving, hole.line, third, min(depth + PECK_SHORT, hole.start))
        depth -= step


def _bore_back(moving: Moving, hole: _Hole, numbers: dict[str, float]) -> None:
    """G87: aside, down through the hole, under it, up to where the counterbore ends, and back the same way."""
    state, number = moving.state, hole.line.number
    first, second, third = PLANES[state.plane]
    middle = numbers[_OFFSETS[third]]
    top = state.given(third, middle) if state.is_absolute else hole.bottom + middle * state.scale
    over = (state.at[first], state.at[second])
    aside = [
        over[0] + numbers[_OFFSETS[first]] * state.scale,
        over[1] + numbers[_OFFSETS[second]] * state.scale,
    ]

    def across(place: tuple[float, float] | list[float]) -> None:
        to = list(state.at)
        to[first], to[second] = place
        moving.rapid(number, to)

    across(aside)
    _travel(moving, hole.line, third, hole.bottom)
    across(over)
    _cut(moving, hole, third, top)
    _cut(moving, hole, third, hole.bottom)
    across(aside)
    _travel(moving, hole.line, third, hole.clear)
    across(over)
