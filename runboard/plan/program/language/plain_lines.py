"""Plain lines read byte by byte, as plain Python or compiled by numba, of one source.

Law: arrays, records, numbers and loops, nothing that numba would not take; no byte is asked for before it is known to be
there, no block written before there is room. A line is understood whole before it changes anything: one that holds anything
else than N, G0 to G3, G17 to G19, G90, G91, X Y Z I J K R F S, M3 to M5, M7 to M9 and comments, or that could be in
doubt, is left to the interpreter, as if it had not been looked at. What is done, is done in the interpreter's order.
"""

from math import sqrt
from typing import Any, NamedTuple

from runboard.plan.program.language.arcs import centre_of, gap_between, sweep_between
from runboard.plan.program.language.limits import LONGEST_LINE, MOST_MM, SAME_PLACE
from runboard.plan.program.moves import FEED, RAPID, Array

# The fields of a go, of which an array of one record is made: how far it has come, and the interpreter's state.
WHOLE = ("at", "number", "until", "count", "absolute", "motion", "plane", "exact", "tool", "spindle")
WHOLE_KNOWN = ("known_x", "known_y", "known_z")
REAL = ("x", "y", "z", "off_x", "off_y", "off_z", "scale", "feed", "gap")

_LINE_FEED, _SPACE, _TAB, _OPENS, _CLOSES, _SEMICOLON = 10, 32, 9, 40, 41, 59
_ZERO, _NINE, _POINT, _PLUS, _MINUS = 48, 57, 46, 43, 45
_A, _F, _G, _I, _J, _K, _M, _N, _R, _S, _X, _Y, _Z = 97, 102, 103, 105, 106, 107, 109, 110, 114, 115, 120, 121, 122
_TAKEN = (1 << 5) | (1 << 8) | (1 << 9) | (1 << 10) | (1 << 17) | (1 << 18) | (7 << 23)  # F I J K R S X Y Z
_IJK, _AXES, _ONE = 7 << 8, 7 << 23, 1
_WITH_R, _WITH_F, _WITH_S = 1 << 17, 1 << 5, 1 << 18
# Up to here whole numbers and powers of ten are exact, so that a number comes out as ``float`` reads it.
_MOST_DIGITS, _MOST_DECIMALS = 10**15, 22


class Rows(NamedTuple):
    """The arrays of the blocks, as ``Moves`` has them."""

    kind: Array
    line: Array
    to: Array
    speed: Array
    plane: Array
    centre: Array
    sweep: Array
    tool: Array
    exact: Array


def read_plain(text: Any, states: Any, rows: Rows, words: Array) -> None:
    """Read lines from byte ``at`` on, until one that is not plain, until ``until`` lines are read, or until no room is left.
    ``states``: one record of the fields above; ``words``: room for a line's words, 26 numbers by their letters."""
    go = states[0]
    while go.at < len(text) and go.number < go.until and go.count < len(rows.kind):
        if not _read_line(text, go, rows, words):
            return


def _read_line(text: Any, go: Any, rows: Rows, words: Array) -> bool:
    at, there, motion, plane, absolute, spindle, coolant = go.at, 0, -1, -1, -1, -1, -1
    is_first = True
    while at < len(text) and text[at] != _LINE_FEED:
        sign = text[at]
        if sign in (_SPACE, _TAB):
            at += 1
            continue
        if sign in (_OPENS, _SEMICOLON):
            at = _behind_comment(text, at)
            if at < 0:
                return False
            continue
        letter = sign | 32
        if letter < _A or letter > _Z or sign < 65:
            return False
        value, at = _number(text, _behind_spaces(text, at + 1))
        if at < 0 or value > MOST_MM or value < -MOST_MM:
            return False
        if letter == _N:
            if not is_first or not _is_only_digits(text, at):
                return False
        elif letter == _G:
            if motion < 0 and 0 <= value <= 3 and value == int(value):
                motion = int(value)
            elif plane < 0 and (value == 17 or value == 18 or value == 19):
                plane = int(value) - 17
            elif absolute < 0 and (value == 90 or value == 91):
                absolute = 91 - int(value)
            else:
                return False
        elif letter == _M:
            if spindle < 0 and (value == 3 or value == 4 or value == 5):
                spindle = int(value)
            elif coolant < 0 and (value == 7 or value == 8 or value == 9):
                coolant = int(value)
            else:
                return False
        else:
            bit = _ONE << (letter - _A)
            if there & bit or not _TAKEN & bit:
                return False
            there |= bit
            words[letter - _A] = value
        is_first = False
    if at - go.at > LONGEST_LINE:
        return False
    return _follow(go, rows, words, there, motion, plane, absolute, spindle, at + 1)


def _behind_comment(text: Any, at: int) -> int:
    """Where a comment that begins here ends; -1 where it does not, or holds another."""
    if text[at] == _SEMICOLON:
        while at < len(text) and text[at] != _LINE_FEED:
            at += 1
        return at
    at += 1
    while at < len(text) and text[at] != _LINE_FEED:
        if text[at] == _OPENS:
            return -1
        if text[at] == _CLOSES:
            return at + 1
        at += 1
    return -1


def _behind_spaces(text: Any, at: int) -> int:
    while at < len(text) and (text[at] == _SPACE or text[at] == _TAB):
        at += 1
    return at


def _is_only_digits(text: Any, end: int) -> bool:
    """Whether a number that ends here, blanks behind it, was written with digits alone."""
    at = end - 1
    while text[at] == _SPACE or text[at] == _TAB:
        at -= 1
    while _ZERO <= text[at] <= _NINE:
        at -= 1
    return bool(text[at] | 32 == _N)


