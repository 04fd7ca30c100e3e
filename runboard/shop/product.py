"""What the shop makes: products with their routes, as frozen data, each field declared once (see ``record``)."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import timedelta
from types import MappingProxyType
from typing import Annotated, Literal

from runboard.shop.fasteners import Fastening
from runboard.shop.machines import Reckoned
from runboard.shop.record import Interval, Key, Length, Line, Name, Of, Picture
from runboard.shop.stocked import Piece

Attendance = Literal["hands-on", "watched", "none"]  # what asks most of a person first
LoadSize = Literal["piece", "jig", "board", "tray", "run"]
WaitWhy = Literal["dry", "cure", "clamp", "cool", "settle"]
LANGUAGES = ("de", "es", "fr")

ZERO = timedelta(0)
NOTHING: Mapping[str, int] = MappingProxyType({})


@dataclass(frozen=True)
class Wait:
    """Time after an operation that passes by itself."""

    why: WaitWhy
    least: Annotated[timedelta, Of(kind="wait")]
    latest: Annotated[timedelta | None, Of("Counted from the first piece.", kind="wait")] = None
    holds: Annotated[Mapping[str, int], Of("How many of which service.", least=1, refers="service")] = field(
        default_factory=lambda: NOTHING
    )


@dataclass(frozen=True)
class Check:
    """A first-piece check. With ``nominal`` it is a measure in millimetres, without it 'matches the sample piece'."""

    key: Key
    text: Line
    per: Literal["setup", "load", "run"] = "setup"
    nominal: Length | None = None
    plus: Length | None = None
    minus: Length | None = None


@dataclass(frozen=True)
class Use:
    """What an operation uses up, each piece: screws, oil, discs."""

    supply: Name
    each: float
    unit: str = ""


@dataclass(frozen=True)
class Pass:
    """One go of an operation over the pieces: a grit, a side."""

    key: Key
    name: Name
    size: Annotated[LoadSize, Of("What one load is.")] = "tray"
    pieces: Annotated[int | None, Of("How many a jig or a board takes.", least=1)] = None
    setup: Annotated[timedelta, Of("Once while the station stays on this pass.")] = ZERO
    loading: Annotated[timedelta, Of("Once a load.")] = ZERO
    machine: Annotated[timedelta, Of("Once a load.")] = ZERO
    unloading: Annotated[timedelta, Of("Once a load.")] = ZERO
    hand: Annotated[timedelta, Of("Once a piece.")] = ZERO
    reckoned: Annotated[Reckoned | None, Of("The file that the machine time was reckoned from.")] = None


@dataclass(frozen=True)
class Instruction:
    """One short step of what to do."""

    text: Annotated[str, Of(least=1, kind="long")]
    picture: Picture | None = None


@dataclass(frozen=True)
class Translation:
    """An operation's own texts in another language, each list in the order of the original; what is missing stays as
    it was written."""

    name: str = ""
    instructions: tuple[str, ...] = ()
    checklist: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    checks: tuple[str, ...] = ()


@dataclass(frozen=True)
class Operation:
    """One operation of a route."""

    key: Key
    name: Name
    station: Annotated[str, Of(refers="station")]
    passes: Annotated[tuple[Pass, ...], Of(least=1, last=True)]
    attendance: Annotated[Attendance, Of("What a running load asks of a person.")] = "hands-on"
    services: Annotated[tuple[str, ...], Of(refers="service")] = ()
    wait: Wait | None = None
    checklist: tuple[str, ...] = ()
    setup_sheet: Annotated[tuple[tuple[str, str], ...], Of("Labels and texts: program, cutter, zero, speed.")] = ()
    checks: tuple[Check, ...] = ()
    cautions: tuple[str, ...] = ()
    skill: str | None = None
    uses: tuple[Use, ...] = ()
    fastenings: Annotated[tuple[Fastening, ...], Of("Screws that it drives, and into what.")] = ()
    cutter: Annotated[str | None, Of("What is clamped in.", refers="cutter")] = None
    rpm: Annotated[float | None, Of("Turns a minute.", least=1)] = None
    feed: Annotated[Length | None, Of("How far it goes in a minute.", least=1)] = None
    jig: Annotated[str | None, Of("The jig that its pieces lie in.", refers="jig")] = None
    personal: Annotated[bool, Of("From here each piece carries its own text.")] = False
    good_rate: Annotated[float | None, Of("A guess of the share that comes good.", least=0.01, kind="share")] = None
    guess: Annotated[bool, Of("The times are somebody's guess.")] = True
    finish: Annotated[str | None, Of("One of the shop's finishes.", refers="finish")] = None
    watch_every: Annotated[Interval | None, Of("In place of the station's.")] = None
    instructions: tuple[Instruction, ...] = ()
    translations: Annotated[Mapping[str, Translation], Of(choices=LANGUAGES)] = field(
        default_factory=lambda: MappingProxyType({})
    )


@dataclass(frozen=True)
class Product:
    """What is made: its ordered operations, and the usual pieces a tray and wood."""

    key: Key
    name: Name
    operations: Annotated[tuple[Operation, ...], Of(last=True)]
    pieces_a_tray: Annotated[int, Of(least=1)] = 5
    wood: str = ""
    picture: Picture | None = None
    piece: Annotated[Piece | None, Of("What one is made of.")] = None
    price: Annotated[float | None, Of("What one sells for, in the shop's money.")] = None
