"""Lengths that were reckoned, as finely as anybody can measure them."""

from runboard.shop.units import MM_A_INCH, SMALLEST_FRACTION, Unit
from runboard.words.facts import length_in_words

_64TH = float(MM_A_INCH) / SMALLEST_FRACTION


def length_about(mm: float, units: Unit) -> str:
    """'1.8 mm', '1/16 in': to a tenth of a millimetre or a 64th of an inch. What was typed is said by ``length_in_words``."""
    return length_in_words(round(mm, 1) if units == "mm" else round(mm / _64TH) * _64TH, units)


def both_units(mm: float, other: float, units: Unit) -> str:
    """A drill in the shop's units, and in brackets the nearest of the other kind: '2.5 mm (3/32 in)'."""
    return f"{length_in_words(mm, units)} ({length_in_words(other, 'in' if units == 'mm' else 'mm')})"