def _number(text: Any, at: int) -> tuple[float, int]:
    """(a number, where what follows it begins); (0, -1) where none begins here, or one that goes on behind a space."""
    is_negative = at < len(text) and text[at] == _MINUS
    if at < len(text) and (text[at] == _MINUS or text[at] == _PLUS):
        at += 1
    digits, decimals, many, has_point = 0, 0, 0, False
    while at < len(text):
        sign = text[at]
        if _ZERO <= sign <= _NINE:
            digits = digits * 10 + (sign - _ZERO)
            many += 1
            decimals += has_point
        elif sign == _POINT and not has_point:
            has_point = True
        else:
            break
        if digits > _MOST_DIGITS or decimals > _MOST_DECIMALS:
            return 0.0, -1
        at += 1
    at = _behind_spaces(text, at)
    if many == 0 or (at < len(text) and (_ZERO <= text[at] <= _NINE or text[at] == _POINT)):
        return 0.0, -1
    power = 1.0
    for _ in range(decimals):
        power *= 10.0
    value = digits / power
    return (-value if is_negative else value), at


def _follow(
    go: Any, rows: Rows, words: Array, there: int, motion: int, plane: int, absolute: int, spindle: int, ends: int
) -> bool:
    """Do what an understood line says; False, and nothing done, where that could be in doubt."""
    if motion >= 0 and not there & _AXES:
        return False
    if there & _WITH_S and words[_S - _A] < 0:
        return False
    feed = go.feed
    if there & _WITH_F:
        if words[_F - _A] < 0:
            return False
        feed = words[_F - _A] * go.scale / 60
    plane = plane if plane >= 0 else go.plane
    absolute = absolute if absolute >= 0 else go.absolute
    if there & _AXES:
        motion = motion if motion >= 0 else go.motion
        if motion < 0 or motion > 3 or (motion > 0 and feed <= 0):
            return False
        if not _move(go, rows, words, there, motion, plane, absolute, feed):
            return False
        go.motion = motion
    elif there & (_IJK | _WITH_R):
        return False
    go.feed, go.plane, go.absolute = feed, plane, absolute
    if spindle >= 0:
        go.spindle = spindle
    go.at = ends
    go.number += 1
    return True


def _move(go: Any, rows: Rows, words: Array, there: int, motion: int, plane: int, absolute: int, feed: float) -> bool:
    x, y, z = go.x, go.y, go.z
    if there & (1 << 23):
        if not go.known_x:
            return False
        x = words[_X - _A] * go.scale + go.off_x if absolute else x + words[_X - _A] * go.scale
    if there & (1 << 24):
        if not go.known_y:
            return False
        y = words[_Y - _A] * go.scale + go.off_y if absolute else y + words[_Y - _A] * go.scale
    if there & (1 << 25):
        if not go.known_z:
            return False
        z = words[_Z - _A] * go.scale + go.off_z if absolute else z + words[_Z - _A] * go.scale
    if motion > 1:
        if not _bend(go, rows, words, there, motion == 2, plane, x, y, z):
            return False
    elif there & (_IJK | _WITH_R):
        return False
    at = go.count
    rows.kind[at] = RAPID if motion == 0 else FEED
    rows.line[at] = go.number + 1
    rows.to[at, 0], rows.to[at, 1], rows.to[at, 2] = x, y, z
    rows.speed[at] = 0.0 if motion == 0 else feed
    rows.tool[at] = go.tool
    rows.exact[at] = go.exact != 0
    go.x, go.y, go.z = x, y, z
    go.count += 1
    return True


def _bend(
    go: Any, rows: Rows, words: Array, there: int, clockwise: bool, plane: int, x: float, y: float, z: float
) -> bool:
    """Put down an arc's plane, centre and sweep; False where it could be in doubt."""
    first, second = (0, 1) if plane == 0 else (2, 0) if plane == 1 else (1, 2)
    if plane == 0:
        from_1, from_2, to_1, to_2 = go.x, go.y, x, y
    elif plane == 1:
        from_1, from_2, to_1, to_2 = go.z, go.x, z, x
    else:
        from_1, from_2, to_1, to_2 = go.y, go.z, y, z
    if there & _WITH_R:
        radius = words[_R - _A] * go.scale
        if there & _IJK or radius == 0 or (from_1 == to_1 and from_2 == to_2):
            return False
        centre_1, centre_2, gap = centre_of(from_1, from_2, to_1, to_2, radius, clockwise)
    else:
        own = ((_ONE << first) | (_ONE << second)) << 8
        if not there & own or there & _IJK & ~own or not (there >> 15) & own:
            return False
        by_1 = words[_I - _A + first] * go.scale if there & (_ONE << (8 + first)) else 0.0
        by_2 = words[_I - _A + second] * go.scale if there & (_ONE << (8 + second)) else 0.0
        centre_1, centre_2 = from_1 + by_1, from_2 + by_2
        if sqrt((from_1 - centre_1) * (from_1 - centre_1) + (from_2 - centre_2) * (from_2 - centre_2)) == 0:
            return False
        gap = gap_between(from_1, from_2, to_1, to_2, centre_1, centre_2)
    if gap > go.gap:
        return False
    at = go.count
    rows.plane[at] = plane
    rows.centre[at, 0], rows.centre[at, 1] = centre_1, centre_2
    rows.sweep[at] = sweep_between(from_1, from_2, to_1, to_2, centre_1, centre_2, clockwise, SAME_PLACE)
    return True
