"""What of a review takes long: the run replayed many times over, for what held it and what each change would save."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from runboard.plan.schedule.rule.rule import warm as warm
from runboard.review.changes.nouns import Idea, Together, Tried, Worth
from runboard.review.changes.offers import offers
from runboard.review.changes.pieces import counts_of
from runboard.review.changes.trying import tried_together
from runboard.review.essentials import Essentials
from runboard.review.held.held import held_of
from runboard.review.held.nouns import Held
from runboard.review.held.replay import fitted
from runboard.review.held.replayable import Replayable, as_logged
from runboard.review.sent import packed, unpacked


@dataclass(frozen=True)
class Asked:
    """What a child process needs of a review. ``ideas`` are those that somebody kept; what the data offer comes after. ``before`` is
    what came of the same run in the same shop, with other ideas: what was tried there is not tried again."""

    known: Replayable
    quick: Essentials
    ideas: tuple[Idea, ...]
    worth: Worth
    before: "Weighed | None" = None

    def __reduce__(self) -> Any:
        return _unpacked, (packed(vars(self)),)


def _unpacked(found: bytes) -> "Asked":
    return Asked(**unpacked(found))


@dataclass(frozen=True)
class Weighed:
    """What came of it: see ``Essentials``."""

    held: Held | None
    tried: tuple[Tried, ...] = ()
    together: Together | None = None
    is_many: bool = False


def asked_of(quick: Essentials, ideas: Sequence[Idea], worth: Worth, before: Weighed | None = None) -> Asked | None:
    """What is to be weighed of a run; None where it cannot be replayed: nothing of it was begun, say."""
    known = as_logged(quick.past)
    return None if known is None else Asked(known, quick, tuple(ideas), worth, before)


def prepare() -> None:
    """Have the rule compiled, which pays before much is replayed where it is kept on the disk."""
    warm()


def _reason(offered: Idea | None) -> dict[str, Any]:
    """Why an idea is offered, which stays so when somebody keeps it."""
    return {} if offered is None else {"because": offered.because, "facts": offered.facts}


def weigh(asked: Asked, is_many: bool = False, told: Any = None) -> Weighed:
    """What held a run, and what its ideas would have saved. ``is_many`` has the rule compiled first."""
    if is_many:
        prepare()
    known = fitted(asked.known)
    before = asked.before if asked.before and asked.before.is_many == is_many else None  # else it met other luck
    held = before.held if before else held_of(known)
    quick = asked.quick
    offered = {idea.change: idea for idea in offers(quick.past, quick.study, quick.happened, held)}
    kept = {idea.change: replace(idea, **_reason(offered.get(idea.change))) for idea in asked.ideas}
    ideas = tuple((offered | kept).values())
    tried = before.tried if before else ()
    found, together = tried_together(known, ideas, asked.worth, counts_of(quick.past.run), before=tried)
    return Weighed(held, found, together, is_many)
