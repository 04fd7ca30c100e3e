"""Ideas by rules from what a run was: each with its rule, a code of ``OFFERED``, and the facts that it rests on."""

from collections.abc import Callable, Iterator

from runboard.plan.change import Change
from runboard.review.changes import offers_of_things as things
from runboard.review.changes import offers_of_work as work
from runboard.review.changes.nouns import Idea
from runboard.review.changes.seen import SMALL, Offer, Seen
from runboard.review.happened.nouns import Happened
from runboard.review.held.nouns import Held
from runboard.review.measured.study import TimeStudy
from runboard.review.past import Past

MOST_OFFERED = 12
# The codes of the rules; ``offered-…`` in the catalogue has the sentence of each.
OFFERED = (
    "service holds", "service taken", "hands hold", "scrap gathers", "machine long", "wait long", "furthest", "wide",
    "station holds", "setups", "walks", "nobody there",
)  # fmt: skip
_RULES: tuple[Callable[[Seen], Iterator[Offer]], ...] = (
    things.service_holds, things.service_taken, things.hands_hold, things.scrap_gathers, work.machine_long,
    work.wait_long, work.furthest, work.wide, work.station_holds, work.setups, work.walks, things.nobody_there,
)  # fmt: skip


def offers(past: Past, study: TimeStudy, happened: Happened, held: Held | None = None) -> tuple[Idea, ...]:
    """At most a dozen ideas, those that are about most time first; what is about what held the run comes before all others.
    Each change is offered once, by the first rule that finds it."""
    seen = Seen(past, study, happened, held)
    found: dict[Change, Offer] = {}
    for rule in _RULES:
        for about, idea in rule(seen):
            if about >= SMALL:
                found.setdefault(idea.change, (about, idea))
    ranked = sorted(found.values(), key=lambda offer: (not seen.is_of_constraint(offer[1].change), -offer[0]))
    return tuple(idea for _, idea in ranked[:MOST_OFFERED])
