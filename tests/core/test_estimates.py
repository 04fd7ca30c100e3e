"""How long things take: a guess moved by what was measured."""

from datetime import date, timedelta

import pytest

from runboard.plan.estimates import (
    GUESS_SPREAD,
    HANDS,
    MACHINE,
    Estimates,
    KnownTime,
    Measured,
    estimates_from,
    updated,
)
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import TICK
from tests.core.pressing import Floor

MINUTE = timedelta(minutes=1)


def floor_with_a_cut_board(trays: int = 6) -> Floor:
    floor = Floor()
    floor.open_run(trays=trays)
    floor.press("load done", run="r1", load="cut/1")
    return floor


def worked(floor: Floor, load: str, minutes: float) -> None:
    """Hand work from its beginning to its end."""
    floor.press("load started", run="r1", load=load)
    floor.now += timedelta(minutes=minutes) - timedelta(seconds=1)
    floor.press("load done", run="r1", load=load)


def known(floor: Floor, step: str, kind: str = "hand") -> KnownTime:
    estimates = estimates_from(floor.state, floor.book)
    found = floor.run.route.step(step)
    assert found is not None
    return estimates.of(floor.run, found, kind)


def evenings(*lengths: float, each: int = 1) -> list[Measured]:
    """So many times of so many minutes in each of some evenings."""
    return [
        Measured(length * MINUTE, ("r1", date(2026, 6, day)), "ash")
        for day, length in enumerate(lengths, 1)
        for _ in range(each)
    ]


def test_nothing_measured_leaves_the_guess():
    found = known(floor_with_a_cut_board(), "clean")

    assert (found.length, found.source, found.said) == (MINUTE, "guess", "guess")
    assert found.spread > GUESS_SPREAD


def test_what_was_measured_moves_the_guess_part_of_the_way():
    floor = floor_with_a_cut_board()

    worked(floor, "clean/1", 8)

    found = known(floor, "clean")
    assert MINUTE < found.length < 1.6 * MINUTE
    assert found.said == "measured 1"


def test_three_runs_move_it_and_one_bad_evening_does_not():
    guess = 10 * MINUTE

    bad = updated(guess, evenings(20, each=9), HANDS)
    three = updated(guess, evenings(14, 15, 16, each=9), HANDS)

    assert bad.length < 15 * MINUTE, "nine times of one evening say one thing, not nine"
    assert 13 * MINUTE < three.length < 15 * MINUTE


def test_a_program_that_ran_once_is_known_for_the_next_time():
    found = updated(38 * MINUTE, evenings(46), MACHINE)

    assert abs(found.length - 46 * MINUTE) < MINUTE
    assert found.spread < 0.06


@pytest.mark.parametrize("ago", ["put aside", "called away"])
def test_what_was_interrupted_teaches_nothing_though_its_last_part_was_measured(ago: str):
    floor = floor_with_a_cut_board()
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(3)
    if ago == "put aside":
        floor.press("load put aside", run="r1", load="clean/1")
    else:
        floor.press("person called away")

    worked(floor, "clean/1", 2)

    assert known(floor, "clean").source == "guess"


def test_what_was_typed_from_paper_or_filled_in_teaches_nothing():
    floor = floor_with_a_cut_board()

    floor.press("load started", run="r1", load="clean/1", basis="paper")
    floor.wait(4)
    floor.press("load done", run="r1", load="clean/1", basis="paper")
    floor.press("load started", run="r1", load="sand:120/2")  # nobody pressed that tray 2 was cleaned

    assert known(floor, "clean").source == "guess"


def test_a_moment_that_was_corrected_teaches_nothing():
    floor = floor_with_a_cut_board()
    worked(floor, "clean/1", 8)
    begun = next(event for event in floor.ledger.held if event.load == "clean/1")

    floor.press("event amended", {"event": begun.id, "at": (begun.at + 5 * MINUTE).isoformat()})

    assert known(floor, "clean").source == "guess"


def test_a_machines_end_that_was_corrected_teaches_nothing():
    floor = Floor()
    floor.open_run(trays=3)
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(40)
    ended = floor.press("machine ended", run="r1", load="cut/1")
    assert known(floor, "cut", "machine").said == "measured 1"

    floor.press("event amended", {"event": ended.id, "at": (ended.at - 5 * MINUTE).isoformat()})

    assert known(floor, "cut", "machine").source == "guess"


def test_presses_made_one_after_another_are_no_time():
    floor = floor_with_a_cut_board()

    worked(floor, "clean/1", 0.1)

    assert known(floor, "clean").source == "guess"


def test_the_first_loading_after_a_change_is_setup_and_a_usual_loading():
    floor = Floor()
    floor.open_run(trays=6)
    for board, minutes in (("cut/1", 7), ("cut/2", 2)):
        floor.press("load started", run="r1", load=board)
        floor.now += timedelta(minutes=minutes) - timedelta(seconds=1)
        floor.press("machine started", run="r1", load=board)
        floor.press("load done", run="r1", load=board)

    assert known(floor, "cut", "setup").length > 4 * MINUTE
    assert known(floor, "cut", "loading").said == "measured 1"
    assert known(floor, "cut", "loading").length == 2 * MINUTE


