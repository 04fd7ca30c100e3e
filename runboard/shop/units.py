"""Lengths as people write them, in inches or millimetres; inside, a length is millimetres.

1 in = 25.4 mm exactly (the international inch, 1959; NIST Handbook 44, Appendix C). Reading is exact in fractions
until the last step.
"""

import re
import unicodedata
from fractions import Fraction
from typing import Literal

from runboard.shop.problem import Unreadable

Unit = Literal["mm", "in"]

MM_A_INCH = Fraction(254, 10)
_MM: dict[str, Fraction] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": MM_A_INCH,
    "ft": 12 * MM_A_INCH,
}
_WORDS = {
    '"': "in",
    "″": "in",
    "''": "in",
    "inch": "in",
    "inches": "in",
    "'": "ft",
    "′": "ft",
    "feet": "ft",
    "foot": "ft",
}
SMALLEST_FRACTION = 64
# Two lengths nearer than this are one: far below what any shop measures, far above what floats lose.
_SAME_MM = 1e-7

_QUANTITY = re.compile(
    r"""\s*(?:
        (?P<whole>\d{1,9})[\s-]+(?P<over>\d{1,4})\s*/\s*(?P<under>\d{1,4})
        | (?P<top>\d{1,4})\s*/\s*(?P<bottom>\d{1,4})
        | (?P<decimal>\d{0,9}[.,]\d{1,9}|\d{1,9}\.?)
    )\s*(?P<unit>''|["″'′]|[^\W\d_]+)?\s*""",
    re.VERBOSE,
)


def parse_length(text: str, unit: Unit) -> float:
    """Millimetres from ``5 1/2``, ``5-1/2"``, ``3/4"``, ``0.125 in``, ``12,5 mm``, ``1 cm``, ``8' 3 1/2"``.

    A bare number is in ``unit``. A comma is a decimal comma. Refuses, with ``Unreadable``, what is no length, and
    ``1,250``, which may mean two.
    """
    return float(exact_length(text, unit))


def exact_length(text: str, unit: Unit) -> Fraction:
    """As ``parse_length``, as an exact fraction of millimetres."""
    plain = _spelled_out(text)
    first = _QUANTITY.match(plain)
    if first is None:
        raise Unreadable("length unreadable", text=text)
    unit_said = _unit(first["unit"], unit)
    length = _value(first, text) * _MM[unit_said]
    if first.end() == len(plain):
        return length
    rest = _QUANTITY.fullmatch(plain, first.end())
    if rest is None or first["unit"] is None or unit_said != "ft" or _unit(rest["unit"], "in") != "in":
        raise Unreadable("length unreadable", text=text)
    return length + _value(rest, text) * MM_A_INCH


def _spelled_out(text: str) -> str:
    """Signs such as ½ as ' 1/2', and every dash as '-'."""
    signs = (
        " " + unicodedata.normalize("NFKC", sign).replace("⁄", "/") if unicodedata.category(sign) == "No" else sign
        for sign in text
    )
    return "".join(signs).replace("⁄", "/").replace("–", "-").strip().lower()


def _unit(said: str | None, usual: str) -> str:
    if said is None:
        return usual
    unit = _WORDS.get(said, said)
    if unit not in _MM:
        raise Unreadable("length unit", unit=said)
    return unit


def _value(match: re.Match[str], text: str) -> Fraction:
    if match["decimal"] is not None:
        return _decimal(match["decimal"], text)
    whole, over, under = match["whole"] or "0", match["over"] or match["top"], match["under"] or match["bottom"]
    if int(under) == 0:
        raise Unreadable("length unreadable", text=text)
    return int(whole) + Fraction(int(over), int(under))


def _decimal(said: str, text: str) -> Fraction:
    before, comma, after = said.partition(",")
    if comma and len(after) == 3 and before.strip("0"):
        raise Unreadable("length ambiguous", text=text)
    return Fraction(said.replace(",", ".").rstrip(".") or "0")


def format_length(mm: float, unit: Unit) -> str:
    """A length as ``parse_length`` reads it back: '12.5 mm'; '5 1/2 in' where it is a whole number of 64ths, else
    decimals to three places ('0.118 in')."""
    if unit == "mm":
        return f"{mm:.3f}".rstrip("0").rstrip(".") + " mm"
    inches = Fraction(mm) / MM_A_INCH
    nearest = Fraction(round(inches * SMALLEST_FRACTION), SMALLEST_FRACTION)
    if abs(float((inches - nearest) * MM_A_INCH)) > _SAME_MM:
        return f"{float(inches):.3f} in"
    whole, rest = divmod(nearest, 1)
    return " ".join(str(part) for part in (whole, rest) if part or (not nearest and part is whole)) + " in"
