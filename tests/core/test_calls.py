"""Somebody calls the lead, and calls again."""

from collections.abc import Iterator

import pytest

from runboard.run.calls.dues import Due, dues
from tests.core.pressing import Floor


@pytest.fixture
def floor() -> Floor:
    found = Floor()
    found.open_run()
    return found


def call(floor: Floor, why: str = "help", tray: str = "1", person: str = "ben", **more: str) -> str:
    note = more.pop("note", "")
    return floor.press("lead called", {"why": why, "note": note}, run="r1", tray=tray, person=person, **more).id


def ringing(floor: Floor) -> Iterator[Due]:
    return (due for due in dues(floor.state, floor.book).values() if due.kind == "call")


def test_who_calls_three_hundred_times_rings_once(floor: Floor) -> None:
    first, *_ = [call(floor, note=f"at {time}", operation=f"step-{time}") for time in range(300)]

    (due,) = ringing(floor)
    (said,) = floor.state.calls.values()
    assert due.id == f"call|{first}"
    assert (said["times"], said["note"]) == (300, "at 299")


def test_another_tray_another_person_and_another_reason_ring_of_their_own(floor: Floor) -> None:
    call(floor)
    call(floor, why="hurt")
    call(floor, tray="2")
    call(floor, person="ann")

    assert len(list(ringing(floor))) == 4


def test_who_still_waits_after_somebody_said_that_they_come_rings_anew(floor: Floor) -> None:
    first = call(floor)
    floor.press("alert claimed", {"alert": f"call|{first}"}, person="ann")

    again = call(floor)
    call(floor)

    assert [due.id for due in ringing(floor)] == [f"call|{first}", f"call|{again}"]


def test_a_call_that_was_answered_does_not_swallow_the_next(floor: Floor) -> None:
    first = call(floor)
    floor.press("alert answered", {"alert": f"call|{first}", "answer": "done"}, person="ann")

    again = call(floor)

    assert [due.id for due in ringing(floor)] == [f"call|{again}"]


def test_the_first_of_two_calls_taken_back_leaves_the_other(floor: Floor) -> None:
    first, again = call(floor), call(floor)

    floor.press("event undone", {"event": first}, person="ben")

    assert [due.id for due in ringing(floor)] == [f"call|{again}"]
