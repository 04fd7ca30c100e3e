"""The nouns of changes that were tried on a run that is over."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import timedelta
from typing import Any

from runboard.plan.change import Change


@dataclass(frozen=True)
class Span3:
    """A range of spans: of a hundred goes five are below ``low``, fifty below ``mid``, ninety-five below ``high``."""

    low: timedelta
    mid: timedelta
    high: timedelta


@dataclass(frozen=True)
class Idea:
    """A change to try on what was measured. ``because`` is the rule that offered it, a code of ``OFFERED`` with ``facts``;
    '' where a person did. ``cost`` is in the shop's money, None where nobody said."""

    id: str
    change: Change
    because: str = ""
    facts: Mapping[str, Any] = field(default_factory=dict)
    cost: float | None = None


@dataclass(frozen=True)
class Tried:
    """What an idea would have saved of the run: the finish so much ``earlier``, so much less of ``hands``, so many ``pieces``
    more good. ``refused`` is the code where it cannot be tried at all, with its facts."""

    idea: Idea
    earlier: Span3
    hands: Span3
    pieces: float = 0.0
    payback_runs: float | None = None
    payback_months: float | None = None
    refused: tuple[str, Mapping[str, Any]] | None = None


@dataclass(frozen=True)
class Together:
    """Two ideas at once (they overlap), and the best order to buy all that help in."""

    pair: tuple[str, str] | None
    earlier: Span3 | None
    hands: Span3 | None
    order: tuple[str, ...] = ()
