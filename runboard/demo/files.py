"""The demo's own files: the program that cuts a board of fifteen key rails, and the drawing of the jig in which five of them get
their numbers. Both are made here, and made up."""

import math
from collections.abc import Iterator, Sequence

LENGTH, WIDTH, THICK = 320, 60, 18
COLUMNS, ROWS, GAP, MARGIN = 3, 5, 8, 8
PROGRAM, DRAWING = "rail-board.ngc", "number-jig.svg"
NUMBERS = ("12", "7", "48", "103", "5")
_HOOKS = (40, 120, 200, 280)
_SAFE, _DEEP, _PASSES = 8, 18.3, 3
_RADIUS = 3.0  # of the cutter
_TAB, _TAB_HEIGHT = 14.0, 3


def rail_board_program() -> str:
    """The program, in the words of RS-274: bores hook by hook over the whole board, then the outline depth by depth, then the
    edges. It comes back to every rail many times, as a first program does."""
    return "\n".join(
        [
            "%",
            "(fifteen key rails from one board, ash 18 mm)",
            "G21 G17 G90 G94 G40 G49 G80",
            *_bores(),
            *_outlines(),
            *_edges(),
            "M5",
            "M2",
            "%",
            "",
        ]
    )


def _places() -> Iterator[tuple[float, float]]:
    """The front left corner of each rail, column by column."""
    for column in range(COLUMNS):
        for row in range(ROWS):
            yield MARGIN + column * (LENGTH + GAP), MARGIN + row * (WIDTH + GAP)


def _tool(number: int, name: str, turns: int) -> list[str]:
    return [f"({name})", f"T{number} M6", f"S{turns} M3", "G4 P3"]


def _bores() -> Iterator[str]:
    yield from _tool(1, "3 mm drill", 9000)
    yield f"G0 Z{_SAFE}"
    for hook in _HOOKS:
        for x, y in _places():
            yield f"G98 G81 X{x + hook:g} Y{y + WIDTH / 2:g} Z-10 R2 F600"
    yield "G80"


def _outlines() -> Iterator[str]:
    yield from _tool(2, "6 mm cutter, two flutes", 18000)
    for step in range(1, _PASSES + 1):
        deep = _DEEP * step / _PASSES
        for x, y in _places():
            left, front, right, back = x - _RADIUS, y - _RADIUS, x + LENGTH + _RADIUS, y + WIDTH + _RADIUS
            yield f"G0 Z{_SAFE}"
            yield f"G0 X{left:g} Y{front + _RADIUS:g}"
            yield f"G1 Z{-deep:.3f} F500"
            yield f"G1 Y{back - _RADIUS:g} F2160"
            yield f"G2 X{left + _RADIUS:g} Y{back:g} R{_RADIUS:g}"
            yield from _along(left + _RADIUS, right - _RADIUS, deep, (0.5,))
            yield f"G2 X{right:g} Y{back - _RADIUS:g} R{_RADIUS:g}"
            yield f"G1 Y{front + _RADIUS:g}"
            yield f"G2 X{right - _RADIUS:g} Y{front:g} R{_RADIUS:g}"
            yield from _along(right - _RADIUS, left + _RADIUS, deep, (0.25, 0.75))
            yield f"G2 X{left:g} Y{front + _RADIUS:g} R{_RADIUS:g}"
    yield f"G0 Z{_SAFE}"


def _along(start: float, end: float, deep: float, tabs: Sequence[float]) -> Iterator[str]:
    """A long side; below the tabs' height the cutter goes over each of them."""
    step = math.copysign(_TAB / 2, end - start)
    for share in tabs if deep > THICK - _TAB_HEIGHT else ():
        middle = start + share * (end - start)
        yield f"G1 X{middle - step:g} F2160"
        yield f"G1 Z{_TAB_HEIGHT - THICK:g}"
        yield f"G1 X{middle + step:g} F2160"
        yield f"G1 Z{-deep:.3f} F500"
    yield f"G1 X{end:g} F2160"


def _edges() -> Iterator[str]:
    yield from _tool(3, "60 degree V cutter", 16000)
    for x, y in _places():
        yield f"G0 Z{_SAFE}"
        yield f"G0 X{x:g} Y{y:g}"
        yield "G1 Z-1 F600"
        yield f"G1 Y{y + WIDTH:g} F1500"
        yield f"G1 X{x + LENGTH:g}"
        yield f"G1 Y{y:g}"
        yield f"G1 X{x:g}"
    yield f"G0 Z{_SAFE}"


# An invented numeral: the strokes of each digit on a grid of two by four, as boxes (x, y, wide, high).
_STROKES = {
    "a": (0, 0, 8, 2), "b": (6, 0, 2, 9), "c": (6, 7, 2, 9), "d": (0, 14, 8, 2), "e": (0, 7, 2, 9), "f": (0, 0, 2, 9),
    "g": (0, 7, 8, 2),
}  # fmt: skip
_DIGITS = {
    "0": "abcdef", "1": "bc", "2": "abged", "3": "abgcd", "4": "fgbc", "5": "afgcd", "6": "afgedc", "7": "abc",
    "8": "abcdefg", "9": "abcfgd",
}  # fmt: skip


def number_jig_drawing() -> str:
    """The drawing (SVG, millimetres): five rails one above the other, each with its house number filled."""
    height = 5 * (WIDTH + 8) + 20
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="360mm" height="{height}mm" viewBox="0 0 360 {height}">',
        '<g id="numbers" fill="black">',
    ]
    for place, number in enumerate(NUMBERS):
        for at, digit in enumerate(number):
            boxes = [_STROKES[stroke] for stroke in _DIGITS[digit]]
            path = " ".join(f"M{x} {y}h{wide}v{high}h-{wide}z" for x, y, wide, high in boxes)
            lines.append(f'<path transform="translate({160 + 12 * at} {32 + place * (WIDTH + 8)})" d="{path}"/>')
    return "\n".join([*lines, "</g>", "</svg>", ""])
