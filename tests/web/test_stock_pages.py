"""Boards in the shop's book, what a product is made of, and the question how many boards it takes: by forms, to the end."""

import io
from dataclasses import replace
from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.house import House
from runboard.plan.before.kinds import KINDS
from runboard.plan.stock.kind import STOCK
from tests.core.test_dxf import drawing, rail

ASH = {"name": "Ash board", "length": "2000", "width": "20 cm", "thickness": "24", "wood": "ash", "grain": "length"}
MADE_OF = {"piece.length": "300", "piece.width": "90", "piece.thickness": "20", "piece.gap": "4", "piece.margin": "5"}


@pytest.fixture(autouse=True)
def at_once(monkeypatch: pytest.MonkeyPatch, small_shop: None) -> None:
    """Answers come without a child process."""
    for name in ("stock", "lengths"):
        monkeypatch.setitem(KINDS, name, replace(KINDS[name], is_long=False))  # type: ignore[arg-type]


def save_board(client: FlaskClient, **said: str) -> Any:
    return client.post("/shop/stocks/new", data={**ASH, "have": "2", "for_sale": "yes", **said})


def save_product(client: FlaskClient, house: House, **said: str) -> Any:
    seen = str(house.workshop.books.revision())
    about = {"name": "Entry key rails", "pieces_a_tray": "5", "wood": "ash", "piece.grain": "length", "seen": seen}
    return client.post("/plan/products/rail", data={**about, **said})


def test_a_board_is_written_down_by_its_form(client: FlaskClient, house: House) -> None:
    assert save_board(client, price="30").status_code == 303

    stock = house.workshop.books.latest().stocks[0]
    assert (stock.key, stock.length, stock.width, stock.have, stock.for_sale, stock.price) == (
        "ash-board", 2000, 200, 2, True, 30,
    )  # fmt: skip


def test_a_board_of_which_nobody_says_how_many_are_there_is_not_at_hand(client: FlaskClient, house: House) -> None:
    save_board(client, have="", for_sale="")

    assert house.workshop.books.latest().stocks[0].have == 0


def test_what_a_product_is_made_of_is_said_on_its_page(client: FlaskClient, house: House) -> None:
    assert save_product(client, house, **MADE_OF).status_code == 303

    piece = house.workshop.books.latest().products[0].piece
    assert piece is not None and (piece.length, piece.width, piece.thickness, piece.gap, piece.tabs) == (
        300,
        90,
        20,
        4,
        0,
    )
    assert "300 mm" in client.get("/plan/products/rail").get_data(as_text=True)


def test_a_product_without_a_size_is_made_of_nothing_that_is_known(client: FlaskClient, house: House) -> None:
    save_product(client, house, **MADE_OF)

    assert save_product(client, house, **{"piece.gap": "4"}).status_code == 303
    assert house.workshop.books.latest().products[0].piece is None


def test_a_size_that_is_said_in_part_is_asked_for(client: FlaskClient, house: House) -> None:
    page = save_product(client, house, **{"piece.length": "300"})

    assert page.status_code == 422
    assert 'id="piece.width-error"' in page.get_data(as_text=True)


CHOICES = {"asked": "yes", "grain": "length", "own_grain": "length", "aim": "at hand"}


def ask(client: FlaskClient, **said: Any) -> str:
    posted = client.post("/before/stock", data={**CHOICES, "pieces": "40", "product": "rail", **said})
    assert posted.status_code == 303, posted.get_data(as_text=True)
    return str(posted.location)


def test_the_question_begins_with_the_product_and_is_answered_with_a_drawing(client: FlaskClient, house: House) -> None:
    save_board(client, price="30")
    save_product(client, house, **MADE_OF)

    form = client.get("/before/stock?product=rail").get_data(as_text=True)
    text = client.get(ask(client)).get_data(as_text=True)

    assert 'name="length" value="300 mm"' in form
    assert "Take 4 × Ash board for 40 pieces. Buy 2 × Ash board." in text
    assert text.count('class="piece"') == 12
    assert "No more fit, in any layout" in text


def test_pieces_along_the_grain_are_not_waited_for(
    client: FlaskClient, house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(KINDS, "stock", STOCK)
    save_board(client)
    save_product(client, house, **MADE_OF)

    assert "Take 4 × Ash board for 40 pieces." in client.get(ask(client)).get_data(as_text=True)


def test_how_many_a_board_holds_is_taken_into_the_route_with_one_press(client: FlaskClient, house: House) -> None:
    save_board(client)
    save_product(client, house, **MADE_OF)
    address = ask(client)

    text = client.get(address).get_data(as_text=True)
    seen = str(house.workshop.books.revision())
    kept = client.post(
        "/before/stock/keep",
        data={**CHOICES, "pieces": "40", "product": "rail", "keep": "board cut", "seen": seen},
    )

    assert "Use 12 pieces per board at Cut" in text
    assert house.workshop.books.latest().products[0].operations[0].passes[0].pieces == 12
    text = client.get(kept.location).get_data(as_text=True)
    assert "Cut now plans with 12 pieces per board." in text
    assert "Use 12 pieces per board at Cut" not in text


def test_what_was_kept_is_said_and_stands_on_the_page_of_the_product(client: FlaskClient, house: House) -> None:
    save_board(client)
    made_of = {"length": "300", "width": "90", "thickness": "20", "gap": "4", "stocks": "ash-board"}
    seen = str(house.workshop.books.revision())

    kept = client.post(
        "/before/stock/keep",
        data={**CHOICES, "pieces": "40", "product": "rail", **made_of, "keep": "piece", "seen": seen},
    )
    text = client.get(kept.location).text.replace("\u00a0", " ")
    page = client.get("/plan/products/rail").text.replace("\u00a0", " ")

    assert "is now made of 300 mm × 90 mm × 20 mm, with a gap of 4 mm." in text
    assert "Keep as material" not in text
    assert "Made of 300 mm × 90 mm × 20 mm, gap 4 mm, from Ash board." in page


def test_a_drawing_that_is_dropped_on_a_product_is_laid_out(client: FlaskClient, house: House) -> None:
    save_board(client)
    file = (io.BytesIO(drawing(rail)), "rail.dxf")

    dropped = client.post("/before/file", data={"product": "rail", "file": file})
    text = client.get(dropped.location).get_data(as_text=True)

    assert "Take 1 × Ash board for one piece." in text
    assert "300 mm by 90 mm" in text


def test_a_cut_list_is_asked_row_by_row(client: FlaskClient) -> None:
    save_board(client)
    rows = {"lengths.0.length": "600", "lengths.0.pieces": "4", "lengths.1.length": "190", "lengths.1.pieces": "2"}

    posted = client.post("/before/lengths", data={**CHOICES, "gap": "3", **rows})
    text = client.get(posted.location).get_data(as_text=True)

    assert "Take 2 × Ash board. All are in stock." in text
    assert text.count('class="piece"') >= 3
