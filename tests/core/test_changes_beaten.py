"""Of two ideas that are more of the same thing, the larger is worth saying only where it saves more."""

from datetime import timedelta

import pytest

from runboard.plan.change import Capacity, Change, TraySize
from runboard.review.changes.beaten import with_beaten
from runboard.review.changes.nouns import NOTHING, Idea, Span3, Tried, Worth
from runboard.review.changes.trying import tried_together
from runboard.review.held.replayable import replayable
from tests.core.pasts import past_of
from tests.core.test_held_replay import rails_made

MINUTE = timedelta(minutes=1)


def saving(change: Change, low: float, mid: float, cost: float | None = None) -> Tried:
    name = f"{type(change).__name__}{getattr(change, 'capacity', getattr(change, 'pieces', ''))}"
    return Tried(Idea(name, change, cost=cost), Span3(low * MINUTE, mid * MINUTE, mid * MINUTE), NOTHING)


ONE_MORE = saving(Capacity("rack", 6), 0, 1290)


@pytest.mark.parametrize(
    ("other", "is_beaten"),
    [
        (saving(Capacity("rack", 8), 0, 1290), True),
        (saving(Capacity("rack", 8), 0, 1400), False),
        (saving(Capacity("rack", 8), 900, 1290), False),
        (saving(Capacity("air", 8), 0, 1290), False),
        (saving(TraySize("r1", 8), 0, 1290), False),
    ],
)
def test_more_of_a_thing_that_saves_no_more_is_no_idea(other: Tried, is_beaten: bool) -> None:
    first, second = with_beaten([ONE_MORE, other])

    assert first == ONE_MORE
    assert second.no_more_than == ("Capacity6" if is_beaten else "")
    assert second.helps is not is_beaten


def test_what_costs_less_is_not_beaten_by_what_is_smaller() -> None:
    _, second = with_beaten([saving(Capacity("rack", 6), 0, 60, cost=50), saving(Capacity("rack", 8), 0, 60, cost=20)])

    assert second.helps


def test_what_was_tried_before_is_beaten_by_what_is_tried_now() -> None:
    known = replayable(past_of(rails_made()))
    assert known is not None
    more, most = Idea("more", Capacity("rack", 3)), Idea("most", Capacity("rack", 9))
    before, _ = tried_together(known, [most], Worth(), {}, 8)

    found, _ = tried_together(known, [most, more], Worth(), {}, 8, before=before)

    assert found == tried_together(known, [most, more], Worth(), {}, 8)[0]
