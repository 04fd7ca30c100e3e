"""A move: one thing that a person could do now."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from runboard.run.state import EMPTY


@dataclass(frozen=True)
class Move:
    """One thing that a person could do. ``code`` and ``because`` name sentences in the catalogue. ``price`` is what it would
    cost the finish, where a plan knows: minutes and windows later; ``why`` the plan's reason, a code and its facts, for the
    move that begins the plan's first thing."""

    id: str
    code: str
    because: Mapping[str, Any]
    rank: tuple[Any, ...] = ()
    run: str = ""
    load: str = ""
    step: str = ""
    station: str = ""
    room: str = ""
    trays: tuple[str, ...] = ()
    pieces: Mapping[str, int] = EMPTY
    places: Mapping[str, Any] = EMPTY
    minutes: float = 0
    fresh: bool = False
    facts: Mapping[str, Any] = field(default_factory=dict)
    price: Mapping[str, Any] = EMPTY
    why: Mapping[str, Any] = EMPTY
