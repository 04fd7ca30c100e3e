"""From when a tray may go on after a step: the later of what its route says and of what the finish's label says.

The state keeps the answer as a wait's ``ready_at``; the plan asks for the same span of a wait that has not begun.
"""

from dataclasses import replace
from datetime import datetime, timedelta

from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import Rest, Tray
from runboard.shop.book import Book
from runboard.shop.care import finish_of
from runboard.shop.product import ZERO, Wait

# What a finish does while it rests; it is wet in its room meanwhile. The others are over before it may be handled.
DRIES = ("dry", "cure")


def wait_after(book: Book, route: Route, step: Step) -> Wait | None:
    """The wait after the last pass of an operation, ``least`` being the later of the route's and the label's: its recoat
    time where another coat follows, its time to handling before any other work and before packing.

    Where the route has no wait, the label's time to handling makes one; but a step that goes on with the coat itself (to
    wipe it off) waits for nothing. A wait for something else than drying is the route's alone.
    """
    if not step.last_pass:
        return None
    own, finish = step.operation.wait, finish_of(book, step.operation)
    if finish is None or (own is not None and own.why not in DRIES):
        return own
    following = route.step(route.after(step.key))
    another_coat = following is not None and finish_of(book, following.operation) is not None
    said = finish.recoat if another_coat else finish.handle
    if own is None:
        return Wait("dry", said) if said and not another_coat else None
    return own if said is None or said <= own.least else replace(own, least=said)


def rests_before(route: Route, tray: Tray, step: Step) -> dict[str, Rest]:
    """The waits of a tray that nobody has ended and that lie before a step, wherever a step was put in meanwhile; one whose
    step the route has lost stops nobody."""
    if not tray.rests:
        return {}
    return {
        key: rest
        for key, rest in tray.rests.items()
        if rest.ended_at is None and (there := route.step(key)) is not None and there.index < step.index
    }


def rest_before(route: Route, tray: Tray, step: Step) -> Rest | None:
    """Of those waits the one that is over last: before its ``ready_at`` a tray does not go on at ``step``."""
    return max(rests_before(route, tray, step).values(), key=lambda rest: rest.ready_at, default=None)


def revised(book: Book, before: Route, after: Route, number: int, key: str, rest: Rest) -> Rest:
    """A wait that has begun, by the route of another revision: what follows now decides. One that this route has lost stays
    as it is."""
    old, new = (wait_after(book, route, step) if (step := route.step(key)) else None for route in (before, after))
    if old is None or new is None or rest.ended_at is not None:
        return rest
    return replace(rest, ready_at=rest.ready_at - old.least + new.least, revision=number)


def done_at(book: Book, route: Route, step: Step, rest: Rest) -> datetime:
    """When the last piece of a coat was done, from which its finish's times count."""
    wait = wait_after(book, route, step)
    return rest.began_at if wait is None else rest.ready_at - wait.least


def wet_after(book: Book, route: Route, step: Step) -> timedelta:
    """For how long a finish is wet in its room after a step, as dust would find it: by the route and until another coat
    could go on, even where hands have to wait longer."""
    wait, finish = wait_after(book, route, step), finish_of(book, step.operation)
    if wait is None or wait.why not in DRIES:
        return ZERO
    own = step.operation.wait.least if step.operation.wait else ZERO
    dry = max(own, finish.recoat if finish and finish.recoat else ZERO)
    return min(wait.least, dry) if dry else wait.least


def shorter_than_label(book: Book, route: Route, step: Step) -> timedelta | None:
    """How long a tray rests after a step where the route says less than the finish's label; None where it does not."""
    wait, own = wait_after(book, route, step), step.operation.wait
    if wait is None or not step.last_pass or (own is not None and own.least >= wait.least):
        return None
    return wait.least
