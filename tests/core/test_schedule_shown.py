"""What a plan is shown as: who is at what, hours and loads, what holds it, and the multiple-activity chart."""

from dataclasses import replace
from datetime import timedelta
from itertools import pairwise

import pytest

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import TICK, Lag, Placed, Plan, Problem, Stretch
from runboard.plan.schedule.problem.people import walks_of, watching_of, work_of
from runboard.plan.schedule.told.effort import finish_of, hands_ticks, person_loads, station_loads
from runboard.plan.schedule.told.figures import Bar, Chart, ChartRow, chart, parts, within
from runboard.plan.schedule.told.holding import chain, holder
from tests.core.by_hand import by_hand
from tests.core.pressing import Floor
from tests.core.test_optimum_properties import two_benches, work
from tests.scenario import key_rails

ANN, BEN = 0, 1


def a_problem(trays: int = 3) -> Problem:
    floor = Floor()
    floor.open_run(trays=trays)
    return problem_for(floor.state, floor.book, floor.now)


@pytest.fixture
def problem() -> Problem:
    return a_problem()


@pytest.fixture
def plan(problem: Problem) -> Plan:
    found = by_hand(problem)
    assert not broken(problem, found)
    return found


def minutes(ticks: int) -> float:
    return ticks * TICK / timedelta(minutes=1)


def test_hands_are_counted_with_their_setups(problem: Problem, plan: Plan) -> None:
    of_blocks = sum(block.hands for block in problem.blocks)
    setups = sum(one.setup for one in plan.placed)

    assert hands_ticks(problem, plan) == of_blocks + setups
    assert hands_ticks(problem, plan, "another") == 0


def test_watching_that_changes_hands_is_two(problem: Problem, plan: Plan) -> None:
    first = next(one for one in plan.placed if problem.blocks[one.block].watched)
    start = first.watchers[0][1]
    handed = replace(first, watchers=((ANN, start), (BEN, start + 20)))
    placed = tuple(handed if one is first else one for one in plan.placed)

    found = [one for one in watching_of(problem, Plan(placed)) if one.block == first.block]

    assert [(one.person, one.end - one.start) for one in found] == [(ANN, 20), (BEN, 56)]


def test_a_walk_ends_where_the_next_thing_begins(problem: Problem, plan: Plan) -> None:
    house = problem.rooms.index("house")

    there = [one for one in walks_of(problem, plan, ANN) if one.room == house]

    laser = [one for one in work_of(problem, plan, ANN) if problem.stations[one.station].key == "laser"]
    assert [minutes(one.end - one.start) for one in there] == [2]
    assert there[0].end == laser[0].start


def test_presence_is_from_the_first_to_the_last_thing_of_a_session(problem: Problem, plan: Plan) -> None:
    ann, ben = person_loads(problem, plan)

    assert len(ann.sessions) == 2
    assert ann.hands + ann.watching <= ann.presence
    assert (ben.sessions, ben.presence, ben.walks) == ((), 0, 0)


def test_the_load_of_a_station_is_a_share_of_the_hours_before_the_finish(problem: Problem, plan: Plan) -> None:
    loads = {problem.stations[one.station].key: one for one in station_loads(problem, plan)}

    assert minutes(loads["laser"].works) == 3 * 25
    assert all(0 < one.share <= 1 for one in loads.values())
    assert "sander" in loads


def test_the_chain_leads_from_now_to_the_finish(problem: Problem, plan: Plan) -> None:
    links = chain(problem, plan)

    ends = [plan.end(problem, one.block) for one in links]
    assert ends == sorted(ends)
    assert ends[-1] == finish_of(problem, plan) == plan.finish(problem)
    assert links[0].why in ("now", "hours")


def test_what_is_done_one_after_the_other_is_held_by_hands(problem: Problem, plan: Plan) -> None:
    found = holder(problem, plan)

    assert found is not None
    assert (found.what, found.which) in (("hands", ANN), ("station", problem.blocks[0].station))
    assert 0 < found.share <= 1


def held_by(machine_minutes: int, before: tuple[str, ...] = ()) -> tuple[str, ...]:
    """What holds one tray whose cutting takes so long; its hands take 58 minutes."""
    product = key_rails()
    product["operations"][0]["passes"][0]["machine_minutes"] = machine_minutes
    floor = Floor()
    floor.open_run(trays=1, product=product)
    problem = problem_for(floor.state, floor.book, floor.now)
    found = holder(problem, by_hand(problem), before=before)
    assert found is not None
    return found.name


def test_of_two_that_hold_it_alike_the_same_is_always_said() -> None:
    assert held_by(57) == held_by(58) == ("hands", "ann")
    assert held_by(59) == ("station", "cnc")


def test_what_held_it_last_is_with_words_until_another_has_clearly_more() -> None:
    assert held_by(66, ("hands", "ann")) == ("hands", "ann")
    assert held_by(90, ("hands", "ann")) == ("station", "cnc")
    assert held_by(50, ("station", "cnc")) == ("station", "cnc")
    assert held_by(30, ("station", "cnc")) == ("hands", "ann")


