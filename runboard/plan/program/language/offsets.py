"""What moves the zero: coordinate systems (G54 to G59.3, G10 L2) and axis offsets (G92). NISTIR 6556, 3.5.5, 3.5.13, 3.5.18."""

from runboard.plan.program.language.codes import SYSTEMS, named
from runboard.plan.program.language.doubts import Doubts, LeftOut
from runboard.plan.program.language.limits import NEAR_WHOLE
from runboard.plan.program.language.line import Line
from runboard.plan.program.language.state import State

_FIRST_OFFSET = 5211  # the parameters in which the offsets of G92 stand
_FIRST_ORIGIN = 5221  # those of the first coordinate system; each has twenty


def choose_system(state: State, line: Line, code: int, doubts: Doubts) -> None:
    """G54 to G59.3. How far two systems lie apart is known where the program set both of them itself (G10)."""
    if code == state.system:
        return
    old, new = _origin(state, state.system), _origin(state, code)
    state.system = code
    if old is None or new is None:
        doubts.once(line.number, "coordinate-system", changes_time=True, word=named(code))
        return
    state.shift = [state.shift[axis] + new[axis] - old[axis] for axis in range(3)]


def _origin(state: State, code: int) -> list[float] | None:
    return state.origins.get(SYSTEMS.index(code) + 1)


def set_origin(state: State, line: Line, doubts: Doubts) -> None:
    """G10 L2 P…: where a coordinate system begins, in the machine's own coordinates."""
    if line.words.get("l") != 2:
        raise LeftOut("origin-without-l2")
    which = line.words.get("p", 0.0)
    if abs(which - round(which)) > NEAR_WHOLE or not 1 <= round(which) <= len(SYSTEMS):
        raise LeftOut("origin-of-none", most=len(SYSTEMS))
    number = round(which)
    old = state.origins.get(number)
    new = list(old or (0.0, 0.0, 0.0))
    for axis, letter in enumerate("xyz"):
        if letter in line.words:
            new[axis] = line.words[letter] * state.scale
            state.parameters[_FIRST_ORIGIN + 20 * (number - 1) + axis] = line.words[letter]
    is_whole = old is not None or (line.has("x") and line.has("y") and line.has("z"))
    if is_whole:
        state.origins[number] = new
    if SYSTEMS[number - 1] != state.system:
        return
    if old is None:
        doubts.once(line.number, "coordinate-system", changes_time=True, word="G10")
    else:
        state.shift = [state.shift[axis] + new[axis] - old[axis] for axis in range(3)]


def offset_axes(state: State, line: Line) -> None:
    """G92: from now on the place where the machine stands has these coordinates."""
    if not line.has("xyz"):
        raise LeftOut("no-axes", word="G92")
    for axis, letter in enumerate("xyz"):
        if letter in line.words:
            state.offsets[axis] = state.at[axis] - line.words[letter] * state.scale - state.shift[axis]
            state.is_known[axis] = True
            state.parameters[_FIRST_OFFSET + axis] = state.offsets[axis] / state.scale


def drop_offsets(state: State, code: int) -> None:
    """G92.1 sets them to nothing for good, G92.2 until G92.3."""
    if code == 923:
        state.offsets = list(state.kept_offsets)
        return
    state.kept_offsets = [0.0, 0.0, 0.0] if code == 921 else state.offsets
    state.offsets = [0.0, 0.0, 0.0]
    if code == 921:
        for axis in range(3):
            state.parameters[_FIRST_OFFSET + axis] = 0.0
