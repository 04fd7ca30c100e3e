"""The Review screen, and the history that Trays asks for."""

import csv
import io
from dataclasses import replace
from datetime import timedelta

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.looking.glance import glance_at, runs_at_a_glance
from runboard.floor.looking.look_back import look_back_at
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from runboard.web.review import log
from runboard.web.review.page import at_a_glance
from runboard.words.facts import span_in_words
from tests import scenario
from tests.conftest import START, HandClock
from tests.web.test_shop_pages import words


@pytest.fixture(autouse=True)
def _cut(house: House, clock: HandClock) -> None:
    """A run whose first board was cut by Ann."""
    house.workshop.books.save(scenario.shop(), START)
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12}], name="=Rails"))
    for kind, minutes in (("load started", 6), ("machine started", 38), ("unloading started", 2), ("load done", 0)):
        event = new_event(house.workshop, kind, {}, run="r1", load="cut/1", person="ann")
        record_events(house.workshop, [event])
        clock.forward(minutes=minutes)


def test_the_runs_are_listed(client: FlaskClient) -> None:
    assert "=Rails" in words(client.get("/review"))


def test_each_run_stands_with_what_came_of_it_the_newest_first(
    client: FlaskClient, house: House, clock: HandClock
) -> None:
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12}], name="Newer"))

    said = words(client.get("/review"))

    assert said.index("Newer 0 of 12 good") < said.index("=Rails 0 of 12 good")


def test_of_an_open_run_the_list_has_no_time_of_a_piece(client: FlaskClient, house: House) -> None:
    (glance,) = runs_at_a_glance(house.workshop)
    known = replace(glance, good=4, a_piece=timedelta(minutes=9))

    assert at_a_glance(known) == "4 of 12 good"
    assert (
        at_a_glance(replace(known, run=replace(known.run, state="finished")))
        == "4 of 12 good, 9 min hands-on per piece"
    )


def test_noise_and_dust_lead_back_to_the_review(client: FlaskClient) -> None:
    assert '<a href="/review">‹ Review</a>' in client.get("/review/days").text


def test_good_pieces_and_the_hands_of_one_stand_in_the_list(client: FlaskClient, house: House) -> None:
    (glance,) = runs_at_a_glance(house.workshop)
    assert (glance.good, glance.a_piece) == (0, None)

    tray = replace(glance.run.trays["1"], good=4)
    later = glance_at(replace(glance.run, trays={**glance.run.trays, "1": tray}))

    assert later.good == 4
    assert span_in_words(later.a_piece) == "2 min"


def test_a_run_shows_its_hours_and_every_element(client: FlaskClient) -> None:
    text = words(client.get("/review/runs/r1/log"))

    assert "8 min hands-on" in text
    assert "machine time, CNC" in text
    assert "✓ measured" in text
    assert "10:00" in text and "2026" not in text


def test_the_log_leads_back_at_its_top_and_says_a_piece_as_the_review_does(
    client: FlaskClient, house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    study = look_back_at(house.workshop, "r1")
    with_good = replace(study, hours=replace(study.hours, good=3))
    monkeypatch.setattr(log, "look_back_at", lambda *_: with_good)

    page = client.get("/review/runs/r1/log")

    assert '<a href="/review/runs/r1">‹ =Rails</a>' in page.text.split("<h1>")[0]
    assert "8 min hands-on, 2½ min for each of 3 good pieces" in words(page)


def test_an_empty_review_teaches(client: FlaskClient, house: House) -> None:
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12}]))

    assert "Nothing has been entered for this run yet" in words(client.get("/review/runs/r2/log"))


def test_the_table_goes_to_a_spreadsheet(client: FlaskClient) -> None:
    answer = client.get("/review/runs/r1.csv")

    assert answer.content_type == "text/csv; charset=utf-8; header=present"
    rows = list(csv.DictReader(io.StringIO(answer.data.decode(), newline="")))
    assert [(row["element"], row["minutes"], row["person"]) for row in rows] == [
        ("setup", "4.0", "Ann"),
        ("loading", "2.0", "Ann"),
        ("machine", "38.0", ""),
        ("unloading", "2.0", "Ann"),
    ]
    assert rows[0]["run"] == "'=Rails"
    assert rows[0]["began"] == "2026-03-07 10:00:00+01:00"


def test_who_was_removed_is_somebody(client: FlaskClient, house: House) -> None:
    record = scenario.shop()
    record["people"][0] = {"key": "ann", "name": "somebody", "removed": True}
    house.workshop.books.save(record, START)

    assert "Ann" not in client.get("/review/runs/r1.csv").text


def test_the_history_of_a_tray_is_json(client: FlaskClient) -> None:
    answer = client.get("/runs/r1/trays/1/history")

    assert answer.json is not None
    assert [one["code"] for one in answer.json["entries"]][:2] == ["run opened", "load started"]
    assert answer.json["entries"][-1]["facts"] == {"step": "Cut", "who": "Ann"}
    assert answer.json["entries"][1]["at"].startswith("2026-03-07T09:00:00.")
    assert answer.json["entries"][1]["facts"]["who"] == "Ann"


