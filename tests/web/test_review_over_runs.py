"""All runs beside one another, on the demo: what each product's say, one time over all of them, and tables to save."""

import io
import json
import re
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from zipfile import ZipFile

import pytest
from flask.testing import FlaskClient

from runboard.app import build
from runboard.demo.make import make_demo
from runboard.demo.phone import HandClock
from runboard.house import House, Settings
from runboard.review.tables import COLUMNS
from tests.web.test_shop_pages import words

NOW = datetime(2026, 6, 3, 18, 40, tzinfo=UTC)
PAGE = "/review/over-runs"


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[House]:
    folder: Path = tmp_path_factory.mktemp("demo") / "shop"
    make_demo(folder, NOW, zone="Europe/Berlin")
    built = build(Settings(folder, HandClock(NOW), open_to_all=True))
    built.app.testing = True
    yield built
    built.close()


def words_in(part: str) -> str:
    """A part of a page as text."""
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", part))


@pytest.fixture
def seen(demo: House) -> FlaskClient:
    return demo.app.test_client()


def test_each_product_says_its_last_run_and_the_average(seen: FlaskClient) -> None:
    said = words(seen.get(PAGE))

    assert "Entry key rails" in said and "Serving boards" in said
    assert re.search(
        r"[\d.]+ good pieces per hands-on hour in Key rails, third batch; [\d.]+ on average over 3 runs", said
    )
    assert "of all pieces over 3 runs" in said
    assert re.search(r"\d\d of 30 started came good in Key rails, third batch, \d\d %", said)
    assert re.search(r"Key rails, third batch was done .+ later than the plan at its opening promised", said)


def test_the_promise_says_what_it_counts_on(seen: FlaskClient) -> None:
    said = words(seen.get(PAGE))

    assert "That plan had everyone there in their usual hours." in said


def test_how_long_each_run_took_and_hands_a_piece_stand_beside_the_promise(seen: FlaskClient) -> None:
    said = words(seen.get(PAGE))

    assert re.search(r"Key rails, third batch took \d days.* from opening to done; .+ on average over 3 runs", said)
    assert re.search(r"\d+ min.* hands-on per good piece in Key rails, third batch; .+ on average over 3 runs", said)


def test_from_which_run_on_a_change_holds_stands_there(seen: FlaskClient) -> None:
    page = seen.get(PAGE).text

    rails = words_in(page.split("<h2>Entry key rails</h2>")[1].split("</section>")[0])
    assert re.search(r"From Key rails, third batch: .*\b9\b", rails)
    row = words_in(page.split('<a href="/review/runs/r4">')[1].split("</th>")[0])
    assert re.search(r"from here: .*\b9\b", row)


def test_every_time_that_was_measured_can_be_chosen_by_its_operation(seen: FlaskClient) -> None:
    page = seen.get(PAGE).text

    assert re.findall(r'<optgroup label="([^"]+)">', page) == ["Entry key rails", "Serving boards"]
    assert re.findall(r"<option[^>]* selected>([^<]+)", page) == ["Fit hooks, hand time"]
    assert re.search(
        r"Of all these times, this one changes the newest run most: \d+ min more than the route says\.",
        words(seen.get(PAGE)),
    )


def test_no_two_times_to_choose_are_called_alike(seen: FlaskClient) -> None:
    names = re.findall(r"<option[^>]*>([^<]+)", seen.get(PAGE).text)

    assert "Sand 120, hand time (Serving boards)" in names
    assert len(names) == len(set(names))


def test_what_stands_on_the_chart_is_written_as_below_it(seen: FlaskClient) -> None:
    page = seen.get(f"{PAGE}?element=rails|hooks|hand").text.replace("\u00a0", " ")

    average = re.search(r"<p>([^<]+) on average over \d+ times", page)
    assert average is not None and f">{average[1]}</text>" in page


def test_a_chart_is_said_in_plain_words_and_how_it_is_reckoned_one_press_down(seen: FlaskClient) -> None:
    page = seen.get(PAGE).text

    plain, method = page.split('id="element"')[1].split("How the limits are worked out")
    assert "deviation" not in plain and "where chance alone takes them" in plain
    assert "Three standard deviations" in method


def test_a_product_with_one_run_has_words_and_no_chart(seen: FlaskClient) -> None:
    boards = seen.get(PAGE).text.split("<h2>Serving boards</h2>")[1].split("</section>")[0]

    assert "<svg" not in boards
    assert "good pieces per hands-on hour in Serving boards." in boards


def test_every_run_stands_in_the_table_and_leads_to_its_review(seen: FlaskClient) -> None:
    page = seen.get(PAGE).text

    assert re.findall(r'<a href="/review/runs/(r\d)">', page) == ["r4", "r2", "r1", "r3"]


def test_the_time_that_moved_furthest_is_shown_with_how_its_estimate_went(seen: FlaskClient) -> None:
    said = words(seen.get(PAGE))

    assert "Fit hooks, hand time" in said
    went = said.split("How the estimate changed")[1]
    assert re.search(r"As the route says – 2 min .+ first batch .+ second batch .+ third batch", went)


def test_another_time_can_be_asked_for(seen: FlaskClient) -> None:
    page = seen.get(f"{PAGE}?element=rails|cut|machine")

    assert '<option value="rails|cut|machine" selected>' in page.text
    assert "Cut, machine time" in words(page)


def test_a_time_that_nobody_measured_shows_the_usual_one(seen: FlaskClient) -> None:
    assert words(seen.get(f"{PAGE}?element=no|such|thing")) == words(seen.get(PAGE))


def test_the_log_says_how_many_pieces_were_done_again(seen: FlaskClient) -> None:
    said = words(seen.get("/review/runs/r2/log"))

    assert "Fit hooks 5 27, two done again" in said
    assert "Inspect and pack 8 25 55 min" in said


def test_tables_are_saved_as_json_and_as_a_csv_each(seen: FlaskClient) -> None:
    as_json, as_zip = seen.get("/review/tables.json"), seen.get("/review/tables.zip")

    assert len(json.loads(as_json.data)["runs"]) == 5
    with ZipFile(io.BytesIO(as_zip.data)) as found:
        assert found.namelist() == [f"{name}.csv" for name in COLUMNS]
    assert as_zip.headers["Content-Disposition"] == "attachment; filename=runboard-tables.zip"
    assert as_json.headers["Cache-Control"] == "no-store"


def test_a_shop_without_a_finished_run_is_told_what_will_stand_here(client: FlaskClient) -> None:
    assert "No run is finished yet" in words(client.get(PAGE))