def loaded(floor: Floor, board: str, minutes: float, ticked: bool = False) -> None:
    floor.press("load started", run="r1", load=board)
    floor.now += timedelta(minutes=minutes) - timedelta(seconds=1)
    if ticked:
        floor.press("checklist ticked", {"list": "full"}, station="cnc", at=(floor.now - MINUTE).isoformat())
    floor.press("machine started", run="r1", load=board)
    floor.press("load done", run="r1", load=board)


def test_a_start_list_that_was_ticked_leaves_the_first_loading_a_setup():
    floor = Floor()
    floor.open_run(trays=6)

    loaded(floor, "cut/1", 7, ticked=True)

    assert known(floor, "cut", "setup").said == "measured 1"
    assert known(floor, "cut", "loading").source == "guess"


def test_a_new_cutter_between_two_loads_of_a_step_is_a_setup():
    floor = Floor()
    floor.open_run(trays=9)
    loaded(floor, "cut/1", 7)
    floor.press("setup changed", {"what": "cutter"}, station="cnc")

    loaded(floor, "cut/2", 6)
    loaded(floor, "cut/3", 2)

    assert known(floor, "cut", "setup").said == "measured 2"
    assert known(floor, "cut", "loading").said == "measured 1"


def test_a_new_cutter_while_the_machine_runs_is_the_next_loads_setup():
    floor = Floor()
    floor.open_run(trays=9)
    loaded(floor, "cut/1", 7)
    floor.press("load started", run="r1", load="cut/2")
    floor.wait(2)
    floor.press("machine started", run="r1", load="cut/2")
    floor.press("setup changed", {"what": "cutter"}, station="cnc")
    floor.press("load done", run="r1", load="cut/2")

    loaded(floor, "cut/3", 6)

    assert known(floor, "cut", "loading").said == "measured 1"
    assert known(floor, "cut", "setup").said == "measured 2"


def test_two_at_one_load_count_as_the_work_of_both():
    floor = floor_with_a_cut_board()
    floor.press("load started", run="r1", load="clean/1")
    floor.press("load started", run="r1", load="clean/1", person="ben")
    floor.wait(4)

    floor.press("load done", run="r1", load="clean/1")

    assert known(floor, "clean").length > 1.15 * MINUTE


def test_times_are_kept_apart_by_wood():
    floor = floor_with_a_cut_board()
    floor.press("wood noted", {"wood": "oak"}, run="r1", tray="1")
    worked(floor, "clean/1", 8)
    estimates = estimates_from(floor.state, floor.book)
    step = floor.run.route.step("clean")
    assert step is not None

    assert estimates.times["rail", "clean", "hand"][0].wood == "oak"
    ash = Floor()
    ash.open_run(wood="ash")
    assert Estimates(estimates.times).of(ash.run, step, "hand").source == "guess"


def test_the_schedule_takes_what_was_learned():
    floor = floor_with_a_cut_board()
    for tray in "123":
        worked(floor, f"clean/{tray}", 9)

    found = problem_for(floor.state, floor.book, floor.now, estimates_from(floor.state, floor.book))

    assert min(block.length * TICK for block in found.blocks if block.step == "clean") > 5 * MINUTE


def test_runs_that_did_not_change_are_read_once():
    floor = floor_with_a_cut_board()
    kept: dict = {}
    estimates_from(floor.state, floor.book, kept)
    first = kept["r1"][1]

    floor.press("person came")
    estimates_from(floor.state, floor.book, kept)

    assert kept["r1"][1] is first


def test_many_times_are_known_by_their_arithmetic_mean():
    lengths = [8, 10, 12, 20] * 250
    times = [Measured(one * MINUTE, (str(at), date(2026, 6, 1)), "") for at, one in enumerate(lengths)]

    found = updated(10 * MINUTE, times, HANDS)

    assert found.length / MINUTE == pytest.approx(12.5, rel=0.01)


def test_what_is_not_known_of_an_element_shrinks_while_sessions_still_differ():
    found = updated(10 * MINUTE, evenings(*[8, 10, 12] * 9, each=3), HANDS)

    assert found.length == pytest.approx(10 * MINUTE, rel=0.01)
    assert found.scatter.element < GUESS_SPREAD / 4
    assert found.scatter.session > 2 * found.scatter.element
    assert found.spread == pytest.approx(found.scatter.total)


def test_how_much_sessions_differ_is_learned_from_them():
    alike = updated(10 * MINUTE, evenings(*[10] * 12, each=3), HANDS)
    unlike = updated(10 * MINUTE, evenings(*[5, 20] * 6, each=3), HANDS)
    one = updated(10 * MINUTE, evenings(14, each=9), HANDS)

    assert alike.scatter.session < HANDS.session < unlike.scatter.session
    assert alike.scatter.element < unlike.scatter.element, "a mean of sessions that differ more is known less well"
    assert one.scatter.session == HANDS.session, "one session differs from none"


def test_what_loads_alone_make_sessions_differ_is_not_taken_for_the_sessions():
    loads = [7, 13, 8, 12, 9, 11, 6, 15, 10, 14]
    one_each = updated(10 * MINUTE, evenings(*loads), HANDS)
    many = updated(10 * MINUTE, evenings(*loads, each=9), HANDS)

    assert one_each.scatter.session < many.scatter.session
