"""How much of a supply a piece really uses, learned between two counts.

Between two counts what was used is what was counted before, and what was bought since, less what was counted after. Pieces of
several steps share it as their routes say: learned is what a use *as it is written* really was. So a route that takes the
learned figure over begins anew, and runs of before go on with what was learned of theirs.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from runboard.run.supplies.said import Pieces, SupplySaid, UseKey

# Forecasts go by what was learned from so many pairs of counts and so many pieces on. Common sense, no source: one pair alone
# may be a spill or a wrong count.
ENOUGH_PAIRS, ENOUGH_PIECES = 2, 20.0
# What lies further off, as a factor, is taken for a purchase that nobody wrote down, or a spill.
MOST_FACTOR = 4.0


@dataclass(frozen=True)
class LearnedUse:
    """``written`` is what the route says that a piece uses, ``each`` what it was, over ``pairs`` of counts and ``pieces``."""

    product: str
    operation: str
    written: float
    each: float
    pieces: float
    pairs: int

    @property
    def is_enough(self) -> bool:
        """Whether forecasts go by it."""
        return self.pairs >= ENOUGH_PAIRS and self.pieces >= ENOUGH_PIECES


@dataclass(frozen=True)
class Stretch:
    """What was used between two counts: ``used`` in all, by so many ``pieces``."""

    used: float
    pieces: Pieces

    @property
    def written(self) -> float:
        """What the routes say of it."""
        return sum(pieces * key[2] for key, pieces in self.pieces.items())

    @property
    def is_likely(self) -> bool:
        """Whether it can have been so."""
        return self.written > 0 and 1 / MOST_FACTOR <= self.used / self.written <= MOST_FACTOR


@dataclass(frozen=True)
class Known:
    """The last that is known of a supply: counted (or run out) by ``base``, and ``bought`` since; None where nobody can say."""

    base: SupplySaid | None
    bought: float


def steps_of(said: Iterable[SupplySaid]) -> Iterator[Known]:
    """What was known after each thing that was said. Where something had run out and is there again, nobody says how much: it is
    as if it had never been counted, unless somebody wrote down what was bought."""
    known = Known(None, 0.0)
    for one in said:
        match one.what:
            case "counted" | "out":
                known = Known(one, 0.0)
            case "bought":
                known = Known(known.base, known.bought + one.amount)
            case "in" if known.base is not None and known.base.what == "out" and not known.bought:
                known = Known(None, 0.0)
        yield known


def stretches(said: Sequence[SupplySaid]) -> Iterator[Stretch]:
    """What was used between each two counts."""
    before = Known(None, 0.0)
    for known, one in zip(steps_of(said), said, strict=True):
        if one.what in ("counted", "out") and before.base is not None:
            used = before.base.amount + before.bought - one.amount
            yield Stretch(used, since(one.spent, before.base.spent))
        before = known


def since(now: Pieces, then: Pieces) -> Pieces:
    """The pieces that used it between two moments."""
    found = {key: pieces - then.get(key, 0.0) for key, pieces in now.items()}
    return {key: pieces for key, pieces in found.items() if pieces > 1e-9}


def learned_from(said: Sequence[SupplySaid]) -> dict[UseKey, LearnedUse]:
    """What each use of a supply, as it is written, really was. Nothing is learned of one that is written as none."""
    found: dict[UseKey, tuple[float, float, int]] = {}
    for stretch in stretches(said):
        if not stretch.is_likely:
            continue
        factor = stretch.used / stretch.written
        for key, pieces in stretch.pieces.items():
            if key[2] > 0:
                used, counted, pairs = found.get(key, (0.0, 0.0, 0))
                found[key] = used + factor * pieces * key[2], counted + pieces, pairs + 1
    return {
        key: LearnedUse(key[0], key[1], key[2], used / pieces, pieces, pairs)
        for key, (used, pieces, pairs) in found.items()
    }
