"""A run replayed with changes: in the hours that really were, in the order in which its work was begun."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime, timedelta

from runboard.plan.change import (
    Capacity,
    Change,
    Helper,
    HoursAdded,
    Instead,
    LoadSize,
    OnePersonMore,
    Rested,
    Single,
    Times,
    TraySize,
    several,
    singles,
)
from runboard.plan.changed import SOMEBODY, changed_problem, first_of
from runboard.plan.schedule.problem.hours import joined
from runboard.plan.schedule.problem.nouns import TICK, Problem, Span
from runboard.review.held.replay import problem_of
from runboard.review.held.replayable import Replayable
from runboard.shop.book import Book


def problem_with(known: Replayable, as_it_was: Problem, change: Change) -> Problem:
    """The problem of the replay with a change, of whichever kind. Refuses what makes no sense for that run, with the reason."""
    hours = [single for single in singles(change) if isinstance(single, HoursAdded)]
    people = [single for single in singles(change) if isinstance(single, OnePersonMore | Helper)]
    if not people and len(singles(change)) == 1:
        return problem_of(known, change)
    others = [single for single in singles(change) if not isinstance(single, HoursAdded)]
    if others:
        made = changed_problem(known.state, known.book, known.opened_at, known.lengths, several(*others))
    else:
        made = problem_of(known)
    windows = {person.key: person.windows for person in as_it_was.people}
    for added in hours:
        longer = {person.key: person.windows for person in problem_of(known, added).people}
        windows[added.person] = joined([*windows.get(added.person, ()), *longer[added.person]])
    for key, somebody in zip(_more(made, as_it_was), people, strict=True):
        windows[key] = _hours_like(known, made, windows, somebody)
    free = {station.key: station.runs for station in as_it_was.stations}
    return replace(
        made,
        people=tuple(replace(one, windows=windows.get(one.key, one.windows)) for one in made.people),
        stations=tuple(replace(one, runs=free.get(one.key, one.runs)) for one in made.stations),
    )


def _more(made: Problem, as_it_was: Problem) -> list[str]:
    """Those who are there with the change alone, in its order."""
    here = {person.key for person in as_it_was.people}
    return [person.key for person in made.people if person.key not in here and person.key.startswith(SOMEBODY)]


def _hours_like(
    known: Replayable, made: Problem, windows: Mapping[str, tuple[Span, ...]], single: OnePersonMore | Helper
) -> tuple[Span, ...]:
    start = single.start or (_first_begun(known, single.operation) if isinstance(single, Helper) else None)
    comes = 0 if start is None else made.tick(start)
    like = [(max(opens, comes), closes) for opens, closes in windows.get(single.like, ()) if closes > comes]
    return first_of(like, timedelta(minutes=single.minutes) // TICK) if isinstance(single, Helper) else tuple(like)


def _first_begun(known: Replayable, operation: str) -> datetime | None:
    """When an operation was really begun first: whoever helps at it for some minutes is not there before, when there is nothing
    of it to do."""
    steps = {step.key for step in known.state.runs[known.run].route.steps if step.operation.key == operation}
    return min((begun.at for (step, tray), begun in known.order.items() if tray and step in steps), default=None)


def only_allows(book: Book, change: Change) -> bool:
    """Whether a change asks for nothing that was not asked before: then whatever was done could be done with it as well, at the
    latest when it was."""
    capacity = {service.key: service.capacity for service in book.services}
    for single in singles(change):
        match single:
            case HoursAdded() | OnePersonMore() | Helper():
                continue
            case Capacity() if single.capacity >= capacity.get(single.service, single.capacity):
                continue
            case Times() | Instead() if single.per_cent <= 100:
                continue
        return False
    return True


def about_the_same(one: Change, other: Change) -> bool:
    """Whether two changes say the same thing otherwise, so that only one of them can be made: how many of a service, how large
    trays or a step's loads are, how long an element or a wait takes."""
    return any(not _subjects(a).isdisjoint(_subjects(b)) for a in singles(one) for b in singles(other))


def _subjects(single: Single) -> set[tuple[str, ...]]:
    match single:
        case Capacity():
            return {("capacity", single.service)}
        case TraySize():
            return {("trays",)}
        case LoadSize():
            return {("load", single.step)}
        case Rested():
            return {("wait", single.operation)}
        case Times():
            return {("times", single.operation, kind) for kind in single.kinds}
    return set()
