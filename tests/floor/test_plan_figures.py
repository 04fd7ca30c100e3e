"""Who makes the figures that pages show of a plan, and how often: one maker, once for each plan."""

import pickle
from dataclasses import replace
from typing import Any

from runboard.floor.planning.figures import Figuring, asked_of
from runboard.floor.planning.plans import plan_at_once
from runboard.plan.schedule.problem.worth import late_lines
from runboard.plan.schedule.told.figures import Figures, figures_of
from runboard.plan.search import make_figures
from tests.floor.fakes import FakeWork, WorkTask
from tests.floor.test_plans import Scene, scene

__all__ = ["scene"]


def figuring(scene: Scene) -> Figuring:
    return Figuring(scene.workshop, FakeWork(), make_figures)


def made(maker: Figuring, **changes: Any) -> Figures:
    """The newest task is over, as its child would end it."""
    task = tasks(maker)[-1]
    figures = figures_of(*task.arguments)
    tasks_of(maker)[task.id] = replace(task, **({"result": figures, "is_over": True} | changes))
    return figures


def tasks_of(maker: Figuring) -> dict[str, WorkTask]:
    assert isinstance(maker.work, FakeWork)
    return maker.work.tasks


def tasks(maker: Figuring) -> list[WorkTask]:
    return list(tasks_of(maker).values())


def test_the_figures_of_a_plan_are_made_once(scene: Scene) -> None:
    scene.planner.turn()
    maker = figuring(scene)

    for _ in range(5):
        maker.turn()
    figures = made(maker)
    for _ in range(5):
        maker.turn()

    shown = scene.planner.latest()
    assert len(tasks(maker)) == 1
    assert shown is not None
    assert shown.figures is figures
    assert not shown.is_older


def test_a_plan_that_is_only_told_of_again_has_its_figures_already(scene: Scene) -> None:
    scene.planner.turn()
    maker = figuring(scene)
    maker.turn()
    made(maker)
    maker.turn()

    scene.press("note written", {"text": "brass hooks are in the drawer"}, run=scene.run)
    scene.planner.turn()
    maker.turn()

    shown = scene.planner.latest()
    assert shown is not None
    assert not shown.is_older
    assert len(tasks(maker)) == 1


def test_a_plan_is_shown_with_its_own_figures_until_those_of_the_next_are_there(scene: Scene) -> None:
    scene.planner.turn()
    maker = figuring(scene)
    maker.turn()
    first = made(maker)
    maker.turn()
    before = scene.planner.latest()

    scene.press("load started", run=scene.run, load="cut/1")
    scene.planner.turn()
    maker.turn()
    meanwhile = scene.planner.latest()
    second = made(maker)
    maker.turn()
    after = scene.planner.latest()

    assert before is not None and meanwhile is not None and after is not None
    assert (meanwhile.plan, meanwhile.figures, meanwhile.is_older) == (before.plan, first, True)
    assert (after.figures, after.is_older) == (second, False)


def test_one_plan_is_worked_out_at_a_time_and_then_the_newest(scene: Scene) -> None:
    scene.planner.turn()
    maker = figuring(scene)
    maker.turn()
    for kind in ("load started", "load put aside", "load started"):
        scene.press(kind, run=scene.run, load="cut/1")
        scene.planner.turn()
        maker.turn()
    assert len(tasks(maker)) == 1

    made(maker)
    maker.turn()
    maker.turn()

    assert len(tasks(maker)) == 2
    assert tasks(maker)[1].arguments[1] is scene.workshop.planned.plan


def test_figures_that_nobody_could_make_are_tried_again_for_the_next_plan_only(scene: Scene) -> None:
    scene.planner.turn()
    maker = figuring(scene)
    maker.turn()
    made(maker, result=None)
    for _ in range(3):
        maker.turn()
    assert len(tasks(maker)) == 1
    assert scene.planner.latest() is not None

    scene.press("load started", run=scene.run, load="cut/1")
    scene.planner.turn()
    maker.turn()

    assert len(tasks(maker)) == 2


def test_the_figures_wait_until_the_rule_is_compiled_or_cannot_be(scene: Scene) -> None:
    scene.planner.turn()
    maker, is_ready = figuring(scene), [False]
    maker.is_ready = lambda: is_ready[0]
    maker.turn()
    assert not tasks(maker)

    is_ready[0] = True
    maker.turn()

    assert len(tasks(maker)) == 1


def test_where_too_much_is_going_on_the_figures_wait(scene: Scene) -> None:
    scene.planner.turn()
    maker = figuring(scene)
    maker.work = FakeWork(is_full=True)
    maker.turn()
    assert not tasks(maker)
    maker.work = FakeWork()

    maker.turn()

    assert len(tasks(maker)) == 1


def test_what_a_child_answers_is_what_would_be_made_here(scene: Scene) -> None:
    planned = plan_at_once(scene.workshop)
    problem, plan = planned.answer.problem, planned.plan
    assert plan is not None
    asked = asked_of(scene.workshop, planned)

    sent = pickle.loads(pickle.dumps((problem, plan, asked)))
    found = pickle.loads(pickle.dumps(make_figures(*sent, lambda *_: None)))

    assert found == figures_of(problem, plan, asked)
    assert found.whole.finish == plan.finish(problem)
    assert set(found.runs) == {scene.run}
    assert [one.order for one in found.late] == [order for order, _, _ in late_lines(problem, plan)]
    assert sum(found.part(at).bars for at in range(len(found.charts))) > len(problem.blocks)
