"""A run's time study: what counts, what is left out and why, and what is not known is never nought."""

from datetime import timedelta

import pytest

from runboard.plan.estimates import by_session, estimates_from
from runboard.review.measured.seen import WHY_LEFT_OUT
from runboard.review.measured.study import ElementStudy, TimeStudy
from runboard.review.measured.time_study import time_study
from runboard.words.sentences import say
from tests.core.pasts import past_of
from tests.core.pressing import Floor
from tests.core.test_estimates import floor_with_a_cut_board, loaded, worked
from tests.scenario import shop

MINUTE = timedelta(minutes=1)


def study(floor: Floor) -> TimeStudy:
    return time_study(past_of(floor))


def element(floor: Floor, step: str = "clean", kind: str = "hand") -> ElementStudy:
    return next(one for one in study(floor).elements if (one.step, one.kind) == (step, kind))


def why(floor: Floor, step: str = "clean", kind: str = "hand") -> dict[str, int]:
    return dict(element(floor, step, kind).why_left_out)


def test_what_was_pressed_from_end_to_end_counts():
    floor = floor_with_a_cut_board()

    for tray, minutes in (("1", 5), ("2", 10), ("3", 6)):
        worked(floor, f"clean/{tray}", minutes)

    clean = element(floor)
    assert [length / MINUTE for length in clean.lengths] == [1, 2, 1.2]
    assert clean.median == 1.2 * MINUTE
    assert clean.mean is not None
    assert clean.mean / MINUTE == pytest.approx(1.4)
    assert clean.deviation is not None
    assert clean.deviation / MINUTE == pytest.approx(0.529, abs=0.001)
    assert clean.needed == 55 - 3
    assert (clean.guess, clean.written, clean.source, clean.left_out) == (MINUTE, MINUTE, "measured 3", ())
    assert clean.estimate > MINUTE


def test_what_nobody_measured_is_none_and_never_nought():
    clean = element(floor_with_a_cut_board())

    assert (clean.n, clean.median, clean.mean, clean.deviation, clean.needed, clean.curve) == (0, *[None] * 5)
    assert (clean.taken_total, clean.guessed_total, clean.source) == (None, timedelta(0), "guess")


def test_one_observation_has_a_middle_and_no_spread():
    floor = floor_with_a_cut_board()

    worked(floor, "clean/1", 5)

    clean = element(floor)
    assert (clean.median, clean.deviation, clean.needed) == (MINUTE, None, None)


def test_a_load_that_was_interrupted_teaches_no_time():
    floor = floor_with_a_cut_board()
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(3)
    floor.press("person called away")

    worked(floor, "clean/1", 2)

    assert why(floor) == {"interrupted": 1}
    taken = element(floor).taken_total
    assert taken is not None
    assert round(taken / MINUTE) == 5, "the time itself is known"


def test_hands_that_went_to_another_load_overlap():
    floor = floor_with_a_cut_board()
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(3)

    floor.press("load started", run="r1", load="cut/2")
    floor.wait(2)
    floor.press("load done", run="r1", load="clean/1")

    assert (why(floor), element(floor).taken_total) == ({"overlapping": 1}, None)
    assert ("load done", "clean", 5 * MINUTE) in [(one.press, one.step, one.unknown) for one in study(floor).presses]


def test_two_people_at_one_load_are_no_overlap_and_add_up():
    floor = floor_with_a_cut_board()
    floor.press("load started", run="r1", load="clean/1")
    floor.press("load started", run="r1", load="clean/1", person="ben")
    floor.wait(5)
    floor.press("load done", run="r1", load="clean/1")

    (length,) = element(floor).lengths
    assert round(length / MINUTE, 1) == 2


def test_what_was_taken_back_is_left_out_and_what_took_its_place_counts():
    floor = floor_with_a_cut_board()
    wrong = floor.press("load started", run="r1", load="clean/1")
    floor.press("event undone", {"event": wrong.id})

    worked(floor, "clean/1", 5)

    assert (why(floor), element(floor).n) == ({"undone": 1}, 1)


@pytest.mark.parametrize("which", ["beginning", "end"])
def test_a_moment_that_was_corrected_teaches_nothing(which: str):
    floor = floor_with_a_cut_board()
    worked(floor, "clean/1", 8)
    pressed = [event for event in floor.ledger.held if event.load == "clean/1"]
    event, by = (pressed[0], 30) if which == "beginning" else (pressed[-1], -30)

    floor.press("event amended", {"event": event.id, "at": (event.at + timedelta(seconds=by)).isoformat()})

    assert why(floor) == {"amended": 1}
    assert element(floor).taken_total is not None


def test_what_somebody_said_otherwise_of_a_long_span_is_a_correction():
    floor = floor_with_a_cut_board()
    worked(floor, "clean/1", 8)
    span = floor.run.past["clean/1"].spans[0].event

    floor.press("span answered", {"span": span, "answer": "about", "minutes": 4}, run="r1", load="clean/1")

    assert (why(floor), element(floor).taken_total) == ({"amended": 1}, 4 * MINUTE)


