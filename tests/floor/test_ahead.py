"""What is dated after now: refused at the door; served, said and put right where a log has it already."""

import json
from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.floor.changing.exchange import export_run, import_run
from runboard.floor.changing.runs import Wish, close_run, open_run
from runboard.floor.looking.look import state_for
from runboard.floor.pressing.ahead import put_right, told_ahead
from runboard.floor.pressing.restart import come_back
from runboard.floor.pressing.taps import take_taps
from runboard.run.log.ahead import MOST_AHEAD
from runboard.run.log.event import Event, write_moment
from runboard.run.refusal import Refused
from tests.floor.fakes import workshop
from tests.scenario import shop

FAR = "2199-12-31T23:59:59.999Z"


@pytest.fixture
def shopfloor():
    made = workshop(shop())
    open_run(made, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    made.clock.pass_(5)
    return made


def tap(made, number, kind, body=None, **fields):
    at = made.clock.now().isoformat()
    known = {"id": f"tap-{number:05d}", "kind": kind, "at": at, "person": "ann", "run": "r1"}
    return {**known, "seen": made.ledger.last_seq, "body": body or {}, **fields}


def send(made, *taps, **batch):
    return take_taps(made, {"device": "phone", "taps": list(taps), **batch})["taps"]


def stored_by_an_old_version(made, *events):
    """Events as a version that looked at no clock took them."""
    for event in events:
        made.log.append(event, made.clock.now())
    made.version = -1


def latest(made):
    return made.ledger.held[-1].moment


def test_no_amendment_dates_an_event_after_now(shopfloor):
    send(shopfloor, tap(shopfloor, 1, "load started", load="cut/1"))

    answer = send(shopfloor, tap(shopfloor, 2, "event amended", {"event": "tap-00001", "at": FAR}))[0]

    assert (answer["answer"], answer["code"]) == ("refused", "ahead")
    assert latest(shopfloor) <= shopfloor.clock.now()


def test_an_amendment_to_a_moment_that_has_been_is_taken(shopfloor):
    send(shopfloor, tap(shopfloor, 1, "load started", load="cut/1"))
    back = (shopfloor.clock.now() - timedelta(minutes=2)).isoformat()

    assert send(shopfloor, tap(shopfloor, 2, "event amended", {"event": "tap-00001", "at": back}))[0] == {
        "id": "tap-00002",
        "answer": "accepted",
    }


def test_each_press_of_a_batch_is_dated_by_itself(shopfloor):
    honest = tap(shopfloor, 1, "note written", {"text": "oak"})
    far = tap(shopfloor, 2, "note written", {"text": "ash"}, at="2170-01-01T00:00:00Z")

    send(shopfloor, honest, far)

    assert [one.moment for one in shopfloor.ledger.held[-2:]] == [
        shopfloor.clock.now(),
        shopfloor.clock.now() + timedelta(milliseconds=1),
    ]


@pytest.mark.parametrize("year", [1, 1970, 2019, 2031, 9999])
def test_a_clock_that_is_years_off_is_corrected_by_the_time_of_sending(shopfloor, year):
    sent = shopfloor.clock.now().replace(year=year, day=1)
    press = tap(shopfloor, 1, "load started", load="cut/1", at=(sent - timedelta(minutes=3)).isoformat())

    answer = send(shopfloor, press, sent_at=sent.isoformat())[0]

    assert answer["answer"] == "accepted"
    assert latest(shopfloor) == shopfloor.clock.now() - timedelta(minutes=3)


def test_a_batch_that_was_long_on_its_way_dates_no_press_later(shopfloor):
    sent = shopfloor.clock.now()
    press = tap(shopfloor, 1, "load started", load="cut/1", offset_ms=0)
    shopfloor.clock.pass_(4)

    send(shopfloor, press, sent_at=sent.isoformat())

    assert latest(shopfloor) == sent


def test_the_time_of_sending_says_how_far_a_clock_is_off(shopfloor):
    press = tap(shopfloor, 1, "load started", load="cut/1", offset_ms=-3 * 86_400_000)

    send(shopfloor, press, sent_at=shopfloor.clock.now().isoformat())

    assert latest(shopfloor) == shopfloor.clock.now()


@pytest.mark.parametrize("lies", [timedelta(days=30), timedelta(days=365), timedelta(days=60_000)])
def test_what_the_server_makes_never_follows_an_event_from_the_future(shopfloor, lies):
    far = shopfloor.clock.now() + lies
    stored_by_an_old_version(shopfloor, Event("from-afar", "note written", far, run="r1", body={"text": "oak"}))

    run = open_run(shopfloor, Wish("rail", [{"line": "1", "pieces": 5}]), "ann")
    close_run(shopfloor, run, "run abandoned", "ann")

    mine = [one for one in shopfloor.ledger.arrived.values() if one.run == run]
    assert all(one.moment <= shopfloor.clock.now() + MOST_AHEAD for one in mine)


def test_the_server_comes_back_to_a_log_with_an_event_from_the_future(shopfloor):
    send(shopfloor, tap(shopfloor, 1, "load started", load="cut/1"))
    amendment = {"event": "tap-00001", "at": FAR}
    stored_by_an_old_version(shopfloor, Event("from-afar", "event amended", shopfloor.clock.now(), body=amendment))
    shopfloor.clock.pass_(30)

    assert come_back(shopfloor)

    (ask,) = shopfloor.ledger.state.asks.values()
    assert ask["code"] == "what was running"
    assert ask["facts"]["last_at"] < write_moment(shopfloor.clock.now())


def test_a_file_brings_nothing_that_is_dated_after_now(shopfloor):
    file = export_run(shopfloor, "r1")
    file["events"][-1]["at"] = FAR
    other = workshop(shop())
    other.clock = shopfloor.clock

    with pytest.raises(Refused) as refused:
        import_run(other, file)

    assert (refused.value.code, other.log.last_seq()) == ("ahead", 0)


def test_a_lead_is_told_and_nobody_else(shopfloor):
    far = shopfloor.clock.now() + timedelta(days=30)
    stored_by_an_old_version(shopfloor, Event("from-afar", "note written", far, run="r1", body={"text": "oak"}))

    assert json.loads(state_for(shopfloor, "ann")[1])["ahead"]["count"] == 1
    assert "ahead" not in json.loads(state_for(shopfloor, "ben")[1])


def test_it_is_put_right_by_the_moment_of_arrival(shopfloor):
    far = shopfloor.clock.now() + timedelta(days=400)
    stored_by_an_old_version(
        shopfloor,
        Event("before-it", "note written", shopfloor.clock.now(), run="r1", body={"text": "1"}),
        Event("from-afar", "load started", far, run="r1", load="cut/1", person="ann", body={}),
        Event("from-afar-2", "machine started", far, run="r1", load="cut/1", person="ann", body={"minutes": 5}),
    )
    shopfloor.clock.pass_(10)

    assert put_right(shopfloor, "ann") == 2

    assert told_ahead(shopfloor) == {}
    held = [one.id for one in shopfloor.ledger.held]
    assert held[held.index("before-it") :][:3] == ["before-it", "from-afar", "from-afar-2"]
    assert shopfloor.ledger.state.runs["r1"].loads["cut/1"].state == "running"


def test_an_amendment_into_the_future_is_taken_back(shopfloor):
    send(shopfloor, tap(shopfloor, 1, "load started", load="cut/1"))
    at_first = latest(shopfloor)
    stored_by_an_old_version(
        shopfloor, Event("from-afar", "event amended", at_first, body={"event": "tap-00001", "at": FAR})
    )

    put_right(shopfloor)

    assert next(one for one in shopfloor.ledger.held if one.id == "tap-00001").moment == at_first


def test_an_amendment_that_is_itself_from_the_future_keeps_what_else_it_says(shopfloor):
    send(shopfloor, tap(shopfloor, 1, "note written", {"text": "oak"}))
    far = shopfloor.clock.now() + timedelta(days=400)
    stored_by_an_old_version(
        shopfloor,
        Event("from-afar", "event amended", far, body={"event": "tap-00001", "at": FAR, "body": {"text": "ash"}}),
    )

    put_right(shopfloor)

    note = next(one for one in shopfloor.ledger.held if one.id == "tap-00001")
    assert (note.get("text"), told_ahead(shopfloor)) == ("ash", {})


def test_a_run_that_was_opened_in_the_future_takes_presses_once_it_is_put_right(shopfloor):
    opened = next(iter(shopfloor.ledger.arrived.values()))
    far = shopfloor.clock.now() + timedelta(days=30)
    stored_by_an_old_version(shopfloor, replace(opened, id="from-afar", run="r2", at=far, seq=0))
    blind = tap(shopfloor, 1, "load started", load="cut/1", run="r2")
    assert send(shopfloor, blind)[0]["code"] == "ahead"
    press = tap(shopfloor, 2, "load started", load="cut/1", run="r2")
    assert send(shopfloor, press)[0]["code"] == "before run"

    put_right(shopfloor)

    again = tap(shopfloor, 3, "load started", load="cut/1", run="r2")
    assert send(shopfloor, again)[0]["answer"] == "accepted"


def test_putting_right_twice_changes_nothing_more(shopfloor):
    far = shopfloor.clock.now() + timedelta(days=30)
    stored_by_an_old_version(shopfloor, Event("from-afar", "note written", far, run="r1", body={"text": "oak"}))
    put_right(shopfloor)
    stored = shopfloor.log.last_seq()

    assert put_right(shopfloor) == 0

    assert shopfloor.log.last_seq() == stored
