"""The shop as it would be with a change: hours or one person more, another capacity, other trays, loads, times, or order.

Only what is not begun is changed: what lies on a station, or was counted, goes on as it is.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from functools import reduce
from itertools import count

from runboard.plan.change import (
    KINDS_OF_TIME,
    MOST_CAPACITY,
    MOST_MINUTES,
    Capacity,
    Change,
    Helper,
    HoursAdded,
    Instead,
    LoadSize,
    OnePersonMore,
    OneVisit,
    Rested,
    Single,
    Swapped,
    Times,
    TraySize,
    in_order,
)
from runboard.plan.changed_route import check_per_cent, check_rate
from runboard.plan.changed_run import (
    as_before,
    with_loads,
    with_machine,
    with_one_visit,
    with_order,
    with_times,
    with_trays,
    with_wait,
)
from runboard.plan.schedule.problem.from_book import HORIZON, Estimate, ticks_in, windows_of
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.hours import joined
from runboard.plan.schedule.problem.nouns import TICK, Problem, Span
from runboard.run.fold.state import RunState, ShopState
from runboard.run.refusal import Refused
from runboard.shop.book import Book, Person
from runboard.shop.hours import Window, local_day, open_windows

# The key of somebody who is not there yet: no key that a book gives.
SOMEBODY = "one more"


@dataclass(frozen=True)
class Shop:
    """A shop that is being changed. ``longer`` are all the hours of those who have more; ``fixes`` what is done to the problem that
    all of it makes."""

    state: ShopState
    book: Book
    now: datetime
    estimate: Estimate
    longer: Mapping[str, tuple[Span, ...]] = field(default_factory=dict)
    fixes: tuple[Callable[[Problem], Problem], ...] = ()

    def run(self, key: str) -> RunState:
        """Refused 'run unknown'."""
        found = self.state.runs.get(key)
        if found is None:
            raise Refused("run unknown", run=key)
        return found

    def with_run(self, run: RunState) -> "Shop":
        """The shop with the run in place of the one of its id."""
        return replace(self, state=replace(self.state, runs={**self.state.runs, run.id: run}))


def changed_problem(state: ShopState, book: Book, now: datetime, estimate: Estimate, change: Change) -> Problem:
    """What would be still to be done with the change. Refuses what makes no sense, with the reason."""
    shop = changed_shop(Shop(state, book, now, estimate), change)
    problem = problem_for(shop.state, shop.book, now, shop.estimate)
    for person, windows in shop.longer.items():
        problem = _with_windows(problem, person, windows)
    return reduce(lambda made, fix: fix(made), shop.fixes, problem)


def changed_shop(shop: Shop, change: Change) -> Shop:
    """The shop with a change, or with each of several."""
    return reduce(_changed, in_order(change), shop)


def _changed(shop: Shop, change: Single) -> Shop:
    match change:
        case HoursAdded():
            return _with_hours(shop, change)
        case OnePersonMore():
            return _with_somebody(shop, change.like, change.skills, change.start)[0]
        case Helper():
            return _with_helper(shop, change)
        case Capacity():
            return replace(shop, book=book_with(shop.book, change))
        case TraySize():
            return shop.with_run(with_trays(shop.run(change.run), change.pieces))
        case Times():
            return _with_times(shop, change.run, change.operation, change.kinds, change.per_cent)
        case Instead():
            return _with_means(shop, change)
        case LoadSize():
            return _with_load(shop, change)
        case Rested():
            return shop.with_run(with_wait(shop.run(change.run), shop.book, change))
        case Swapped():
            return shop.with_run(with_order(shop.run(change.run), change.first))
        case OneVisit():
            return _with_one_visit(shop, change)


# hours, one person more


def _with_hours(shop: Shop, change: HoursAdded) -> Shop:
    book, now = shop.book, shop.now
    person = book.person(change.person)
    if person is None or person.removed:
        raise Refused("try nobody")
    window = Window(change.day.weekday(), change.opens, change.closes)
    added = [(opens + person.start_up, closes - person.tidy_up)
             for opens, closes in open_windows((window,), book.time_zone, now, now + HORIZON)
             if local_day(opens, book.time_zone) == change.day]  # fmt: skip
    if not ticks_in(now, added):
        raise Refused("try hours")
    usual = shop.longer.get(person.key) or joined(windows_of(book, person, shop.state.people.get(person.key), now))
    windows = joined([*usual, *ticks_in(now, added)])
    if windows == usual:
        raise Refused("try hours usual", person=person.name)
    # What fits into these hours alone fits into them every week: so it is not left out as too long for all hours.
    weekly = replace(person, hours=(*person.hours, window))
    people = (weekly if somebody is person else somebody for somebody in book.people)
    return replace(shop, book=_with_people(book, people), longer={**shop.longer, person.key: windows})


def _with_somebody(shop: Shop, like: str, skills: tuple[str, ...], start: datetime | None) -> tuple[Shop, str]:
    """The shop with somebody more, and their key."""
    model = shop.book.person(like)
    if model is None or model.removed or not model.hours:
        raise Refused("try hours of nobody")
    here = {person.key for person in shop.book.people}
    key = next(key for number in count(1) if (key := SOMEBODY if number == 1 else f"{SOMEBODY} {number}") not in here)
    more = Person(key, "one person more", "crew", skills, model.hours, model.start_up, model.tidy_up)

    def from_then_on(problem: Problem) -> Problem:
        comes = 0 if start is None else problem.tick(start)
        windows = tuple((max(opens, comes), closes) for opens, closes in _windows(problem, key) if closes > comes)
        return _with_windows(problem, key, windows)

    book = _with_people(shop.book, (*shop.book.people, more))
    return replace(shop, book=book, fixes=(*shop.fixes, from_then_on)), key


def _with_helper(shop: Shop, change: Helper) -> Shop:
    if not 1 <= change.minutes <= MOST_MINUTES:
        raise Refused("try minutes", most=MOST_MINUTES)
    operations = {operation.key: operation for operation in shop.run(change.run).route.product.operations}
    operation = operations.get(change.operation)
    if operation is None:
        raise Refused("try no operation")
    skills = (operation.skill,) if operation.skill else ()
    shop, key = _with_somebody(shop, change.like, skills, change.start)

    def at_one_operation(problem: Problem) -> Problem:
        spans = first_of(_windows(problem, key), timedelta(minutes=change.minutes) // TICK)
        problem = _with_windows(problem, key, spans)
        who = [person.key for person in problem.people].index(key)
        blocks = (
            block
            if (block.run, block.operation) == (change.run, change.operation)
            else replace(block, people=tuple(at for at in block.people if at != who))
            for block in problem.blocks
        )
        return replace(problem, blocks=tuple(blocks))

    return replace(shop, fixes=(*shop.fixes, at_one_operation))


def first_of(spans: Iterable[Span], most: int) -> tuple[Span, ...]:
    """The first so many ticks of some spans."""
    found = []
    for opens, closes in spans:
        if most > 0:
            found.append((opens, min(closes, opens + most)))
            most -= closes - opens
    return tuple(found)


def _with_people(book: Book, people: Iterable[Person]) -> Book:
    return replace(book, people=tuple(people))


def _windows(problem: Problem, key: str) -> tuple[Span, ...]:
    return next(person.windows for person in problem.people if person.key == key)


def _with_windows(problem: Problem, key: str, windows: tuple[Span, ...]) -> Problem:
    people = (replace(person, windows=windows) if person.key == key else person for person in problem.people)
    return replace(problem, people=tuple(people))


# capacity, other times


def book_with(book: Book, change: Capacity) -> Book:
    """The book with so many of a service at once. Refused 'try capacity', 'try service unknown', 'try the same'."""
    if not 1 <= change.capacity <= MOST_CAPACITY:
        raise Refused("try capacity", most=MOST_CAPACITY)
    now = next((service for service in book.services if service.key == change.service), None)
    if now is None:
        raise Refused("try service unknown")
    if now.capacity == change.capacity:
        raise Refused("try the same")
    services = (replace(service, capacity=change.capacity) if service is now else service for service in book.services)
    return replace(book, services=tuple(services))


def _with_times(shop: Shop, run: str, operation: str, kinds: tuple[str, ...], per_cent: int) -> Shop:
    check_per_cent(per_cent)
    if per_cent == 100:
        raise Refused("try the same")
    steps = [step for step in shop.run(run).route.steps if operation in (step.operation.key, step.key)]
    if not any(getattr(step.pass_, kind, None) for step in steps for kind in kinds):
        raise Refused("try no such time")
    return replace(shop, estimate=with_times(shop.estimate, run, operation, kinds, per_cent))


def _with_means(shop: Shop, change: Instead) -> Shop:
    check_rate(change.good_rate)
    if change.per_cent != 100:
        return _with_times(shop, change.run, change.operation, KINDS_OF_TIME, change.per_cent)
    if all(operation.key != change.operation for operation in shop.run(change.run).route.product.operations):
        raise Refused("try no operation")
    if change.good_rate is None:
        raise Refused("try the same")
    return shop  # what comes good is no matter of when


def _with_load(shop: Shop, change: LoadSize) -> Shop:
    run = shop.run(change.run)
    changed, factor = with_loads(run, change)
    return replace(shop.with_run(changed), estimate=with_machine(shop.estimate, change, factor))


def _with_one_visit(shop: Shop, change: OneVisit) -> Shop:
    run = shop.run(change.run)
    changed = with_one_visit(run, shop.book, change.first)
    return replace(shop.with_run(changed), estimate=as_before(shop.estimate, run, change.first))
