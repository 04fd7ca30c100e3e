"""The essentials of a review: what its first screen, the command, the record and a friend's file are made of."""

from dataclasses import dataclass

from runboard.review.changes.nouns import Together, Tried
from runboard.review.happened.nouns import Happened, OperationBar
from runboard.review.held.nouns import Held
from runboard.review.measured.study import TimeStudy
from runboard.review.past import Past


@dataclass(frozen=True)
class Essentials:
    """``held``, ``tried`` and ``together`` are None while they are still worked out (in a child process)."""

    past: Past
    study: TimeStudy
    happened: Happened
    held: Held | None = None
    tried: tuple[Tried, ...] | None = None
    together: Together | None = None

    @property
    def furthest(self) -> OperationBar | None:
        """The operation whose hands and machine time were furthest from its guess; None where nothing is known."""
        known = [bar for bar in self.happened.bars if bar.taken is not None and bar.guess]
        return max(known, key=lambda bar: abs((bar.taken or bar.guess) - bar.guess), default=None)

    @property
    def first_to_try(self) -> Tried | None:
        """The idea that would have saved most of the finish, then of hands; None where none would."""
        found = [tried for tried in self.tried or () if tried.refused is None and (tried.earlier.mid, tried.hands.mid)]
        best = max(found, key=lambda tried: (tried.earlier.mid, tried.hands.mid), default=None)
        none = best is None or not (best.earlier.mid or best.hands.mid)
        return None if none else best
