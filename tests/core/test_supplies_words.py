"""What to buy, in words: every sentence with its facts, amounts as somebody sees them, the list as JSON."""

import json
from dataclasses import replace
from typing import Any

import pytest

from runboard.plan.supplies.looked import found_of
from runboard.shop.book import Book
from runboard.shop.money import Money
from runboard.words.before.supplies import (
    amount_in_words,
    boards_in_words,
    cutters_to_buy_in_words,
    found_facts,
    learned_in_words,
    price_in_words,
    row_in_words,
    shopping_record,
    to_buy_in_words,
    top_in_words,
    wear_in_words,
)
from runboard.words.sentences import say
from tests.core.pressing import Floor
from tests.core.test_supplies_shopping import a_shop_with_boards, counted, listed


@pytest.fixture
def floor() -> Floor:
    """Hooks run out in the middle, oil is not counted, discs suffice, the cutter is worn, a board is missing."""
    record = a_shop_with_boards()
    record["money"] = {"currency": "EUR", "locale": "de-DE"}
    made = Floor(record)
    made.open_run(trays=6, product=record["products"][0])
    counted(made, "hooks", 50)
    counted(made, "discs", 100)
    return made


@pytest.mark.parametrize(
    ("amount", "unit", "said"),
    [
        (4, "", "4"),
        (1250, "ml", "1,250\u00a0ml"),
        (5.104, "ml", "5.1\u00a0ml"),
        (0.2, "", "0.2"),
        (99.96, "g", "100\u00a0g"),
        (1234567.0, "", "1234567"),
        (0, "", "0"),
    ],
)
def test_an_amount_is_as_fine_as_somebody_can_see(amount: float, unit: str, said: str) -> None:
    assert amount_in_words(amount, unit) == said


@pytest.mark.parametrize(
    ("currency", "locale", "said"),
    [
        ("EUR", "de-DE", "9,90\u00a0€"),
        ("USD", "en-US", "$9.90"),
        ("", "", "9.90"),
        ("EUR", "", "€9.90"),
    ],
)
def test_a_price_is_written_as_the_shop_s_place_writes_it(currency: str, locale: str, said: str) -> None:
    assert price_in_words(Book(money=Money(currency, locale)), 9.9) == said


def everything_said(floor: Floor) -> list[str]:
    list_, book = listed(floor), floor.book
    lines = [row_in_words(book, row) for row in list_.rows] + [wear_in_words(book, wear) for wear in list_.wear]
    lines += cutters_to_buy_in_words(book, list_) + boards_in_words(book, list_)
    found = [text for line in lines for text in (line.head, *line.more, *([line.known] if line.known else []))]
    found += top_in_words(list_) + top_in_words(list_, "r1") + to_buy_in_words(book, list_, "r1")
    found += [say("before-found", one.code, found_facts(one)) for one in found_of(list_, "r1")]
    uses = [(row.here, use) for row in list_.rows for use in row.here.learned.values()]
    return found + [learned_in_words(book, here, use) for here, use in uses]


def test_every_sentence_has_its_facts(floor: Floor) -> None:
    seen = everything_said(floor)
    floor.press("setup changed", {"what": "cutter", "cutter": "six"}, station="cnc")
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load done", run="r1", load="hooks/1")
    counted(floor, "hooks", 26)
    floor.press("setup changed", {"what": "cutter", "cutter": "six"}, station="cnc")
    floor.press("supply bought", {"supply": "hooks", "amount": 5})
    floor.press("load done", run="r1", load="hooks/2")
    floor.press("supply out", {"supply": "hard oil"}, run="r1")

    seen += everything_said(floor)

    assert [text for text in seen if "{" in text or "$" in text or not text] == []
    assert "Hooks: enough for trays 1 and 2, not for tray 3 at Hooks. 120 needed, 50 in stock: 70 short." in seen
    assert "It lasted 15 pieces on average, over 1 change; you entered 20." in seen
    assert (
        "Hooks at Hooks (Entry key rails): you enter 4, real use is 4.8 per piece, from 1 pair of counts and 5 pieces."
        in (text.partition(" What to buy")[0] for text in seen)
    )
    assert "It ran out, and no purchase is entered since." in seen


def test_what_an_earlier_run_takes_is_named(floor: Floor) -> None:
    floor.open_run(trays=2, product=a_shop_with_boards()["products"][0], run="r2", name="More")
    counted(floor, "hooks", 130)

    found = [say("before-found", one.code, found_facts(one)) for one in found_of(listed(floor), "r2")]

    said = "Hooks: too little from tray 1 on, at Hooks. 40 needed, 130 in stock, 120 of that for Key rails: 30 short."
    assert said in found
    assert said in top_in_words(listed(floor), "r2")


def test_what_another_run_alone_wants_is_not_this_one_s_to_buy(floor: Floor) -> None:
    """Boards for rails are no part of what to buy for a run of something else."""
    peg = a_shop_with_boards()["products"][0] | {"key": "peg", "name": "Peg rails", "piece": None}
    peg["operations"][0].pop("cutter")
    floor.open_run(trays=2, product=peg, run="r2")

    lines = to_buy_in_words(floor.book, listed(floor), "r2")

    assert [line.partition(":")[0] for line in lines] == ["Hooks"]
    assert any("Ash plank" in line for line in to_buy_in_words(floor.book, listed(floor), "r1"))


def test_a_cutter_that_outlived_itself_is_asked_about(floor: Floor) -> None:
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load done", run="r1", load="cut/2")

    seen = everything_said(floor)

    assert "30 pieces, and it lasts 20: when was it changed? No change entered." in seen


def test_the_list_as_json_says_the_same(floor: Floor) -> None:
    record: dict[str, Any] = json.loads(json.dumps(shopping_record(listed(floor))))

    rows = {row["supply"]: row for row in record["rows"]}
    assert rows["Hooks"] == {
        "supply": "Hooks", "unit": "", "how": "short", "needed": 120, "there": 50, "missing": 70, "packets": 2, "buy": 100,
        "cost": 19.8, "runs": [{"run": "r1", "needed": 120, "covered": ["1", "2"], "short_at": "3"}],
    }  # fmt: skip
    assert (rows["Hard oil"]["how"], rows["Hard oil"]["there"]) == ("unknown", None)
    assert record["cutters"][0]["change_before"] == [{"run": "r1", "trays": ["4"]}]
    assert record["boards"][0]["buy"] == 3


def test_a_shop_without_money_buys_all_the_same(floor: Floor) -> None:
    list_ = listed(floor)
    book = replace(floor.book, money=Money())

    assert "Hooks: Buy 2 packets (100), 19.80" in to_buy_in_words(book, list_, "r1")
