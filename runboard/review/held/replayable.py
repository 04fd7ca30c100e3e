"""What a run is replayed from: the run as it was opened, what its work really took, who was there, and in which order its
loads were begun."""

import math
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import replace
from datetime import datetime, time
from typing import Any

from runboard.plan.change import KINDS_OF_TIME
from runboard.plan.estimates import measured_in
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import FAR, TICK, Problem
from runboard.review.held.going import AsItWas, order_of
from runboard.review.held.known import AT_LAST, Lengths, Scatters
from runboard.review.held.known import Replayable as Replayable
from runboard.review.held.replay import fitted
from runboard.review.held.there import ended_at, stations_free, took_part, who_was_there, work_of_each
from runboard.review.opening import ENLARGED, REVISED, opening_state
from runboard.review.past import Past
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import ShopState
from runboard.run.refusal import Refused
from runboard.shop.book import Book, Person, Station
from runboard.shop.hours import Window
from runboard.shop.product import ZERO, Operation, Pass

_ROUND_THE_CLOCK = tuple(Window(day, time(), time()) for day in range(7))


def replayable(past: Past) -> Replayable | None:
    """The run as it can be replayed, fitted to how it was; None where it cannot (``as_logged``)."""
    known = as_logged(past)
    return known and fitted(known)


def as_logged(past: Past) -> Replayable | None:
    """The run as the log tells it, to be ``fitted`` where there is time for that; None where the log does not have its opening,
    nobody was ever there, it went on for longer than a plan looks ahead, or has more loads than one can hold."""
    try:
        return _read(past)
    except Refused:
        return None


def _read(past: Past) -> Replayable | None:
    state, ended, opened = opening_state(past, REVISED | ENLARGED), ended_at(past), past.run.opened_at
    at_it = work_of_each(past)
    people = took_part(past, at_it)
    is_too_long = ended + 2 * AT_LAST > opened + FAR * TICK
    if not people or not past.book.rooms or past.run.id not in state.runs or is_too_long:
        return None
    book, (lengths, spread), order = _book(past, people), _lengths(past), order_of(past.run)
    state, problem = _problem(_with_times(state, lengths), book, opened, lengths)
    as_it_was = AsItWas(problem, order)
    there = {key: spans for key, spans in who_was_there(past, at_it, as_it_was.could_begin).items() if spans}
    return Replayable(
        past.run.id, state, book, opened, ended, None if past.is_open else ended,
        lengths, spread, there, stations_free(replace(past, book=book)), order,
    )  # fmt: skip


def _book(past: Past, there: Iterable[str]) -> Book:
    """The book with all that the run was really made by, though somebody or something was taken out of it since."""
    book, steps = past.book, [step for revision in past.run.revisions for step in revision.route.steps]
    worked: dict[str, set[str]] = {}
    for load in (*past.run.past.values(), *past.run.loads.values()):
        step = past.run.step_of(load)
        for span in load.spans:
            if span.person and step is not None and step.operation.skill:
                worked.setdefault(span.person, set()).add(step.operation.skill)
    people = [book.person(key) or Person(key, key, "crew") for key in there]
    able = [_able(person, worked.get(person.key, set())) for person in people]
    wanted = {step.operation.skill for step in steps if step.operation.skill}
    if not all(any(person.access == "lead" or skill in person.skills for person in able) for skill in wanted):
        able = [_able(person, wanted) for person in able]
    missing = dict.fromkeys(step.operation.station for step in steps if book.station(step.operation.station) is None)
    stations = (*book.stations, *(Station(key, key, "bench", book.rooms[0].key) for key in missing))
    held = {
        service: count for step in steps if step.operation.wait for service, count in step.operation.wait.holds.items()
    }
    services = (replace(each, capacity=max(each.capacity, held.get(each.key, 1))) for each in book.services)
    return replace(book, people=tuple(able), stations=stations, services=tuple(services), forbidden=())


def _able(person: Person, skills: Iterable[str]) -> Person:
    return replace(
        person, skills=tuple(dict.fromkeys([*person.skills, *sorted(skills)])), hours=_ROUND_THE_CLOCK, removed=False,
        start_up=ZERO, tidy_up=ZERO,
    )  # fmt: skip


def _lengths(past: Past) -> tuple[Lengths, Scatters]:
    """What each element took and how much it scatters. Of its mean in this run less is unknown the more was measured; and what the
    run's sessions had of luck is in that mean, as far as they were."""
    run, measured = past.run, measured_in(past.run, past.book.time_zone)
    # What somebody says of the times later, as by adopting a change, is nothing of this run.
    estimates = past.estimates if run.closed_at is None else past.estimates.with_words_until(run.closed_at)
    lengths, spread = {}, {}
    loads = Counter(load.step for load in (*run.past.values(), *run.loads.values()))
    steps = {step.key: step for revision in run.revisions for step in revision.route.steps}
    for step in steps.values():
        for kind in KINDS_OF_TIME:
            known = estimates.of(run, step, kind)
            times = [each.length for each in measured.get((run.product, step.key, kind), ())]
            lengths[step.key, kind] = sum(times, ZERO) / len(times) if times else known.length
            unknown = known.scatter.load / math.sqrt(len(times)) if times else known.scatter.element
            share = min(1.0, len(times) / max(1, loads[step.key]))
            spread[step.key, kind] = replace(
                known.scatter, element=unknown, session=known.scatter.session * (1 - share)
            )
    return Lengths(lengths), Scatters(spread)


def _changed(state: ShopState, change: Callable[[Route, Operation], Operation]) -> ShopState:
    """The state with each operation of its runs' routes changed."""

    def changed(route: Route) -> Route:
        operations = tuple(change(route, operation) for operation in route.product.operations)
        same = operations == route.product.operations
        return route if same else Route(replace(route.product, operations=operations))

    runs = {
        key: replace(run, revisions=tuple(replace(each, route=changed(each.route)) for each in run.revisions))
        for key, run in state.runs.items()
    }
    return replace(state, runs=runs)


def _with_times(state: ShopState, lengths: Lengths) -> ShopState:
    """With a time where the route had none and the run measured one: else that work would be forgotten."""

    def timed(route: Route, operation: Operation) -> Operation:
        steps = {step.pass_.key: step for step in route.steps if step.operation.key == operation.key}
        return replace(operation, passes=tuple(_pass(each, steps.get(each.key), lengths) for each in operation.passes))

    return _changed(state, timed)


def _pass(each: Pass, step: Step | None, lengths: Lengths) -> Pass:
    missing: dict[str, Any] = {kind: lengths.known[step.key, kind] for kind in KINDS_OF_TIME
               if step is not None and not getattr(each, kind) and lengths.known.get((step.key, kind))}  # fmt: skip
    return replace(each, **missing)


def _problem(state: ShopState, book: Book, opened: datetime, lengths: Lengths) -> tuple[ShopState, Problem]:
    """What was to be made. A wait that really lasted longer than it may has no latest end in any of its replays: else all that
    came after it would be left out."""
    problem = problem_for(state, book, opened, lengths)
    if any(left.code == "latest too soon" for left in problem.left_out):
        state = _changed(
            state, lambda _, each: replace(each, wait=replace(each.wait, latest=None)) if each.wait else each
        )
        problem = problem_for(state, book, opened, lengths)
    return state, problem
