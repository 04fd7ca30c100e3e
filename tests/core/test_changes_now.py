"""A change is set against the shop as it is now: never less than it has, never twice, never where it does not fit any more."""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.plan.change import Capacity, Change, Helper, Instead, OneVisit, Rested, Several, Swapped, Times, TraySize
from runboard.plan.changed_route import product_with
from runboard.review.changes.now import Made, Moved, made_of
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json
from tests.scenario import shop

MINUTE = timedelta(minutes=1)
THEN = book_from_json(shop())
RAIL = THEN.products[0]
FASTER = Times("r1", "hooks", "hand", 80)


def made(change: Change, now: Book = THEN) -> Made:
    return made_of(change, THEN, RAIL, now)


def with_extractions(count: int) -> Book:
    services = tuple(replace(one, capacity=count) if one.key == "extraction" else one for one in THEN.services)
    return replace(THEN, services=services)


def with_change(change: Change) -> Book:
    return replace(THEN, products=(product_with(RAIL, THEN, change), *THEN.products[1:]))


def test_more_of_a_service_is_from_what_there_is_to_what_was_tried() -> None:
    (moved,) = made(Capacity("extraction", 2)).moved

    assert moved == Moved("capacity", THEN.services[0].name, before=1, after=2)


@pytest.mark.parametrize("count", [2, 5])
def test_where_the_shop_has_as_much_or_more_it_is_done_already(count: int) -> None:
    found = made(Capacity("extraction", 2), with_extractions(count))

    assert found.is_done
    assert found.moved == ()


def test_fewer_of_a_service_is_done_where_there_are_as_few() -> None:
    then = with_extractions(4)

    assert made_of(Capacity("extraction", 2), then, RAIL, with_extractions(1)).is_done
    assert not made_of(Capacity("extraction", 2), then, RAIL, with_extractions(3)).is_done


def test_a_time_goes_to_what_was_tried_whatever_the_route_says_now() -> None:
    assert made(FASTER).moved == (Moved("time", "Hooks", "hand", 2 * MINUTE, 1.6 * MINUTE),)
    slower = with_change(Times("r1", "hooks", "hand", 90))
    assert made(FASTER, slower).moved == (Moved("time", "Hooks", "hand", 1.8 * MINUTE, 1.6 * MINUTE),)


@pytest.mark.parametrize("per_cent", [80, 50])
def test_a_time_that_the_route_says_or_less_is_done_already(per_cent: int) -> None:
    assert made(FASTER, with_change(replace(FASTER, per_cent=per_cent))).is_done


@pytest.mark.parametrize(
    "change",
    [TraySize("r1", 8), Swapped("r1", "clean"), OneVisit("r1", "cut"), Instead("r1", "sand", "abrasive", "Mesh", 85, 0.98)],
)  # fmt: skip
def test_what_the_route_says_is_done_already(change: Change) -> None:
    now = with_change(change)

    assert not made(change).is_done
    assert made(change, now).is_done


def test_what_no_longer_stands_side_by_side_does_not_change_places() -> None:
    operations = list(RAIL.operations)
    at = [one.key for one in operations].index("clean")
    operations.insert(at + 1, operations.pop())
    now = replace(THEN, products=(replace(RAIL, operations=tuple(operations)),))

    with pytest.raises(Refused, match="try order"):
        made(Swapped("r1", "clean"), now)


def test_of_several_only_what_is_not_done_is_made() -> None:
    found = made(Several((Capacity("extraction", 2), FASTER)), with_extractions(3))

    assert [one.what for one in found.moved] == ["time"]
    assert found.book.services == with_extractions(3).services


def test_what_no_book_says_is_noted_and_never_done() -> None:
    found = made(Helper("r1", "hooks", "ann", 45))

    assert found.did == "noted"
    assert not found.is_done


def test_a_wait_goes_down_to_what_was_tried() -> None:
    with pytest.raises(Refused):
        made(Rested("r1", "hooks", 10))
