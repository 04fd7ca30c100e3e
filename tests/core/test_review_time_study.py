"""A run's time elements: what was measured, by whom, and what only looks like a time."""

from datetime import timedelta

import pytest

from runboard.review.hours import hours_by_step, is_helper, total, union
from runboard.review.time_study import Element, loads_after_a_change, time_elements
from tests.core.pressing import START, Floor


def elements(floor: Floor, step: str = "", kind: str = "") -> list[Element]:
    found = time_elements(floor.run, floor.ledger.arrived, floor.now, loads_after_a_change(floor.run))
    return [one for one in found if step in ("", one.step) and kind in ("", one.kind)]


def minutes(one: Element) -> int:
    assert one.length is not None
    return round(one.length.total_seconds() / 60)


def cut_a_board(floor: Floor, load: str, loading: float = 6) -> None:
    floor.press("load started", run="r1", load=load)
    floor.wait(loading)
    floor.press("machine started", run="r1", load=load)
    floor.wait(38)
    floor.press("unloading started", run="r1", load=load)
    floor.wait(2)
    floor.press("load done", run="r1", load=load)


def test_a_machine_load_has_each_element_with_its_time() -> None:
    floor = Floor()
    floor.open_run()

    cut_a_board(floor, "cut/1", loading=6)

    found = [(one.kind, minutes(one), one.known) for one in elements(floor, "cut")]
    assert found == [
        ("setup", 4, "measured"),
        ("loading", 2, "measured"),
        ("machine", 38, "measured"),
        ("unloading", 2, "measured"),
    ]


def test_setup_is_the_first_loading_less_the_usual_one() -> None:
    floor = Floor()
    floor.open_run(trays=6)
    cut_a_board(floor, "cut/1", loading=10)

    cut_a_board(floor, "cut/2", loading=3)

    assert [minutes(one) for one in elements(floor, "cut", "setup")] == [7]
    assert [minutes(one) for one in elements(floor, "cut", "loading")] == [3, 3]


def test_a_new_cutter_is_a_setup_and_a_ticked_list_is_none() -> None:
    floor = Floor()
    floor.open_run(trays=9)
    cut_a_board(floor, "cut/1", loading=10)
    cut_a_board(floor, "cut/2", loading=3)
    floor.press("setup changed", {"what": "cutter"}, station="cnc")

    floor.press("load started", run="r1", load="cut/3")
    floor.press("checklist ticked", {"list": "full"}, station="cnc")
    floor.wait(8)
    floor.press("machine started", run="r1", load="cut/3")

    assert [(one.load, minutes(one)) for one in elements(floor, "cut", "setup")] == [("cut/1", 7), ("cut/3", 5)]


def test_without_at_it_the_unloading_is_unknown_and_not_nought() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(40)

    floor.press("load done", run="r1", load="cut/1")

    (unloading,) = elements(floor, "cut", "unloading")
    assert (unloading.length, unloading.known) == (None, "not known")


def test_what_nobody_pressed_is_marked_as_assumed_and_has_no_time() -> None:
    floor = Floor()
    floor.open_run()

    floor.press("load started", run="r1", load="clean/1")

    (cut,) = elements(floor, "cut")
    assert (cut.known, cut.length, cut.pieces, cut.trays) == ("assumed", None, 5, ("1",))


def test_an_interrupted_span_is_not_measured() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(3)

    floor.press("person called away")

    (hand,) = elements(floor, "clean", "hand")
    assert (minutes(hand), hand.known) == (3, "not measured")


def test_a_load_in_work_is_still_going_on() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="clean/1")

    (hand,) = elements(floor, "clean", "hand")

    assert (hand.length, hand.known) == (None, "still going on")


def test_two_people_on_one_load_add_hours_but_no_elapsed_time() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(4)
    floor.press("load started", run="r1", load="clean/1", person="ben", device="other phone")
    floor.wait(6)
    floor.press("load done", run="r1", load="clean/1")

    (clean,) = [one for one in hours_by_step(floor.run, elements(floor)) if one.step == "clean"]

    assert round(clean.hands.total_seconds() / 60) == 16
    assert round(clean.elapsed.total_seconds() / 60) == 10
    assert (clean.loads, clean.pieces) == (1, 5)


def test_a_helpers_hours_are_counted_apart_and_leads_and_helpers_make_the_sum() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(4)
    floor.press("load started", run="r1", load="clean/1", person="ben", device="other phone")
    floor.wait(6)
    floor.press("load done", run="r1", load="clean/1")

    found = elements(floor)
    helpers = {one.person for one in found if is_helper(floor.book, one.person)}
    (clean,) = [one for one in hours_by_step(floor.run, found, helpers) if one.step == "clean"]

    assert helpers == {"ben"}
    assert [round(one.total_seconds() / 60) for one in (clean.leads, clean.helpers)] == [10, 6]
    assert clean.leads + clean.helpers == clean.hands


@pytest.mark.parametrize(
    ("person", "helper"), [("ann", False), ("ben", True), ("guest-1a2b3c4d", True), ("nobody known", True), ("", False)]
)
def test_helpers_are_crew_and_who_is_in_no_book(person: str, helper: bool) -> None:
    assert is_helper(Floor().book, person) == helper


def test_a_wait_is_an_element_of_nobody() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="oil/1")
    floor.wait(5)
    floor.press("load done", run="r1", load="oil/1")

    (drying,) = elements(floor, "oil", "wait")
    floor.wait(13 * 60)
    (dry,) = elements(floor, "oil", "wait")

    assert (drying.known, drying.length, drying.person) == ("still going on", None, "")
    assert dry.length is not None
    assert dry.length >= timedelta(hours=12)


def test_the_sums_stand_in_the_order_of_the_route() -> None:
    floor = Floor()
    floor.open_run()
    cut_a_board(floor, "cut/1")
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(5)
    floor.press("load done", run="r1", load="clean/1")

    sums = hours_by_step(floor.run, elements(floor))

    assert [one.step for one in sums] == ["cut", "clean"]
    assert round(sums[0].machine.total_seconds() / 60) == 38
    assert sums[0].unmeasured == timedelta(0)


def test_a_union_counts_overlapping_time_once() -> None:
    def from_to(began: int, ended: int) -> Element:
        at = [START + timedelta(minutes=minute) for minute in (began, ended)]
        return Element("a", "A", "a/1", "", (), 1, "hand", "ann", at[0], at[1])

    spans = [from_to(10, 20), from_to(0, 12), from_to(3, 5), from_to(30, 31)]

    assert union(spans) == timedelta(minutes=21)
    assert total(spans) == timedelta(minutes=25)
    assert union([]) == timedelta(0)
