"""A station that is out of use until some moment: it is asked about then, and nobody counts on it before somebody answers."""

from datetime import datetime, timedelta

from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import Problem
from runboard.run.calls.dues import Due, dues
from runboard.run.log.event import write_moment
from tests.core.pressing import Floor


def out_for(hours: float | None) -> Floor:
    """A run of one tray, and the sander out of use for some hours."""
    floor = Floor()
    floor.open_run(trays=1)
    until = {} if hours is None else {"until": write_moment(floor.now + timedelta(hours=hours))}
    floor.press("station out of use", {"why": "belt", **until}, station="sander")
    return floor


def asked(floor: Floor) -> list[Due]:
    return [one for one in dues(floor.state, floor.book).values() if one.kind == "station back"]


def planned(floor: Floor) -> Problem:
    return problem_for(floor.state, floor.book, floor.now)


def sander_from(floor: Floor) -> datetime | None:
    found = planned(floor)
    runs = next(one for one in found.stations if one.key == "sander").runs
    return found.moment(runs[0][0]) if runs else None


def test_it_is_asked_about_when_it_was_to_be_back():
    floor = out_for(5)

    (due,) = asked(floor)

    assert (due.station, due.due_at) == ("sander", floor.now - timedelta(seconds=1) + timedelta(hours=5))
    assert asked(out_for(None)) == []


def test_whoever_says_that_it_is_back_or_until_when_it_is_not_has_answered():
    floor = out_for(5)
    floor.wait(5 * 60)
    (first,) = asked(floor)

    floor.press(
        "station out of use", {"why": "belt", "until": write_moment(floor.now + timedelta(hours=2))}, station="sander"
    )
    (second,) = asked(floor)
    floor.press("station back in use", station="sander")

    assert second.due_at - first.due_at >= timedelta(hours=2)
    assert asked(floor) == []


def test_a_plan_counts_on_it_from_then_on_and_no_more_once_that_is_over_without_an_answer():
    floor = out_for(5)
    back = floor.now - timedelta(seconds=1) + timedelta(hours=5)
    found = sander_from(floor)
    assert found is not None
    assert timedelta(0) <= found - back < timedelta(minutes=1)

    floor.wait(5 * 60)

    assert sander_from(floor) is None
    left_out = planned(floor).left_out
    assert {one.code for one in left_out} == {"station due"}
    assert {one.facts["until"] for one in left_out} == {back}
    assert asked(floor), "and it is still asked about"
