"""Every code of what happened has its word."""

from typing import get_args

import pytest

from runboard.review.happened.nouns import Doing
from runboard.review.happened.why import WHY_WAITING
from runboard.shop.route_words import SYMBOLS
from runboard.words.sentences import message_name
from tests.core.test_words import catalogue

CODES = [
    *(("review waits", why) for why in WHY_WAITING),
    *(("element", kind) for kind in ("machine", "hand", "job")),
    *(("review symbol", symbol) for symbol in SYMBOLS),
]
# Being away is a gap in a day's chart, and nobody is told where somebody was.
DOINGS = [doing for doing in get_args(Doing) if doing != "away"]


@pytest.mark.parametrize(("family", "code"), CODES)
def test_every_code_of_what_happened_has_a_word_without_facts(family: str, code: str) -> None:
    assert catalogue()[message_name(family.replace(" ", "-"), code)] == set()


def test_no_reason_stands_in_the_list_twice() -> None:
    assert len(set(WHY_WAITING)) == len(WHY_WAITING)


@pytest.mark.parametrize("doing", DOINGS)
def test_every_part_of_a_day_can_be_said(doing: str) -> None:
    assert catalogue()[f"review-did-{doing}"] >= {"from", "to", "who"}
