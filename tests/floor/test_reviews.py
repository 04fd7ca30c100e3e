"""The reviews that people look at: quick figures at once, what takes long when a child has worked it out."""

import pickle
from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace
from functools import partial
from typing import Any

import pytest

from runboard.floor.changing.kept_changes import keep_change
from runboard.floor.looking.review import essentials_at, quick_at
from runboard.floor.looking.reviews import MOST_KEPT, Reviews, review_at_once
from runboard.floor.workshop import Workshop
from runboard.plan.change import Times
from runboard.review import weighing
from runboard.review.changes import trying
from runboard.review.weighing import weigh
from runboard.run.refusal import Refused
from runboard.shop.book_json import book_to_json
from tests.floor.fakes import FakeWork, WorkTask, workshop
from tests.floor.test_review_past import given_up, opened, press, sanded
from tests.floor.test_travellers import FakeSettings
from tests.scenario import shop


class Doing(FakeWork):
    """Work that is done, to the end, when the test says so: with what comes out of a pipe, as in a child process."""

    def __init__(self) -> None:
        super().__init__()
        self.works: dict[str, Callable[[], Any]] = {}

    def start(self, what: str, subject: str, work: Callable[..., Any], *arguments: Any) -> WorkTask | None:
        task = super().start(what, subject, work, *arguments)
        if task is None:
            return None
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


def begun(made: Reviewed) -> str:
    """One run more of which some was done."""
    run = opened(made.workshop)
    sanded(made.workshop, run, 2)
    return run


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

    assert (meanwhile.held, meanwhile.tried) == (before.held, before.tried), "shown until it is there"
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


def saved(made: Reviewed, **fields: object) -> None:
    """The book saved with other fields."""
    book = replace(made.workshop.book, **fields)
    made.workshop.book = made.workshop.books.save(book_to_json(book), made.workshop.clock.now())


def test_a_book_that_was_saved_has_nothing_worked_out_again_that_it_does_not_concern(made):
    essentials_at(made.workshop, made.run)
    made.work.do_all()
    saved(made, name="Another name", noise_limit_db=80.0)

    assert essentials_at(made.workshop, made.run).is_weighed
    assert len(made.work.tasks) == 1


def test_after_a_new_rate_of_an_hour_only_what_pays_is_reckoned_again(made, again):
    made.keep(50)
    essentials_at(made.workshop, made.run)
    made.work.do_all()
    again.clear()
    saved(made, hour_rate=50.0)
    essentials_at(made.workshop, made.run)
    made.work.do_all()

    assert essentials_at(made.workshop, made.run).is_weighed
    assert (again, len(made.work.tasks)) == ([], 2)


def test_what_was_found_before_is_shown_until_it_is_worked_out_again(made):
    made.keep(50)
    essentials_at(made.workshop, made.run)
    made.work.do_all()
    before = essentials_at(made.workshop, made.run)
    given_up(made.workshop, made.run)

    meanwhile = essentials_at(made.workshop, made.run)

    assert not meanwhile.is_weighed
    assert (meanwhile.held, meanwhile.tried, meanwhile.together) == (before.held, before.tried, before.together)


def test_of_an_open_run_what_is_being_worked_out_is_not_begun_anew(made):
    essentials_at(made.workshop, made.run)
    made.workshop.clock.pass_(5)
    essentials_at(made.workshop, made.run)

    assert len(made.work.tasks) == 1
    assert made.work.ended == []


def test_while_other_work_goes_first_what_was_found_before_is_shown(made):
    essentials_at(made.workshop, made.run)
    made.work.do_all()
    before = essentials_at(made.workshop, made.run)
    made.keep(50)
    made.work.is_full = True
    meanwhile = essentials_at(made.workshop, made.run)
    made.work.is_full = False
    essentials_at(made.workshop, made.run)
    made.work.do_all()

    assert (meanwhile.is_weighed, meanwhile.held) == (False, before.held)
    assert essentials_at(made.workshop, made.run).is_weighed


def test_many_runs_are_kept_and_none_is_ended_that_is_still_wanted(made):
    runs = [made.run, *(begun(made) for _ in range(MOST_KEPT))]
    for run in runs:
        essentials_at(made.workshop, run)

    assert MOST_KEPT >= 12
    assert made.work.ended == []


def test_whoever_looked_while_an_idea_was_kept_ends_nothing(made):
    """Its task was ended for the newer one, which is no failure."""
    essentials_at(made.workshop, made.run)
    reviews, seen = made.workshop.reviews, made.workshop.reviews._kept[made.run]
    made.keep(50)
    essentials_at(made.workshop, made.run)
    made.work.tasks[seen.task] = replace(made.work.tasks[seen.task], is_over=True, result=None)

    looked = reviews._with_what_is_there(quick_at(made.workshop, made.run), seen)

    assert not looked.is_weighed
    assert reviews._kept[made.run] is not seen


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
