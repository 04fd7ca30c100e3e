"""Whoever does Now's first line, always, keeps what a plan would have kept: some small shops, worked to their end."""

from collections.abc import Iterator

import pytest

from runboard.plan.schedule.rule import rule as rules
from tests.bench.obey import Judged, judged
from tests.bench.shops import shop

# Seeds in a row of made-up shops of some twenty loads, of one and two people; of the whole fifty some lose a line, which
# ``python -m tests.bench obey`` counts.
SHOPS = (5, 6, 7)


@pytest.fixture(scope="module", params=SHOPS)
def worked(request: pytest.FixtureRequest) -> Iterator[Judged]:
    assert rules.warm()
    yield judged(shop(request.param, loads=(12, 24)), known_seconds=0.3, judge=0)
    rules._WARM.clear()


def test_obeying_brings_the_work_to_its_end(worked: Judged) -> None:
    assert worked.finish is not None


def test_obeying_loses_no_order_line_that_a_plan_would_have_kept(worked: Judged) -> None:
    assert list(worked.lost_lines) == []


def test_there_is_a_plan_at_every_moment_at_which_there_could_be_one(worked: Judged) -> None:
    assert list(worked.planless) == []


def test_nothing_is_begun_past_the_latest_end_of_its_wait(worked: Judged) -> None:
    assert worked.house.noted.too_late == []


def test_the_shop_takes_every_first_line(worked: Judged) -> None:
    assert worked.house.noted.refused == []


def test_a_made_up_shop_is_the_same_by_its_seed() -> None:
    assert shop(3) == shop(3)
    assert shop(3) != shop(4)
