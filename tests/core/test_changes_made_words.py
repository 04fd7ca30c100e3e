"""What adopting a change makes another is said from what to what, each kind of thing in its own words."""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.floor.changing.runs import Wish, open_run
from runboard.plan.change import Times
from runboard.review.changes.adopting import Adopting
from runboard.review.changes.ledger import span3
from runboard.review.changes.nouns import Verdict
from runboard.review.changes.now import Made, Moved
from runboard.shop.book import Book
from runboard.words.changes import verdict_in_words
from runboard.words.ideas import habit_in_words
from runboard.words.making import making_in_words, moved_in_words
from tests.floor.fakes import workshop
from tests.scenario import shop

MINUTE = timedelta(minutes=1)
TIME = Moved("time", "Fit hooks", "hand", 2 * MINUTE, 1.6 * MINUTE)


@pytest.mark.parametrize(
    ("moved", "said"),
    [
        (Moved("capacity", "Drying rack places", before=5, after=6), "Drying rack places: from 5 to 6"),
        (TIME, "Fit hooks, hand time: from 2 min to 1 min 35 s per piece"),
        (
            replace(TIME, before=3.2 * MINUTE, after=2.5 * MINUTE, measured=3.67 * MINUTE),
            "Fit hooks, hand time: from 3 min 10 s to 2 min 30 s per piece in plans; the run took 3 min 40 s",
        ),
        (Moved("trays", before=5, after=10), "Pieces per tray: from 5 to 10"),
        (Moved("wait", "Oil", before=12 * 60 * MINUTE, after=8 * 60 * MINUTE), "Rest after Oil: from 12 h to 8 h"),
        (Moved("load", "Cut", before=None, after=8), "Cut, pieces per load: 8"),
        (Moved("rate", "Sand", before=0.95, after=0.98), "Sand, good per hundred: from 95 to 98"),
        (Moved("wood", before="ash", after="oak"), "Wood: oak"),
        (Moved("instruction", "Sand", after="Mesh"), "Sand, one more line of instructions: Mesh"),
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
            "Fourth batch is open and keeps its route. Where that time was measured, what is left is planned "
            "with the new one."
        ),
    ]


DAY, WAITED = span3((1294, 1294, 1294)), span3((1254, 1254, 1254))
HOUR = 60 * MINUTE


@pytest.mark.parametrize(
    ("hands", "took", "said"),
    [
        (
            (12.5, 11.5),
            (74, 52),
            (
                "Worked: done in 2 days 4 h instead of 3 days 2 h; trays waited 21 h less for drying rack places. "
                "Hands-on: 11½ min per good piece, 12½ min before."
            ),
        ),
        (
            (11.5, 12.5),
            None,
            (
                "Worked: trays waited 21 h less for drying rack places, for as many pieces. "
                "Hands-on: no saving seen (12½ min per good piece, 11½ min before)."
            ),
        ),
        (
            (11.5, 11.6),
            (30, 31),
            (
                "Trays waited 21 h less for drying rack places, but the run was done no sooner: it took 31 h, 30 h before. "
                "Hands-on: no saving seen (11½ min per good piece, 11½ min before)."
            ),
        ),
    ],
)
def test_of_what_is_shared_runs_are_compared_by_the_finish_and_by_the_good_piece(
    hands: tuple[float, float], took: tuple[int, int] | None, said: str
) -> None:
    pieces, ends = (hands[0] * MINUTE, hands[1] * MINUTE), took and (took[0] * HOUR, took[1] * HOUR)
    verdict = Verdict("saved", "waiting", 60, WAITED, DAY, 1, 1, pieces, 6 * MINUTE, ends)

    assert verdict_in_words(verdict, ["Drying rack places"]) == said


@pytest.mark.parametrize(
    ("texts", "said"),
    [
        (("Lay the rail on the bench.",), "Fit hooks a fifth quicker, for example with a jig"),
        (("Lay the rail into the jig.",), "Fit hooks a fifth quicker, for example by laying things out ready"),
    ],
)
def test_a_jig_is_named_where_the_instructions_have_none_yet(texts: tuple[str, ...], said: str) -> None:
    record = shop()
    record["products"][0]["operations"][-1]["instructions"] = [{"text": text} for text in texts]
    here = workshop(record)
    opened = open_run(here, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    run = here.ledger.state.runs[opened]
    hooks = run.route.product.operations[-1]

    assert habit_in_words(here.book, run, Times(run.id, "hooks", "hand", 80)).replace(hooks.name, "Fit hooks") == said
