"""What ``runboard review`` prints below the five lines: a range in one measure, and lines that end between words."""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.commands.asking import broken
from runboard.house import House
from runboard.plan.change import Times
from runboard.review.changes.nouns import NOTHING, Idea, Span3, Tried
from runboard.words.review_lines import review_lines
from tests.web.test_review_lines import found as found

H = timedelta(hours=1)


def tried(house: House, low: float, mid: float, high: float) -> Tried:
    return Tried(Idea("a", Times("r1", "hooks", "hand", 80)), Span3(low * H, mid * H, high * H), NOTHING)


@pytest.mark.parametrize(
    ("hours", "said"),
    [
        ((20, 21, 22), "done 21 h sooner (20 h to 22 h)"),
        ((0.5, 1, 1.5), "done 1 h sooner (30 min to 1 h 30)"),
        ((-0.5, 1, 1.5), "done 1 h sooner (from 30 min later to 1 h 30 sooner)"),
        ((2, 2, 2), "done 2 h sooner"),
        ((19.9, 20, 20.1), "done 20 h sooner"),
    ],
)
def test_an_idea_says_its_range_in_the_measure_of_its_middle(found, house, hours, said):
    essentials = replace(found, tried=(tried(house, *hours),))

    *_, line = (line for line in review_lines(essentials) if ": done " in line)

    assert line.endswith(f": {said}")


def test_a_line_ends_between_words_and_goes_on_below_its_text():
    assert broken("- one two three four", 12) == ["- one two", "  three four"]
    assert broken("Cut    1 h 32  1 h 34", 40) == ["Cut    1 h 32  1 h 34"]
    assert broken("", 40) == [""]
