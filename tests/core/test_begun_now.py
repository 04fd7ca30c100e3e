"""The problem in which somebody has begun something, and what that costs."""

from dataclasses import replace
from datetime import timedelta

from runboard.plan.begun_now import BegunNow, begun
from runboard.plan.next_move import moves
from runboard.plan.price_search import not_begun, search_prices
from runboard.plan.prices import Price, Question, price_of, prices_of
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.worth import worth
from runboard.plan.schedule.rule.greedy import greedy
from runboard.plan.schedule.rule.rule import Rule
from tests.core.instances import FRIDAY, opened
from tests.core.pressing import Floor


def at_work(trays: int = 3, people: int = 1) -> Floor:
    """The first sheet of instance number one is cut; Ann, and whoever else, is in the shop for the evening."""
    floor = opened(trays, people)
    for person in ("ann", "ben")[:people]:
        until = (FRIDAY + timedelta(hours=4)).isoformat()
        floor.press("person came", {"until": until, "room": "shop"}, person=person)
    floor.press("load done", run="r1", load="rout/1")
    return floor


def block_of(problem: Problem, load: str) -> int:
    return next(block.index for block in problem.blocks if block.load == load)


def prices(floor: Floor) -> BegunNow:
    problem = problem_for(floor.state, floor.book, floor.now)
    rule = Rule(problem)
    made = greedy(problem, 100, rule)
    return BegunNow(rule, made.plan, made.priority, made.knobs)


def test_what_is_begun_now_begins_with_the_walk_there():
    floor = at_work()
    floor.press("load done", run="r1", load="sand/1")
    problem = problem_for(floor.state, floor.book, floor.now)
    at = block_of(problem, "engrave/1")

    made = begun(problem, at, 0).blocks[at]

    assert [(one.kind, one.offset, one.length) for one in made.stretches] == [
        ("walk", 0, 4),
        ("loading", 4, 4),
        ("machine", 8, 44),
    ]
    assert (made.begun, made.by, made.lags) == (True, 0, ())


def test_it_begins_once_hands_are_free():
    floor = at_work()
    floor.press("load started", run="r1", load="trim/1")
    problem = problem_for(floor.state, floor.book, floor.now)
    at = block_of(problem, "trim/2")

    made = begun(problem, at, 0).blocks[at]

    assert made.stretches[0].length == problem.blocks[block_of(problem, "trim/1")].length


def test_plans_in_which_something_was_begun_keep_every_rule():
    floor = at_work(people=2)
    floor.press("load started", run="r1", load="trim/1", person="ben")
    asked = prices(floor)

    for load in ("trim/2", "round/2"):
        found = asked.best(block_of(problem_for(floor.state, floor.book, floor.now), load), 0)
        assert found is not None
        assert broken(found.problem, found.plan) == ()


def later(plan: Plan, ticks: int) -> Plan:
    return replace(plan, placed=tuple(replace(one, start=one.start + ticks) for one in plan.placed))


def test_a_price_names_the_order_lines_that_are_later_and_by_how_much():
    floor = at_work()
    due = (floor.now + timedelta(minutes=30)).isoformat()
    floor.press("orders changed", {"orders": [{"line": "7", "pieces": 5, "due": due}]}, run="r1")
    problem = problem_for(floor.state, floor.book, floor.now)
    plan = greedy(problem, 50).plan

    price = price_of(problem, plan, problem, later(plan, 240))

    (late,) = price.late
    assert (late.run, late.line, late.pieces, late.minutes, late.more) == ("r1", "7", 5, 120, True)
    assert not price.is_small
    assert price.record["late"] == [{"run": "r1", "line": "7", "pieces": 5, "minutes": 120, "more": True}]


def test_what_is_no_worse_costs_nothing_and_a_later_finish_costs_open_minutes():
    floor = at_work()
    problem = problem_for(floor.state, floor.book, floor.now)
    plan = greedy(problem, 50).plan
    moved = later(plan, 20)

    assert price_of(problem, plan, problem, plan) == Price()
    assert price_of(problem, plan, problem, moved).minutes == 10
    assert price_of(problem, moved, problem, plan) == Price()


def test_a_search_finds_that_nothing_is_lost_where_the_rule_does_not_see_it():
    floor = at_work(people=2)
    floor.press("load started", run="r1", load="trim/1")
    asked = prices(floor)
    problem = problem_for(floor.state, floor.book, floor.now)
    at = block_of(problem, "trim/2")

    found = search_prices(problem, asked._plan, [(at, 1)], 0.3).prices

    price = asked.price(at, 1)
    assert found[at, 1].minutes <= (price.minutes if price is not None else found[at, 1].minutes)


def test_a_better_plan_that_is_found_while_prices_are_searched_for_takes_the_place_of_the_one_at_hand():
    floor = at_work(people=2)
    floor.press("load started", run="r1", load="trim/1")
    problem = problem_for(floor.state, floor.book, floor.now)
    plan = greedy(problem, 50).plan
    last = max(plan.placed, key=lambda one: plan.end(problem, one.block)).block
    moved = (replace(one, start=one.start + 40) if one.block == last else one for one in plan.placed)
    poor = replace(plan, placed=tuple(moved))
    assert broken(problem, poor) == ()
    at = block_of(problem, "trim/2")
    other = 1 - poor.placed[at].hands

    found = search_prices(problem, poor, [(at, other)], 0.1)

    assert broken(problem, found.plan) == ()
    assert worth(problem, found.plan) < worth(problem, poor)
    assert found.prices[at, other] == Price()


def test_a_plan_in_which_something_is_begun_is_one_of_the_shop_as_it_is():
    floor = at_work(people=2)
    problem = problem_for(floor.state, floor.book, floor.now)
    asked = prices(floor)

    for load, person in (("trim/1", 0), ("trim/1", 1), ("trim/2", 1)):
        at = block_of(problem, load)
        found = asked.best(at, person)
        assert found is not None
        made = not_begun(problem, found, (at, person))
        assert made is not None
        assert worth(problem, made) == found.worth
        assert (made.placed[at].hands, made.placed[at].begins() + problem.blocks[at].length) == (
            person,
            found.plan.end(found.problem, at),
        )


def test_part_of_a_load_has_no_price_since_no_plan_knows_it():
    floor = at_work()
    problem = problem_for(floor.state, floor.book, floor.now)
    asking = Question(floor.state, problem, greedy(problem, 50).plan, lambda block, person: Price())
    whole = [one for one in moves(floor.state, floor.book, "ann", floor.now) if one.code == "start"]
    part = [replace(one, pieces=dict.fromkeys(one.pieces, 1)) for one in whole]

    assert set(prices_of(asking, 0, whole, None, "").values()) == {Price()}
    assert set(prices_of(asking, 0, part, None, "").values()) == {None}
