"""How an alert climbs while nobody answers."""

from datetime import UTC, datetime, timedelta

import pytest

from runboard.run.calls.climb import COMPUTER, FARTHEST, LOUDER, OUTSIDE, PHONES, Steps, sendings, stage_of, stages
from runboard.run.calls.dues import KINDS, Due

NOON = datetime(2026, 6, 1, 12, 0, tzinfo=UTC)
STEPS = Steps(timedelta(minutes=1), timedelta(minutes=3), timedelta(minutes=6))


def due(kind: str = "machine end", key: str = "") -> Due:
    return Due(key or f"{kind}|r1|cut/1|1", kind, NOON, "r1", "cut/1")


def after(minutes: float) -> datetime:
    return NOON + timedelta(minutes=minutes)


@pytest.mark.parametrize(
    ("minutes", "stage"),
    [
        (-5, PHONES),
        (0, PHONES),
        (0.9, PHONES),
        (1, LOUDER),
        (2.9, LOUDER),
        (3, OUTSIDE),
        (6, COMPUTER),
        (600, COMPUTER),
    ],
)
def test_a_machine_that_nobody_answers_climbs_to_the_top(minutes: float, stage: int) -> None:
    assert stage_of(due(), STEPS, after(minutes)) == stage


def test_a_missed_look_climbs_three_times_as_fast() -> None:
    assert stage_of(due("watch check"), STEPS, after(1)) == OUTSIDE
    assert stage_of(due("watch check"), STEPS, after(2)) == COMPUTER


@pytest.mark.parametrize(("kind", "stage"), [("wait over", OUTSIDE), ("session end", LOUDER), ("hold over", PHONES)])
def test_what_can_wait_climbs_less_far(kind: str, stage: int) -> None:
    assert stage_of(due(kind), STEPS, after(600)) == stage


def test_what_asks_again_is_as_urgent_as_what_it_asks_about() -> None:
    again = due("ask again", "ask again|looks ended|r1|cut/1|1|99|2026-06-01T12:00:00Z")

    assert stage_of(again, STEPS, after(10)) == COMPUTER


def test_a_stage_that_is_switched_off_is_left_out() -> None:
    steps = Steps(timedelta(minutes=1), None, timedelta(minutes=6))

    assert stage_of(due(), steps, after(5)) == LOUDER
    assert sendings(due(), steps, after(60)) == 0
    assert OUTSIDE not in stages(due(), steps)


@pytest.mark.parametrize(("minutes", "sent"), [(2, 0), (3, 1), (17, 1), (18, 2), (33, 3), (48, 4), (5000, 4)])
def test_outside_is_told_again_now_and_then_and_not_for_ever(minutes: float, sent: int) -> None:
    assert sendings(due(), STEPS, after(minutes)) == sent


def test_every_kind_of_alert_has_its_farthest_stage() -> None:
    assert FARTHEST.keys() == set(KINDS) - {"ask again"}


def test_nobody_outside_hears_of_a_look_before_all_here_do() -> None:
    hasty = Steps(timedelta(seconds=15), timedelta(seconds=30), timedelta(seconds=45))

    assert stage_of(due("watch check"), hasty, after(0.99)) == LOUDER
    assert stage_of(due("watch check"), hasty, after(1)) == COMPUTER
    assert stage_of(due("nobody near"), hasty, after(0.25)) == COMPUTER
