"""A line of stations, its takt, and what time saved at one of them is worth: by formula, and as the planner's optimum.

The line is a text-book's with a cycle of 300 s (https://qoschin.com/qa/HAL8JQq9aR6H): seven tasks, four stations by the
rule of the longest task first. That time saved at another station than the slowest saves nothing is calculated here from
its times; the thought is Goldratt's (from memory).
"""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.plan.pace import StationLine, takt_time
from runboard.plan.schedule.problem.nouns import FAR, Problem, Worker
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.search.improve import improve
from runboard.plan.schedule.told.pacing import run_paces
from runboard.review.pace import balance_delay, fewest_stations, idle
from tests.lines import line
from tests.outside.proving import optimum
from tests.outside.said import calculated, from_memory, published

SECONDS = {"A": 70, "B": 60, "C": 120, "D": 60, "E": 240, "F": 100, "G": 190}
AFTER = {"B": "A", "C": "B", "E": "CD", "F": "A", "G": "EF"}
STATIONS = ("AFDB", "C", "E", "G")
CYCLE = 300

# What is cut, and the cycle with it.
CUTS: dict[str, tuple[dict[str, int], int]] = {
    "nothing": ({}, 290),
    "C from 120 to 60": ({"C": 60}, 290),
    "E from 240 to 190": ({"E": 190}, 290),
    "the first station by 50": ({"A": 20}, 240),
    "the first station by 100": ({"A": 20, "F": 50}, 240),
}


def stations(seconds: dict[str, int]) -> StationLine[float]:
    return StationLine([sum(seconds[task] for task in tasks) for tasks in STATIONS])


def problem(seconds: dict[str, int], units: int) -> Problem:
    """A tick for ten seconds."""
    return line({task: length // 10 for task, length in seconds.items()}, AFTER, STATIONS, units)


TEXT_BOOK = "https://qoschin.com/qa/HAL8JQq9aR6H (a production management text-book's solution)"


@published(
    TEXT_BOOK,
    {
        "fewest stations": 3,
        "idle of AFDB": 10,
        "idle of C": 180,
        "idle of E": 60,
        "idle of G": 110,
        "idle": 360,
        "efficiency": 0.70,
        "balance delay": 0.30,
    },
    within=1e-9,
)
def test_the_line_is_balanced_as_printed(figure: str) -> float:
    balanced = stations(SECONDS)
    apart = {f"idle of {tasks}": CYCLE - load for tasks, load in zip(STATIONS, balanced.loads, strict=True)}
    return {
        **apart,
        "fewest stations": fewest_stations(sum(SECONDS.values()), CYCLE),
        "idle": idle(balanced, CYCLE),
        "efficiency": balanced.efficiency(CYCLE),
        "balance delay": balance_delay(balanced, CYCLE),
    }[figure]


@calculated(f"the times of {TEXT_BOOK}", {"nothing": 12.41, "the first station by 50": 15.00}, within=0.005)
def test_the_pieces_an_hour_of_the_slowest_station(cut: str) -> float:
    return 3600 / stations({**SECONDS, **CUTS[cut][0]}).cycle


@calculated(f"the times of {TEXT_BOOK}", {"cycle": 290, "idle": 4 * 290 - 840})
def test_its_real_cycle_is_the_slowest_station(figure: str) -> float:
    balanced = stations(SECONDS)
    return {"cycle": balanced.cycle, "idle": idle(balanced)}[figure]


@pytest.mark.parametrize("cut", CUTS)
def test_time_saved_is_worth_what_it_saves_at_the_slowest_station(cut: str) -> None:
    changes, cycle = CUTS[cut]

    assert stations({**SECONDS, **changes}).cycle == cycle
    three, four = (optimum(problem({**SECONDS, **changes}, units)) for units in (3, 4))
    assert (four - three) * 10 == cycle


def test_making_the_plan_better_ends_at_the_same_proof() -> None:
    units = problem(SECONDS, 4)

    found = improve(units, greedy_plan(units, 4), 10, lambda *_: None)

    assert found.is_proved
    assert found.plan.finish(units) == optimum(units)


@pytest.mark.parametrize("cut", CUTS)
def test_a_plan_of_the_line_names_its_pace(cut: str) -> None:
    changes, cycle = CUTS[cut]
    units = problem({**SECONDS, **changes}, 3)
    beside = replace(units, people=(Worker("ann", "Ann", ((0, FAR),)),))

    (pace,) = run_paces(beside, greedy_plan(beside, 20))

    assert pace.by_station[0].each * 10 == cycle
    assert not pace.is_held_by_people


# takt time


# The page's grouping is wrong (95 s in a station of 60 s); its takt is right.
GUITARS = (
    "https://math-gpt.org/problems/question/"
    "a-company-produces-guitars-with-a-production-line-consisting-of-11-work-step"
)
ASSEMBLY = "https://tutorsglobe.com/question/a-company-is-setting-up-an-assembly-line-to-5422496.aspx"
SHIFT = timedelta(hours=8)


@published(GUITARS, {(SHIFT, 480): timedelta(seconds=60)})
def test_takt_is_the_hours_there_are_over_the_pieces_wanted(hours: timedelta, pieces: int) -> timedelta:
    return takt_time(hours, pieces)


@calculated(f"inputs of {ASSEMBLY}", {(SHIFT, 192): timedelta(minutes=2.5)})
def test_the_cycle_of_an_assembly_line(hours: timedelta, pieces: int) -> timedelta:
    return takt_time(hours, pieces)


@from_memory("Rother and Shook, Learning to See, 1999", {(timedelta(seconds=27_600), 460): timedelta(seconds=60)})
def test_the_takt_of_a_value_stream(hours: timedelta, pieces: int) -> timedelta:
    return takt_time(hours, pieces)


def test_a_task_longer_than_the_takt_fits_no_line_of_single_stations() -> None:
    # Of the guitars above one task takes 75 s: no grouping of whole tasks gives one every 60 s.
    assert StationLine([75.0, 60.0]).cycle > takt_time(8 * 3600, 480)
