"""What adopting a change makes another is said from what to what, each kind of thing in its own words."""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.review.changes.adopting import Adopting
from runboard.review.changes.ledger import span3
from runboard.review.changes.nouns import Verdict
from runboard.review.changes.now import Made, Moved
from runboard.shop.book import Book
from runboard.words.changes import verdict_in_words
from runboard.words.making import making_in_words, moved_in_words

MINUTE = timedelta(minutes=1)
TIME = Moved("time", "Fit hooks", "hand", 2 * MINUTE, 1.6 * MINUTE)


@pytest.mark.parametrize(
    ("moved", "said"),
    [
        (Moved("capacity", "Drying rack places", before=5, after=6), "Drying rack places: from 5 to 6"),
        (TIME, "Fit hooks, by hand: from 2 min to 1 min 35 s a piece"),
        (
            replace(TIME, before=3.2 * MINUTE, after=2.5 * MINUTE, measured=3.67 * MINUTE),
            "Fit hooks, by hand: from 3 min 10 s to 2 min 30 s a piece in plans; the run took 3 min 40 s",
        ),
        (Moved("trays", before=5, after=10), "Pieces a tray: from 5 to 10"),
        (Moved("wait", "Oil", before=12 * 60 * MINUTE, after=8 * 60 * MINUTE), "Rest after Oil: from 12 h to 8 h"),
        (Moved("load", "Cut", before=None, after=8), "Cut, pieces a load: 8"),
        (Moved("rate", "Sand", before=0.95, after=0.98), "Sand, good of a hundred: from 95 to 98"),
        (Moved("wood", before="ash", after="oak"), "Wood: oak"),
        (Moved("instruction", "Sand", after="Mesh"), "Sand, a line more of instructions: Mesh"),
        (Moved("order", before="Clean, Sand", after="Sand, Clean"), "The order: from Clean, Sand to Sand, Clean"),
        (Moved("visit", before="Cut, Clean", after="Cut, Clean"), "Cut, Clean: in one visit from now on"),
    ],
)
def test_each_kind_of_thing_is_said_from_what_to_what(moved: Moved, said: str) -> None:
    assert list(moved_in_words([moved])) == [said]


def test_a_run_that_is_open_keeps_its_route_and_is_planned_with_a_new_time() -> None:
    said = making_in_words(Adopting(Made("route", Book(), None, (TIME,)), keeps=("Fourth batch",)))

    assert said[1:] == [
        "From the next run on.",
        (
            "Fourth batch, which is open, keeps the route that it has; where that time was measured, what is left is planned "
            "with the new one."
        ),
    ]


def test_of_what_is_shared_the_hands_that_were_promised_are_said_as_they_were_seen() -> None:
    day, saved = span3((1294, 1294, 1294)), span3((1269, 1269, 1269))
    verdict = Verdict("saved", "waiting", 60, saved, day, 1, 1, -43 * MINUTE, 6 * MINUTE)

    assert verdict_in_words(verdict) == (
        "Trays waited 21 h 09 less for what is shared, for as many pieces. Promised: done 21 h 34 sooner. "
        "Hands: 6 min less promised; in all it was 43 min more, whatever that came of."
    )
