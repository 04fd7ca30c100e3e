"""A machine that must be watched is asked after at its interval, and at once when everybody was last seen elsewhere."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.run.calls.dues import Due, dues, is_missed
from runboard.run.refusal import Refused
from tests.core.pressing import Floor
from tests.scenario import shop


def due(floor: Floor, kind: str) -> list[Due]:
    """What of a kind is due, of looks also those to come; that a session will be over is no matter yet."""
    found = [one for one in dues(floor.state, floor.book).values() if one.kind == kind]
    return [one for one in found if one.due_at <= floor.now or kind != "nobody near"]


def engraving() -> Floor:
    """Ann, alone, has started the laser in the house."""
    floor = Floor()
    floor.open_run()
    until = (floor.now + timedelta(hours=5)).isoformat()
    floor.press("person came", {"until": until, "room": "shop"})
    floor.press("load started", run="r1", load="engrave/1")
    floor.press("machine started", {"minutes": 30}, run="r1", load="engrave/1")
    return floor


def test_a_laser_asks_every_two_minutes_where_the_shop_says_nothing_else():
    floor = engraving()

    (check,) = due(floor, "watch check")

    assert check.due_at == floor.run.loads["engrave/1"].checked_at + timedelta(minutes=2)


@given(st.lists(st.integers(5, 600), min_size=1, max_size=20))
def test_each_look_asks_anew_two_minutes_later_and_a_missed_one_stays_until_somebody_looks(waits: list[int]) -> None:
    floor = engraving()
    for seconds in waits:
        (check,) = due(floor, "watch check")
        floor.now += timedelta(seconds=seconds)
        assert is_missed(check, floor.now) == (floor.now >= check.due_at + timedelta(minutes=1))
        looked_at = floor.now
        floor.press("watch checked", run="r1", load="engrave/1")
        (after,) = due(floor, "watch check")
        assert after.id != check.id
        assert after.due_at == looked_at + timedelta(minutes=2)


def test_a_machine_that_has_stopped_asks_nobody():
    floor = engraving()
    floor.press("unloading started", run="r1", load="engrave/1")

    assert due(floor, "watch check") == []


def test_whoever_started_it_was_last_seen_at_it():
    assert due(engraving(), "nobody near") == []


def test_everybody_elsewhere_is_told_at_once_and_over_once_somebody_looks():
    floor = engraving()
    went_at = floor.now
    floor.press("room changed", {"room": "shop"})

    (alone,) = due(floor, "nobody near")
    floor.press("watch checked", run="r1", load="engrave/1")

    assert alone.due_at == went_at
    assert is_missed(alone, floor.now)
    assert due(floor, "nobody near") == []


def test_one_of_two_near_it_is_enough():
    floor = engraving()
    floor.press("person came", {"room": "house"}, person="ben")
    floor.press("room changed", {"room": "shop"})

    assert due(floor, "nobody near") == []


def test_called_away_nobody_is_near():
    floor = engraving()
    floor.press("person called away")

    assert len(due(floor, "nobody near")) == 1


def test_nobody_watches_the_laser_with_hands_at_a_cutter():
    floor = engraving()
    floor.press("load started", run="r1", load="cut/1", person="ben")

    with pytest.raises(Refused) as refused:
        floor.press("watch taken", run="r1", load="engrave/1", person="ben")

    assert refused.value.code == "hands elsewhere"
    assert refused.value.facts == {"station": "Laser", "at": "CNC", "person": "Ben"}


@pytest.mark.parametrize(("station", "load", "most"), [("laser", "engrave/1", 5), ("cnc", "cut/1", 30)])
def test_what_was_written_down_before_there_was_a_limit_asks_no_more_seldom_than_it(station, load, most):
    record = shop()
    record["stations"] = [
        one | ({"watch_every_minutes": 900} if one["key"] == station else {}) for one in record["stations"]
    ]
    floor = Floor(record)
    floor.open_run()
    floor.press("load started", run="r1", load=load)
    floor.press("machine started", {"minutes": 30}, run="r1", load=load)

    (check,) = due(floor, "watch check")

    assert check.due_at == floor.run.loads[load].checked_at + timedelta(minutes=most)


@pytest.mark.parametrize("answer", ["seen", "done", "ended", "stopped", "still running"])
def test_no_answer_to_the_alert_alone_ends_the_looks(answer):
    floor = engraving()
    floor.press("room changed", {"room": "shop"})
    for kind in ("watch check", "nobody near"):
        (one,) = due(floor, kind)
        body = {"alert": one.id, "answer": answer, "ask_again_at": "2026-06-09T12:00:00Z"}
        floor.press("alert answered", body)

        assert [other.id for other in due(floor, kind)] == [one.id]


@pytest.mark.parametrize("blind", [False, True])
def test_that_it_still_runs_moves_its_end_by_half_an_hour_at_most(blind: bool) -> None:
    floor = engraving()
    if blind:  # of the load that is engraved already, another phone says that it runs on another tray
        floor.press("room changed", {"room": "house"}, person="ben")
        floor.blind("machine started", {"minutes": 30}, run="r1", load="engrave/2", person="ben")
    load = "engrave/2" if blind else "engrave/1"
    (end,) = [one for one in dues(floor.state, floor.book).values() if (one.kind, one.load) == ("machine end", load)]

    for answered in (floor.now, floor.now + timedelta(minutes=90)):
        floor.now = answered
        body = {"alert": end.id, "answer": "still running", "ask_again_at": "2026-06-09T12:00:00Z"}
        floor.press("alert answered", body)
        found = [one for one in dues(floor.state, floor.book).values() if (one.kind, one.load) == ("machine end", load)]

        assert [one.due_at for one in found] == [answered + timedelta(minutes=30)]
        end = found[0]


def test_a_sensor_that_says_it_stopped_is_put_off_by_half_an_hour_at_most_while_it_is_watched() -> None:
    floor = engraving()
    floor.press("signal received", {"on": False}, station="laser", person="", device="sensor")
    (looks,) = due(floor, "looks ended")
    answered = floor.now

    floor.press("alert answered", {"alert": looks.id, "answer": "seen", "ask_again_at": "2026-06-09T12:00:00Z"})

    (again,) = [one for one in dues(floor.state, floor.book).values() if one.kind == "ask again"]
    assert again.due_at == answered + timedelta(minutes=30)


def test_what_nobody_has_to_watch_is_put_off_as_long_as_somebody_says() -> None:
    floor = engraving()
    floor.press("unloading started", run="r1", load="engrave/1")
    floor.press("supply out", {"supply": "hooks", "until": floor.now.isoformat()}, run="r1")
    (out,) = [one for one in dues(floor.state, floor.book).values() if one.kind == "supply due"]

    floor.press("alert answered", {"alert": out.id, "answer": "seen", "ask_again_at": "2026-06-09T12:00:00Z"})

    (again,) = [one for one in dues(floor.state, floor.book).values() if one.kind == "ask again"]
    assert again.due_at.isoformat() == "2026-06-09T12:00:00+00:00"
