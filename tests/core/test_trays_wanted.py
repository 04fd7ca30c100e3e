"""Of hand work over several trays Now offers as one load what a plan does in one go, and no more than costs nothing."""

from dataclasses import replace
from datetime import timedelta

from runboard.plan.answer import Answer, answer
from runboard.plan.begun_now import BegunNow, begun_together
from runboard.plan.move import Move
from runboard.plan.next_move import moves
from runboard.plan.offers import lines
from runboard.plan.prices import Price, Question
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.rule.greedy import greedy
from runboard.plan.schedule.rule.rule import Rule
from runboard.plan.trays_wanted import trays_wanted
from tests.core.one_after_another import one_after_another
from tests.core.pressing import Floor
from tests.scenario import shop


def at_the_oil(trays: int = 3, most: int | None = None, dries: float = 30, due: str | None = None) -> Floor:
    """Trays that wait to be oiled, by hand over several; then they dry for so many minutes, and get their hooks."""
    record = shop()
    oil = record["products"][0]["operations"][4]
    oil["passes"][0]["pieces"] = most
    oil["wait"]["least_minutes"] = dries
    floor = Floor(record)
    orders = [{"line": "1", "pieces": 5 * trays, **({"due": due} if due else {})}]
    some = [{"tray": str(at + 1), "pieces": 5, "at": "oil"} for at in range(trays)]
    body = {"name": "Rails", "product": record["products"][0], "orders": orders, "wood": "ash", "trays": some}
    floor.press("run opened", body, run="r1")
    floor.press("person came", {"until": "2026-06-01T20:00:00Z", "room": "shop"})
    return floor


def in_this_order(floor: Floor, *loads: str, price: Price | None = None) -> Question:
    """A plan that does the loads in this order, one after the other; several of them as one cost so much."""
    problem = problem_for(floor.state, floor.book, floor.now)
    order = [next(block.index for block in problem.blocks if block.load == load) for load in loads]
    plan = one_after_another(problem, [*order, *range(len(problem.blocks))])
    return Question(floor.state, problem, plan, lambda block, person: Price(), lambda blocks, person: price or Price())


def wanted(asking: Question, shown: str = "") -> list[str]:
    mine = sorted(asking.plan.placed, key=lambda one: one.start)
    return list(trays_wanted(asking, 0, mine, shown).get(("r1", "oil"), ()))


def starts(found: list[Move]) -> list[str]:
    return [move.load for move in found if move.code == "start"]


def shown(floor: Floor, before: Answer | None = None) -> list[Move]:
    made = answer(floor.state, floor.book, floor.now, before=before)
    return lines(floor.state, floor.book, "ann", floor.now, made.offers["ann"])


def test_the_trays_that_the_plan_does_in_one_go_are_one_load():
    floor = at_the_oil()

    assert wanted(in_this_order(floor, "oil/1", "oil/2", "oil/3")) == ["1", "2", "3"]


def test_they_end_where_the_plan_has_something_else_between():
    floor = at_the_oil(dries=0)

    assert wanted(in_this_order(floor, "oil/1", "oil/2", "hooks/1", "oil/3")) == ["1", "2"]


def test_they_end_where_no_more_go_on_one_load():
    floor = at_the_oil(most=10)

    assert wanted(in_this_order(floor, "oil/1", "oil/2", "oil/3")) == ["1", "2"]


def test_of_what_would_cost_something_as_one_load_the_first_tray_comes_alone():
    floor = at_the_oil()

    assert wanted(in_this_order(floor, "oil/1", "oil/2", "oil/3", price=Price(minutes=0.5))) == ["1"]


def test_as_many_are_one_load_as_cost_nothing():
    floor = at_the_oil(4)
    asking = in_this_order(floor, "oil/1", "oil/2", "oil/3", "oil/4")

    def dear(blocks, person):
        return Price(minutes=1.0 if len(blocks) > 2 else 0.0)

    assert wanted(replace(asking, together=dear)) == ["1", "2"]


def test_of_alike_trays_the_first_come_first():
    floor = at_the_oil(dries=0)

    assert wanted(in_this_order(floor, "oil/3", "oil/2", "hooks/3")) == ["1", "2"]


def test_the_trays_that_are_shown_stay_while_somebody_is_busy():
    floor = at_the_oil()

    assert wanted(in_this_order(floor, "oil/1"), "start|r1|oil/1+2") == ["1", "2"]


def test_as_one_load_all_trays_end_with_it():
    floor = at_the_oil()
    problem = problem_for(floor.state, floor.book, floor.now)
    made = greedy(problem, 50, Rule(problem)).plan
    oil = [block.index for block in problem.blocks if block.step == "oil"]

    there = begun_together(problem, oil, 0)
    plan = BegunNow(Rule(problem), made, range(len(problem.blocks)), greedy(problem).knobs)._with(there).plan

    assert {plan.end(there, at) for at in oil} == {sum(problem.blocks[at].length for at in oil)}
    assert not broken(there, plan)


def test_without_a_plan_all_that_is_ready_is_one_load():
    floor = at_the_oil()

    assert starts(moves(floor.state, floor.book, "ann", floor.now)) == ["oil/1+2+3"]


def test_with_a_plan_the_first_tray_begins_to_dry_before_the_others_are_done():
    floor = at_the_oil(due="2026-06-01T17:05:00Z")

    assert starts(shown(floor)) == ["oil/1"]


def test_with_a_plan_what_costs_nothing_is_one_load():
    floor = at_the_oil(dries=720)

    (load,) = starts(shown(floor))
    assert "+" in load


def test_the_load_that_is_offered_is_taken_as_it_is():
    floor = at_the_oil(due="2026-06-01T17:05:00Z")
    move = shown(floor)[0]
    assert (move.id, move.trays, dict(move.pieces), move.minutes) == ("start|r1|oil/1", ("1",), {"1": 5}, 5.0)
    assert move.price == {"minutes": 0.0, "windows": 0}

    floor.press(
        "load started", {"pieces": dict(move.pieces)}, run="r1", load=move.load, operation="oil", station="finishing"
    )

    assert dict(floor.run.loads["oil/1"].pieces) == {"1": 5}


def test_after_an_older_plan_a_tray_that_is_gone_is_not_offered():
    floor = at_the_oil()
    older = replace(answer(floor.state, floor.book, floor.now).offers["ann"], wanted={("r1", "oil"): ("1", "2")})
    floor.press("load started", run="r1", load="oil/1")
    floor.press("load done", run="r1", load="oil/1")

    assert starts(lines(floor.state, floor.book, "ann", floor.now, older)) == ["oil/2"]

    floor.press("load started", run="r1", load="oil/2")
    floor.press("load done", run="r1", load="oil/2")
    assert starts(lines(floor.state, floor.book, "ann", floor.now, older)) == ["oil/3"]


def test_a_tray_that_was_said_no_to_leaves_its_place_to_the_next():
    floor = at_the_oil(due="2026-06-01T17:05:00Z")
    floor.press("move declined", {"move": "start|r1|oil/1", "because": "not now"})

    assert starts(shown(floor)) == ["oil/2"]


def test_one_tray_is_offered_where_there_is_no_time_for_all():
    floor = at_the_oil(dries=720)
    until = floor.now + timedelta(minutes=10 + 7)  # ten to tidy up
    floor.press("time said", {"until": until.isoformat()})

    assert starts(moves(floor.state, floor.book, "ann", floor.now)) == []
    assert starts(shown(floor)) == ["oil/1"]
