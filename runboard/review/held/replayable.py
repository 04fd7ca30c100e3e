"""What a run is replayed from: the run as it was opened, what its work really took, who was there, and in which order its
loads were begun."""

import io
import math
import pickle
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta
from types import MappingProxyType
from typing import Any

from runboard.plan.estimates import measured_in
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import FAR, TICK, Block
from runboard.plan.schedule.told.forecast import Scatter, usual_spread
from runboard.review.held.going import AsItWas, Order, order_of
from runboard.review.held.there import ended_at, stations_free, took_part, who_was_there
from runboard.review.opening import ENLARGED, REVISED, opening_state
from runboard.review.past import Past
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import RunState, ShopState
from runboard.shop.book import Book, Person, Station
from runboard.shop.hours import Span, Window
from runboard.shop.parts import Part
from runboard.shop.product import ZERO, Pass

KINDS = ("setup", "loading", "machine", "unloading", "hand")
# So long after a run's end everybody is there round the clock: whatever was done finds a place.
AT_LAST = timedelta(weeks=4)
_ROUND_THE_CLOCK = tuple(Window(day, time(), time()) for day in range(7))


@dataclass(frozen=True)
class Lengths:
    """How long a part of a load took: the mean of what the run itself measured, by (step, kind); where it measured nothing,
    what is known now. An estimate as a problem asks for it; it can be sent to a child process."""

    known: Mapping[tuple[str, str], timedelta]

    def __call__(self, run: RunState, step: Step, part: Part) -> timedelta:
        guess: timedelta = getattr(step.pass_, part.kind, ZERO)
        known = self.known.get((step.key, part.kind))
        return part.length if known is None or not guess else part.length * (known / guess)


@dataclass(frozen=True)
class Scatters:
    """How much a time element scatters, by (step, kind); as usual where nobody knows."""

    known: Mapping[tuple[str, str], Scatter]

    def __call__(self, block: Block, kind: str) -> Scatter:
        return self.known.get((block.step, kind)) or usual_spread(block, kind)


@dataclass(frozen=True)
class Replayable:
    """A run that can be replayed; it can be sent to a child process.

    ``state`` has the run as it was opened; ``book`` is the shop's with everybody who worked on the run, round the clock: their
    real hours are in ``there``, those of stations in ``free``. ``order`` says by (step, tray) when a load was begun.
    ``finished`` is when the last thing was done; None where the run is open.
    """

    run: str
    state: ShopState
    book: Book
    opened_at: datetime
    ended_at: datetime
    finished: datetime | None
    lengths: Lengths
    spread: Scatters
    there: Mapping[str, list[Span]]
    free: Mapping[str, list[Span]]
    order: Order

    def __reduce__(self) -> Any:
        packed = io.BytesIO()
        _Packer(packed, pickle.HIGHEST_PROTOCOL).dump(vars(self))
        return _unpacked, (packed.getvalue(),)


class _Packer(pickle.Pickler):
    """Packs what book and routes hold as a view, which by itself cannot be packed."""

    def reducer_override(self, found: Any) -> Any:
        return (_view, (dict(found),)) if isinstance(found, MappingProxyType) else NotImplemented


def _view(found: dict[Any, Any]) -> MappingProxyType[Any, Any]:
    return MappingProxyType(found)


def _unpacked(packed: bytes) -> Replayable:
    return Replayable(**pickle.loads(packed))  # noqa: S301 - packed by this process or its parent


def replayable(past: Past) -> Replayable | None:
    """The run as it can be replayed; None where the log does not have its opening, nobody was ever there, or it went on for
    longer than a plan looks ahead."""
    state, ended, opened = opening_state(past, REVISED | ENLARGED), ended_at(past), past.run.opened_at
    people = took_part(past)
    is_too_long = ended + 2 * AT_LAST > opened + FAR * TICK
    if not people or not past.book.rooms or past.run.id not in state.runs or is_too_long:
        return None
    book, (lengths, spread), order = _book(past, people), _lengths(past), order_of(past.run)
    state = replace(state, runs={key: _with_times(run, lengths) for key, run in state.runs.items()})
    as_it_was = AsItWas(problem_for(state, book, opened, lengths), order)
    there = {key: spans for key, spans in who_was_there(past, as_it_was.could_begin).items() if spans}
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
    return replace(book, people=tuple(able), stations=stations, forbidden=())


def _able(person: Person, skills: Iterable[str]) -> Person:
    return replace(
        person, skills=tuple(dict.fromkeys([*person.skills, *sorted(skills)])), hours=_ROUND_THE_CLOCK, removed=False,
        start_up=ZERO, tidy_up=ZERO,
    )  # fmt: skip


def _lengths(past: Past) -> tuple[Lengths, Scatters]:
    """What each element took and how much it scatters: of its mean in this run less is unknown the more was measured."""
    run, measured = past.run, measured_in(past.run, past.book.time_zone)
    lengths, spread = {}, {}
    steps = {step.key: step for revision in run.revisions for step in revision.route.steps}
    for step in steps.values():
        for kind in KINDS:
            known = past.estimates.of(run, step, kind)
            times = [each.length for each in measured.get((run.product, step.key, kind), ())]
            lengths[step.key, kind] = sum(times, ZERO) / len(times) if times else known.length
            unknown = known.scatter.load / math.sqrt(len(times)) if times else known.scatter.element
            spread[step.key, kind] = replace(known.scatter, element=unknown)
    return Lengths(lengths), Scatters(spread)


def _with_times(run: RunState, lengths: Lengths) -> RunState:
    """The run whose route has a time where it had none and the run measured one: else that work would be forgotten."""
    return replace(run, revisions=tuple(replace(each, route=_route(each.route, lengths)) for each in run.revisions))


def _route(route: Route, lengths: Lengths) -> Route:
    operations = []
    for operation in route.product.operations:
        steps = {step.pass_.key: step for step in route.steps if step.operation.key == operation.key}
        passes = tuple(_pass(each, steps.get(each.key), lengths) for each in operation.passes)
        operations.append(operation if passes == operation.passes else replace(operation, passes=passes))
    changed = tuple(operations)
    return route if changed == route.product.operations else Route(replace(route.product, operations=changed))


def _pass(each: Pass, step: Step | None, lengths: Lengths) -> Pass:
    missing: dict[str, Any] = {kind: lengths.known[step.key, kind] for kind in KINDS
               if step is not None and not getattr(each, kind) and lengths.known.get((step.key, kind))}  # fmt: skip
    return replace(each, **missing)