@pytest.mark.parametrize("path", ["/runs/r9/trays/1/history", "/runs/r1/trays/9/history", "/review/runs/r9/log"])
def test_what_nobody_knows_is_not_found(client: FlaskClient, path: str) -> None:
    assert client.get(path).status_code == 404


def ben_cleans(house: House, clock: HandClock) -> None:
    """Ben, who is crew, works for ten minutes at the bench and for twenty at the sander, which has no extraction."""
    for kind, load, minutes in (
        ("load started", "clean/1", 10), ("load done", "clean/1", 0),
        ("load started", "sand:120/1", 20), ("load done", "sand:120/1", 0),
    ):  # fmt: skip
        record_events(house.workshop, [new_event(house.workshop, kind, {}, run="r1", load=load, person="ben")])
        clock.forward(minutes=minutes)


def with_figures(house: House, **figures: float) -> None:
    record = scenario.shop()
    for station in record["stations"]:
        station["noise_db"] = figures.get(station["key"])
    house.workshop.books.save(record, START)


def test_without_helpers_the_hours_have_one_column(client: FlaskClient) -> None:
    text = words(client.get("/review/runs/r1/log"))

    assert "Hands-on" in text
    assert "Helpers" not in text


def test_helpers_hours_stand_apart_on_the_page_and_in_the_table(
    client: FlaskClient, house: House, clock: HandClock
) -> None:
    ben_cleans(house, clock)

    text = words(client.get("/review/runs/r1/log"))
    rows = list(csv.DictReader(io.StringIO(client.get("/review/runs/r1.csv").text, newline="")))

    assert "Leads 8 min, helpers 30 min." in text
    assert "Hands-on, total" in text
    assert {(row["person"], row["hours_of"]) for row in rows} >= {("Ann", "lead"), ("Ben", "helper"), ("", "")}


@pytest.mark.parametrize(("said", "shown"), [({"name": "Zoe"}, "Zoe"), ({}, "helper")])
def test_a_guest_who_is_in_no_book_is_a_helper_by_the_name_they_gave(
    client: FlaskClient, house: House, clock: HandClock, said: dict[str, str], shown: str
) -> None:
    for kind, load, minutes in (("person came", "", 0), ("load started", "clean/1", 10), ("load done", "clean/1", 0)):
        body, run = (said, "") if kind == "person came" else ({}, "r1")
        event = new_event(house.workshop, kind, body, run=run, load=load, person="guest-1a2b3c4d")
        with house.workshop.log.write() as write:
            write.append(event, clock.now())
        clock.forward(minutes=minutes)

    rows = list(csv.DictReader(io.StringIO(client.get("/review/runs/r1.csv").text, newline="")))
    assert (shown, "helper") in {(row["person"], row["hours_of"]) for row in rows}
    assert shown in words(client.get("/review/days"))


def test_noise_and_dust_of_a_day_are_information(client: FlaskClient, house: House, clock: HandClock) -> None:
    with_figures(house, cnc=85, sander=95)
    ben_cleans(house, clock)

    text = words(client.get("/review/days"))

    assert "This is not a measurement." in text
    assert "Ann 10 %" in text  # 46 min of the CNC's 85 dB(A): hands at it, and watching it
    assert "Ben at least 42 %" in text  # 20 min of 95 dB(A)
    assert "because no level is written down: Ben 10 min at Bench. That does not mean quiet" in text
    assert "20 min 20 min" in text
    assert "safe" not in text.lower()


def test_a_dose_too_small_to_say_is_not_at_least_anything(client: FlaskClient, house: House, clock: HandClock) -> None:
    with_figures(house, sander=60)
    ben_cleans(house, clock)

    text = words(client.get("/review/days"))

    assert "Ben under 1 % (levels missing)" in text
    assert "at least under" not in text


def test_a_day_over_the_shops_limit_says_so_in_words(client: FlaskClient, house: House, clock: HandClock) -> None:
    with_figures(house, cnc=85, sander=105)

    ben_cleans(house, clock)

    assert "over: at least 423 %" in words(client.get("/review/days"))


def test_without_figures_the_noise_is_not_known(client: FlaskClient) -> None:
    assert "Ann not known" in words(client.get("/review/days"))


def test_nothing_done_lately_teaches(client: FlaskClient, clock: HandClock) -> None:
    clock.forward(days=8)

    assert "Nobody was at a station in the last seven days" in words(client.get("/review/days"))


def test_the_days_lead_to_the_cautions_and_show_published_limits(client: FlaskClient) -> None:
    answer = client.get("/review/days")

    assert 'href="/care"' in answer.text
    assert "western red cedar 0.5 www.osha.gov" in words(answer)
    assert 'href="/review/days"' in client.get("/review").text
