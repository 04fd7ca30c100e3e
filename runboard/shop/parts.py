"""The parts of a load: what it asks, in order, of a station, of people and of services. Everything that plans, shows
or reviews a load uses these and nothing else."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import timedelta
from types import MappingProxyType
from typing import Literal

from runboard.shop.book import Station
from runboard.shop.product import NOTHING, ZERO, Attendance, Operation, Pass

PartKind = Literal["setup", "loading", "machine", "unloading", "hand", "wait"]


@dataclass(frozen=True)
class LoadContents:
    """A load as planned: which pass, how many pieces, and whether its station must be set up for it first."""

    pass_key: str
    pieces: int
    needs_setup: bool = False


@dataclass(frozen=True)
class Part:
    """One stretch of a load. ``services`` says how many of each are drawn on meanwhile.

    ``latest`` is set for a wait that must not last longer, counted from the first piece.
    """

    kind: PartKind
    length: timedelta
    attendance: Attendance
    services: Mapping[str, int] = field(default_factory=lambda: NOTHING)
    holds_station: bool = True
    latest: timedelta | None = None


def parts(operation: Operation, load: LoadContents, station: Station | None = None) -> tuple[Part, ...]:
    """The parts of a load of ``operation``, in order; those that take no time are left out.

    Setup, loading, unloading and hand work are hands-on; the machine asks what the operation says. Services (the
    operation's, and the station's where it is given) are drawn on while the machine runs or hands work, not while
    the load is put in or taken out. The wait comes after the last pass, frees the station and holds what it says.
    Raises ``KeyError`` for a pass that the operation does not have.
    """
    pass_ = _pass(operation, load.pass_key)
    drawn = _drawn(operation, station)
    setup = pass_.setup if load.needs_setup else ZERO
    found = [
        Part("setup", setup, "hands-on"),
        Part("loading", pass_.loading, "hands-on"),
        Part("machine", pass_.machine, operation.attendance, drawn),
        Part("unloading", pass_.unloading, "hands-on"),
        Part("hand", pass_.hand * load.pieces, "hands-on", drawn),
    ]
    if operation.wait and pass_ is operation.passes[-1]:
        wait = operation.wait
        found.append(Part("wait", wait.least, "none", wait.holds, holds_station=False, latest=wait.latest))
    return tuple(part for part in found if part.length or part.latest)


def _pass(operation: Operation, key: str) -> Pass:
    for pass_ in operation.passes:
        if pass_.key == key:
            return pass_
    raise KeyError(key)


def _drawn(operation: Operation, station: Station | None) -> Mapping[str, int]:
    services = (*operation.services, *(station.services if station else ()))
    return MappingProxyType(dict.fromkeys(services, 1)) if services else NOTHING


def attended_time(found: tuple[Part, ...]) -> timedelta:
    """How long a load's parts need somebody's hands or eyes."""
    return sum((part.length for part in found if part.attendance != "none"), ZERO)
