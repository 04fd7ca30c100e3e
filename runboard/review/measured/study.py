"""What a time element's observations say: the nouns of a time study."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import timedelta

from runboard.review.time_study import Element


@dataclass(frozen=True)
class LeftOut:
    """An observation that teaches nothing, and why: a code of ``WHY_LEFT_OUT``. ``length`` is what it seems to have been, of a
    load or by hand of a piece as those that count are; None where nothing tells it."""

    element: Element
    why: str
    length: timedelta | None = None


@dataclass(frozen=True)
class LearningCurve:
    """A learning curve of the unit-cost model (Crawford): the n-th takes ``first`` × n^log2(``rate``). ``fits`` is R² of the
    fit in logarithms; ``is_clear`` that the slope differs from none at 95 %."""

    first: timedelta
    rate: float
    fits: float
    is_clear: bool


@dataclass(frozen=True)
class ElementStudy:
    """One time element of a step: ``kind`` is setup, loading, machine, unloading (all of a load), or hand (of a piece).

    ``guess`` is what was believed before the run, ``written`` what the route says, ``estimate`` what is believed now, with
    its ``source`` ('guess', 'measured 9', 'said'). ``lengths`` are the observations in their order; ``median``, ``mean``,
    ``deviation`` (standard deviation of the sample) are None where there are too few: never nought. ``needed`` is how many
    observations more the mean needs to be within 10 % at 95 %, None where nobody can say.
    ``guessed_total`` and ``taken_total`` are of the whole run: what the work that was done would have taken by the guess,
    and what it took as far as it is known at all (None where nothing is); ``guessed_of_taken`` is the guess for just that
    part, so that the two can be compared. ``standard`` is the standard time, where the shop has an allowance.
    ``by_session`` is how much its times differ from session to session (standard deviation of the logarithm, as learned), and
    ``sessions`` as how many equal ones those of the observations count: n² / Σ nᵢ² (Kish, *Survey Sampling*).
    """

    step: str
    step_name: str
    operation: str
    kind: str
    guess: timedelta
    written: timedelta
    estimate: timedelta
    source: str
    lengths: tuple[timedelta, ...] = ()
    median: timedelta | None = None
    mean: timedelta | None = None
    deviation: timedelta | None = None
    left_out: tuple[LeftOut, ...] = ()
    curve: LearningCurve | None = None
    needed: int | None = None
    guessed_total: timedelta = timedelta(0)
    taken_total: timedelta | None = None
    guessed_of_taken: timedelta = timedelta(0)
    standard: timedelta | None = None
    by_session: float = 0.0
    sessions: float = 0.0

    @property
    def n(self) -> int:
        return len(self.lengths)

    @property
    def why_left_out(self) -> Mapping[str, int]:
        """How many were left out for which reason."""
        found: dict[str, int] = {}
        for left in self.left_out:
            found[left.why] = found.get(left.why, 0) + 1
        return found


@dataclass(frozen=True)
class Press:
    """A press that would tell the most next time: of which ``kind`` of event, at which step, and of how many minutes of the
    run nothing is known for want of it."""

    press: str
    step: str
    step_name: str
    unknown: timedelta


@dataclass(frozen=True)
class TimeStudy:
    """All time elements of a run in the order of the route. ``share`` is how much of hands' and machines' time was measured,
    0 to 1, None where no work is over; ``presses`` the three that would tell the most next time."""

    elements: tuple[ElementStudy, ...]
    share: float | None
    presses: tuple[Press, ...] = field(default=())
