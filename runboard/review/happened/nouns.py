"""The nouns of what happened in a run."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Literal

Doing = Literal["work", "watching", "walking", "waiting", "away"]


@dataclass(frozen=True)
class DayPart:
    """A stretch of somebody's or a machine's day. ``row`` is person or station, ``key`` which; ``kind`` of work is setup,
    loading, machine, unloading, hand, or job, a small one of the shop's own, whose key is ``step``; ``why`` says why it waited: a code of ``WHY_WAITING``. ``run`` is another run's
    where work was for that; ``of`` is the key of the service that was taken where that is ``why``."""

    row: Literal["person", "station"]
    key: str
    began_at: datetime
    ended_at: datetime
    doing: Doing
    kind: str = ""
    why: str = ""
    run: str = ""
    step: str = ""
    load: str = ""
    of: str = ""

    @property
    def length(self) -> timedelta:
        return self.ended_at - self.began_at


@dataclass(frozen=True)
class Waiting:
    """How long a person, a machine or the trays waited for one reason between the run's opening and its end. ``row`` is person,
    station or tray; ``key`` is '' for all trays, of which each counts for itself; ``of`` is the service that was taken where that is ``why``."""

    row: str
    key: str
    why: str
    length: timedelta
    of: str = ""


@dataclass(frozen=True)
class Lost:
    """Pieces lost at a step for one reason, in one wood, of one board ('' where nobody noted it)."""

    step: str
    step_name: str
    reason: str
    wood: str
    board: str
    pieces: int


@dataclass(frozen=True)
class StepYield:
    """What came through a step: ``into`` pieces, of which ``first_good`` at the first go, ``good`` in the end."""

    step: str
    step_name: str
    into: int
    first_good: int
    good: int

    @property
    def first_pass(self) -> float | None:
        """The first-pass yield of the step; None where nothing came to it."""
        return self.first_good / self.into if self.into else None


@dataclass(frozen=True)
class SinceChange:
    """What a station made of the run since somebody said that ``what`` was changed (cutter, wood, jig, focus, other; '' before
    the first change). ``hours`` has (pieces, scrap among them) for each hour of ``machine`` time since."""

    station: str
    what: str
    began_at: datetime
    machine: timedelta
    hours: tuple[tuple[int, int], ...]


@dataclass(frozen=True)
class ElementError:
    """How far an estimate was off: ``guess`` is what was believed before the run, with its ``source``, ``taken`` the mean of
    ``n`` measured times (of a piece for hand, else of a load). ``error`` is signed, a share of the guess: 0.5 is half as
    long again. ``spread`` is the error upwards that 95 of a hundred such means stay below; ``is_within`` that this one
    lay where the estimate said, up or down."""

    step: str
    step_name: str
    operation: str
    kind: str
    guess: timedelta
    source: str
    taken: timedelta
    n: int
    error: float
    spread: float
    is_within: bool


@dataclass(frozen=True)
class ProcessLine:
    """A line of the process chart: ``symbol`` is operation, transport, inspection, delay or storage (ASME). ``waited`` is
    what the trays waited before it on average."""

    symbol: str
    step: str
    step_name: str
    station: str
    time: timedelta | None
    walking: timedelta = timedelta(0)
    walks: int = 0
    waited: timedelta | None = None
    pieces: int = 0


@dataclass(frozen=True)
class OrderLineDone:
    """An order line: when its pieces were there, None where they are not; ``late`` is nought in time."""

    line: str
    whom: str
    text: str
    pieces: int
    due: datetime | None
    done: datetime | None
    late: timedelta | None


@dataclass(frozen=True)
class OperationBar:
    """Hands-on and machine time of one operation: what was guessed for what was done, and what it took (None where nothing
    of it was measured or known). Where something is known the guess is of that alone. ``share`` is of all hands-on time."""

    operation: str
    name: str
    guess: timedelta
    taken: timedelta | None
    hands_guess: timedelta
    hands_taken: timedelta | None
    share: float


@dataclass(frozen=True)
class Happened:
    """Everything that happened, for the pages and the record. ``day`` has whole sessions of people and whole days of stations,
    also where they reach beyond the run's own time; ``planned`` only what was to be done. ``promised`` is the finish that the plan at the opening
    promised, None where there was none to make."""

    wanted: int
    started: int
    good: int
    scrap: int
    hands: timedelta
    first_pass: float | None
    rolled: float | None
    bars: tuple[OperationBar, ...]
    day: tuple[DayPart, ...]
    planned: tuple[DayPart, ...]
    waiting: tuple[Waiting, ...]
    lost: tuple[Lost, ...]
    yields: tuple[StepYield, ...]
    process: tuple[ProcessLine, ...]
    order_lines: tuple[OrderLineDone, ...]
    promised: datetime | None
    finished: datetime | None
    errors: tuple[ElementError, ...] = ()
    since_changes: tuple[SinceChange, ...] = ()

    @property
    def pareto(self) -> tuple[OperationBar, ...]:
        """The operations by hands-on time, most first; those of which none is known last."""
        return tuple(sorted(self.bars, key=lambda bar: (bar.hands_taken is None, -(bar.hands_taken or timedelta(0)))))

    @property
    def pieces_an_hour(self) -> float | None:
        """Good pieces for each hands-on hour; None where no hands are known."""
        return self.good / (self.hands / timedelta(hours=1)) if self.hands else None

    @property
    def a_good_piece(self) -> timedelta | None:
        return self.hands / self.good if self.good else None
