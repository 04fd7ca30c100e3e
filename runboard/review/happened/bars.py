"""Plan against actual: each operation's guess beside what it took, and each time element's with the estimate's own error."""

import math
from collections.abc import Collection, Iterable
from datetime import date, timedelta

from runboard.plan.change import KINDS_OF_TIME
from runboard.plan.estimates import KnownTime
from runboard.review.happened.lost import steps_of
from runboard.review.happened.nouns import ElementError, OperationBar
from runboard.review.happened.worked import WORK
from runboard.review.hours import HANDS, Sum, hours_by_step, total
from runboard.review.past import Past
from runboard.review.time_study import FROM_SENSOR, MEASURED, Element, loads_after_a_change
from runboard.run.fold.route import Step
from runboard.shop.hours import local_day
from runboard.shop.product import ZERO

# So many standard deviations to either side hold 95 of a hundred (normal distribution).
Z_95 = 1.96


def bars_of(past: Past) -> tuple[OperationBar, ...]:
    """A bar for each operation at which anything was done, in the order of the route. Like beside like: the guess is of
    the loads that are through and whose time is known, of all that are through where none is."""
    over = [one for one in past.elements if one.kind != "wait" and one.load not in past.run.loads]
    sums = {one.step: one for one in hours_by_step(past.run, over)}
    guesses = _Guesses(past, over)
    found: dict[str, list[tuple[Step, Sum]]] = {}
    for step in steps_of(past.run):
        if step.key in sums:
            found.setdefault(step.operation.key, []).append((step, sums[step.key]))
    hands = sum((one.hands for one in sums.values()), ZERO)
    return tuple(_bar(key, some, guesses, hands) for key, some in found.items())


def _bar(key: str, some: list[tuple[Step, Sum]], guesses: "_Guesses", all_hands: timedelta) -> OperationBar:
    steps = [step.key for step, _ in some]
    hands = sum((one.hands for _, one in some), ZERO)
    machine = sum((one.machine for _, one in some), ZERO)
    is_known = any(guesses.has(step, WORK) for step in steps)
    hands_known = any(guesses.has(step, HANDS) for step in steps)
    return OperationBar(
        key,
        some[-1][0].operation.name,
        guesses.of(steps, WORK),
        hands + machine if is_known else None,
        guesses.of(steps, HANDS),
        hands if hands_known else None,
        hands / all_hands if all_hands else 0.0,
    )


class _Guesses:
    """What was believed before the run of what was done in it, by step and kind of time element."""

    def __init__(self, past: Past, elements: Iterable[Element]) -> None:
        self._past = past
        self._changed = loads_after_a_change(past.run)
        self._known: dict[tuple[str, str], dict[str, timedelta]] = {}
        self._all: dict[tuple[str, str], dict[str, timedelta]] = {}
        for one in elements:
            for kind in WORK if one.kind == "done" else (one.kind,):
                guess = self._guess(one, kind)
                self._all.setdefault((one.step, kind), {})[one.load] = guess
                if one.length is not None:
                    self._known.setdefault((one.step, kind), {})[one.load] = guess

    def has(self, step: str, kinds: Iterable[str]) -> bool:
        """Whether any time of these kinds is known."""
        return any((step, kind) in self._known for kind in kinds)

    def of(self, steps: Iterable[str], kinds: Iterable[str]) -> timedelta:
        """The guess for what is known; for all that was done where nothing is."""
        keys = [(step, kind) for step in steps for kind in kinds]
        known = any(key in self._known for key in keys)
        some = self._known if known else self._all
        return sum((guess for key in keys for guess in some.get(key, {}).values()), ZERO)

    def _guess(self, one: Element, kind: str) -> timedelta:
        load = self._past.run.past.get(one.load)
        step = self._past.run.step_of(load) if load is not None else self._step(one)
        if step is None or (load is not None and load.state == "off"):
            return ZERO
        of = self._past.believed.of
        length = of(self._past.run, step, kind).length
        if kind == "hand":  # the first hand work after a change is its setup as well
            setup = of(self._past.run, step, "setup").length if one.load in self._changed else ZERO
            return one.pieces * length + (setup if length else ZERO)
        return length if kind != "setup" or one.load in self._changed or one.length is not None else ZERO

    def _step(self, one: Element) -> Step | None:
        tray = self._past.run.trays.get(one.trays[0]) if one.trays else None
        return (self._past.run.route_of(tray) if tray else self._past.run.route).step(one.step)


# each element


def errors_of(past: Past) -> tuple[ElementError, ...]:
    """The error of each estimate of which anything was measured, in the order of the route."""
    changed = loads_after_a_change(past.run)
    measured = _measured(past, changed)
    found = []
    for step in steps_of(past.run):
        for kind in KINDS_OF_TIME:
            some, known = measured.get((step.key, kind), []), past.believed.of(past.run, step, kind)
            if some and known.length:
                found.append(_error(step, kind, known, some))
    return tuple(found)


def _error(step: Step, kind: str, known: KnownTime, some: list[tuple[timedelta, date]]) -> ElementError:
    taken = sum((length for length, _ in some), ZERO) / len(some)
    sessions, scatter = len({day for _, day in some}), known.scatter
    off = math.hypot(scatter.element, scatter.session / sessions**0.5, scatter.load / len(some) ** 0.5)
    error = taken / known.length - 1
    return ElementError(
        step.key, step.name, step.operation.key, kind, known.length, known.said, taken, len(some), error,
        math.expm1(Z_95 * off), error > -1 and abs(math.log1p(error)) <= Z_95 * off,
    )  # fmt: skip


def _measured(past: Past, changed: Collection[str]) -> dict[tuple[str, str], list[tuple[timedelta, date]]]:
    """The measured times of each (step, kind) with their days: of a load, for hand time of a piece of it; of a load of which
    any part was not measured none of that kind."""
    parts: dict[tuple[str, str, str], list[Element]] = {}
    for one in past.elements:
        if one.kind in WORK and one.load in past.run.past:
            parts.setdefault((one.step, one.kind, one.load), []).append(one)
    found: dict[tuple[str, str], list[tuple[timedelta, date]]] = {}
    for (step, kind, load), some in parts.items():
        began = some[0].began_at
        if began is None or any(one.known not in (MEASURED, FROM_SENSOR) for one in some):
            continue
        length = total(some)
        if kind == "hand":
            known = past.run.step_of(past.run.past[load])
            setup = known.pass_.setup if known is not None and load in changed else ZERO
            length = (length - setup) / some[0].pieces if some[0].pieces else ZERO
        if length > ZERO:
            found.setdefault((step, kind), []).append((length, local_day(began, past.book.time_zone)))
    return found
