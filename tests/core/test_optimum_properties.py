"""What a change can do to the best finish there is, on small shops of which the best plan is proved.

Allowing more - a person, a capacity, hours - never makes the best finish later: the plan as it was keeps every rule still.

Shortening a time element never makes it later either, hours or not, since the plan as it was can be kept with the element
begun or ended where it was. That is not so, and not said of:
- work that must begin by a latest end of the wait before it and is followed by a wait that holds a place: it can neither
  begin later nor end earlier (the last test shows such a shop);
- setup and loading after such a latest end, for the same reason: nothing rests between them and the machine;
- work that is begun already and is followed by a wait that holds a place;
- machines watched from another room: the watcher is held to be back at the machine as soon as their hands are free, and a
  way that was walked during the watch is walked after it where the watch ends sooner. The rule stays on the safe side.

By how much it becomes earlier has a bound only within one unbroken window: no more than the changes of all loads that
have the element, added up, since a plan of the shorter shop can be kept with everything after each such load moved by its
change. Over a closed hour the finish jumps: a minute can win an evening, and an hour nothing. Latest ends and begun work
have no such bound even within a window: what cannot move makes way by more than the change.

An element that could be longer in a best plan has slack: shortened again by as much, it moves nothing.
"""

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, assume, given, reject, settings
from hypothesis import strategies as st

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.hours import joined
from runboard.plan.schedule.problem.nouns import FAR, Block, Lag, Placed, Plan, PlannedStation, Problem, Stretch, Worker
from tests.core.instances import MONDAY, problems
from tests.core.optimum import Best, best_of
from tests.core.shorter import KINDS, has_it, in_one_window, longer, shorter, steady, sum_of_changes
from tests.examples import examples

BY_CHANCE = settings(max_examples=examples(15), suppress_health_check=list(HealthCheck))


def the_best(problem: Problem) -> Best:
    """The best plan; a shop without a proved one is no example."""
    found = best_of(problem)
    if found is None:
        reject()
    return found


def finish_of(problem: Problem) -> int:
    """The finish of the best plan, of a shop made by hand."""
    found = best_of(problem)
    assert found is not None
    return found.finish


# allowing more


@st.composite
def somebody_more(draw: st.DrawFn) -> tuple[Problem, Problem]:
    problem = draw(problems(4))
    opens, length = draw(st.integers(0, 300)), draw(st.integers(1, 600))
    more = Worker("more", "More", ((opens, opens + length),), draw(st.integers(-1, len(problem.rooms) - 1)))
    able = draw(st.sets(st.sampled_from(range(len(problem.blocks)))))
    at = len(problem.people)
    blocks = tuple(
        replace(one, people=(*one.people, at)) if one.index in able else one for one in problem.blocks
    )  # fmt: skip
    return problem, replace(problem, people=(*problem.people, more), blocks=blocks)


@st.composite
def capacity_more(draw: st.DrawFn) -> tuple[Problem, Problem]:
    problem = draw(problems(4).filter(lambda one: bool(one.services)))
    services = tuple((key, many + draw(st.integers(0, 2))) for key, many in problem.services)
    return problem, replace(problem, services=services)


@st.composite
def hours_more(draw: st.DrawFn) -> tuple[Problem, Problem]:
    problem = draw(problems(4))
    longer_by = st.tuples(st.integers(0, 60), st.integers(0, 60))
    people = tuple(replace(one, windows=_wider(one.windows, draw(longer_by))) for one in problem.people)
    stations = tuple(replace(one, runs=_wider(one.runs, draw(longer_by))) for one in problem.stations)
    return problem, replace(problem, people=people, stations=stations)


def _wider(spans: tuple[tuple[int, int], ...], by: tuple[int, int]) -> tuple[tuple[int, int], ...]:
    return joined((max(0, opens - by[0]), closes + by[1]) for opens, closes in spans)


@BY_CHANCE
@given(st.one_of(somebody_more(), capacity_more(), hours_more()))
def test_more_people_capacity_or_hours_never_make_the_best_finish_later(pair: tuple[Problem, Problem]) -> None:
    now, then = pair
    before = the_best(now)

    assert broken(then, before.plan) == ()
    assert the_best(then).finish <= before.finish


