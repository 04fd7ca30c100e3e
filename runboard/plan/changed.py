"""The shop as it would be with one change: hours or one person more, another capacity, other trays, times, or order.

Only what is not begun is changed: what lies on a station, or was counted, goes on as it is.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from itertools import count, pairwise

from runboard.plan.schedule.problem.from_book import HORIZON, Estimate, ticks_in, windows_of
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.hours import joined
from runboard.plan.schedule.problem.nouns import Problem, Span
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import RunState, ShopState, Tray
from runboard.run.refusal import Refused
from runboard.shop.book import Book, Person
from runboard.shop.hours import Window, local_day, open_windows
from runboard.shop.parts import Part
from runboard.shop.product import Operation

MOST_CAPACITY = 99
MOST_PIECES = 1000
LEAST_PER_CENT, MOST_PER_CENT = 10, 1000
# The key of somebody who is not there yet: no key that a book gives.
SOMEBODY = "one more"


@dataclass(frozen=True)
class HoursAdded:
    """Somebody is in the shop on one day more, or longer: by the clock there, until 24:00 where ``closes`` is 00:00."""

    person: str
    day: date
    opens: time
    closes: time


@dataclass(frozen=True)
class OnePersonMore:
    """Somebody with the hours of ``like``, from a moment on."""

    like: str
    skills: tuple[str, ...] = ()
    start: datetime | None = None


@dataclass(frozen=True)
class Capacity:
    """So many of a service at once."""

    service: str
    capacity: int


@dataclass(frozen=True)
class TraySize:
    """So many pieces a tray, in the trays on which nothing was begun."""

    run: str
    pieces: int


@dataclass(frozen=True)
class Times:
    """A time element of an operation, or with ``kind`` '' each of them, takes ``per_cent`` of what it takes now."""

    run: str
    operation: str
    kind: str
    per_cent: int


@dataclass(frozen=True)
class Swapped:
    """Operation ``first`` and the one after it change places."""

    run: str
    first: str


Change = HoursAdded | OnePersonMore | Capacity | TraySize | Times | Swapped


def changed_problem(state: ShopState, book: Book, now: datetime, estimate: Estimate, change: Change) -> Problem:
    """What would be still to be done with the change. Refuses what makes no sense, with the reason."""
    match change:
        case HoursAdded():
            return _with_hours(state, book, now, estimate, change)
        case OnePersonMore():
            return _with_somebody(state, book, now, estimate, change)
        case Capacity():
            book = _with_capacity(book, change)
        case Times():
            estimate = _with_times(_run(state, change.run), estimate, change)
        case TraySize():
            run = _with_trays(_run(state, change.run), change.pieces)
            state = replace(state, runs={**state.runs, run.id: run})
        case Swapped():
            run = _with_order(_run(state, change.run), change.first)
            state = replace(state, runs={**state.runs, run.id: run})
    return problem_for(state, book, now, estimate)


def _run(state: ShopState, key: str) -> RunState:
    found = state.runs.get(key)
    if found is None:
        raise Refused("run unknown", run=key)
    return found


# hours, one person more


def _with_hours(state: ShopState, book: Book, now: datetime, estimate: Estimate, change: HoursAdded) -> Problem:
    person = book.person(change.person)
    if person is None or person.removed:
        raise Refused("try nobody")
    window = Window(change.day.weekday(), change.opens, change.closes)
    added = [(opens + person.start_up, closes - person.tidy_up)
             for opens, closes in open_windows((window,), book.time_zone, now, now + HORIZON)
             if local_day(opens, book.time_zone) == change.day]  # fmt: skip
    if not ticks_in(now, added):
        raise Refused("try hours")
    usual = joined(windows_of(book, person, state.people.get(person.key), now))
    windows = joined([*usual, *ticks_in(now, added)])
    if windows == usual:
        raise Refused("try hours usual", person=person.name)
    # What fits into these hours alone fits into them every week: so it is not left out as too long for all hours.
    weekly = replace(person, hours=(*person.hours, window))
    problem = problem_for(
        state,
        _with_people(book, (weekly if somebody is person else somebody for somebody in book.people)),
        now,
        estimate,
    )
    return _with_windows(problem, person.key, windows)


def _with_somebody(state: ShopState, book: Book, now: datetime, estimate: Estimate, change: OnePersonMore) -> Problem:
    like = book.person(change.like)
    if like is None or like.removed or not like.hours:
        raise Refused("try hours of nobody")
    more = Person(SOMEBODY, "one person more", "crew", change.skills, like.hours, like.start_up, like.tidy_up)
    problem = problem_for(state, _with_people(book, (*book.people, more)), now, estimate)
    comes = 0 if change.start is None else problem.tick(change.start)
    windows = problem.people[-1].windows
    return _with_windows(
        problem, SOMEBODY, tuple((max(opens, comes), closes) for opens, closes in windows if closes > comes)
    )


def _with_people(book: Book, people: Iterable[Person]) -> Book:
    return replace(book, people=tuple(people))


def _with_windows(problem: Problem, key: str, windows: tuple[Span, ...]) -> Problem:
    people = (replace(person, windows=windows) if person.key == key else person for person in problem.people)
    return replace(problem, people=tuple(people))


# capacity, another time


def _with_capacity(book: Book, change: Capacity) -> Book:
    if not 1 <= change.capacity <= MOST_CAPACITY:
        raise Refused("try capacity", most=MOST_CAPACITY)
    now = next((service for service in book.services if service.key == change.service), None)
    if now is None:
        raise Refused("try service unknown")
    if now.capacity == change.capacity:
        raise Refused("try the same")
    services = (replace(service, capacity=change.capacity) if service is now else service for service in book.services)
    return replace(book, services=tuple(services))


def _with_times(run: RunState, estimate: Estimate, change: Times) -> Estimate:
    if not LEAST_PER_CENT <= change.per_cent <= MOST_PER_CENT:
        raise Refused("try per cent", least=LEAST_PER_CENT, most=MOST_PER_CENT)
    if change.per_cent == 100:
        raise Refused("try the same")
    steps = [step for step in run.route.steps if step.operation.key == change.operation]
    kinds = (change.kind,) if change.kind else ("setup", "loading", "machine", "unloading", "hand")
    if not any(getattr(step.pass_, kind, None) for step in steps for kind in kinds):
        raise Refused("try no such time")

    def changed(asked: RunState, step: Step, part: Part) -> timedelta:
        length = estimate(asked, step, part)
        concerned = asked.id == run.id and step.operation.key == change.operation and part.kind in kinds
        return length * change.per_cent / 100 if concerned else length

    return changed


# other trays


def _with_trays(run: RunState, a_tray: int) -> RunState:
    if not 1 <= a_tray <= MOST_PIECES:
        raise Refused("try pieces", most=MOST_PIECES)
    fresh = {key: tray for key, tray in run.trays.items() if _is_untouched(run, tray)}
    boards = {key: fed for key, fed in run.boards.items()
              if fed and set(fed) <= set(fresh) and key not in {**run.loads, **run.past}}  # fmt: skip
    # Trays that no board feeds go together by where their pieces are and by their wood.
    loose: dict[tuple[object, ...], dict[str, int]] = {}
    fed_by_any = {key for fed in run.boards.values() for key in fed}
    for key, tray in ((key, tray) for key, tray in fresh.items() if key not in fed_by_any):
        loose.setdefault((*tray.at, tray.revision, tray.wood, tray.board), {})[key] = tray.started
    groups = [*boards.values(), *loose.values()]
    if not groups:
        raise Refused("try trays begun")
    trays = {key: tray for key, tray in run.trays.items() if not any(key in group for group in groups)}
    names = (str(number) for number in count(1) if str(number) not in trays)
    made = [{next(names): pieces for pieces in _split(sum(group.values()), a_tray)} for group in groups]
    if [list(trays_made.values()) for trays_made in made] == [list(group.values()) for group in groups]:
        raise Refused("try the same")
    for group, parts in zip(groups, made, strict=True):
        model = fresh[next(iter(group))]
        for key, pieces in parts.items():
            trays[key] = replace(model, id=key, started=pieces, at=dict.fromkeys(model.at, pieces))
    return replace(run, trays=trays, boards={**run.boards, **dict(zip(boards, made, strict=False))})


def _is_untouched(run: RunState, tray: Tray) -> bool:
    """Whether nothing was begun, counted, held, moved, given or marked on a tray: all its pieces are where they began."""
    marks = (tray.busy, tray.counts, tray.scrap, tray.holds, tray.rests, tray.places, tray.gone, tray.came, tray.good)
    given = any(key.rsplit("|", 1)[-1] == tray.id for key in run.given)
    return len(tray.at) == 1 and tray.in_process == tray.started and not any(marks) and not given


def _split(pieces: int, a_tray: int) -> list[int]:
    return [min(a_tray, pieces - at) for at in range(0, pieces, a_tray)]


# another order


def swappable(run: RunState) -> list[tuple[Operation, Operation]]:
    """The neighbouring operations that may change places: neither begun, no wait after either, no texts that begin there,
    no finish, no boards to cut."""
    if len(run.revisions) != 1:
        return []
    return [pair for pair in pairwise(run.route.product.operations) if not _is_bound(pair) and not _is_begun(run, pair)]


def _is_bound(pair: tuple[Operation, Operation]) -> bool:
    return any(
        operation.wait
        or operation.finish
        or operation.personal
        or any(pass_.size == "board" for pass_ in operation.passes)
        for operation in pair
    )


def _is_begun(run: RunState, pair: tuple[Operation, Operation]) -> bool:
    steps = {step.key: step.index for step in run.route.steps if step.operation in pair}
    first = min(steps.values())
    if any(load.step in steps for load in (*run.loads.values(), *run.past.values())):
        return True
    for tray in run.trays.values():
        further = any((step := run.route.step(key)) is None or step.index > first for key in tray.at)
        if tray.good or further or any(tray.held(key) or tray.counts.get(key) for key in steps):
            return True
    return False


def _with_order(run: RunState, first: str) -> RunState:
    found = next((pair for pair in swappable(run) if pair[0].key == first), None)
    if found is None:
        raise Refused("try order")
    operation, other = found
    turned = {operation.key: other, other.key: operation}
    product = run.route.product
    route = Route(replace(product, operations=tuple(turned.get(each.key, each) for each in product.operations)))
    # Pieces are nowhere in the pair but before its first operation: that is the other one now.
    begins = {key: next(step.key for step in route.steps if step.operation.key == key) for key in turned}
    trays = {
        key: replace(
            tray,
            at={begins[other.key] if step == begins[operation.key] else step: left for step, left in tray.at.items()},
        )
        for key, tray in run.trays.items()
    }
    return replace(run, trays=trays, revisions=(replace(run.revisions[0], route=route),))
