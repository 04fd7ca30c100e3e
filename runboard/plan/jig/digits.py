"""Numbers made of lines alone, so that a beam can draw them: each digit on a grid of two by four, y downwards."""

from collections.abc import Sequence

Line = Sequence[tuple[float, float]]

_DIGITS: dict[str, Sequence[Line]] = {
    "0": [[(0, 0), (2, 0), (2, 4), (0, 4), (0, 0)]],
    "1": [[(0, 1), (1, 0), (1, 4)]],
    "2": [[(0, 0), (2, 0), (2, 2), (0, 2), (0, 4), (2, 4)]],
    "3": [[(0, 0), (2, 0), (2, 4), (0, 4)], [(0.5, 2), (2, 2)]],
    "4": [[(0, 0), (0, 2), (2, 2)], [(2, 0), (2, 4)]],
    "5": [[(2, 0), (0, 0), (0, 2), (2, 2), (2, 4), (0, 4)]],
    "6": [[(2, 0), (0, 0), (0, 4), (2, 4), (2, 2), (0, 2)]],
    "7": [[(0, 0), (2, 0), (1, 4)]],
    "8": [[(0, 0), (2, 0), (2, 4), (0, 4), (0, 0)], [(0, 2), (2, 2)]],
    "9": [[(2, 2), (0, 2), (0, 0), (2, 0), (2, 4), (0, 4)]],
}
_STEP = 3.0  # from one digit to the next


def number_lines(number: int, x: float, y: float, high: float) -> list[Line]:
    """The lines of a number of that height in mm, its upper left corner there."""
    scale = high / 4
    return [
        [(x + (at * _STEP + across) * scale, y + down * scale) for across, down in line]
        for at, digit in enumerate(str(number))
        for line in _DIGITS[digit]
    ]
