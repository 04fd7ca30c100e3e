"""The essentials of a review: what its first screen, the command, the record and a friend's file are made of."""

from dataclasses import dataclass, replace

from runboard.review.changes.nouns import Together, Tried
from runboard.review.happened.happened import happened
from runboard.review.happened.nouns import Happened, OperationBar
from runboard.review.happened.planned import Planned
from runboard.review.held.nouns import Held
from runboard.review.measured.study import TimeStudy
from runboard.review.measured.time_study import time_study
from runboard.review.past import Past


@dataclass(frozen=True)
class Essentials:
    """``held``, ``tried`` and ``together`` are None until what takes long ``is_weighed``, in a child process; ``held`` is None
    after that, too, where nothing can be replayed."""

    past: Past
    study: TimeStudy
    happened: Happened
    held: Held | None = None
    tried: tuple[Tried, ...] | None = None
    together: Together | None = None
    is_weighed: bool = False

    @property
    def furthest(self) -> OperationBar | None:
        """The operation whose hands and machine time were furthest from its guess; None where nothing is known."""
        known = [bar for bar in self.happened.bars if bar.taken is not None and bar.guess]
        return max(known, key=lambda bar: abs((bar.taken or bar.guess) - bar.guess), default=None)

    @property
    def first_to_try(self) -> Tried | None:
        """The idea that would have saved most of the finish, then of hands; None where none would."""
        found = [tried for tried in self.tried or () if tried.helps]
        return max(found, key=lambda tried: (tried.earlier.mid, tried.hands.mid, tried.pieces), default=None)


def essentials_of(past: Past, planned: Planned | None = None) -> Essentials:
    """What is quick of a run's review; ``planned`` is the plan of its opening where somebody has it."""
    return Essentials(past, time_study(past), happened(past, planned))


def weighed(
    quick: Essentials, held: Held | None, tried: tuple[Tried, ...] = (), together: Together | None = None
) -> Essentials:
    """The same with what took long."""
    return replace(quick, held=held, tried=tried, together=together, is_weighed=True)
