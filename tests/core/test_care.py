"""Rags, oily dust and burnt cuts are asked about until somebody says what was done, whatever else happens."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.run.calls.dues import dues
from runboard.run.care.care import lock_up_reminders
from runboard.run.refusal import Refused
from tests.core.pressing import Floor
from tests.scenario import key_rails, shop

MINUTES = st.integers(1, 900)


def care(floor: Floor) -> dict[str, str]:
    """The reminders that wait, by kind."""
    return {one.kind: one.id for one in dues(floor.state, floor.book).values() if one.kind.startswith("care ")}


def oiling() -> Floor:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="oil/1")
    return floor


def says(floor: Floor, kind: str) -> None:
    floor.press("reminder answered", {"reminder": care(floor)[kind], "done": "in water, in the lidded can"})


def test_the_rags_are_asked_about_when_the_oiling_starts_at_its_end_and_next_morning():
    floor = oiling()
    begun = floor.now

    assert set(care(floor)) == {"care start", "care morning"}
    floor.press("load done", run="r1", load="oil/1")
    assert set(care(floor)) == {"care end", "care morning"}

    (morning,) = [one for one in dues(floor.state, floor.book).values() if one.kind == "care morning"]
    assert timedelta(hours=1) < morning.due_at - begun < timedelta(hours=36)


def test_they_are_asked_about_once_and_not_for_each_tray():
    floor = oiling()
    for tray in ("1", "2", "3"):
        floor.press("load started", run="r1", load=f"oil/{tray}")
        floor.press("load done", run="r1", load=f"oil/{tray}")

    waits = [one for one in dues(floor.state, floor.book).values() if one.kind.startswith("care ")]

    assert sorted(one.kind for one in waits) == ["care end", "care morning"]


def test_an_answer_to_the_alert_alone_does_not_dismiss_them():
    floor = oiling()
    for alert in list(care(floor).values()):
        floor.press("alert answered", {"alert": alert, "answer": "seen"})

    assert set(care(floor)) == {"care start", "care morning"}


def test_nobody_locks_up_before_it_is_said_what_was_done_with_them():
    floor = oiling()
    floor.press("load done", run="r1", load="oil/1")
    says(floor, "care end")

    with pytest.raises(Refused) as refused:
        floor.press("person went")
    (left,) = refused.value.facts["reminders"]
    floor.press("reminder answered", {"reminder": left, "done": "flat on the fence, in the shade"})
    floor.press("person went")

    assert refused.value.code == "rags first"
    assert set(care(floor)) == {"care morning"}


@given(st.lists(st.tuples(st.sampled_from(("start", "done", "say", "wait")), MINUTES), max_size=12))
def test_whatever_happens_they_are_asked_about_until_it_is_said(steps: list[tuple[str, int]]) -> None:
    floor = Floor()
    floor.open_run()
    coats, answered = 0, 0
    for what, minutes in steps:
        floor.now += timedelta(minutes=minutes)
        load = f"oil/{coats + 1}"
        begun = load in floor.run.loads
        if what == "start" and not begun and coats < 3:
            floor.press("load started", run="r1", load=load)
        elif what == "done" and begun:
            floor.press("load done", run="r1", load=load)
            coats += 1
        elif what == "say" and "care end" in care(floor):
            says(floor, "care end")
            answered += 1

    days = {key.split("|")[1] for key in floor.state.care}
    ended = sum(entry["times"] for entry in floor.state.care.values())
    waits = [one for one in dues(floor.state, floor.book).values() if one.kind == "care end"]
    assert ended == coats
    assert len(waits) <= len(days)
    assert bool(waits) or answered > 0 or not any(entry["ended_at"] for entry in floor.state.care.values())
    assert all(one.split("|")[2] in days for one in lock_up_reminders(floor.state, floor.book))


def test_a_finish_that_does_not_heat_by_itself_asks_nothing():
    product = key_rails()
    oil = next(one for one in product["operations"] if one["key"] == "oil")
    oil["finish"] = "wax"
    wax = {"key": "wax", "name": "Beeswax and mineral oil", "self_heats": False}
    floor = Floor(shop() | {"finishes": [wax]})
    floor.open_run(product=product)
    floor.press("load started", run="r1", load="oil/1")

    assert care(floor) == {}


def test_a_cut_that_burnt_is_looked_after_at_once_and_again_an_hour_later():
    floor = Floor()
    floor.open_run()
    scrap = [{"pieces": 1, "why": "burnt"}]
    floor.press("load done", {"counts": {"1": {"good": 4, "scrap": scrap}}}, run="r1", load="cut/1")

    waits = [one for one in dues(floor.state, floor.book).values() if one.kind in ("care end", "care again")]

    assert [one.kind for one in waits] == ["care end", "care again"]
    assert waits[1].due_at - waits[0].due_at == timedelta(hours=1)
