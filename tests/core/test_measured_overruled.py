"""A person overrules what was learned: from then on that is the guess, and only what is measured later moves it."""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.plan.estimates import KnownTime, estimates_from
from runboard.review.measured.time_study import time_study
from runboard.run.refusal import Refused
from tests.core.pasts import past_of
from tests.core.pressing import Floor
from tests.core.test_estimates import floor_with_a_cut_board, known, worked

MINUTE = timedelta(minutes=1)
WHY = "the new brush takes half as long"


def overrule(floor: Floor, minutes: float = 3, step: str = "clean", kind: str = "hand", why: str = WHY) -> str:
    body = {"of": "rail", "step": step, "kind": kind, "minutes": minutes, "why": why}
    return floor.press("time overruled", body).id


def clean(floor: Floor) -> KnownTime:
    return known(floor, "clean")


def test_what_somebody_says_is_the_guess_from_then_on_with_its_reason() -> None:
    floor = floor_with_a_cut_board()
    worked(floor, "clean/1", 8)

    overrule(floor, 3)

    found = clean(floor)
    assert (found.length, found.source, found.said, found.times) == (3 * MINUTE, "said", "said", 0)
    assert found.overruled is not None
    assert (found.overruled.why, found.overruled.person) == (WHY, "ann")


def test_only_what_was_measured_after_it_moves_it() -> None:
    floor = floor_with_a_cut_board()
    worked(floor, "clean/1", 8)
    overrule(floor, 3)

    worked(floor, "clean/2", 20)

    found = clean(floor)
    assert 3 * MINUTE < found.length < 4 * MINUTE
    assert (found.said, found.overruled is not None) == ("measured 1", True)


def test_work_that_had_begun_before_it_does_not_move_it() -> None:
    floor = floor_with_a_cut_board()
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(8)
    overrule(floor, 3)
    floor.press("load done", run="r1", load="clean/1")

    assert clean(floor).length == 3 * MINUTE


def test_times_far_off_the_routes_guess_count_once_somebody_said_so() -> None:
    floor = floor_with_a_cut_board()
    worked(floor, "clean/1", 50)
    assert clean(floor).source == "guess", "ten minutes a piece are no minute"

    overrule(floor, 9)
    worked(floor, "clean/2", 50)

    assert clean(floor).said == "measured 1"


def test_taken_back_it_never_was_said() -> None:
    floor = floor_with_a_cut_board()
    worked(floor, "clean/1", 8)
    before = clean(floor)
    said = overrule(floor, 3)

    floor.press("event undone", {"event": said})

    assert clean(floor) == before


def test_the_newest_holds_and_taken_back_the_one_before_it() -> None:
    floor = floor_with_a_cut_board()
    overrule(floor, 3)
    second = overrule(floor, 4)
    assert clean(floor).length == 4 * MINUTE

    floor.press("event undone", {"event": second})

    assert clean(floor).length == 3 * MINUTE


def test_other_elements_and_steps_stay_as_they_are() -> None:
    floor = floor_with_a_cut_board()

    overrule(floor, 60, "cut", "machine")

    assert known(floor, "cut", "machine").length == 60 * MINUTE
    assert known(floor, "cut", "loading").source == known(floor, "clean").source == "guess"


def test_a_run_opened_before_it_believed_what_was_known_then() -> None:
    floor = floor_with_a_cut_board()
    floor.wait(60 * 24)
    overrule(floor, 3)
    floor.wait(60 * 24)
    floor.open_run(run="r2")
    estimates = estimates_from(floor.state, floor.book)

    def believed(run: str) -> KnownTime:
        found = floor.state.runs[run]
        step = found.route.step("clean")
        assert step is not None
        return estimates.before(found, found.opened_at.date()).of(found, step, "hand")

    assert (believed("r1").said, believed("r2").said) == ("guess", "said")


@pytest.mark.parametrize("body", [{"why": ""}, {"why": "  "}, {"minutes": 0}, {"minutes": 1e6}, {"kind": "wait"}])
def test_without_a_reason_or_a_time_it_has_no_form(body: dict) -> None:
    floor = floor_with_a_cut_board()
    said = {"of": "rail", "step": "clean", "kind": "hand", "minutes": 3, "why": WHY, **body}

    with pytest.raises(Refused) as refused:
        floor.press("time overruled", said)

    assert refused.value.code == "form"


def test_a_later_word_unmeasures_nothing_of_a_run_that_is_over() -> None:
    floor = floor_with_a_cut_board()
    for tray, minutes in (("1", 5), ("2", 7), ("3", 40)):
        worked(floor, f"clean/{tray}", minutes)
    floor.press("run finished", run="r1")
    before = time_study(past_of(floor))
    floor.wait(60)

    overrule(floor, 165, why="typed 2:45")

    after = time_study(past_of(floor))
    cleaned = next(one for one in after.elements if (one.step, one.kind) == ("clean", "hand"))
    assert (cleaned.n, cleaned.estimate, cleaned.source) == (2, 165 * MINUTE, "said")
    assert (after.share, after.presses) == (before.share, before.presses)
    assert [replace(one, estimate=MINUTE, source="") for one in after.elements] == [
        replace(one, estimate=MINUTE, source="") for one in before.elements
    ]


def test_a_load_is_judged_by_the_word_that_held_when_it_was_begun() -> None:
    floor = floor_with_a_cut_board()
    worked(floor, "clean/1", 50)
    overrule(floor, 9)
    worked(floor, "clean/2", 50)
    overrule(floor, 1)

    found = next(one for one in time_study(past_of(floor)).elements if (one.step, one.kind) == ("clean", "hand"))

    assert [length / MINUTE for length in found.lengths] == [10]
    assert dict(found.why_left_out) == {"out of range": 1}
