"""Questions before a run: asked by a form or a file, answered on the same page, kept by a lead's press."""

import io
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any

import pytest
from flask.testing import FlaskClient

from runboard.house import House
from runboard.plan.before.kind import File, Keep, Kind, Told
from runboard.plan.before.kinds import KINDS
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.record import Length, Of
from runboard.words.before import sayings
from runboard.words.before.said import Download, Said, Table
from tests import scenario


@dataclass(frozen=True)
class Boards:
    pieces: Annotated[int, Of(least=1, most=100)] = 10
    length: Annotated[Length, Of(least=1)] = 300.0
    station: Annotated[str | None, Of(refers="station")] = None
    product: Annotated[str | None, Of(refers="product")] = None


def _answer(book: Book, question: Boards, file: File | None, told: Told) -> float:
    if file is not None and b"\0" in file.content:
        raise Refused("looked-at file unknown", name=file.name)
    return question.pieces * question.length + (len(file.content) if file else 0)


def _begin(book: Book, keys: Mapping[str, str]) -> Boards:
    return Boards(product=keys.get("product"))


def _keeps(book: Book, question: Boards, answer: float) -> list[Keep]:
    def put(record: dict[str, Any]) -> None:
        record["name"] = f"{answer:g} mm"

    return [Keep("name", "part", put)]


def _said(kind: Kind, book: Book, question: Boards, answer: float) -> Said:
    table = Table("", ("Piece", "mm"), (("rail", f"{question.length:g}"),), frozenset({1}))
    file = Download("cuts.txt", "text/plain", f"{answer:g}", "The cuts")
    return Said(
        f"{answer:g} mm in all", ("A line.",), ("Line 3: <b>odd</b>",), ("Mind the offcut.",), (table,), (file,)
    )


KIND = Kind("boards", Boards, _answer, _begin, _keeps, (".cut",))


@pytest.fixture(autouse=True)
def boards(monkeypatch: pytest.MonkeyPatch, small_shop: None) -> None:
    monkeypatch.setitem(KINDS, "boards", KIND)  # type: ignore[arg-type]
    monkeypatch.setattr("runboard.web.before.page.said_of", _said)


def asked(client: FlaskClient, **texts: Any) -> Any:
    posted = client.post("/before/boards", data={"asked": "yes", "pieces": "10", "length": "300", **texts})
    return client.get(posted.location) if posted.status_code == 303 else posted


def test_every_kind_is_listed_and_begins_with_what_the_keys_name(client: FlaskClient) -> None:
    assert b"/before/boards" in client.get("/before").data

    form = client.get("/before/boards?product=rail").get_data(as_text=True)

    assert '<option value="rail" selected>' in form


def test_a_question_is_answered_on_the_page_that_asked_it(client: FlaskClient) -> None:
    page = asked(client, pieces="4")

    text = page.get_data(as_text=True)
    assert "1200\u00a0mm in all" in text
    assert "Line 3: &lt;b&gt;odd&lt;/b&gt;" in text
    assert 'name="pieces" value="4"' in text
    assert 'data-label="mm"' in text


def test_what_is_wrong_stands_at_its_field_and_nothing_typed_is_lost(client: FlaskClient) -> None:
    page = asked(client, pieces="many", length="412")

    text = page.get_data(as_text=True)
    assert page.status_code == 422
    assert 'id="pieces-error"' in text
    assert 'value="many"' in text and 'value="412' in text


def test_a_file_that_was_sent_once_is_asked_about_again_without_sending_it(client: FlaskClient) -> None:
    first = client.post(
        "/before/boards",
        data={"asked": "yes", "pieces": "1", "length": "1", "file": (io.BytesIO(b"12345"), "../a rail.cut")},
    )
    text = client.get(first.location).get_data(as_text=True)
    digest = text.partition('name="file.digest" value="')[2][:64]

    again = asked(client, pieces="2", length="1", **{"file.digest": digest, "file.name": "a rail.cut"})

    assert "6\u00a0mm in all" in text
    assert "a rail.cut" in text and "../" not in text
    assert "7\u00a0mm in all" in again.get_data(as_text=True)


@pytest.mark.parametrize(
    ("content", "says"),
    [(b"", "rail.cut is empty"), (b"a\0b", "rail.cut can’t be read here")],
    ids=["empty", "not readable"],
)
def test_a_bad_file_gets_one_sentence(client: FlaskClient, content: bytes, says: str) -> None:
    sent = {"asked": "yes", "pieces": "1", "length": "1", "file": (io.BytesIO(content), "rail.cut")}
    page = client.post("/before/boards", data=sent)
    if page.status_code == 303:
        page = client.get(page.location)

    assert page.status_code == 422
    assert says in page.get_data(as_text=True)


