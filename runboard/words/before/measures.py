"""Lengths that were reckoned, as finely as anybody can measure them."""

from collections.abc import Sequence

from runboard.shop.units import MM_A_INCH, SMALLEST_FRACTION, Unit
from runboard.words.facts import length_in_words

_64TH = float(MM_A_INCH) / SMALLEST_FRACTION
_THOUSANDTH = float(MM_A_INCH) / 1000
# Below this a 64th of an inch is too coarse.
_SMALL = float(MM_A_INCH) / 4


def length_about(mm: float, units: Unit) -> str:
    """'1.8 mm', '5/8 in', '0.069 in': to a tenth of a millimetre or a 64th of an inch, and finer where that would round too much of it
    away. What was typed is said by ``length_in_words``."""
    if units == "mm":
        return length_in_words(round(mm, 1) or round(mm, 2), units)
    nearest = round(mm / _64TH) * _64TH
    is_small = abs(mm) < _SMALL and abs(mm - nearest) > _THOUSANDTH / 2
    return length_in_words(mm if is_small else nearest, units)


def size_in_words(sides: Sequence[float], units: Unit) -> str:
    """'1000 × 350 × 18 mm'; '' of no side."""
    *before, last = (length_in_words(side, units) for side in sides) if sides else ("",)
    return " × ".join((*(side.removesuffix(f" {units}") for side in before), last))


def both_units(mm: float, other: float, units: Unit) -> str:
    """A drill in the shop's units, and in brackets the nearest of the other kind: '2.5 mm (3/32 in)'."""
    return f"{length_in_words(mm, units)} ({length_in_words(other, 'in' if units == 'mm' else 'mm')})"
