"""An alert that nobody answers climbs: all phones, then louder, then outside the building, then the shop's computer.

A rule over time alone: the stage follows from when it fell due, so it is the same after a restart and on every page. A
look at a watched machine is asked of its watcher alone at first, while their page hears it, and of all once it is missed.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.run.calls.dues import MISSED_AFTER, Due
from runboard.run.fold.state import ShopState

PHONES, LOUDER, OUTSIDE, COMPUTER = range(4)
# How far each kind may climb. What can wait for the morning wakes nobody at night; a machine and a wait's latest end can not.
FARTHEST: Mapping[str, int] = {
    "machine end": COMPUTER,
    "looks ended": COMPUTER,
    "watch check": COMPUTER,
    "nobody near": COMPUTER,
    "call": OUTSIDE,
    "care start": LOUDER,
    "care end": COMPUTER,
    "care again": COMPUTER,
    "care morning": OUTSIDE,
    "wait latest": COMPUTER,
    "wait over": OUTSIDE,
    "session end": LOUDER,
    "hold over": PHONES,
    "supply due": PHONES,
    "station back": PHONES,
}
# A missed look at a watched machine climbs in a third of the time.
HURRY: Mapping[str, int] = {"watch check": 3, "nobody near": 3}
SEND_AGAIN_EVERY = timedelta(minutes=15)
MOST_SENT = 4
# The computer sounds often at first; whoever is away all day is not waited for every few seconds.
SOUND_EVERY, OFTEN_FOR, SOUND_LATER_EVERY = timedelta(seconds=15), timedelta(minutes=30), timedelta(minutes=10)


@dataclass(frozen=True)
class Steps:
    """After how long without an answer each stage begins; None where it never does."""

    louder: timedelta | None = timedelta(minutes=1)
    outside: timedelta | None = timedelta(minutes=3)
    computer: timedelta | None = timedelta(minutes=6)


def subject_kind(due: Due) -> str:
    """What it is about: an alert that asks again is as urgent as the one that it asks about."""
    return due.id.split("|")[1] if due.kind == "ask again" else due.kind


def stages(due: Due, steps: Steps) -> dict[int, datetime]:
    """When each stage of this alert begins, if nobody answers."""
    kind = subject_kind(due)
    hurry, farthest = HURRY.get(kind, 1), FARTHEST.get(kind, LOUDER)
    after = {PHONES: timedelta(0), LOUDER: steps.louder, OUTSIDE: steps.outside, COMPUTER: steps.computer}
    found = {
        stage: due.due_at + wait / hurry for stage, wait in after.items() if wait is not None and stage <= farthest
    }
    if due.kind != "watch check":
        return found
    # Nobody outside hears of a look before all here do.
    all_asked = due.due_at + MISSED_AFTER
    return {stage: begins if stage < OUTSIDE else max(begins, all_asked) for stage, begins in found.items()}


def asked_first(state: ShopState, due: Due, listening: Collection[str]) -> str:
    """Whoever is asked alone until a look is missed: the machine's watcher, who is here, was last seen near it and has a
    page that may sound (``listening``). '' where everybody is asked at once, as about all else."""
    if due.kind != "watch check" or due.said:
        return ""
    load = state.runs[due.run].loads.get(due.load) if due.run in state.runs else None
    person = state.people.get(load.watcher) if load else None
    if load is None or person is None or person.came_at is None or person.away:
        return ""
    alone = load.alone_since is not None and load.alone_since <= due.due_at
    return load.watcher if not alone and load.watcher in listening else ""


def is_asked_of_all(due: Due, now: datetime) -> bool:
    """Whether the time is over in which one person alone may be asked."""
    return now >= due.due_at + MISSED_AFTER


def stage_of(due: Due, steps: Steps, now: datetime) -> int:
    """The highest stage that has begun by ``now``; PHONES before it is due too."""
    return max((stage for stage, begins in stages(due, steps).items() if begins <= now), default=PHONES)


def sendings(due: Due, steps: Steps, now: datetime) -> int:
    """How often it should have gone outside by ``now``: at once when that stage begins, then now and then."""
    begins = stages(due, steps).get(OUTSIDE)
    if begins is None or now < begins:
        return 0
    return min(MOST_SENT, 1 + (now - begins) // SEND_AGAIN_EVERY)


def sound_every(due: Due, steps: Steps, now: datetime) -> timedelta | None:
    """How often the shop's computer sounds for it now; None while it does not."""
    begins = stages(due, steps).get(COMPUTER)
    if begins is None or now < begins:
        return None
    return SOUND_EVERY if now - begins < OFTEN_FOR else SOUND_LATER_EVERY
