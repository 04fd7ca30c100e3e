"""Where the hours of a run went: the sums of its time elements for each step."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import timedelta

from runboard.review.time_study import FROM_SENSOR, MEASURED, Element
from runboard.run.fold.state import RunState
from runboard.shop.book import Book
from runboard.shop.hours import merged
from runboard.shop.product import ZERO

HANDS = ("setup", "loading", "unloading", "hand")


@dataclass(frozen=True)
class Sum:
    """The hours of one step. ``hands`` is the sum of everybody's spans, ``elapsed`` the time in which at least one
    person was at it, ``machine`` the machine's; ``unmeasured`` is the part of ``hands`` and ``machine`` that teaches
    nothing. ``helpers`` is the part of ``hands`` that helpers gave, ``leads`` the rest."""

    step: str
    step_name: str
    loads: int
    pieces: int
    hands: timedelta
    elapsed: timedelta
    machine: timedelta
    unmeasured: timedelta
    helpers: timedelta = ZERO

    @property
    def leads(self) -> timedelta:
        """The leads' part of ``hands``."""
        return self.hands - self.helpers


@dataclass(frozen=True)
class HoursOfRun:
    """The sums of a run's steps, and ``good`` pieces so far."""

    steps: tuple[Sum, ...]
    good: int

    def all(self, which: str) -> timedelta:
        """All steps together of ``hands``, ``helpers``, ``machine`` or ``unmeasured``."""
        return sum((getattr(step, which) for step in self.steps), ZERO)

    @property
    def a_piece(self) -> timedelta | None:
        """The hands-on time for each good piece; None before there is one."""
        return self.all("hands") / self.good if self.good else None


def is_helper(book: Book, person: str) -> bool:
    """Whether a person is a helper: crew, or somebody who is in no book, as guests are. Nobody is none."""
    known = book.person(person)
    return bool(person) and (known is None or known.access != "lead")


def hours_by_step(run: RunState, elements: Iterable[Element], helpers: Collection[str] = ()) -> list[Sum]:
    """The sums of each step that was worked on, in the order of the route. ``helpers`` are the keys of those whose hours
    are counted apart."""
    by_step: dict[str, list[Element]] = {}
    for element in elements:
        by_step.setdefault(element.step, []).append(element)
    order = {step.key: step.index for revision in run.revisions for step in revision.route.steps}
    return [_sum(run, by_step[key], helpers) for key in sorted(by_step, key=lambda key: order.get(key, len(order)))]


def hours_of(run: RunState, elements: Iterable[Element], book: Book) -> HoursOfRun:
    """The sums of a run, helpers' hours apart by who is a helper in this book."""
    elements = list(elements)
    helpers = {element.person for element in elements if is_helper(book, element.person)}
    good = sum(tray.good for tray in run.trays.values())
    return HoursOfRun(tuple(hours_by_step(run, elements, helpers)), good)


def _sum(run: RunState, elements: list[Element], helpers: Collection[str]) -> Sum:
    hands = [element for element in elements if element.kind in HANDS and element.length is not None]
    machine = [element for element in elements if element.kind == "machine" and element.length is not None]
    worked = {element.load for element in elements if element.kind != "wait"}
    step = elements[0].step
    counted = sum(good + bad for tray in run.trays.values() for good, bad in tray.counts.get(step, {}).values())
    return Sum(
        step,
        elements[0].step_name,
        len(worked),
        counted,
        total(hands),
        union(hands),
        total(machine),
        total(element for element in (*hands, *machine) if element.known not in (MEASURED, FROM_SENSOR)),
        total(element for element in hands if element.person in helpers),
    )


def total(elements: Iterable[Element]) -> timedelta:
    """The lengths that are known, added up."""
    return sum((element.length for element in elements if element.length is not None), ZERO)


def union(elements: Iterable[Element]) -> timedelta:
    """How long at least one of them went on."""
    spans = ((element.began_at, element.ended_at) for element in elements if element.began_at and element.ended_at)
    return sum((ended - began for began, ended in merged(spans)), ZERO)
