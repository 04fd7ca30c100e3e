"""Runs beside one another: each with what an hour gave and what was known of it, and one time element over all."""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.plan.estimates import estimates_from
from runboard.review.hours import hours_of
from runboard.review.over_runs import (
    MeasuredElement,
    ProductRuns,
    RunFigures,
    by_product,
    figures_of,
    furthest_moved,
    measured_elements,
    with_promises,
)
from runboard.review.time_study import loads_after_a_change, time_elements
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails, operation

STEPS = [operation("clean", "bench", a_pass(hand=2)), operation("pack", "bench", a_pass(hand=3))]
SHORT = {**key_rails(), "operations": STEPS}
PIECES = 4


def a_run(floor: Floor, run: str, minutes: float = 10, *, scrap: int = 0, timed: bool = True) -> None:
    """A tray cleaned and packed, each in so many minutes; without times only its ends are pressed."""
    floor.open_run(trays=1, pieces=PIECES, run=run, product=SHORT, boards={})
    for load, lost in (("clean/1", scrap), ("pack/1", 0)):
        if timed:
            floor.press("load started", run=run, load=load)
            floor.wait(minutes - 1 / 60)  # a press takes a second
        bad = {"counts": {"1": {"good": PIECES - lost, "scrap": [{"pieces": lost, "why": "crack"}]}}} if lost else {}
        floor.press("load done", bad, run=run, load=load)
    floor.press("run finished", {"note": ""}, run=run)
    floor.wait(60)


def figures(floor: Floor, run: str = "r1") -> RunFigures:
    return figures_of(floor.state.runs[run])


def test_an_hour_of_hands_gave_so_many_good_pieces() -> None:
    floor = Floor()
    a_run(floor, "r1", minutes=15, scrap=1)

    found = figures(floor)

    assert found.hands == timedelta(minutes=30)
    assert (found.an_hour, found.a_good_piece, found.good_percent) == (6.0, timedelta(minutes=10), 75)
    assert found.is_whole


def test_hands_are_those_of_the_runs_own_review() -> None:
    floor = Floor()
    a_run(floor, "r1", minutes=7)
    run = floor.run
    changed = loads_after_a_change(run)

    hours = hours_of(run, time_elements(run, floor.ledger.arrived, floor.now, changed), floor.book)

    assert figures(floor).hands == hours.all("hands")


def test_what_was_not_measured_is_never_nought() -> None:
    floor = Floor()
    a_run(floor, "r1", timed=False)

    found = figures(floor)

    assert (found.an_hour, found.a_good_piece) == (None, None)
    assert (found.loads, found.timed, found.is_whole) == (2, 0, False)


def test_only_finished_runs_are_compared_and_the_product_of_the_newest_comes_first() -> None:
    floor = Floor()
    a_run(floor, "r1")
    a_run(floor, "r2")
    floor.open_run(run="r3", product=SHORT, boards={})

    found = by_product(floor.state.runs.values())

    assert [(product.product, [run.id for run in product.runs]) for product in found] == [(SHORT["key"], ["r1", "r2"])]


def test_a_run_that_is_the_same_is_read_once() -> None:
    floor = Floor()
    a_run(floor, "r1")
    kept: dict[str, object] = {}

    (first,) = by_product(floor.state.runs.values(), kept)  # type: ignore[arg-type]
    (again,) = by_product(floor.state.runs.values(), kept)  # type: ignore[arg-type]

    assert first.runs[0] is again.runs[0]


@pytest.mark.parametrize(("days", "later"), [(-1, timedelta(days=1)), (1, timedelta(days=-1))])
def test_later_is_the_finish_after_its_promise(days: int, later: timedelta) -> None:
    floor = Floor()
    a_run(floor, "r1")
    (product,) = by_product(floor.state.runs.values())
    finished = product.runs[0].finished
    assert finished is not None

    promised = with_promises(product, {"r1": finished + timedelta(days=days)})

    assert promised.runs[0].later == later


def test_a_run_without_a_promise_is_not_in_time_either() -> None:
    floor = Floor()
    a_run(floor, "r1")
    (product,) = by_product(floor.state.runs.values())

    found: ProductRuns = with_promises(product, {"r1": None})

    assert found.runs[0].later is None


def test_the_average_share_is_of_all_pieces_and_rounded_once() -> None:
    floor = Floor()
    a_run(floor, "r1", scrap=1)
    a_run(floor, "r2")
    (product,) = by_product(floor.state.runs.values())
    runs = tuple(replace(product.runs[0], good=good, scrap=30 - good) for good in (27, 24, 27))

    assert replace(product, runs=runs).good_percent == 87


def elements(floor: Floor) -> list[MeasuredElement]:
    runs = list(floor.state.runs.values())
    return measured_elements(runs, estimates_from(floor.state, floor.book))


def test_an_element_counts_its_times_over_all_runs() -> None:
    floor = Floor()
    for number, minutes in enumerate((8, 12, 16), 1):
        a_run(floor, f"r{number}", minutes)

    found = elements(floor)

    assert [(one.id, one.times, one.run.id) for one in found] == [
        ("rail|clean|hand", 3, "r3"),
        ("rail|pack|hand", 3, "r3"),
    ]


def test_a_step_that_the_newest_run_no_longer_has_is_not_offered() -> None:
    floor = Floor()
    a_run(floor, "r1")
    floor.open_run(run="r2", product={**SHORT, "operations": STEPS[1:]}, boards={})

    assert [one.step.key for one in elements(floor)] == ["pack"]


def test_an_element_that_was_overruled_since_stays_in_the_list_with_all_its_times() -> None:
    floor = Floor()
    a_run(floor, "r1")
    a_run(floor, "r2")

    said = {"of": "rail", "step": "clean", "kind": "hand", "minutes": 2.5, "why": "a new brush"}
    floor.press("time overruled", said)

    assert [(one.id, one.times) for one in elements(floor)] == [("rail|clean|hand", 2), ("rail|pack|hand", 2)]


@pytest.mark.parametrize(("minutes", "step"), [(13, "clean"), (7.5, "pack")])
def test_the_element_that_moves_a_run_by_most_minutes_is_the_one_to_look_at(minutes: float, step: str) -> None:
    """Four pieces: clean is written with 8 minutes, pack with 12."""
    floor = Floor()
    a_run(floor, "r1", minutes)
    estimates = estimates_from(floor.state, floor.book)

    found = furthest_moved(elements(floor), estimates)

    assert found is not None
    assert found.step.key == step


def test_without_a_measured_time_there_is_no_element_to_look_at() -> None:
    assert furthest_moved([], estimates_from(Floor().state, Floor().book)) is None
