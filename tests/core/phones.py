"""A phone as the tests hold it, and what became of its presses."""

from collections import Counter
from dataclasses import dataclass, field
from datetime import timedelta
from typing import Any

from runboard.run.state import ShopState


@dataclass
class Phone:
    """A device with its person, a clock that is off, what it last saw, and what it holds back while it is offline."""

    device: str
    person: str
    off: timedelta
    seen: int = 0
    view: ShopState = field(default_factory=ShopState)
    held: list[dict[str, Any]] = field(default_factory=list)
    offline: bool = False
    sent: list[dict[str, Any]] = field(default_factory=list)


@dataclass
class Tally:
    """What happened over all the runs of the machine."""

    answers: Counter[str] = field(default_factory=Counter)
    kinds: Counter[str] = field(default_factory=Counter)
    reached: Counter[str] = field(default_factory=Counter)


def three_phones() -> list[Phone]:
    """Two of Ann's and one of Ben's; two of their clocks are off."""
    return [
        Phone("phone-a", "ann", timedelta(0)),
        Phone("phone-b", "ben", timedelta(minutes=7)),
        Phone("phone-c", "ann", timedelta(seconds=-40)),
    ]
