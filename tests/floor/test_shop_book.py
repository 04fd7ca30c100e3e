"""Saving the book: a new revision each time, nothing half-written, nothing lost to somebody else's save."""

import copy
from typing import Any

import pytest

from runboard.floor.changing.route_change import revise_route
from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.changing.shop_book import Record, book_record, change_book, save_book
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError
from tests.floor.fakes import Told, workshop
from tests.scenario import shop


def renamed(name: str, place: int = 0, part: str = "rooms") -> Record:
    record = shop()
    record[part][place]["name"] = name
    return record


def rename_job(record: Record) -> None:
    record["jobs"][0]["name"] = "Bins out"


def jobs_of(record: Record) -> object:
    return record["jobs"]


def test_a_save_is_the_next_revision_and_is_told() -> None:
    here = workshop(shop())

    book = save_book(here, renamed("Cellar"))

    assert (book.revision, here.book.rooms[0].name) == (2, "Cellar")
    assert isinstance(here.tell, Told)
    assert len(here.tell.seqs) == 1


def test_a_wrong_book_is_not_saved() -> None:
    here = workshop(shop())

    with pytest.raises(BookError):
        save_book(here, {**shop(), "units": "cubits"})

    assert book_record(here)["revision"] == 1


def test_a_whole_book_made_on_an_outdated_revision_is_refused() -> None:
    here = workshop(shop())
    save_book(here, renamed("Cellar"), seen=1)

    with pytest.raises(Refused, match="book outdated"):
        save_book(here, renamed("Loft"), seen=1)

    assert book_record(here)["rooms"][0]["name"] == "Cellar"


def test_a_change_goes_onto_the_latest_book() -> None:
    here = workshop(shop())
    save_book(here, renamed("Cellar"))

    change_book(here, 1, rename_job, jobs_of)

    record = book_record(here)
    assert (record["rooms"][0]["name"], record["jobs"][0]["name"]) == ("Cellar", "Bins out")


def test_a_change_of_what_somebody_else_changed_is_refused() -> None:
    here = workshop(shop())
    save_book(here, renamed("Sweep", part="jobs"))

    with pytest.raises(Refused, match="book outdated"):
        change_book(here, 1, rename_job, jobs_of)


def test_a_revision_that_nobody_knows_is_outdated() -> None:
    here = workshop(shop())

    with pytest.raises(Refused, match="book outdated"):
        change_book(here, 99, rename_job, jobs_of)


def test_a_station_stays_while_an_open_run_is_made_there() -> None:
    here = workshop(shop())
    run = open_run(here, Wish("rail", [{"line": "1", "pieces": 12}]))
    without = shop() | {"products": []}
    without["stations"] = [one for one in without["stations"] if one["key"] != "sander"]

    with pytest.raises(Refused, match="station in use"):
        save_book(here, without)
    record_events(here, [new_event(here, "run finished", {}, run=run)])

    assert save_book(here, without).station("sander") is None


def test_a_person_whose_hands_are_at_work_cannot_be_removed() -> None:
    here = workshop(shop())
    record_events(here, [new_event(here, "job started", {"job": "bins"}, person="ann")])
    without = shop()
    without["people"][0]["removed"] = True

    with pytest.raises(Refused, match="person at work"):
        save_book(here, without)


def engraving(record: Record | None = None) -> Workshop:
    """The laser runs."""
    here = workshop(copy.deepcopy(record or shop()))
    run = open_run(here, Wish("rail", [{"line": "1", "pieces": 12}]))
    about = {"run": run, "load": "engrave/1", "person": "ann"}
    record_events(here, [new_event(here, "machine started", {"minutes": 20}, **about)])
    return here


@pytest.mark.parametrize(
    "change", [{"kind": "bench"}, {"room": "shop"}, {"watch_from": ["bench"]}, {"watch_every_minutes": 4}]
)
def test_how_a_machine_is_watched_stays_while_it_runs(change: dict[str, Any]) -> None:
    here = engraving()
    after = shop()
    if "kind" in change:
        after["products"] = []
    after["stations"] = [one | (change if one["key"] == "laser" else {}) for one in after["stations"]]

    with pytest.raises(Refused, match="station runs"):
        save_book(here, after)
    record_events(here, [new_event(here, "machine ended", {}, run="r1", load="engrave/1", person="ann")])

    assert save_book(here, after).revision == 2


def test_the_same_stations_in_another_order_change_nothing_of_how_a_running_machine_is_watched() -> None:
    before = shop()
    (laser,) = (one for one in before["stations"] if one["key"] == "laser")
    laser["watch_from"] = ["bench", "sander"]
    here = engraving(before)
    laser |= {"watch_from": ["sander", "bench"], "noise_db": 70}

    assert save_book(here, before).revision == 2


@pytest.mark.parametrize(("station", "minutes"), [("laser", 5.5), ("cnc", 31)])
def test_looks_that_are_too_far_apart_are_refused_and_nothing_is_stored(station: str, minutes: float) -> None:
    here = workshop(shop())
    after = shop()
    after["stations"] = [
        one | ({"watch_every_minutes": minutes} if one["key"] == station else {}) for one in after["stations"]
    ]
    of_step = copy.deepcopy(shop())
    next(one for one in of_step["products"][0]["operations"] if one["station"] == station)["watch_every_minutes"] = (
        minutes
    )

    for record in (after, of_step):
        with pytest.raises(BookError, match="asked at least every"):
            save_book(here, record)

    assert here.book.revision == 1


def test_looks_that_are_too_far_apart_are_refused_in_an_open_runs_route() -> None:
    here = workshop(shop())
    run = open_run(here, Wish("rail", [{"line": "1", "pieces": 12}]))

    def seldom(product: dict[str, Any]) -> None:
        product["operations"][0]["watch_every_minutes"] = 45

    with pytest.raises(BookError, match="asked at least every"):
        revise_route(here, run, seldom, "1")