def test_a_card_typed_in_teaches_nothing_and_is_known():
    floor = floor_with_a_cut_board()
    floor.press("load started", run="r1", load="clean/1", basis="paper")
    floor.wait(4)

    floor.press("load done", run="r1", load="clean/1", basis="paper")

    assert why(floor) == {"paper": 1}
    assert element(floor).taken_total is not None


def test_what_was_filled_in_is_assumed():
    floor = floor_with_a_cut_board()

    floor.press("load started", run="r1", load="sand:120/2")

    assert why(floor) == {"assumed": 1}
    assert (element(floor).guessed_total, element(floor).taken_total) == (5 * MINUTE, None)
    assert why(floor, "sand:120") == {"going on": 1}


def test_a_load_of_which_only_done_was_pressed_has_no_length():
    floor = floor_with_a_cut_board()

    assert (
        why(floor, "cut", "machine")
        == why(floor, "cut", "loading")
        == why(floor, "cut", "unloading")
        == {"no length": 1}
    )


def test_a_machine_whose_end_nobody_pressed_has_none():
    floor = Floor()
    floor.open_run(trays=6)

    loaded(floor, "cut/1", 7)

    assert why(floor, "cut", "machine") == {"no end": 1}


def test_a_machine_that_stopped_early_was_interrupted_and_is_loaded_again():
    floor = Floor()
    floor.open_run(trays=6)
    floor.press("load started", run="r1", load="cut/1")
    floor.wait(6)
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(10)
    floor.press("load stopped", {"why": "slip"}, run="r1", load="cut/1")
    floor.press("stop settled", {"how": "resume"}, run="r1", load="cut/1")
    floor.wait(3)
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(20)
    floor.press("machine ended", run="r1", load="cut/1")

    assert why(floor, "cut", "machine") == {"interrupted": 1}
    assert why(floor, "cut", "loading") == {"loaded again": 1}


def test_a_load_that_was_taken_off_teaches_nothing():
    floor = floor_with_a_cut_board()
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(3)

    floor.press("load taken off", run="r1", load="clean/1")

    assert (why(floor), element(floor).guessed_total) == ({"taken off": 1}, timedelta(0))


def test_the_first_loading_after_a_change_has_the_setup_in_it():
    floor = Floor()
    floor.open_run(trays=9)

    loaded(floor, "cut/1", 7)
    loaded(floor, "cut/2", 3)

    assert (element(floor, "cut", "setup").lengths, why(floor, "cut", "loading")) == ((4 * MINUTE,), {"with setup": 1})
    assert element(floor, "cut", "loading").lengths == (3 * MINUTE,)


def test_setup_is_told_by_the_loadings_that_were_measured_and_not_by_a_wrong_guess_of_them():
    floor = Floor()
    floor.open_run(trays=9)
    loaded(floor, "cut/1", 7)
    assert element(floor, "cut", "setup").lengths == (5 * MINUTE,), "with nothing measured the route says two minutes"

    for board in ("cut/2", "cut/3"):
        loaded(floor, board, 4)

    assert element(floor, "cut", "setup").lengths == (3 * MINUTE,)
    whole = [element(floor, "cut", kind).taken_total for kind in ("setup", "loading")]
    assert sum((one for one in whole if one), timedelta(0)) == 15 * MINUTE


def test_a_change_that_took_no_longer_than_a_loading_teaches_no_setup():
    floor = Floor()
    floor.open_run(trays=9)

    loaded(floor, "cut/1", 2)

    assert why(floor, "cut", "setup") == {"all usual": 1}


def test_setup_by_hand_is_not_told_from_the_first_work():
    floor = floor_with_a_cut_board()

    worked(floor, "sand:120/1", 16)

    assert why(floor, "sand:120", "setup") == {"with hands": 1}
    assert element(floor, "sand:120").lengths == (3 * MINUTE,)
    whole = [element(floor, "sand:120", kind).taken_total for kind in ("setup", "hand")]
    assert sum((one for one in whole if one), timedelta(0)) == 16 * MINUTE


def test_another_wood_is_another_time():
    floor = floor_with_a_cut_board()
    floor.press("wood noted", {"wood": "oak"}, run="r1", tray="1")

    worked(floor, "clean/1", 8)

    assert (why(floor), element(floor).source) == ({"other wood": 1}, "guess")


@pytest.mark.parametrize("minutes", [0.5, 30])
def test_beyond_five_times_the_guess_or_below_a_fifth_it_was_no_work(minutes: float):
    floor = floor_with_a_cut_board()

    worked(floor, "clean/1", minutes)

    clean = element(floor)
    assert (why(floor), clean.taken_total) == ({"out of range": 1}, None)
    assert [left.length for left in clean.left_out] == [minutes / 5 * MINUTE], "of a piece, as those that count"


