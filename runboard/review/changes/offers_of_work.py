"""Offers about times, setups, walks and waits."""

from collections.abc import Iterator
from datetime import timedelta
from itertools import pairwise
from statistics import quantiles

from runboard.plan.change import MOST_PIECES, Change, OneVisit, Rested, Swapped, TraySize
from runboard.plan.changed_route import can_be_one_visit, is_bound, label_after
from runboard.review.changes.nouns import NOUGHT
from runboard.review.changes.seen import Offer, Seen, has_jig, idea_of, less_of, times_of
from runboard.review.happened.nouns import ProcessLine
from runboard.review.measured.study import ElementStudy
from runboard.review.time_study import loads_after_a_change
from runboard.run.fold.route import Step
from runboard.shop.product import Operation

# So much longer than its program or guess says a machine's time is far above it; so wide (deviation by mean) is an element
# that no one method is kept to; from so many observations on.
FAR_ABOVE, WIDE, LEAST_SEEN = 1.25, 0.4, 4
# A jig is tried as a fifth less time.
A_FIFTH_LESS = 80

# times


def machine_long(seen: Seen) -> Iterator[Offer]:
    for one in seen.study.elements:
        if (
            one.kind == "machine"
            and one.n >= LEAST_SEEN
            and one.median
            and one.guess
            and one.median > one.guess * FAR_ABOVE
        ):
            change = less_of(seen, one, 100 * one.guess / one.median)
            facts = {"step": one.step_name, "median": one.median, "guess": one.guess}
            if change is not None:
                yield (one.median - one.guess) * times_of(one), idea_of(change, "machine long", facts)


def wide(seen: Seen) -> Iterator[Offer]:
    """One method for everybody and every piece: what the best quarter of the observations took."""
    for one in seen.study.elements:
        if one.n < LEAST_SEEN or not one.mean or not one.deviation or one.deviation / one.mean < WIDE:
            continue
        seconds = [length.total_seconds() for length in one.lengths]
        low, mid, high = (timedelta(seconds=each) for each in quantiles(seconds, n=4, method="inclusive"))
        change = less_of(seen, one, 100 * low / one.mean)
        if change is not None:
            facts = {"step": one.step_name, "kind": one.kind, "low": low, "median": mid, "high": high}
            yield (one.mean - low) * times_of(one), idea_of(change, "wide", facts)


def furthest(seen: Seen) -> Iterator[Offer]:
    """The element of hands that took most beyond its guess: a jig."""
    hands = [one for one in seen.study.elements if one.kind != "machine" and one.taken_total is not None]
    late = [one for one in hands if (one.taken_total or NOUGHT) > one.guessed_total]
    for one in sorted(late, key=lambda one: (one.taken_total or NOUGHT) - one.guessed_total, reverse=True)[:1]:
        change = less_of(seen, one, A_FIFTH_LESS)
        taken = one.taken_total or NOUGHT
        if change is not None:
            is_with_jig = has_jig(seen.steps[one.step].operation)
            facts = {"step": one.step_name, "kind": one.kind, "taken": taken, "guess": one.guessed_total}
            facts |= {"jig": "yes" if is_with_jig else "no"}
            yield taken / 5, idea_of(change, "furthest", facts)


def station_holds(seen: Seen) -> Iterator[Offer]:
    """What takes most time at the station that held the run: a fifth less."""
    kind, station = seen.most
    here = [one for one in seen.study.elements if _station_of(seen, one) == station and one.taken_total is not None]
    if kind == "station" and here:
        most = max(here, key=lambda one: one.taken_total or NOUGHT)
        change = less_of(seen, most, A_FIFTH_LESS)
        if change is not None:
            facts = {"station": seen.station_name(station), "step": most.step_name, "kind": most.kind}
            yield (most.taken_total or NOUGHT) / 5, idea_of(change, "station holds", facts)


def _station_of(seen: Seen, one: ElementStudy) -> str:
    step = seen.steps.get(one.step)
    return step.operation.station if step is not None else ""


# setups, walks, waits


def setups(seen: Seen) -> Iterator[Offer]:
    """A station was set up more often than it has steps: operations alternate there."""
    found = list(_setups_of(seen))
    for station in dict.fromkeys(step.operation.station for step, _ in found):
        here = [(step.key, length) for step, length in found if step.operation.station == station]
        least, length = len({key for key, _ in here}), sum((length for _, length in here), NOUGHT)
        if len(here) > least > 1:
            facts = {"station": seen.station_name(station), "setups": len(here), "least": least, "length": length}
            for change in (*_fewer_visits(seen, station), *_larger_trays(seen)):
                yield length * (len(here) - least) / len(here), idea_of(change, "setups", facts)


def _setups_of(seen: Seen) -> Iterator[tuple[Step, timedelta]]:
    """For each load that began with a setup how long that took: as it was measured, else by the route (of hand work nobody
    presses it apart)."""
    measured = {one.load: one.length for one in seen.past.elements if one.kind == "setup" and one.length}
    run = seen.past.run
    for load in loads_after_a_change(run):
        known = run.past.get(load) or run.loads.get(load)
        step = run.step_of(known) if known is not None else None
        if step is not None and step.pass_.setup:
            yield step, measured.get(load) or step.pass_.setup


def walks(seen: Seen) -> Iterator[Offer]:
    """Most was walked to one step: one visit, or another order in which the rooms change less often."""
    lines = [line for line in seen.happened.process if line.walking]
    length = sum((line.walking for line in lines), NOUGHT)
    if lines:
        most: ProcessLine = max(lines, key=lambda line: line.walking)
        facts = {"step": most.step_name, "walks": sum(line.walks for line in lines), "length": length}
        for change in (*_fewer_visits(seen), *_fewer_rooms(seen), *_larger_trays(seen)):
            yield length / 2, idea_of(change, "walks", facts)


def _fewer_visits(seen: Seen, station: str = "") -> Iterator[Change]:
    """Neighbours that can be one visit: both at a station, or without one those in two rooms."""
    book = seen.past.book
    for one, other in pairwise(seen.operations.values()):
        is_meant = station == one.station == other.station if station else _changes_of_room(seen, [one, other]) > 0
        if is_meant and can_be_one_visit(book, one, other):
            yield OneVisit(seen.run, one.key)


def _fewer_rooms(seen: Seen) -> Iterator[Change]:
    some = list(seen.operations.values())
    for at, pair in enumerate(pairwise(some)):
        turned = [*some[:at], pair[1], pair[0], *some[at + 2 :]]
        if not is_bound(pair) and _changes_of_room(seen, turned) < _changes_of_room(seen, some):
            yield Swapped(seen.run, pair[0].key)


def _changes_of_room(seen: Seen, operations: list[Operation]) -> int:
    stations = [seen.past.book.station(one.station) for one in operations]
    return sum(one.room != other.room for one, other in pairwise(one for one in stations if one is not None))


def _larger_trays(seen: Seen) -> Iterator[Change]:
    most = max((tray.started for tray in seen.past.run.trays.values()), default=0)
    if 0 < 2 * most <= MOST_PIECES and len(seen.past.run.trays) > 1:
        yield TraySize(seen.run, 2 * most)


def wait_long(seen: Seen) -> Iterator[Offer]:
    product, book = seen.past.run.route.product, seen.past.book
    for one in seen.operations.values():
        label = label_after(product, book, one)
        if one.wait is not None and label is not None and one.wait.least > label:
            change = Rested(seen.run, one.key, -(-label // timedelta(minutes=1)))
            facts = {"step": one.name, "least": one.wait.least, "label": label}
            yield one.wait.least - label, idea_of(change, "wait long", facts)
