"""What a review reads of a long log: the run, what was beside it in its days, and what was known before it."""

from datetime import timedelta

import pytest

from runboard.floor.changing.runs import Wish, close_run, new_event, open_run
from runboard.floor.changing.shop_book import save_book
from runboard.floor.looking.review import essentials_at, past_of, planned_of
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.review.happened import planned
from runboard.run.log.ahead import after_all
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused
from tests.floor.fakes import workshop
from tests.scenario import shop


@pytest.fixture
def made() -> Workshop:
    return workshop(shop())


def press(made: Workshop, kind: str, body: dict | None = None, **fields: str) -> str:
    event = new_event(made, kind, body or {}, person="ann", **fields)
    record_events(made, [event])
    return event.id


def opened(made: Workshop) -> str:
    return open_run(made, Wish("rail", [{"line": "1", "pieces": 15}], start=15), "ann")


def sanded(made: Workshop, run: str, minutes: float) -> None:
    press(made, "load done", run=run, load="cut/1")
    press(made, "load started", run=run, load="clean/1")
    made.clock.pass_(minutes)
    press(made, "load done", run=run, load="clean/1")


def given_up(made: Workshop, run: str) -> None:
    close_run(made, run, "run abandoned", "ann")


def test_an_unknown_run_is_refused(made):
    with pytest.raises(Refused, match="run unknown"):
        past_of(made, "r9")


def test_a_run_that_was_over_weeks_before_is_no_part_of_it(made):
    first = opened(made)
    given_up(made, first)
    made.clock.pass_(21 * 24 * 60)
    beside = opened(made)
    second = opened(made)

    past = past_of(made, second)

    assert set(past.state.runs) == {beside, second}
    assert {event.run for event in past.events} == {beside, second}


def test_who_came_before_the_run_was_opened_is_known(made):
    press(made, "person came")
    made.clock.pass_(40)
    run = opened(made)

    past = past_of(made, run)

    assert [event.kind for event in past.events] == ["person came", "run opened"]


def test_a_press_that_was_taken_back_has_arrived_and_does_not_hold(made):
    run = opened(made)
    press(made, "load done", run=run, load="cut/1")
    taken_back = press(made, "load started", run=run, load="clean/1")
    press(made, "event undone", {"event": taken_back}, run=run)

    past = past_of(made, run)

    assert taken_back in past.arrived
    assert taken_back not in [event.id for event in past.events]


def test_what_was_believed_is_what_other_runs_had_taught_before(made):
    first = opened(made)
    sanded(made, first, 8)
    given_up(made, first)
    made.clock.pass_(2 * 24 * 60)
    second = opened(made)
    sanded(made, second, 12)

    past = past_of(made, second)

    step = past.run.route.step("clean")
    believed, known = past.believed.of(past.run, step, "hand"), past.estimates.of(past.run, step, "hand")
    assert (believed.times, known.times) == (1, 2)
    assert believed.length < known.length


def test_a_run_that_is_open_is_looked_at_until_now(made):
    run = opened(made)
    made.clock.pass_(60)

    past = past_of(made, run)

    assert past.is_open
    assert past.until == past.now == made.clock.now()
    assert past.days[0] < past.run.opened_at < past.now < past.days[1] <= past.now + timedelta(days=1)


def test_a_run_is_looked_back_at_in_the_shop_that_it_was_made_in(made):
    run = opened(made)
    record = made.books.record()
    services = [{**service, "capacity": service["capacity"] + 3} for service in record["services"]]
    save_book(made, {**record, "services": services})

    then, now = past_of(made, run).book, past_of(made, opened(made)).book

    assert [service.capacity + 3 for service in then.services] == [service.capacity for service in now.services]


def test_all_of_a_press_that_was_taken_back_has_arrived(made):
    run = opened(made)
    stem = "press-of-two"
    moment = after_all(made.ledger.held, made.clock.now())
    for id_, kind in ((stem, "load done"), (f"{stem}.2", "load started")):
        body = {"id": id_, "kind": kind, "at": moment.isoformat(), "run": run, "load": "cut/1", "person": "ann"}
        record_events(made, [check_form({**body, "load": "clean/1" if kind == "load started" else "cut/1"})])
    press(made, "event undone", {"event": stem}, run=run)

    assert {stem, f"{stem}.2"} <= set(past_of(made, run).arrived)


def test_the_plan_of_an_opening_is_made_once_whatever_is_pressed_later(made, monkeypatch):
    times = []
    monkeypatch.setattr(planned, "planned_of", lambda past: times.append(past) or ((), None))
    run = opened(made)
    first = planned_of(made, past_of(made, run))
    sanded(made, run, 5)

    second = planned_of(made, past_of(made, run))

    assert second is first
    assert len(times) == 1


def test_a_review_is_reckoned_once_until_somebody_presses_something(made):
    run = opened(made)
    first = essentials_at(made, run)

    again = essentials_at(made, run)
    sanded(made, run, 8)

    assert again is first
    assert essentials_at(made, run).happened.hands > first.happened.hands
