"""A move: one thing that a person could do now."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from runboard.run.fold.state import EMPTY, Load, RunState
from runboard.shop.book import Book


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


def of_load(
    book: Book, run: RunState, load: Load, code: str, because: str, rank: tuple[Any, ...], **facts: Any
) -> Move:
    """The move about a load that is begun. ``facts`` are said in its sentence and in its reason, its station in both."""
    station = book.station(load.station)
    said = {"station": station.name if station else load.station, **facts}
    return Move(
        f"{code}|{run.id}|{load.id}",
        code,
        {"code": because, "facts": said},
        rank,
        run.id,
        load.id,
        load.step,
        load.station,
        station.room if station else "",
        tuple(load.pieces),
        load.pieces,
        facts={**said, "step": run.route.step_name(load.step)},
    )
