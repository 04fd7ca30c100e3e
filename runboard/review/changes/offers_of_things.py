"""Offers about what is shared, about scrap that gathers, and about who is there."""

from collections.abc import Iterator, Mapping
from datetime import timedelta
from zoneinfo import ZoneInfo

from runboard.plan.change import MOST_CAPACITY, Capacity, Change, Helper, HoursAdded, Instead, Means
from runboard.plan.good_rate import good_rate_from_counts
from runboard.review.changes.gathering import Gathered, gathered
from runboard.review.changes.nouns import NOUGHT
from runboard.review.changes.seen import QUARTER_HOUR, SMALL, Offer, Seen, idea_of
from runboard.review.happened.why import SERVICE_TAKEN
from runboard.run.fold.route import Step
from runboard.run.rules.services import drawn_by

_MEANS: Mapping[str, Means] = {"wood": "wood", "board": "board", "cutter": "tool", "hour": "hour"}

# what is shared


def service_taken(seen: Seen) -> Iterator[Offer]:
    """A station waited for want of a shared service, or trays did."""
    waited: dict[str, timedelta] = {}
    for part in seen.happened.day:
        if part.row == "station" and part.why == SERVICE_TAKEN:
            for service in _services_of(seen, part.step, part.key):
                waited[service] = waited.get(service, NOUGHT) + part.length
    for service, length in waited.items():
        for change in _more_of(seen, service):
            yield length, idea_of(change, "service taken", {"service": seen.service_name(service), "waited": length})


def service_holds(seen: Seen) -> Iterator[Offer]:
    kind, service = seen.most
    if kind == "service" and seen.held is not None:
        for change in _more_of(seen, service):
            cost = seen.held.cost or SMALL
            yield cost, idea_of(change, "service holds", {"service": seen.service_name(service), "held": cost})


def _services_of(seen: Seen, step: str, station: str) -> set[str]:
    known = seen.steps.get(step)
    wait = known.operation.wait if known is not None else None
    return {*drawn_by(known, seen.past.book.station(station)), *(wait.holds if wait is not None else ())}


def _more_of(seen: Seen, service: str) -> Iterator[Change]:
    """One load's worth more of a service; of one that holds what waits, such as places, three loads' worth too."""
    now = seen.capacity(service)
    if now is None:
        return
    holds = [one.wait.holds[service] for one in seen.operations.values() if one.wait and service in one.wait.holds]
    a_load = max(holds, default=1)
    for loads in (1, 3) if holds else (1,):
        if now + loads * a_load <= MOST_CAPACITY:
            yield Capacity(service, now + loads * a_load)


# scrap


def scrap_gathers(seen: Seen) -> Iterator[Offer]:
    """The first of each step: what gathers at a board gathers at its wood and its hour too."""
    by_step: dict[str, Gathered] = {}
    for one in gathered(seen.past):
        by_step.setdefault(one.step, one)
    each = seen.happened.a_good_piece or QUARTER_HOUR
    for one in by_step.values():
        step = seen.steps.get(one.step)
        if step is None:
            continue
        name = _best_other_wood(seen, one) if one.by == "wood" else ""
        change = Instead(seen.run, step.operation.key, _MEANS[one.by], name, 100, _rate_of_others(one, step))
        facts = {
            "by": one.by,
            "which": one.which,
            "step": step.name,
            "lost": one.lost,
            "of": one.of,
            "others_lost": one.others_lost,
            "others": one.others,
            "in_a_hundred": max(1, round(100 * one.chance)),
        }
        more = one.lost - one.of * one.others_lost / one.others
        yield each * more, idea_of(change, "scrap gathers", facts)


def _rate_of_others(one: Gathered, step: Step) -> float:
    """The good rate that the other pieces speak for, beginning at the guess."""
    good = one.others - one.others_lost
    return round(good_rate_from_counts(good, one.others_lost, step.operation.good_rate).rate, 3)


def _best_other_wood(seen: Seen, found: Gathered) -> str:
    """Where there is but one other wood: that."""
    run = seen.past.run
    woods = {tray.wood or run.wood for tray in run.trays.values()} - {found.which, ""}
    return woods.pop() if len(woods) == 1 else ""


# people


def hands_hold(seen: Seen) -> Iterator[Offer]:
    """Hands held the run: a helper for half of what the operation with most hands took, from when it was first begun."""
    kind, who = seen.most
    bars = [bar for bar in seen.happened.bars if bar.hands_taken and bar.operation in seen.operations]
    person = seen.past.book.person(who)
    if kind != "hands" or not bars or person is None or not person.hours:
        return
    most = max(bars, key=lambda bar: bar.hands_taken or NOUGHT)
    half = max(QUARTER_HOUR, round((most.hands_taken or NOUGHT) / 2 / QUARTER_HOUR) * QUARTER_HOUR)
    steps = {key for key, step in seen.steps.items() if step.operation.key == most.operation}
    began = [one.began_at for one in seen.past.elements if one.step in steps and one.began_at is not None]
    change = Helper(seen.run, most.operation, who, half // timedelta(minutes=1), min(began, default=None))
    yield half, idea_of(change, "hands hold", {"person": person.name, "step": most.name, "hands": most.hands_taken})


def nobody_there(seen: Seen) -> Iterator[Offer]:
    """Nobody was there while the run could have gone on: two hours more before the longest such time was over."""
    held = seen.held.stretches if seen.held is not None else ()
    empty = [one for one in held if one.what[0] == "hours"]
    people = [one for one in seen.past.book.people if one.hours and not one.removed]
    if not empty or not people:
        return
    longest = max(empty, key=lambda one: one.ended_at - one.began_at)
    zone = ZoneInfo(seen.past.book.time_zone)
    closes = longest.ended_at.astimezone(zone)
    opens = max(longest.began_at.astimezone(zone), closes - timedelta(hours=2))
    if opens.date() != closes.date() or opens >= closes:
        return
    clock = [moment.time().replace(second=0, microsecond=0) for moment in (opens, closes)]
    change = HoursAdded(people[0].key, closes.date(), clock[0], clock[1])
    facts = {"person": people[0].name, "length": longest.ended_at - longest.began_at}
    yield closes - opens, idea_of(change, "nobody there", facts)
