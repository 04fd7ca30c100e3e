"""What is usual about wood screws, beside what a maker says of one: sizes to begin with, lengths that are sold, threads.

Makers differ, so that a shop's own figures always win; ``common_screws.json`` names the source of each list.
"""

import json
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from runboard.shop.units import MM_A_INCH, Unit, parse_length


@cache
def _usual() -> Mapping[str, Any]:
    found: Mapping[str, Any] = json.loads(files("runboard.shop").joinpath("common_screws.json").read_text("utf-8"))
    return found


@cache
def common_screws() -> Mapping[str, Mapping[str, Any]]:
    """Usual screws by key: their records, with the ``source`` of the pilot hole."""
    source = {"source": _usual()["pilot_source"]}
    return MappingProxyType({each["key"]: MappingProxyType({**each, **source}) for each in _usual()["screws"]})


def begin_screw(key: str) -> dict[str, Any]:
    """What a new screw like this one begins with, as in the book's record but without a key; empty where nobody knows it."""
    return {name: value for name, value in common_screws().get(key, {}).items() if name != "key"}


@cache
def usual_lengths(units: Unit) -> tuple[float, ...]:
    """The lengths that are sold where a shop has these units, in mm, the shortest first."""
    return tuple(parse_length(str(length), units) for length in _usual()["lengths"][units])


def threads_an_inch(gauge: int) -> int:
    """Of the standard's wood screw nearest to this gauge."""
    by_gauge: Mapping[str, int] = _usual()["threads_an_inch"]["by_gauge"]
    return by_gauge[min(by_gauge, key=lambda each: (abs(int(each) - gauge), int(each)))]


def pitch_of_metric(diameter: float) -> float:
    """From one thread to the next, of the tapping screw nearest to this diameter; all mm."""
    by_diameter: Mapping[str, float] = _usual()["pitch"]["by_diameter"]
    return by_diameter[min(by_diameter, key=lambda each: (abs(float(each) - diameter), float(each)))]


def pitch_of(gauge: int | None, diameter: float) -> float:
    """From one thread to the next, mm."""
    return pitch_of_metric(diameter) if gauge is None else float(MM_A_INCH) / threads_an_inch(gauge)