def test_what_holds_nothing_any_more_is_not_said_again() -> None:
    assert held_by(57, ("hands", "gone")) == ("hands", "ann")


def test_of_two_runs_each_has_its_own_hands_walks_and_sessions() -> None:
    floor = Floor()
    floor.open_run(trays=1)
    floor.open_run(trays=3, run="r2")
    problem = problem_for(floor.state, floor.book, floor.now)
    plan = by_hand(problem)

    (first, *_), (second, *_) = person_loads(problem, plan, "r1"), person_loads(problem, plan, "r2")
    both = person_loads(problem, plan)[ANN]

    assert first.walks == second.walks == 2
    assert both.walks == first.walks + second.walks
    assert both.hands == first.hands + second.hands == hands_ticks(problem, plan)
    assert len(both.sessions) >= len(second.sessions) > 0
    assert both.presence > max(first.presence, second.presence)


def test_nothing_left_is_held_by_nothing() -> None:
    empty = replace(a_problem(), blocks=())

    assert chain(empty, Plan(())) == []
    assert holder(empty, Plan(())) is None
    assert chart(empty, Plan(())).sittings == ()


def test_a_person_never_has_two_filled_bars_at_once(problem: Problem, plan: Plan) -> None:
    rows = {(row.kind, row.at): row for row in chart(problem, plan).rows}

    work = sorted((bar.start, bar.end) for bar in rows["person", ANN].bars if bar.kind == "work")
    assert all(ends <= starts for (_, ends), (starts, _) in pairwise(work))


def test_stations_and_services_stand_beside_the_people(problem: Problem, plan: Plan) -> None:
    found = chart(problem, plan)

    assert [row.kind for row in found.rows] == ["person"] * 2 + ["station"] * 5 + ["service"]
    extraction = found.rows[-1].bars
    assert [minutes(bar.end - bar.start) for bar in extraction if bar.kind == "drawn"] == [38]


def test_what_is_in_clamps_is_drawn_until_somebody_takes_it_off() -> None:
    problem = two_benches(replace(work(0, 0, 20), holds=((0, 1),)), work(1, 0, 20, Lag(0, 10)))
    plan = Plan((Placed(0, 0, hands=ANN), Placed(1, 50, hands=ANN)))

    (clamps,) = (row for row in chart(problem, plan).rows if row.kind == "service")

    assert [(bar.start, bar.end, bar.share) for bar in clamps.bars] == [(20, 50, 1.0)]


def test_a_night_is_left_out_while_pieces_dry() -> None:
    problem = a_problem(trays=1)

    found = chart(problem, by_hand(problem))

    assert len(found.sittings) == 2
    (night,) = found.breaks
    oil = next(row for row in found.rows if row.kind == "station" and problem.stations[row.at].key == "finishing")
    waits = [bar for bar in oil.bars if bar.kind == "wait"]
    assert [(bar.start <= night[0], bar.end <= night[1]) for bar in waits] == [(True, True)]


def test_a_bar_is_cut_to_its_sitting(problem: Problem, plan: Plan) -> None:
    found = chart(problem, plan)

    for sitting in found.sittings:
        bars: list[Bar] = [bar for row in found.rows for bar in within(row, sitting)]
        assert bars
        assert all(sitting[0] <= bar.start < bar.end <= sitting[1] for bar in bars)


def test_an_ended_load_that_waits_holds_its_station(problem: Problem, plan: Plan) -> None:
    machine = next(at for at in range(len(problem.blocks)) if at in problem.unloaded_by)
    after = problem.unloaded_by[machine]
    later = replace(plan.placed[after], start=plan.placed[after].start + 4)
    placed = tuple(later if one.block == after else one for one in plan.placed)

    found = chart(problem, Plan(placed))

    held = [bar for row in found.rows if row.kind == "station" for bar in row.bars if bar.kind == "held"]
    assert any(bar.block == machine and bar.end == later.start for bar in held)


def test_a_bar_that_goes_on_beyond_its_sitting_knows_how_long() -> None:
    rack = ChartRow("station", 0, (Bar(0, 60, "work", 0), Bar(60, 400, "wait", 0)))
    evening, morning = parts(Chart((rack,), ((0, 100), (300, 500))))

    assert evening.rows[0].bars == (Bar(0, 60, "work", 0), Bar(60, 100, "wait", 0, until=400))
    assert morning.rows[0].bars == (Bar(300, 400, "wait", 0, since=60),)


def test_a_service_that_holds_nothing_up_is_known_from_one_that_does() -> None:
    def services(*starts: int) -> list[bool]:
        in_clamps = (Stretch("hand", 0, 20, "hands-on", ((0, 1),)),)
        blocks = [replace(work(at, at, 20, by=at), stretches=in_clamps) for at in range(len(starts))]
        plan = Plan(tuple(Placed(at, start, hands=at) for at, start in enumerate(starts)))
        return [row.holds for row in chart(two_benches(*blocks), plan).rows if row.kind == "service"]

    assert services(0) == [False]
    assert services(0, 20) == [True]
