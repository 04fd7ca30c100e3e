"""The essentials of a review: what its first screen, the command, the record and a friend's file are made of."""

from dataclasses import dataclass, replace
from datetime import timedelta

from runboard.review.changes.nouns import Together, Tried
from runboard.review.happened.happened import happened
from runboard.review.happened.nouns import Happened, OperationBar
from runboard.review.happened.planned import Planned
from runboard.review.held.nouns import Held
from runboard.review.measured.study import TimeStudy
from runboard.review.measured.time_study import time_study
from runboard.review.past import Past
from runboard.shop.product import ZERO

# What an idea saves at least, as likely as not, so that it is worth saying: of the finish, of hands, of pieces.
WORTH_SAYING, HANDS_WORTH_SAYING, PIECES_WORTH_SAYING = timedelta(minutes=10), timedelta(minutes=5), 1


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
        """The idea that would have saved most of the finish, then of hands, then of pieces, a wish only where there is no other;
        None where none helps enough to say, or all may as well make it worse."""
        found = [tried for tried in self.tried or () if _is_worth_saying(tried)]
        return max(found, key=lambda tried: (not tried.idea.is_wish, *_saves(tried)), default=None)


def essentials_of(past: Past, planned: Planned | None = None) -> Essentials:
    """What is quick of a run's review; ``planned`` is the plan of its opening where somebody has it."""
    return Essentials(past, time_study(past), happened(past, planned))


def weighed(
    quick: Essentials, held: Held | None, tried: tuple[Tried, ...] = (), together: Together | None = None
) -> Essentials:
    """The same with what took long."""
    return replace(quick, held=held, tried=tried, together=together, is_weighed=True)


def helps_finish(tried: Tried) -> bool:
    """Whether a run would have been done so much sooner with it that it is worth saying."""
    return tried.earlier.mid >= WORTH_SAYING and tried.earlier.low >= ZERO


def helps_hands(tried: Tried) -> bool:
    """Whether it would have saved so much of hands that it is worth saying."""
    return tried.hands.mid >= HANDS_WORTH_SAYING and tried.hands.low >= ZERO


def _is_worth_saying(tried: Tried) -> bool:
    if tried.is_done or tried.refused is not None or tried.earlier.mid < ZERO or tried.hands.mid < ZERO:
        return False
    return helps_finish(tried) or helps_hands(tried) or tried.pieces >= PIECES_WORTH_SAYING


def _saves(tried: Tried) -> tuple[timedelta, timedelta, float]:
    return (
        tried.earlier.mid if helps_finish(tried) else ZERO,
        tried.hands.mid if helps_hands(tried) else ZERO,
        tried.pieces,
    )
