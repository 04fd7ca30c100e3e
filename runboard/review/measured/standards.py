"""Normal and standard time, as in the work-study handbooks (Kanawaty, ed., *Introduction to Work Study*, ILO; Niebel, *Motion and Time
Study*): what was observed, at a usual pace, with what a day takes for itself."""

from datetime import timedelta
from typing import Literal, TypeVar

Time = TypeVar("Time", float, timedelta)

# What an allowance is a share of.
AllowanceOf = Literal["work", "day"]


def normal_time(observed: Time, rating: float = 1.0) -> Time:
    """What it takes at a usual pace: observed time by the rating, where 1 is that pace."""
    return observed * rating


def standard_time(normal: Time, allowance: float, of: AllowanceOf = "work") -> Time:
    """With the allowance: as a share of the work, normal (1 + A); as a share of the day, normal / (1 - A)."""
    return normal * (1 + allowance) if of == "work" else normal / (1 - allowance)