def a_mixed_floor() -> Floor:
    floor = Floor()
    floor.open_run(trays=9)
    loaded(floor, "cut/1", 7, ticked=True)
    loaded(floor, "cut/2", 3)
    for tray, minutes in (("1", 5), ("2", 9), ("3", 60), ("4", 0.4), ("5", 7)):
        worked(floor, f"clean/{tray}", minutes)
    floor.press("load started", run="r1", load="clean/6", basis="paper")
    floor.wait(4)
    floor.press("load done", run="r1", load="clean/6", basis="paper")
    for tray, minutes in (("1", 16), ("2", 14)):
        worked(floor, f"sand:120/{tray}", minutes)
    return floor


def test_what_the_study_counts_is_what_the_estimates_counted():
    floor = a_mixed_floor()
    estimates = estimates_from(floor.state, floor.book)

    for one in study(floor).elements:
        step = floor.run.route.step(one.step)
        assert step is not None
        counted = estimates.counted(floor.run, step, one.kind)
        likely = by_session(estimates.guess(floor.run, step, one.kind), counted)
        known = estimates.of(floor.run, step, one.kind)
        assert one.n == sum(session.times for session in likely.values()) == known.times, (one.step, one.kind)
        assert (one.estimate, one.source) == (known.length, known.said)


def test_every_observation_is_counted_or_left_out_with_a_why_that_can_be_said():
    found = study(a_mixed_floor())

    assert {left.why for one in found.elements for left in one.left_out} <= set(WHY_LEFT_OUT)
    for code in WHY_LEFT_OUT:
        assert say("review-left-out", code, {})


def test_elements_stand_in_the_order_of_the_route():
    found = study(a_mixed_floor())

    assert [(one.step, one.kind) for one in found.elements][:6] == [
        ("cut", "setup"),
        ("cut", "loading"),
        ("cut", "machine"),
        ("cut", "unloading"),
        ("clean", "hand"),
        ("sand:120", "setup"),
    ]
    assert all(one.operation == one.step.split(":")[0] for one in found.elements)


def test_the_share_measured_is_of_the_work_that_is_over_by_its_guess():
    floor = floor_with_a_cut_board()  # a board of which only 'done' was pressed: 42 min
    worked(floor, "clean/1", 5)

    assert study(floor).share == pytest.approx(5 / (42 + 5))


def test_of_a_run_in_which_nothing_is_over_no_share_is_known():
    floor = Floor()
    floor.open_run()

    assert study(floor).share is None


def test_a_run_pressed_from_end_to_end_is_measured_whole():
    floor = Floor()
    floor.open_run(trays=3)
    floor.press("load started", run="r1", load="cut/1")
    floor.wait(6)
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(38)
    floor.press("machine ended", run="r1", load="cut/1")
    floor.press("unloading started", run="r1", load="cut/1")
    floor.wait(2)
    floor.press("load done", run="r1", load="cut/1")
    worked(floor, "clean/1", 5)
    worked(floor, "sand:120/1", 16)

    found = study(floor)

    assert (found.share, found.presses) == (1, ())


def test_the_presses_that_would_tell_most_come_first_three_at_most():
    floor = Floor()
    floor.open_run(trays=9)
    floor.press("load started", run="r1", load="cut/1")
    floor.wait(6)
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(38)
    floor.press("load done", run="r1", load="cut/1")
    for load in ("clean/1", "clean/2", "sand:120/1", "sand:180/1"):
        floor.press("load done", run="r1", load=load)

    found = study(floor).presses

    assert [(one.press, one.step, one.unknown / MINUTE) for one in found] == [
        ("machine ended", "cut", 38),
        ("load started", "sand:120", 15),
        ("load started", "clean", 10),
    ]


def test_a_trend_within_the_run_is_fitted_by_units_and_said_only_where_it_is_clear():
    floor = Floor()
    floor.open_run(trays=9)
    for board in ("cut/1", "cut/2", "cut/3"):
        floor.press("load done", run="r1", load=board)

    for number in range(1, 9):
        worked(floor, f"clean/{number}", 15 * number**-0.3219281)

    curve = element(floor).curve
    assert curve is not None
    assert curve.is_clear
    assert curve.rate == pytest.approx(0.8, abs=0.001)
    assert curve.first / MINUTE == pytest.approx(3, abs=0.01)


def test_the_guess_is_what_was_believed_before_the_run():
    floor = floor_with_a_cut_board()
    worked(floor, "clean/1", 9)
    believed = estimates_from(floor.state, floor.book)

    found = time_study(past_of(floor, believed=believed))

    clean = next(one for one in found.elements if one.step == "clean")
    assert clean.guess == clean.estimate > clean.written


@pytest.mark.parametrize(
    ("book", "minutes"),
    [
        ({}, None),
        ({"rating": 0.9}, None),
        ({"allowance": 0.2}, 2.4),
        ({"allowance": 0.2, "allowance_of": "day"}, 2.5),
        ({"allowance": 0.2, "rating": 0.9}, 2.16),
    ],
)
def test_standard_time_is_said_where_the_shop_has_an_allowance(book: dict, minutes: float | None):
    floor = Floor({**shop(), **book})
    floor.open_run(trays=6)
    floor.press("load done", run="r1", load="cut/1")
    worked(floor, "clean/1", 10)

    standard = element(floor).standard

    assert (standard and round(standard / MINUTE, 6)) == minutes
