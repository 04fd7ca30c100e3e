"""A number that somebody typed: read in one way everywhere, and never one without end."""

import math

MOST_WHOLE = 10**9


def whole_number(text: str, most: int = MOST_WHOLE) -> int | None:
    """The whole number from 0 to ``most`` that plain digits say; None where they say none, or a larger one."""
    digits = text.strip()
    if not (digits.isascii() and digits.isdecimal()) or len(digits) > len(str(most)):
        return None
    number = int(digits)
    return number if number <= most else None


def any_number(text: str) -> float | None:
    """The number that a text says, with a point or a comma; None where it says none, or one without end."""
    try:
        number = float(text.replace(",", "."))
    except ValueError:
        return None
    return number if math.isfinite(number) else None
