"""How large a run and a book may be: said at every door, and before anything is reckoned with it."""

from typing import Any

import pytest

from runboard.plan.opening import plan_opening
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused
from runboard.shop import limits
from runboard.shop.book_json import BookError, book_from_json, product_from_json
from tests.core.test_keys import event, opened
from tests.scenario import a_pass, key_rails, operation, shop


def a_product(*operations: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {"key": "rail", "name": "Rails", "operations": list(operations), **more}


def refused(record: dict[str, Any]) -> Refused:
    with pytest.raises(Refused) as why:
        check_form(record)
    return why.value


def trays(count: int, pieces: int) -> list[dict[str, Any]]:
    return [{"tray": str(at), "pieces": pieces} for at in range(1, count + 1)]


def test_a_hundred_trays_of_ten_thousand_loads_are_refused() -> None:
    record = opened(
        product=a_product(operation("drill", "bench", a_pass(size="jig", pieces=1, hand=1))),
        trays=trays(100, 10_000),
        boards={},
    )

    why = refused(record)

    assert (why.code, why.facts["what"]) == ("run too large", "pieces")


@pytest.mark.parametrize(
    ("what", "changes"),
    [
        ("pieces", {"trays": trays(31, 100)}),
        ("pieces", {"orders": [{"line": "1", "pieces": 3001}]}),
        ("loads", {"product": a_product(*(operation(f"s{at}", "bench") for at in range(50))), "trays": trays(400, 5)}),
        ("loads", {"product": a_product(*(operation(f"s{at}", "bench", a_pass(size="jig", pieces=1)) for at in range(9))),
                   "trays": trays(100, 20)}),
        ("steps", {"product": a_product(*(operation(f"s{at}", "bench") for at in range(201))), "trays": trays(1, 5)}),
        ("letters", {"product": a_product(operation("s", "bench", checklist=["x" * 2000] * 101)), "trays": trays(1, 5)}),
    ],
)  # fmt: skip
def test_a_run_has_a_size(what: str, changes: dict[str, Any]) -> None:
    why = refused(opened(boards={}, **changes))

    assert (why.code, why.facts["what"]) == ("run too large", what)


def test_a_run_of_the_size_that_is_promised_is_opened() -> None:
    product = product_from_json(key_rails())
    made = plan_opening(product, 2000, start=2200, pieces_a_tray=6)
    body = {
        "trays": [{"tray": one.tray, "pieces": one.pieces} for one in made.trays],
        "boards": {key: dict(fed) for key, fed in made.boards.items()},
        "orders": [{"line": "1", "pieces": 2000}],
    }

    assert check_form(opened(**body)).get("name") == "Rails"


def test_an_opening_says_the_same_before_it_is_pressed() -> None:
    product = product_from_json(a_product(operation("drill", "bench", a_pass(size="jig", pieces=1, hand=1))))

    with pytest.raises(Refused) as why:
        plan_opening(product, 5000, start=90_000, pieces_a_tray=1000)

    assert (why.value.code, why.value.facts["what"]) == ("run too large", "pieces")


def test_a_revised_route_has_a_size_too() -> None:
    many = a_product(*(operation(f"s{at}", "bench") for at in range(201)))

    assert refused(event("route revised", {"product": many, "from_tray": "1"}, run="r1")).code == "run too large"


@pytest.mark.parametrize(
    ("part", "one"),
    [
        ("people", {"name": "Ann"}),
        ("stations", {"name": "Bench", "kind": "bench", "room": "shop"}),
        ("rooms", {"name": "Shop"}),
        ("jobs", {"name": "Sweep", "minutes": 5}),
        ("finishes", {"name": "Oil"}),
        ("products", {"name": "Rails", "operations": []}),
    ],
)
def test_a_book_has_a_size(part: str, one: dict[str, Any]) -> None:
    most = limits.MOST_IN_BOOK[part]
    record = {**shop(), "products": []}
    listed = [{**one, "key": f"k{at}"} for at in range(most + 1)]
    book = book_from_json({**record, part: [*record.get(part, ()), *listed]})

    with pytest.raises(BookError) as wrong:
        limits.check_limits(book)

    assert str(most) in str(wrong.value)


@pytest.mark.parametrize("name", ["two\nlines", "bell\x07", "a\u2028b"])
def test_the_names_of_a_book_are_one_line(name: str) -> None:
    record = shop()
    record["stations"][0]["name"] = name

    with pytest.raises(BookError) as wrong:
        limits.check_limits(book_from_json(record))

    assert "one line" in str(wrong.value)


def test_the_small_shop_keeps_to_it() -> None:
    limits.check_limits(book_from_json(shop()))
