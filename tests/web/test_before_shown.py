"""How an answer is laid out: cautions first, few doubts open, folded tables, many presses of one sort as one choice."""

import html
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Annotated, Any

import pytest
from flask.testing import FlaskClient

from runboard.house import House
from runboard.plan.before.kind import File, Keep, Kind, Told
from runboard.plan.before.kinds import KINDS
from runboard.shop.book import Book
from runboard.shop.record import Of
from runboard.web.before.presses import presses_of
from runboard.words.before.said import Said, Table


@dataclass(frozen=True)
class Rails:
    pieces: Annotated[int, Of(least=1, most=100)] = 10


def _answer(book: Book, question: Rails, file: File | None, told: Told) -> int:
    return question.pieces


def _begin(book: Book, keys: Mapping[str, str]) -> Rails:
    return Rails()


def _keeps(book: Book, question: Rails, answer: int) -> list[Keep]:
    """One press of a sort of its own, and as many alike as pieces are asked for."""

    def naming(name: str) -> Callable[[dict[str, Any]], None]:
        def put(record: dict[str, Any]) -> None:
            record["name"] = name

        return put

    alike = [Keep(f"sheet {at}", "sheet", naming(f"Shop {at}"), {"step": f"Step {at}"}) for at in range(answer)]
    return [Keep("own", "part", naming("Own")), *alike]


KIND = Kind("rails", Rails, _answer, _begin, _keeps)
ASKED = "/before/rails?asked=yes&pieces=4"
SAID = Said("All in order", ("A line.",))


@pytest.fixture
def says(monkeypatch: pytest.MonkeyPatch, small_shop: None) -> Callable[[Said], None]:
    monkeypatch.setitem(KINDS, "rails", KIND)

    def say(said: Said) -> None:
        monkeypatch.setattr("runboard.web.before.page.said_of", lambda *_: said)

    say(SAID)
    return say


def page(client: FlaskClient, address: str = ASKED) -> str:
    return html.unescape(client.get(address).get_data(as_text=True))


@pytest.mark.parametrize(("doubts", "is_open"), [(1, True), (3, True), (4, False)])
def test_few_doubts_are_read_at_once_and_many_by_a_press(
    client: FlaskClient, says: Callable[[Said], None], doubts: int, is_open: bool
) -> None:
    says(replace(SAID, doubts=tuple(f"Doubt {at}" for at in range(doubts)), cautions=("It tears out.",)))

    shown = page(client)

    assert ("<details open><summary>Check" in shown) is is_open
    assert "may be otherwise" not in shown
    assert shown.index("It tears out.") < shown.index("A line.") < shown.index("Doubt 0")


def test_a_folded_table_opens_by_its_title(client: FlaskClient, says: Callable[[Said], None]) -> None:
    costs = Table("What it costs", ("Cost", "Amount"), (("Ash", "12.00"),), frozenset({1}), folded=True)
    says(replace(SAID, tables=(costs, replace(costs, title="Prices", folded=False))))

    shown = page(client)

    assert "<summary>What it costs</summary>" in shown
    assert "<caption>Prices</caption>" in shown
    assert shown.count("<details") == 1


def test_many_presses_of_one_sort_are_one_choice_with_one_button(
    client: FlaskClient, house: House, says: Callable[[Said], None]
) -> None:
    shown = page(client)
    choice = re.search(r'<select[^>]*name="keep".*?</select>', shown, re.DOTALL)
    assert choice is not None
    offered = re.findall(r'<option value="([^"]*)">', choice[0])

    kept = client.post("/before/rails/keep", data={"asked": "yes", "pieces": "4", "keep": offered[2], "seen": "1"})

    assert offered == ["sheet 0", "sheet 1", "sheet 2", "sheet 3"]
    assert shown.count('<button class="full" name="keep"') == 1
    assert kept.status_code == 303
    assert house.workshop.books.latest().name == "Shop 2"


def test_three_presses_of_one_sort_stay_buttons(client: FlaskClient, says: Callable[[Said], None]) -> None:
    shown = page(client, "/before/rails?asked=yes&pieces=3")

    assert '<select id="keep' not in shown
    assert shown.count('<button class="full" name="keep"') == 4


def test_what_all_choices_begin_with_stands_above_them() -> None:
    keeps = [Keep(str(at), "sheet", lambda record: None) for at in range(4)]

    (form,) = presses_of(keeps, ["Put it into Cut", "Put it into Sand", "Put it into Sand again", "Put it into Oil"])
    (unlike,) = presses_of(keeps, ["Cut", "Cut it", "Sand", "Oil"])

    assert form.label == "Put it into"
    assert [words for _, words in form.choices] == ["Cut", "Sand", "Sand again", "Oil"]
    assert (unlike.label, unlike.choices[1]) == ("", ("1", "Cut it"))
