"""The interval of a share against Newcombe's table and statsmodels."""

from runboard.review.measured.rates import wilson
from tests.outside.said import from_memory, published

NEWCOMBE = "Newcombe 1998, Statistics in Medicine 17, 857-872, table I"


@published(NEWCOMBE, {(81, 263): (0.2553, 0.3662)})
def test_wilsons_interval_of_81_in_263(some: int, whole: int) -> tuple[float, ...]:
    return to_four_places(some, whole)


@from_memory(
    f"{NEWCOMBE}; so says statsmodels",
    {(15, 148): (0.0624, 0.1605), (0, 20): (0.0, 0.1611), (1, 29): (0.0061, 0.1718)},
)
def test_wilsons_interval_of_his_other_cases(some: int, whole: int) -> tuple[float, ...]:
    return to_four_places(some, whole)


def to_four_places(some: int, whole: int) -> tuple[float, ...]:
    found = wilson(some, whole)
    assert found is not None
    return tuple(round(limit, 4) for limit in found)


def test_of_none_there_is_no_interval_and_of_all_it_ends_at_one() -> None:
    assert wilson(0, 0) is None
    low, high = wilson(20, 20) or (0.0, 0.0)
    assert (round(low, 4), high) == (1 - 0.1611, 1)
