"""Drills that a shop has: by tenths of a millimetre up to 3 mm and by halves above, or by 64ths of an inch. Common practice, no source."""

import math

from runboard.shop.units import MM_A_INCH, SMALLEST_FRACTION, Unit

_FINE, _FINE_TO, _COARSE = 0.1, 3.0, 0.5
_64TH = float(MM_A_INCH) / SMALLEST_FRACTION
_NEAR = 1e-6
_IS_IT = 0.03  # no drill cuts truer


def nearest_drill(wanted: float, units: Unit) -> float:
    """The drill nearest to a hole, mm."""
    step = _step(wanted, units)
    return max(1, round(wanted / step)) * step


def drills_around(wanted: float, units: Unit) -> tuple[float, ...]:
    """The drills on both sides of a hole, the thinner first; one alone where it is the hole; mm."""
    over = drill_not_below(wanted, units)
    under = _not_above(wanted, units)
    near = [each for each in (under, over) if abs(each - wanted) < _IS_IT]
    return (near[0],) if near else tuple(each for each in (under, over) if each > 0)


def _not_above(wanted: float, units: Unit) -> float:
    step = _step(wanted, units)
    return math.floor(wanted / step + _NEAR) * step


def drill_not_below(wanted: float, units: Unit) -> float:
    """The smallest drill that is not thinner than what goes through its hole, mm."""
    step = _step(wanted, units)
    return max(1, math.ceil(wanted / step - _NEAR)) * step


def set_to(depth: float, units: Unit) -> float:
    """The depth that a stop can be set to, no deeper: to tenths of a millimetre or 64ths of an inch; mm."""
    step = 0.1 if units == "mm" else _64TH
    return max(0, math.floor(depth / step + _NEAR)) * step


def bore_to(depth: float, units: Unit) -> float:
    """The depth that a hole is bored to, no shallower: to tenths of a millimetre or 64ths of an inch; mm."""
    step = 0.1 if units == "mm" else _64TH
    return math.ceil(depth / step - _NEAR) * step


def _step(wanted: float, units: Unit) -> float:
    return _64TH if units == "in" else _FINE if wanted <= _FINE_TO else _COARSE
