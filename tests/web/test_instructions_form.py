"""What a helper is told, written through the operation's form: steps, and the same lines in other languages."""

from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.datastructures import MultiDict

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.changing.shop_book import book_record
from runboard.house import House
from runboard.web.forms.operation import spread_steps
from tests import scenario
from tests.conftest import START
from tests.web.test_shop_pages import as_a_browser_posts, inputs, words

CUT = "/plan/products/rail/operations/cut"
LINES = ("Lay the board on the bed.", "Clamp it at four edges.", "Start, and stay.")


@pytest.fixture(autouse=True)
def _book(house: House) -> None:
    record = scenario.shop()
    record["products"][0]["operations"][0] |= {
        "instructions": [{"text": line, "picture": None} for line in LINES],
        "checklist": ["Collet tight"],
        "cautions": ["stay and watch"],
        "checks": [{"key": "width", "text": "Width of the rail"}],
    }
    house.workshop.books.save(record, START)


def cut(house: House) -> dict[str, Any]:
    found: dict[str, Any] = book_record(house.workshop)["products"][0]["operations"][0]
    return found


def save(client: FlaskClient, **said: str) -> None:
    """Save the form with ``said``, points in names written ``__``."""
    form: dict[str, Any] = as_a_browser_posts(client.get(CUT).text)
    answer = client.post(CUT, data=form | {name.replace("__", "."): text for name, text in said.items()})
    assert answer.status_code == 303, words(answer)


def texts(operation: dict[str, Any]) -> list[str]:
    return [one["text"] for one in operation["instructions"]]


# steps


def test_several_lines_become_several_steps(client: FlaskClient, house: House) -> None:
    save(client, instructions__0__text="Lay the board down.\r\n\r\nFace side up. ")

    assert texts(cut(house)) == ["Lay the board down.", "Face side up.", *LINES[1:]]


def test_a_picture_stays_with_the_first_of_several_lines() -> None:
    typed = MultiDict(
        [
            ("instructions.2.text", "One\nTwo"),
            ("instructions.2.picture", "a.jpg"),
            ("instructions.7.text", "Three"),
            ("instructions.7.picture", "b.jpg"),
            ("name", "Cut"),
        ]
    )

    assert list(spread_steps(typed).items()) == [
        ("name", "Cut"),
        ("instructions.0.text", "One"),
        ("instructions.0.picture", "a.jpg"),
        ("instructions.1.text", "Two"),
        ("instructions.2.text", "Three"),
        ("instructions.2.picture", "b.jpg"),
    ]


def test_a_step_is_taken_out(client: FlaskClient, house: House) -> None:
    save(client, instructions__1__gone="yes")

    assert texts(cut(house)) == [LINES[0], LINES[2]]


def test_a_picture_without_words_asks_for_them(client: FlaskClient, house: House) -> None:
    form: dict[str, Any] = as_a_browser_posts(client.get(CUT).text)

    answer = client.post(CUT, data=form | {"instructions.3.picture": "0" * 64 + ".jpg"})

    assert 'id="instructions.3.text-error">Write something here.' in answer.text


# other languages


def test_a_translation_is_kept_line_by_line(client: FlaskClient, house: House) -> None:
    save(
        client,
        translations__de__name="Fräsen",
        translations__de__instructions="Brett auflegen.\r\nAn vier Kanten spannen.\r\nStarten, dabei bleiben.",
        translations__de__checks="Breite der Leiste",
    )

    assert cut(house)["translations"] == {
        "de": {
            "name": "Fräsen",
            "instructions": ["Brett auflegen.", "An vier Kanten spannen.", "Starten, dabei bleiben."],
            "checklist": [],
            "cautions": [],
            "checks": ["Breite der Leiste"],
        }
    }


def test_a_line_left_empty_stays_as_it_is_and_the_next_keeps_its_place(client: FlaskClient, house: House) -> None:
    save(client, translations__fr__instructions="\r\n\r\nDémarrer et rester.")

    assert cut(house)["translations"]["fr"]["instructions"] == [*LINES[:2], "Démarrer et rester."]


def test_a_form_with_translations_saved_unread_changes_nothing(client: FlaskClient, house: House) -> None:
    save(client, translations__es__instructions="Colocar el tablero.", translations__es__name="Fresar")
    before = cut(house)

    save(client)

    assert cut(house) == before


def test_a_language_in_which_nothing_is_said_is_not_kept(client: FlaskClient, house: House) -> None:
    save(client, translations__es__name="Fresar")

    save(client, translations__es__name=" ")

    assert cut(house)["translations"] == {}


def test_the_lines_to_translate_stand_beside_and_too_many_are_pointed_out(client: FlaskClient) -> None:
    save(client, translations__de__checklist="Spannzange fest\r\nAbsaugung an")

    answer = client.get(CUT)

    assert "<li>Collet tight</li>" in answer.text
    assert "More lines here than the operation has: Start list." in words(answer)


def test_a_translation_that_is_too_long_is_said_in_its_section(client: FlaskClient) -> None:
    form: dict[str, Any] = as_a_browser_posts(client.get(CUT).text)

    answer = client.post(CUT, data=form | {"translations.de.instructions": "x" * 2001})

    assert answer.status_code == 422
    assert "<details open><summary><h2>In German</h2>" in answer.text
    assert 'id="translations.de.instructions-error"' in answer.text


# watching


def test_an_operation_may_ask_for_a_look_more_often_than_its_station(client: FlaskClient, house: House) -> None:
    save(client, watch_every_minutes="90 s")

    assert cut(house)["watch_every_minutes"] == 1.5


@pytest.mark.parametrize("home", ["products/rail", "runs/r1"])
def test_an_operation_that_would_be_looked_at_too_seldom_is_refused_at_its_field(
    client: FlaskClient, house: House, home: str
) -> None:
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 8}]))
    address = f"/plan/{home}/operations/cut"
    form: dict[str, Any] = as_a_browser_posts(client.get(address).text)

    answer = client.post(address, data=form | {"watch_every_minutes": "31"})

    assert answer.status_code == 422
    assert '<p class="error" id="watch_every_minutes-error">Whoever watches CNC is asked at least' in answer.text
    assert inputs(answer)["watch_every_minutes"] == "31"
