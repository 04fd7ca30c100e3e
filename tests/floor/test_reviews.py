"""The reviews that people look at: quick figures at once, what takes long when a child has worked it out."""

import pickle
from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace
from functools import partial
from typing import Any

import pytest

from runboard.floor.changing.kept_changes import keep_change
from runboard.floor.looking.review import essentials_at
from runboard.floor.looking.reviews import Reviews, review_at_once
from runboard.floor.workshop import Workshop
from runboard.plan.change import Times
from runboard.review import weighing
from runboard.review.changes import trying
from runboard.review.weighing import weigh
from runboard.run.refusal import Refused
from tests.floor.fakes import FakeWork, WorkTask, workshop
from tests.floor.test_review_past import opened, press, sanded
from tests.floor.test_travellers import FakeSettings
from tests.scenario import shop


class Doing(FakeWork):
    """Work that is done, to the end, when the test says so: with what comes out of a pipe, as in a child process."""

    def __init__(self) -> None:
        super().__init__()
        self.works: dict[str, Callable[[], Any]] = {}

    def start(self, what: str, subject: str, work: Callable[..., Any], *arguments: Any) -> WorkTask | None:
        task = super().start(what, subject, work, *arguments)
        assert task is not None
        sent = pickle.loads(pickle.dumps(arguments))
        self.works[task.id] = partial(work, *sent, told=None)
        return task

    def do_all(self) -> None:
        for id_, work in self.works.items():
            if not self.tasks[id_].is_over:
                with suppress(ZeroDivisionError):
                    self.tasks[id_] = replace(self.tasks[id_], result=pickle.loads(pickle.dumps(work())))
                self.tasks[id_] = replace(self.tasks[id_], is_over=True)


class Reviewed:
    """A shop with a run of which some was done, and its reviews."""

    def __init__(self) -> None:
        self.workshop: Workshop = workshop(shop())
        self.settings, self.work = FakeSettings(), Doing()
        self.workshop.reviews = Reviews(self.workshop, self.work, self.settings, weigh)
        press(self.workshop, "person came")
        self.run = opened(self.workshop)
        sanded(self.workshop, self.run, 8)

    def keep(self, per_cent: int) -> str:
        change = Times(self.run, "clean", "", per_cent)
        said = {"change": f"clean up in {per_cent} %", "answer": ""}
        return keep_change(self.workshop, self.settings, self.run, said, "ann", change).id


@pytest.fixture
def made() -> Reviewed:
    return Reviewed()


def test_what_takes_long_is_not_there_until_a_child_has_worked_it_out(made):
    at_once = essentials_at(made.workshop, made.run)
    made.work.do_all()
    then = essentials_at(made.workshop, made.run)

    assert (at_once.is_weighed, at_once.held, at_once.tried) == (False, None, None)
    assert then.is_weighed
    assert then.held is not None


def test_while_nothing_changed_it_is_worked_out_once(made):
    for _ in range(3):
        essentials_at(made.workshop, made.run)
        made.work.do_all()

    assert len(made.work.tasks) == 1


def test_an_idea_that_somebody_kept_is_tried(made):
    essentials_at(made.workshop, made.run)
    made.work.do_all()
    before = essentials_at(made.workshop, made.run)
    kept = made.keep(50)
    meanwhile = essentials_at(made.workshop, made.run)
    made.work.do_all()

    found = essentials_at(made.workshop, made.run).tried

    assert (meanwhile.held, meanwhile.tried) == (before.held, None), "what held the run is no other for an idea"
    assert kept in [tried.idea.id for tried in found]


@pytest.fixture
def again(monkeypatch: pytest.MonkeyPatch) -> list[object]:
    """What is replayed by chance from when the test clears it: what held the run, and each idea that is tried."""
    seen: list[object] = []
    held, idea_tried = weighing.held_of, trying._tried
    monkeypatch.setattr(weighing, "held_of", lambda known: seen.append("held") or held(known))
    monkeypatch.setattr(trying, "_tried", lambda trial, idea, *of: seen.append(idea.id) or idea_tried(trial, idea, *of))
    return seen


def test_for_one_idea_more_only_that_one_is_tried(made, again, monkeypatch):
    monkeypatch.setattr(weighing, "warm", lambda: False)
    first = made.keep(50)
    essentials_at(made.workshop, made.run)
    made.work.do_all()
    before = essentials_at(made.workshop, made.run)
    again.clear()
    kept = made.keep(60)
    essentials_at(made.workshop, made.run)
    made.work.do_all()

    found = essentials_at(made.workshop, made.run)

    assert again == [kept]
    assert {first, kept} <= {one.idea.id for one in found.tried}
    assert found.held == before.held
    alone = review_at_once(made.workshop, made.settings, made.run)
    assert (found.tried, found.together) == (alone.tried, alone.together), "it met the same luck"


def test_a_new_cost_is_reckoned_with_what_was_tried(made, again):
    made.keep(50)
    essentials_at(made.workshop, made.run)
    made.work.do_all()
    again.clear()
    change = Times(made.run, "clean", "", 50)
    said = {"change": "clean up in 50 %", "answer": ""}
    newest = keep_change(made.workshop, made.settings, made.run, said, "ann", change, cost=40.0).id
    essentials_at(made.workshop, made.run)
    made.work.do_all()

    found = next(one for one in essentials_at(made.workshop, made.run).tried if one.idea.change == change)

    assert (again, found.idea.id, found.idea.cost) == ([], newest, 40.0)


def test_after_the_book_is_another_all_is_worked_out_again(made, again):
    essentials_at(made.workshop, made.run)
    made.work.do_all()
    again.clear()
    made.workshop.book = made.workshop.books.save(made.workshop.books.record(), made.workshop.clock.now())
    essentials_at(made.workshop, made.run)
    made.work.do_all()

    assert "held" in again


def test_what_could_not_be_worked_out_is_said_once_and_tried_again(made):
    made.workshop.reviews.weigh = lambda *asked, told: 1 / 0
    essentials_at(made.workshop, made.run)
    made.work.do_all()

    with pytest.raises(Refused, match="review failed"):
        essentials_at(made.workshop, made.run)

    made.workshop.reviews.weigh = weigh
    essentials_at(made.workshop, made.run)
    made.work.do_all()
    assert essentials_at(made.workshop, made.run).is_weighed


def test_whoever_can_wait_has_the_same_at_once(made, monkeypatch):
    monkeypatch.setattr(weighing, "warm", lambda: False)  # as the child of this test, which compiles nothing
    made.keep(50)
    essentials_at(made.workshop, made.run)
    made.work.do_all()

    beside, at_once = essentials_at(made.workshop, made.run), review_at_once(made.workshop, made.settings, made.run)

    assert (at_once.held, at_once.tried) == (beside.held, beside.tried)


def test_a_run_of_which_nothing_was_begun_is_looked_back_at_too(made):
    fresh = opened(made.workshop)

    essentials_at(made.workshop, fresh)
    made.work.do_all()
    found = essentials_at(made.workshop, fresh)

    assert found.happened.good == 0
    assert found.is_weighed
    assert replace(found, held=None, tried=(), together=None).study.share in (None, 0)