def test_a_file_that_is_too_large_gets_one_sentence(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("runboard.floor.looking.answers.A_PROGRAM", 1_000)

    page = client.post("/before/file", data={"product": "rail", "file": (io.BytesIO(b"x" * 2_000), "rail.cut")})

    assert page.status_code == 422
    assert "too much to read" in page.get_data(as_text=True)


def test_a_file_dropped_on_a_product_goes_to_the_kind_that_reads_it(client: FlaskClient) -> None:
    posted = client.post("/before/file", data={"product": "rail", "file": (io.BytesIO(b"12345"), "RAIL.CUT")})
    text = client.get(posted.location).get_data(as_text=True)

    unknown = client.post("/before/file", data={"product": "rail", "file": (io.BytesIO(b"12345"), "rail.xyz")})

    assert "3005\u00a0mm in all" in text and '<option value="rail" selected>' in text
    assert unknown.status_code == 422 and "rail.xyz can’t be read here" in unknown.get_data(as_text=True)


def test_a_part_is_kept_once_by_a_press_and_said(house: House, client: FlaskClient) -> None:
    seen = house.workshop.books.revision()
    asking = {"asked": "yes", "pieces": "4", "length": "300", "keep": "name", "seen": str(seen)}

    kept = client.post("/before/boards/keep", data=asking)
    twice = client.post("/before/boards/keep", data=asking)

    assert "Saved." in client.get(kept.location).get_data(as_text=True)
    assert house.workshop.books.latest().name == "1200 mm"
    assert house.workshop.books.revision() == seen + 1
    assert twice.status_code == 422 and "Somebody changed the shop" in twice.get_data(as_text=True)


def test_nothing_is_kept_from_a_page_of_an_older_book(house: House, client: FlaskClient) -> None:
    seen = house.workshop.books.revision()
    house.workshop.books.save({**scenario.shop(), "name": "Another"}, house.workshop.clock.now())

    asking = {"asked": "yes", "pieces": "4", "length": "300", "keep": "name", "seen": str(seen)}
    stale = client.post("/before/boards/keep", data=asking)

    assert stale.status_code == 422
    assert house.workshop.books.latest().name == "Another"


def test_a_part_that_the_answer_does_not_have_is_not_kept(house: House, client: FlaskClient) -> None:
    asking = {"asked": "yes", "pieces": "4", "length": "300", "keep": "all of it", "seen": "1"}

    assert client.post("/before/boards/keep", data=asking).status_code == 422


def test_an_answer_offers_its_files(client: FlaskClient) -> None:
    address = client.post("/before/boards", data={"asked": "yes", "pieces": "4", "length": "300"}).location

    query = address.partition("?")[2]
    assert client.get(f"/before/boards/files/0?{query}").data == b"1200"
    assert client.get(f"/before/boards/files/1?{query}").status_code == 404
    assert client.get("/before/nothing").status_code == 404


def test_said_of_loads_the_words_of_a_kind_by_its_name() -> None:
    with pytest.raises(ModuleNotFoundError, match=r"runboard.words.before.boards"):
        sayings.said_of(KIND, Book(), Boards(), 1.0)


def test_a_question_too_long_for_an_address_is_answered_where_it_was_sent(
    client: FlaskClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("runboard.web.before.page.LONGEST_ADDRESS", 20)

    page = client.post("/before/boards", data={"asked": "yes", "pieces": "4", "length": "300"})

    assert page.status_code == 200
    assert "1200\u00a0mm in all" in page.text


def test_what_an_address_says_beside_the_question_is_passed_over(client: FlaskClient) -> None:
    page = client.get("/before/boards?asked=yes&pieces=4&length=300&noise=1&pieces.0.more=2&kept=<b>")

    assert "1200\u00a0mm in all" in page.text
    assert "noise" not in page.text and "<b>" not in page.text


@pytest.mark.parametrize("digest", ["../shop.db", "a" * 64, "%00", "x" * 5000])
def test_a_file_that_is_not_there_is_asked_for_once_more(client: FlaskClient, digest: str) -> None:
    page = asked(client, **{"file.digest": digest, "file.name": "rail.cut"})

    assert page.status_code == 422
    assert "Choose it again" in page.text
