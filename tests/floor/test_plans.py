"""The planner beside the floor: what it plans when, what it takes of a search, what it tells."""

import json
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Any

import pytest

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.looking.look import state_for
from runboard.floor.planning import plans
from runboard.floor.planning.planner import AGAIN, SECONDS, Planner, _moved
from runboard.floor.planning.planning import Warming
from runboard.floor.planning.plans import holding, holding_with_change, latest, plan_at_once
from runboard.floor.planning.try_change import Trials
from runboard.floor.pressing.taps import take_taps
from runboard.floor.workshop import Workshop
from runboard.plan import answer as answers
from runboard.plan.answer import with_plan
from runboard.plan.change import TraySize
from runboard.plan.prices import Later, Price
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import LeftOut, Plan, Problem
from runboard.plan.schedule.rule.rule import NoPlace
from runboard.plan.schedule.search.bounds import Bound
from runboard.plan.search import Found
from runboard.run.log.event import event_from_json
from runboard.run.refusal import Refused
from tests.floor.fakes import FakeKept, FakeWork
from tests.floor.fakes import workshop as fake_workshop
from tests.scenario import shop


@dataclass
class Scene:
    workshop: Workshop
    child: FakeKept
    planner: Planner
    told: list[int]
    run: str
    number: int = 0

    def press(self, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> None:
        self.number += 1
        now = self.workshop.clock.now()
        event = {
            "id": f"press-{self.number}", "kind": kind, "at": now.isoformat(), "person": "ann",
            "seen": 2**50, "body": body or {}, **fields,
        }  # fmt: skip
        batch = {"device": "phone", "sent_at": now.isoformat(), "taps": [event]}
        (answer,) = take_taps(self.workshop, batch)["taps"]
        assert answer["answer"] == "accepted" and not answer.get("to_settle"), answer

    def found(self, plan: Plan | None, tick: int = 0, **more: Any) -> None:
        """The search has found a plan."""
        self.child.found(Found(plan, Bound(tick, "search")), **more)

    def state(self, person: str = "ann") -> dict[str, Any]:
        return json.loads(state_for(self.workshop, person)[1])

    def turns(self) -> int:
        """Turns until nothing is left to do; answers how many did something."""
        for number in range(10):
            if not self.planner.turn():
                return number
        raise AssertionError("the planner never comes to rest")


@pytest.fixture
def scene() -> Scene:
    floor = fake_workshop(shop())
    orders = [{"line": "1", "pieces": 25, "text": "12"}]
    run = open_run(floor, Wish("rail", orders, pieces_a_tray=5, start=30), "ann")
    told: list[int] = []
    child = FakeKept()
    found = Scene(floor, child, Planner(floor, child, told.append), told, run)
    until = floor.clock.now() + timedelta(hours=4)
    found.press("person came", {"until": until.isoformat(), "room": "shop"})
    return found


def earlier(problem: Problem, plan: Plan, ticks: int) -> Plan:
    return Plan(tuple(replace(one, start=max(0, one.start - ticks)) for one in plan.placed), "search")


def test_the_screen_is_there_before_any_plan(scene: Scene):
    state = scene.state()

    assert "plan" not in state
    assert state["moves"][0]["code"] == "start"
    assert not any("price" in move for move in state["moves"])


def test_a_plan_made_at_once_breaks_no_rule_and_prices_what_could_be_done(scene: Scene):
    scene.planner.turn()

    planned = latest(scene.workshop)
    assert planned is not None and planned.plan is not None
    assert broken(planned.answer.problem, planned.plan) == ()
    state = scene.state()
    assert state["plan"]["seq"] == state["seq"]
    assert state["moves"][0]["price"] == {"minutes": 0, "windows": 0}


def test_the_words_of_the_moves_are_those_without_a_plan(scene: Scene):
    def words(state: dict[str, Any]) -> dict[str, Any]:
        return {move["id"]: {**move, "price": None, "why": None} for move in state["moves"]}

    before = words(scene.state())
    scene.planner.turn()

    assert words(scene.state()) == before


def test_the_first_move_says_why_the_plan_begins_it(scene: Scene):
    scene.planner.turn()

    first, *others = scene.state()["moves"]
    assert first["why"]["code"] == "machine runs"
    assert first["why"]["facts"]["station"] == "CNC"
    assert first["why"]["facts"]["at"].endswith("Z")
    assert not any("why" in move for move in others)


def test_a_lead_is_told_of_a_clash_and_others_are_not(scene: Scene):
    scene.planner.turn()
    planned = scene.workshop.planned
    assert "clash" not in scene.state()["plan"]
    out = (LeftOut("r1", "hooks", ("1",), "no window long enough", {"step": "Hooks", "minutes": timedelta(hours=2)}),)
    problem = replace(planned.answer.problem, left_out=out)

    scene.workshop.planned = replace(planned, answer=replace(planned.answer, problem=problem), version=9)

    facts = {"step": "Hooks", "minutes": 120}
    assert scene.state()["plan"]["clash"] == {"code": "no window long enough", "facts": facts}
    assert set(scene.state("ben")["plan"]) == {"seq", "at", "done"}


def nowhere(scene: Scene, monkeypatch: pytest.MonkeyPatch) -> None:
    """The rules find no place, and there is no plan to carry over."""

    def finds_none(*_: Any) -> None:
        raise NoPlace((0,))

    monkeypatch.setattr(answers, "greedy", finds_none)
    scene.workshop.planned = None


def test_where_the_rules_find_no_plan_one_is_looked_for_and_everybody_told_so(
    scene: Scene, monkeypatch: pytest.MonkeyPatch
):
    nowhere(scene, monkeypatch)

    scene.turns()

    for person in ("ann", "ben"):
        assert scene.state(person)["plan"]["looking"] is True
        assert "none" not in scene.state(person)["plan"]
        assert scene.state(person)["moves"][0]["code"] == "start"
    problem, plan, seconds, _, _ = scene.child.jobs["task 1"]
    assert (len(problem.blocks) > 0, plan, seconds) == (True, None, SECONDS)


def test_a_plan_that_is_found_where_the_rules_find_none_is_told_at_once(scene: Scene, monkeypatch: pytest.MonkeyPatch):
    plan = plan_at_once(scene.workshop).plan
    nowhere(scene, monkeypatch)
    scene.turns()

    scene.found(plan)
    assert scene.planner.turn() == 1

    told = scene.state()["plan"]
    assert "looking" not in told and "none" not in told
    planned = latest(scene.workshop)
    assert planned is not None and planned.plan == plan
    assert "price" in scene.state()["moves"][0]


def test_only_a_proof_says_that_there_is_no_plan_and_a_lead_what_clashes(scene: Scene, monkeypatch: pytest.MonkeyPatch):
    nowhere(scene, monkeypatch)
    scene.turns()

    scene.child.found(Found(None, None, True, (1,)), is_last=True)
    scene.turns()

    assert scene.state("ben")["plan"]["none"] is True
    assert "clash" not in scene.state("ben")["plan"]
    told = scene.state("ann")["plan"]
    assert (told["none"], told["clash"]) == (True, {"code": "no place left", "facts": {"step": "Cut"}})


@pytest.mark.parametrize("how", ["nothing", "failed", "stopped"])
def test_a_search_that_ends_without_plan_or_proof_says_neither(scene: Scene, monkeypatch: pytest.MonkeyPatch, how: str):
    nowhere(scene, monkeypatch)
    scene.turns()

    if how == "nothing":
        scene.child.found(Found(None), is_last=True)
    elif how == "failed":
        scene.child.failed("ValueError")
    else:
        scene.planner.stop()
    scene.turns()

    told = scene.state()["plan"]
    assert told["unfound"] is True
    assert "looking" not in told and "none" not in told
    assert len(scene.child.tasks) == 1


def test_where_none_was_found_it_is_looked_for_again_with_the_next_press_and_the_next_minute(
    scene: Scene, monkeypatch: pytest.MonkeyPatch
):
    nowhere(scene, monkeypatch)
    scene.turns()
    scene.child.found(Found(None, None, True), is_last=True)
    scene.turns()

    scene.workshop.clock.pass_(AGAIN.total_seconds() / 60)
    scene.turns()
    assert len(scene.child.tasks) == 2
    assert scene.state()["plan"]["none"] is True, "what was proved a minute ago is said until it is known better"

    scene.press("load started", run=scene.run, load="cut/1")
    scene.turns()
    assert len(scene.child.tasks) == 3
    assert scene.state()["plan"]["looking"] is True


def test_without_a_child_no_plan_is_looked_for(scene: Scene, monkeypatch: pytest.MonkeyPatch):
    nowhere(scene, monkeypatch)
    planner = Planner(scene.workshop, None, lambda _: None)

    planner.turn()
    planner.turn()

    assert scene.state()["plan"]["unfound"] is True


def test_what_holds_it_is_said_of_another_plan_as_of_the_last_unless_another_has_clearly_more(scene: Scene):
    scene.planner.turn()
    shown = scene.planner.latest()
    assert shown is not None
    first = holding(scene.workshop, shown)
    assert first is not None and holding(scene.workshop, shown) is first

    again = holding(scene.workshop, replace(shown, plan=replace(shown.plan, source="another")))

    assert again is not first
    assert again == first


def test_of_a_change_that_is_tried_the_same_is_said_to_hold_it_as_of_the_plan_and_of_the_last_change(
    scene: Scene, monkeypatch: pytest.MonkeyPatch
):
    scene.planner.turn()
    shown = scene.planner.latest()
    assert shown is not None
    first = holding(scene.workshop, shown)
    assert first is not None
    asked: list[tuple[str, ...]] = []
    another = replace(first, name=("hands", "somebody"))
    monkeypatch.setattr(plans, "holder", lambda problem, plan, run, before: asked.append(before) or another)

    tried = [replace(shown.plan, source=source) for source in ("one change", "another")]
    found = [holding_with_change(scene.workshop, shown.problem, plan, "r1") for plan in tried]

    assert found == [another, another]
    assert asked == [first.name, another.name]
    assert holding(scene.workshop, shown) is first


def test_another_plan_is_another_state_and_pages_are_told(scene: Scene):
    before = state_for(scene.workshop, "ann")[0]

    scene.planner.turn()

    assert state_for(scene.workshop, "ann")[0] != before
    assert scene.told == [scene.workshop.ledger.last_seq]


def test_a_press_is_shown_at_once_with_the_older_plan_which_says_so(scene: Scene):
    scene.turns()
    scene.press("load started", run=scene.run, load="cut/1")

    state = scene.state()

    assert state["plan"]["seq"] < state["seq"]
    assert scene.planner.latest() is not None and scene.planner.latest().is_older
    scene.planner.turn()
    assert not scene.planner.latest().is_older


def test_where_the_rules_find_no_place_the_last_plan_is_carried_over(scene: Scene, monkeypatch: pytest.MonkeyPatch):
    scene.turns()

    def finds_none(*_: Any) -> None:
        raise NoPlace((0,))

    monkeypatch.setattr(answers, "greedy", finds_none)
    scene.press("load started", run=scene.run, load="cut/1")
    scene.planner.turn()

    planned = latest(scene.workshop)
    assert planned is not None and planned.plan is not None
    assert not planned.is_older(scene.workshop)
    assert broken(planned.answer.problem, planned.plan) == ()


def test_a_plan_that_a_search_found_stays_as_it_is_while_only_time_passes(scene: Scene):
    scene.press("person went")
    scene.turns()
    planned = latest(scene.workshop)
    assert planned is not None and planned.plan is not None
    calm = Plan(planned.plan.placed, "search")
    scene.workshop.planned = replace(planned, answer=with_plan(planned.answer, calm))

    scene.press("note written", {"text": "brass hooks are in the drawer"}, run=scene.run)
    again = plan_at_once(scene.workshop, latest(scene.workshop))

    assert again.plan == calm


def test_what_changes_nothing_is_no_reason_to_plan(scene: Scene):
    scene.turns()
    before = latest(scene.workshop)

    scene.press("note written", {"text": "brass hooks are in the drawer"}, run=scene.run)
    scene.turns()

    after = latest(scene.workshop)
    assert before is not None and after is not None
    assert after.answer is before.answer
    assert not after.is_older(scene.workshop)


def test_nothing_is_planned_while_nothing_happens_and_nobody_is_here(scene: Scene):
    scene.press("person went")
    scene.turns()
    before = latest(scene.workshop)

    scene.workshop.clock.pass_(90)
    scene.turns()

    assert latest(scene.workshop) is before


def test_with_somebody_here_a_plan_is_made_anew_as_time_passes_and_not_searched_for_again(scene: Scene):
    scene.turns()
    before = latest(scene.workshop)

    scene.workshop.clock.pass_(AGAIN.total_seconds() / 60)
    scene.turns()

    after = latest(scene.workshop)
    assert before is not None and after is not None
    assert after.made_at > before.made_at
    assert len(scene.child.tasks) == 1
    assert scene.child.ended == ["task 1"]


def test_a_search_begins_a_turn_after_the_plan_with_it_as_its_hint(scene: Scene):
    scene.planner.turn()
    assert not scene.child.tasks

    scene.planner.turn()

    planned = latest(scene.workshop)
    assert planned is not None
    problem, plan, seconds, _, _ = scene.child.jobs["task 1"]
    assert (problem, plan) == (planned.answer.problem, planned.plan)
    assert 0 < seconds <= 20


def test_what_is_proved_already_is_not_searched_for(scene: Scene):
    scene.press("station out of use", {"why": "belt"}, station="cnc")

    scene.turns()

    assert not scene.child.tasks


def test_what_is_proved_but_late_is_searched_for(scene: Scene):
    scene.planner.turn()
    planned = latest(scene.workshop)
    assert planned is not None and planned.plan is not None
    problem, finish = planned.answer.problem, planned.answer.finish
    in_time = replace(problem.orders[0], due=finish)
    late = replace(problem.orders[0], by_then=5, due=first_tray(problem, planned.plan) - 1)
    for order, many in ((in_time, 0), (late, 1)):
        shown = replace(planned.answer, problem=replace(problem, orders=(order,)))
        scene.workshop.planned = replace(planned, answer=shown, bound=Bound(finish, "search"))
        scene.planner.look_further()
        scene.turns()

        assert len(scene.child.tasks) == many


def first_tray(problem: Problem, plan: Plan) -> int:
    """When the first tray is through the last step."""
    return min(plan.end(problem, one.index) for one in problem.blocks if one.last)


def test_what_was_proved_of_plans_in_time_is_not_said_beside_a_later_one(scene: Scene):
    scene.planner.turn()
    before = latest(scene.workshop)
    assert before is not None and before.plan is not None
    before = replace(before, bound=Bound(20, "search", with_dues=30))
    late = replace(before.answer.problem, orders=(replace(before.answer.problem.orders[0], due=0),))
    later = replace(before, answer=replace(before.answer, problem=late))

    assert _moved(before, before) == Bound(20, "search", with_dues=30)
    assert _moved(before, later) == Bound(20, "search")


def test_a_search_that_finds_five_minutes_is_told_of(scene: Scene):
    scene.turns()
    planned = latest(scene.workshop)
    assert planned is not None and planned.plan is not None
    told = len(scene.told)
    problem = planned.answer.problem

    scene.found(earlier(problem, planned.plan, 3000), 11)
    scene.turns()

    after = latest(scene.workshop)
    assert after is not None and after.plan is not None and after.bound is not None
    assert after.plan.source == "search"
    assert after.bound.tick == 11
    assert len(scene.told) == told + 1


def test_a_search_that_finds_one_minute_changes_nothing_on_a_screen(scene: Scene):
    scene.turns()
    planned = latest(scene.workshop)
    assert planned is not None and planned.plan is not None
    before = state_for(scene.workshop, "ann")[0]

    scene.found(earlier(planned.answer.problem, planned.plan, 2), 11)
    scene.turns()

    after = latest(scene.workshop)
    assert after is not None and after.plan is planned.plan
    assert after.bound is not None and after.bound.tick == 11
    assert state_for(scene.workshop, "ann")[0] == before


def test_a_search_begins_around_what_has_happened(scene: Scene):
    scene.turns()
    assert scene.child.jobs["task 1"][3] == ()

    scene.press("load started", run=scene.run, load="cut/1")
    scene.turns()

    problem, _, _, near, _ = scene.child.jobs["task 2"]
    assert [(problem.blocks[at].load, problem.blocks[at].begun) for at in near] == [("cut/1", True)]


def test_an_event_ends_the_search_that_it_overtakes(scene: Scene):
    scene.turns()

    scene.press("load started", run=scene.run, load="cut/1")
    scene.turns()

    assert scene.child.ended == ["task 1"]
    assert list(scene.child.tasks) == ["task 1", "task 2"]


def test_what_a_search_found_too_late_still_guides_the_next_plan(scene: Scene):
    scene.turns()
    planned = latest(scene.workshop)
    assert planned is not None and planned.plan is not None
    problem = planned.answer.problem

    scene.found(earlier(problem, planned.plan, 3000))
    scene.press("load started", run=scene.run, load="cut/1")
    scene.planner.turn()

    after = latest(scene.workshop)
    assert after is not None
    assert after.plan is not None
    assert broken(after.answer.problem, after.plan) == ()


def test_a_search_that_somebody_stopped_begins_again_when_asked_or_when_something_happens(scene: Scene):
    scene.turns()
    scene.planner.stop()
    scene.turns()
    assert scene.child.ended == ["task 1"]

    scene.planner.look_further()
    scene.turns()
    scene.planner.stop()
    scene.press("load started", run=scene.run, load="cut/1")
    scene.turns()

    assert list(scene.child.tasks) == ["task 1", "task 2", "task 3"]


def test_a_child_that_is_put_down_is_asked_for_nothing(scene: Scene):
    scene.child.is_closed = True

    for _ in range(3):
        scene.planner.turn()

    assert not scene.child.tasks
    assert latest(scene.workshop) is not None


def test_the_first_move_never_changes_while_somebody_is_in_the_middle_of_something(scene: Scene):
    scene.press("load done", run=scene.run, load="cut/1")
    scene.press("load started", run=scene.run, load="clean/1")
    scene.turns()
    first = scene.state()["moves"][0]["id"]
    planned = latest(scene.workshop)
    assert planned is not None and planned.plan is not None

    scene.found(earlier(planned.answer.problem, Plan(tuple(reversed_starts(planned.plan))), 3000))
    scene.turns()
    scene.workshop.clock.pass_(2)
    scene.turns()

    assert scene.state()["moves"][0]["id"] == first


def reversed_starts(plan: Plan) -> list[Any]:
    """The same blocks, those last begun first."""
    last = max(one.start for one in plan.placed)
    return [replace(one, start=last - one.start) for one in plan.placed]


def test_it_is_said_what_it_is_too_late_for(scene: Scene):
    until = scene.workshop.clock.now() + timedelta(minutes=40)
    scene.press("time said", {"until": until.isoformat()})

    scene.turns()

    (late,) = scene.state()["too_late"]
    assert (late["station"], late["step"], late["minutes"]) == ("cnc", "cut", 46)
    assert "too_late" not in scene.state("ben")


def test_what_was_measured_is_what_is_planned_with(scene: Scene):
    scene.press("load done", run=scene.run, load="cut/1")
    plain = plan_at_once(scene.workshop)
    for tray in "123":
        scene.press("load started", run=scene.run, load=f"clean/{tray}")
        scene.workshop.clock.pass_(11)
        scene.press("load done", run=scene.run, load=f"clean/{tray}")

    learned = plan_at_once(scene.workshop)

    def longest(planned: Any) -> int:
        return max(block.length for block in planned.answer.problem.blocks if block.step == "clean")

    assert longest(learned) > longest(plain)


def test_a_shop_without_a_run_has_nothing_to_plan():
    floor = fake_workshop(shop())
    planner = Planner(floor, None, lambda _: None)

    planner.turn()
    planner.turn()

    found = planner.latest()
    assert found is not None and found.plan == Plan(())


def test_the_rule_is_compiled_in_a_child_first_and_then_here():
    child, here = FakeKept(prepared=None), []
    warming = Warming(child, lambda: bool(here.append("here")))

    assert warming.turn() == 0, "while the child compiles"
    assert not warming.is_over
    child.prepared = True

    assert warming.turn() == 1
    assert warming.turn() == 0
    assert here == ["here"]


def test_without_a_compiler_the_rule_stays_plain():
    here = []
    warming = Warming(FakeKept(prepared=False), lambda: bool(here.append("here")))

    assert warming.turn() == 1

    assert warming.is_over
    assert not here


def poisoned(workshop: Workshop) -> None:
    """A run of 100 trays with 10,000 loads each, as a log may hold from before there was a limit."""
    product = {"key": "peg", "name": "Pegs", "operations": [
        {"key": key, "name": key, "station": "bench", "passes": [
            {"key": "all", "name": "all", "size": "jig", "pieces": 1, "hand_minutes": 1}]} for key in ("drill", "oil")]}  # fmt: skip
    trays = [{"tray": str(at), "pieces": 10_000} for at in range(100)]
    body = {"name": "Pegs", "product": product, "orders": [{"line": "1", "pieces": 9}], "trays": trays}
    at = workshop.clock.now().isoformat()
    record = {"id": "poison-1", "kind": "run opened", "at": at, "run": "r9", "body": body}
    with workshop.log.write() as write:
        write.append(event_from_json(record), workshop.clock.now())


def test_more_than_can_be_planned_at_once_is_said_and_not_begun(scene: Scene):
    poisoned(scene.workshop)

    scene.planner.turn()

    planned = latest(scene.workshop)
    assert planned is not None
    assert planned.answer.is_too_much
    assert (planned.plan, planned.answer.problem.blocks) == (None, ())
    assert scene.turns() == 0
    assert scene.child.tasks == {}
    assert scene.state()["plan"]["none"] is True
    assert next(move["code"] for move in scene.state()["moves"]) == "start"


def test_a_change_that_makes_too_much_to_plan_is_refused(scene: Scene):
    poisoned(scene.workshop)

    with pytest.raises(Refused) as refused:
        Trials(scene.workshop, FakeWork(), print).answer(scene.run, TraySize(scene.run, 6))

    assert refused.value.code == "too much to plan"


@pytest.mark.parametrize("kind", ["MemoryError", "died"])
def test_a_search_that_ends_for_want_of_memory_is_not_begun_over_and_over(scene: Scene, kind: str):
    scene.turns()
    scene.child.failed(kind)

    scene.turns()
    scene.press("load started", run=scene.run, load="cut/1")
    scene.press("load put aside", run=scene.run, load="cut/1")
    scene.turns()

    assert scene.planner.gave_up()
    assert len(scene.child.tasks) == 1
    assert latest(scene.workshop) is not None

    scene.planner.look_further()
    scene.turns()

    assert not scene.planner.gave_up()
    assert len(scene.child.tasks) == 2


def test_what_a_search_finds_that_a_move_costs_is_shown(scene: Scene) -> None:
    scene.press("load done", run=scene.run, load="cut/1")
    scene.turns()
    planned = latest(scene.workshop)
    assert planned is not None and planned.plan is not None
    first, *others = (move for move in scene.state()["moves"] if "price" in move)
    other = next(move for move in others if move["step"] != first["step"])
    problem = planned.answer.problem
    block = next(one.index for one in problem.blocks if one.load == other["load"])
    late = Later("r1", "1", 5, 120.0)

    scene.child.found(Found(planned.plan, None, prices={(block, 0): Price((late,), 33.0, 0, 2)}), is_last=True)
    scene.planner.turn()

    (shown,) = (move for move in scene.state()["moves"] if move["id"] == other["id"])
    assert shown["price"] == {
        "minutes": 33.0,
        "windows": 0,
        "late": [{"run": "r1", "line": "1", "pieces": 5, "minutes": 120, "more": False}],
        "walks": 2,
    }
