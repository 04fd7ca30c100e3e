"""A machine's end and a wait, for the calendar of somebody's phone."""

from datetime import timedelta

import pytest
from flask.testing import FlaskClient
from icalendar import Calendar, Event

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from tests.conftest import HandClock
from tests.scenario import shop


@pytest.fixture
def running(house: House) -> House:
    """The CNC runs for twenty minutes, tray 1 is oiled and dries."""
    workshop = house.workshop
    record = shop()
    record["products"][0]["operations"][4]["wait"]["latest_minutes"] = 900
    workshop.books.save(record, workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 30}], start=30), "ann")
    for kind, body, load in (
        ("machine started", {"minutes": 20}, "cut/1"),
        ("load done", {"counts": {"4": {"good": 5}}}, "oil/4"),
    ):
        record_events(workshop, [new_event(workshop, kind, body, run="r1", load=load, person="ann")])
    return house


def event_at(client: FlaskClient, address: str) -> Event:
    """What a phone gets that follows the page's link."""
    answer = client.get(address, follow_redirects=True)
    assert answer.status_code == 200
    assert answer.headers["Content-Type"].startswith("text/calendar")
    (event,) = Calendar.from_ical(answer.text).walk("VEVENT")
    assert isinstance(event, Event)
    return event


def test_a_running_machine_rings_at_its_end(client: FlaskClient, running: House, clock: HandClock) -> None:
    event = event_at(client, "/calendar?run=r1&load=cut/1")

    end = running.workshop.ledger.state.runs["r1"].loads["cut/1"].end_at
    assert end is not None and end - clock.now() < timedelta(minutes=21)
    assert next(time.trigger for time in event.alarms.times) == end.replace(microsecond=0)
    assert str(event["SUMMARY"]) == "CNC should be finished. Go and check"


def test_the_link_leads_on_to_a_file(client: FlaskClient, running: House) -> None:
    answer = client.get("/calendar?run=r1&load=cut/1")

    assert (answer.status_code, answer.headers["Location"]) == (303, "/runs/r1/loads/cut/1.ics")


def test_a_wait_rings_when_it_is_over_and_before_its_latest_end(client: FlaskClient, running: House) -> None:
    event = event_at(client, "/calendar?run=r1&tray=4&step=oil")

    rest = running.workshop.ledger.state.runs["r1"].trays["4"].rests["oil"]
    assert rest.latest_at is not None
    times = sorted(time.trigger for time in event.alarms.times)
    assert times[0] == rest.ready_at.replace(microsecond=0)
    assert times[-1] == (rest.latest_at - timedelta(minutes=10)).replace(microsecond=0)


@pytest.mark.parametrize(
    ("address", "status"),
    [
        ("/calendar", 404),
        ("/calendar?run=r1", 404),
        ("/runs/r9/loads/cut/1.ics", 404),
        ("/runs/r1/loads/cut/9.ics", 404),
        ("/runs/r1/trays/99/waits/oil.ics", 404),
        ("/runs/r1/trays/1/waits/oil.ics", 409),
    ],
)
def test_where_nothing_ends_there_is_no_file(client: FlaskClient, running: House, address: str, status: int) -> None:
    assert client.get(address).status_code == status


def test_a_machine_that_has_ended_has_no_end_to_come(client: FlaskClient, running: House) -> None:
    workshop = running.workshop
    record_events(workshop, [new_event(workshop, "machine ended", {}, run="r1", load="cut/1", person="ann")])

    assert client.get("/runs/r1/loads/cut/1.ics").status_code == 409
