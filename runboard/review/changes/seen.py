"""What the rules of offers look at, and the ideas that they make."""

import hashlib
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta
from functools import cached_property
from typing import Any

from runboard.plan.change import (
    LEAST_PER_CENT,
    MOST_PER_CENT,
    Capacity,
    Change,
    Helper,
    HoursAdded,
    Instead,
    Rested,
    Times,
    change_record,
)
from runboard.review.changes.nouns import Idea
from runboard.review.happened.nouns import Happened
from runboard.review.held.nouns import Held
from runboard.review.measured.study import ElementStudy, TimeStudy
from runboard.review.past import Past
from runboard.run.fold.route import Step
from runboard.shop.product import Operation

# What is about less than this is about nothing; what helpers come for is told in quarters of an hour.
SMALL = timedelta(minutes=3)
_JIG = re.compile(r"\bjigs?\b", re.IGNORECASE)
QUARTER_HOUR = timedelta(minutes=15)

# An idea with how much of time it is about, by which ideas are put in order.
Offer = tuple[timedelta, Idea]


def idea_of(
    change: Change, because: str = "", facts: Mapping[str, Any] | None = None, cost: float | None = None
) -> Idea:
    """An idea whose id follows from its change: the same change is the same idea, whoever has it."""
    text = json.dumps(change_record(change), sort_keys=True, ensure_ascii=False)
    return Idea(hashlib.blake2b(text.encode(), digest_size=6).hexdigest(), change, because, facts or {}, cost)


@dataclass(frozen=True)
class Seen:
    """All that the rules look at."""

    past: Past
    study: TimeStudy
    happened: Happened
    held: Held | None

    @property
    def run(self) -> str:
        return self.past.run.id

    @cached_property
    def operations(self) -> Mapping[str, Operation]:
        return {one.key: one for one in self.past.run.route.product.operations}

    @cached_property
    def steps(self) -> Mapping[str, Step]:
        return self.past.run.route.by_key

    @property
    def most(self) -> tuple[str, str]:
        """What held the run; ('', '') where nobody knows."""
        return self.held.most if self.held is not None and self.held.most is not None else ("", "")

    def is_of_constraint(self, change: Change) -> bool:
        """Whether a change is about what held the run."""
        kind, which = self.most
        match change:
            case Capacity():
                return (kind, which) == ("service", change.service)
            case Helper():
                return kind == "hands"
            case HoursAdded():
                return kind == "hours"
            case Rested():
                return kind == "wait" and which in (change.operation, *self._steps_of(change.operation))
            case Times() | Instead():
                operation = self.operations.get(change.operation.partition(":")[0])
                return operation is not None and (kind, which) == ("station", operation.station)
        return False

    def _steps_of(self, operation: str) -> list[str]:
        return [key for key, step in self.steps.items() if step.operation.key == operation]

    def capacity(self, service: str) -> int | None:
        return next((one.capacity for one in self.past.book.services if one.key == service), None)

    def service_name(self, service: str) -> str:
        return next((one.name for one in self.past.book.services if one.key == service), service)

    def station_name(self, station: str) -> str:
        known = self.past.book.station(station)
        return known.name if known else station


def has_jig(operation: Operation) -> bool:
    """Whether an operation is done with a jig: its loads are jigs, or its texts name one."""
    texts = [*(one.text for one in operation.instructions), *(text for row in operation.setup_sheet for text in row)]
    return any(one.size == "jig" for one in operation.passes) or any(_JIG.search(text) for text in texts)


def times_of(one: ElementStudy) -> float:
    """How often an element came in the run: as pieces by hand, else as loads or setups."""
    return one.guessed_total / one.guess if one.guess else float(one.n)


def less_of(seen: Seen, one: ElementStudy, per_cent: float) -> Times | None:
    """An element that takes so many per cent; None where nothing would be another."""
    whole = min(MOST_PER_CENT, max(LEAST_PER_CENT, round(per_cent)))
    return None if whole == 100 or one.step not in seen.steps else Times(seen.run, one.step, one.kind, whole)
