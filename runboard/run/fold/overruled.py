"""A time that somebody said in place of what was learned: the noun; ``shop_events`` folds what says it."""

from dataclasses import dataclass
from datetime import datetime, timedelta

# Product, step, kind of time element: setup, loading, machine, unloading of a load, hand of a piece.
TimeKey = tuple[str, str, str]


@dataclass(frozen=True)
class Overruled:
    """How long somebody says that it takes from now on, and why. What was measured later moves it again."""

    length: timedelta
    why: str
    person: str
    at: datetime
    event: str
