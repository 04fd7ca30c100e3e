"""What is found when a run is looked through before it starts: each a check with its level and its sentence."""

import hashlib
import json
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Any, Literal

from runboard.plan.before.looked_at import LookedAt
from runboard.plan.estimates import Estimates
from runboard.run.fold.state import RunState, ShopState
from runboard.shop.book import Book

Level = Literal["green", "look", "stop"]


@dataclass(frozen=True)
class Finding:
    """``check`` is its permanent word with what it is about (``stock``, ``screw oak.1``); ``code`` names its sentence
    (``before-found-<code>``), ``facts`` fill it. 'look': a person decides, and says so by their initials; 'stop': it cannot come
    out right as it stands. ``link`` is where it is looked into."""

    check: str
    level: Level
    code: str
    facts: Mapping[str, Any] = field(default_factory=dict)
    link: str = ""

    @property
    def mark(self) -> str:
        """A short text that is another once what was found is another."""
        told = json.dumps([self.level, self.code, dict(self.facts)], sort_keys=True, default=str)
        return hashlib.blake2b(told.encode(), digest_size=8).hexdigest()


@dataclass(frozen=True)
class BeforeRun:
    """A run that is to be started, in the shop as it is now."""

    book: Book
    state: ShopState
    run: RunState
    estimates: Estimates
    day: date
    looked: LookedAt = field(default_factory=LookedAt)


Look = Callable[[BeforeRun], Iterable[Finding]]