# shortening a time element

changes = st.tuples(st.sampled_from(KINDS), st.integers(1, 12))


@BY_CHANCE
@given(problems(4), changes)
def test_a_shorter_time_element_never_makes_the_best_finish_later(problem: Problem, change: tuple[str, int]) -> None:
    now = steady(problem, change[0])
    assume(has_it(now, change[0]))

    assert the_best(shorter(now, *change)).finish <= the_best(now).finish


@BY_CHANCE
@given(problems(4), changes)
def test_within_one_window_the_best_finish_moves_by_no_more_than_the_changes_of_all_loads(
    problem: Problem, change: tuple[str, int]
) -> None:
    now = in_one_window(problem)
    assume(has_it(now, change[0]))
    then = shorter(now, *change)

    moved = the_best(now).finish - the_best(then).finish

    assert 0 <= moved <= sum_of_changes(now, then, change[0])


@BY_CHANCE
@given(problems(4), st.sampled_from(KINDS), st.data())
def test_an_element_shortened_by_no_more_than_its_slack_moves_nothing(
    problem: Problem, kind: str, data: st.DataObject
) -> None:
    short = steady(problem, kind)
    best = the_best(short)
    slack = {}
    for block in short.blocks:
        for ticks in (40, 10, 3, 1):
            long = longer(short, kind, block.index, ticks)
            if long != short and not broken(long, best.plan) and best.plan.finish(long) == best.finish:
                slack[block.index] = long
                break
    assume(slack)
    long = slack[data.draw(st.sampled_from(sorted(slack)))]

    assert the_best(long).finish == best.finish


# by hand


def work(index: int, station: int, length: int, *lags: Lag, by: int = 0) -> Block:
    stretch = Stretch("hand", 0, length, "hands-on")
    key = str(index)
    return Block(index, "r", key, key, key, (key,), 5, station, (stretch,), (by,), lags=lags)


def two_benches(*blocks: Block, windows: tuple[tuple[int, int], ...] = ((0, FAR),)) -> Problem:
    stations = tuple(PlannedStation(key, key, 0) for key in ("bench", "table"))
    people = tuple(Worker(key, key, windows) for key in ("ann", "ben"))
    return Problem(MONDAY, stations, people, (("clamps", 1),), ("shop",), ((0,),), blocks)


@pytest.mark.parametrize(("ticks", "moved"), [(1, 0), (20, 0), (21, 1), (30, 10)])
def test_beyond_its_slack_an_element_moves_the_finish_by_what_is_left_of_its_change(ticks: int, moved: int) -> None:
    def shop(length: int) -> Problem:
        return two_benches(work(0, 0, 60), work(1, 1, length, by=1))

    assert finish_of(shop(40 + ticks)) - finish_of(shop(40)) == moved


@pytest.mark.parametrize(("ticks", "finish"), [(0, 290), (39, 290), (40, 100), (60, 80)])
def test_over_a_closed_hour_a_change_wins_nothing_until_it_wins_the_evening(ticks: int, finish: int) -> None:
    evenings = ((0, 100), (240, 340))
    problem = two_benches(work(0, 0, 90 - ticks), work(1, 1, 50, Lag(0)), windows=evenings)

    assert finish_of(problem) == finish


def test_where_work_can_neither_begin_later_nor_end_earlier_less_time_may_fit_nowhere() -> None:
    """The clamps are free at tick 20; the second work must begin by tick 10 and clamps as it ends."""
    machine = Block(
        0, "r", "m", "m", "m", ("1",), 5, 1, (Stretch("machine", 0, 20, "none", ((0, 1),)),), (), begun=True
    )
    glue = replace(work(1, 0, 10), begun=True, by=0)

    def shop(length: int) -> Problem:
        return two_benches(
            machine, glue, replace(work(2, 0, length, Lag(1, 0, 10)), holds=((0, 1),)), work(3, 0, 5, Lag(2, 30))
        )

    placed = (Placed(0, 0), Placed(1, 0, hands=0), Placed(2, 10, hands=0), Placed(3, 50, hands=0))
    assert broken(shop(10), Plan(placed)) == ()
    assert finish_of(shop(10)) == 55
    assert best_of(shop(5)) is None
