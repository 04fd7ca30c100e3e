"""What a sensor says, and what is asked because of it."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from runboard.run.calls.dues import Due, dues
from runboard.run.calls.signals import Heard, SensorReading, SignalLimits, hear, read_signal
from runboard.run.refusal import Refused
from tests.core.pressing import Floor

NOON = datetime(2026, 6, 1, 12, 0, tzinfo=UTC)
LIMITS = SignalLimits(watts=20, for_=timedelta(seconds=30))


def after(seconds: float) -> datetime:
    return NOON + timedelta(seconds=seconds)


def told(*said: tuple[float, float]) -> Heard:
    """What is known after these (seconds, watts)."""
    heard = None
    for seconds, watts in said:
        heard = hear(heard, SensorReading(watts=watts), LIMITS, after(seconds))
    assert heard is not None
    return heard


@pytest.mark.parametrize(
    ("raw", "place", "reading"),
    [
        (12.5, "", SensorReading(watts=12.5)),
        ("12.5", "", SensorReading(watts=12.5)),
        (0, "", SensorReading(watts=0)),
        (True, "", SensorReading(on=True)),
        ("OFF", "", SensorReading(on=False)),
        ({"watts": 3}, "", SensorReading(watts=3)),
        ({"on": False}, "", SensorReading(on=False)),
        ({"on": True, "watts": 3}, "", SensorReading(watts=3)),
        ({"meter": {"power": 7}}, "meter.power", SensorReading(watts=7)),
    ],
)
def test_a_number_is_watts_and_a_word_is_on_or_off(raw: object, place: str, reading: SensorReading) -> None:
    assert read_signal(raw, place) == reading


@pytest.mark.parametrize("raw", [None, "", "warm", -1, float("nan"), float("inf"), "nan", 1e9, [], {}, {"on": None}])
def test_what_is_no_reading_is_refused(raw: object) -> None:
    with pytest.raises(Refused, match="signal form"):
        read_signal(raw)


def test_low_power_means_nothing_before_it_has_lasted() -> None:
    heard = told((0, 300), (10, 3), (39, 3))

    assert heard.runs(after(39)) is None
    assert heard.runs(after(40)) is False


def test_a_short_dip_starts_the_wait_anew() -> None:
    heard = told((0, 300), (10, 3), (20, 300), (30, 3))

    assert heard.runs(after(45)) is None
    assert heard.runs(after(60)) is False


def test_power_at_the_limit_is_running() -> None:
    assert told((0, 20)).runs(after(100)) is True


def test_a_sensor_that_says_off_needs_no_wait() -> None:
    assert hear(None, SensorReading(on=False), LIMITS, NOON).runs(NOON) is False
    assert hear(None, SensorReading(on=True), LIMITS, NOON).runs(NOON) is True


# What is asked


def signal(floor: Floor, on: bool, station: str = "cnc") -> None:
    floor.press("signal received", {"on": on}, station=station, person="", device="sensor", basis="sensor")
    # The phone polls: it has seen it.
    floor.ledger.seq_by_device.clear()


def asked(floor: Floor) -> list[Due]:
    return [one for one in dues(floor.state, floor.book).values() if one.kind == "looks ended"]


@pytest.fixture
def floor() -> Floor:
    found = Floor()
    found.open_run()
    found.press("machine started", run="r1", load="cut/1")
    signal(found, True)
    return found


def test_a_machine_that_stopped_drawing_power_is_asked_about_and_goes_on_running(floor: Floor) -> None:
    signal(floor, False)

    (ask,) = asked(floor)

    assert ask.station == "cnc" and ask.load == "cut/1"
    assert ask.due_at < floor.now
    assert floor.run.loads["cut/1"].state == "running"


def test_a_pause_that_is_over_asks_nothing_more_and_the_next_one_asks_anew(floor: Floor) -> None:
    signal(floor, False)
    (first,) = asked(floor)
    floor.wait(1)
    signal(floor, True)
    assert asked(floor) == []

    signal(floor, False)

    (second,) = asked(floor)
    assert second.id != first.id


def test_still_running_is_an_answer_and_may_ask_again(floor: Floor) -> None:
    signal(floor, False)
    (ask,) = asked(floor)
    again = (floor.now + timedelta(minutes=5)).isoformat()

    floor.press("alert answered", {"alert": ask.id, "answer": "still running", "ask_again_at": again})

    assert asked(floor) == []
    assert [one.load for one in dues(floor.state, floor.book).values() if one.kind == "ask again"] == ["cut/1"]
    assert floor.run.loads["cut/1"].state == "running"


@pytest.mark.parametrize(
    ("kind", "body"), [("machine ended", {}), ("unloading started", {}), ("load stopped", {"why": "slip"})]
)
def test_whatever_a_person_says_of_the_load_ends_the_question(floor: Floor, kind: str, body: dict[str, str]) -> None:
    signal(floor, False)

    floor.press(kind, body, run="r1", load="cut/1")

    assert asked(floor) == []


def test_a_machine_started_after_the_last_word_of_its_sensor_is_not_asked_about() -> None:
    floor = Floor()
    floor.open_run()
    signal(floor, False)

    floor.press("machine started", run="r1", load="cut/1")

    assert asked(floor) == []


def test_a_sensor_that_repeats_itself_asks_once(floor: Floor) -> None:
    signal(floor, False)
    (first,) = asked(floor)
    floor.wait(5)

    signal(floor, False)

    assert asked(floor) == [replace(first)]
