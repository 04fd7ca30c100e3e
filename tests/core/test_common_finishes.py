"""What a new finish may begin with: read by the book's own validator, careful, and never said to be known."""

from datetime import timedelta

import pytest

from runboard.shop.book_json import book_from_json
from runboard.shop.finish import Finish, begin_from, common_finishes

# Published or usual ranges, in hours: (next coat, handling, full cure). What is offered is the longer end of each.
RANGES = {
    "hardwax-oil": ((8, 12), (24, 24), (7 * 24, 14 * 24)),
    "boiled-linseed-oil": ((24, 24), None, (14 * 24, 28 * 24)),
    "oil-varnish": ((8, 24), (48, 72), (30 * 24, 30 * 24)),
    "water-based-varnish": ((2, 6), (24, 24), (14 * 24, 21 * 24)),
    "mineral-oil-beeswax": (None, (24, 24), None),
}


def read(key: str) -> Finish:
    return book_from_json({"runboard_book": 1, "finishes": [{"key": key, **begin_from(key)}]}).finishes[0]


def hours(span: timedelta | None) -> float | None:
    return None if span is None else span / timedelta(hours=1)


def test_every_kind_is_known_here() -> None:
    assert set(common_finishes()) == set(RANGES)


@pytest.mark.parametrize("key", RANGES)
def test_a_time_offered_is_the_longer_end_of_its_range(key: str) -> None:
    finish = read(key)

    for span, known in zip((finish.recoat, finish.handle, finish.cure), RANGES[key], strict=True):
        assert hours(span) == (None if known is None else known[1])


@pytest.mark.parametrize("key", RANGES)
def test_nothing_offered_counts_as_read_from_a_label(key: str) -> None:
    assert read(key).sheet_date == ""
    assert common_finishes()[key]["source"]


@pytest.mark.parametrize("key", RANGES)
def test_only_what_has_no_drying_oil_counts_as_not_heating(key: str) -> None:
    assert read(key).self_heats == (key != "mineral-oil-beeswax")


@pytest.mark.parametrize("key", RANGES)
def test_a_solvent_is_in_the_air_at_least_until_the_next_coat(key: str) -> None:
    finish = read(key)

    if finish.solvent:
        assert finish.airing is not None and finish.recoat is not None and finish.airing >= finish.recoat


def test_an_unknown_kind_begins_with_nothing() -> None:
    assert begin_from("paint") == {}
