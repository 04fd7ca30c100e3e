"""Every code of what happened has its word."""

from typing import get_args

import pytest

from runboard.review.happened.nouns import Doing
from runboard.review.happened.why import WHY_WAITING
from runboard.review.happened.worked import WORK
from runboard.run.log.kinds import KINDS
from runboard.shop.route_words import SYMBOLS
from runboard.words.sentences import message_name
from tests.core.test_words import catalogue

CODES = [
    *(("review waiting why", why) for why in WHY_WAITING),
    *(("review doing", doing) for doing in get_args(Doing)),
    *(("review work", kind) for kind in (*WORK, "job")),
    *(("review symbol", symbol) for symbol in SYMBOLS),
    *(("review changed", what) for what in KINDS["setup changed"].required["what"]["enum"]),
]


@pytest.mark.parametrize(("family", "code"), CODES)
def test_every_code_of_what_happened_has_a_word_without_facts(family: str, code: str) -> None:
    assert catalogue()[message_name(family.replace(" ", "-"), code)] == set()


def test_no_reason_stands_in_the_list_twice() -> None:
    assert len(set(WHY_WAITING)) == len(WHY_WAITING)
