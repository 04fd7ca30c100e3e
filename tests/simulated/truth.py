"""The truth of a made-up shop: what a relief or a change really moves its finish by, over many goes of luck.

The luck of a go is the same with and without the change, by name (``luck``), so that few goes tell small differences.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import permutations
from statistics import fmean, stdev

from tests.simulated.luck import Luck
from tests.simulated.working import worked
from tests.simulated.world import Hours, TrueTime, Work, World

FIFTH = 0.2
# Of what moves a finish most, in minutes, and how many times as much hours must move it.
TIE, LITTLE, HOURS_MORE = 0.9, 2.0, 2
NO_END = 1000
What = tuple[str, str]
Changed = Callable[[World], World]


@dataclass(frozen=True)
class Moved:
    """By how many minutes a change moves the finish earlier on average, and the standard error of that."""

    earlier: float
    error: float


def moved(world: World, changes: Mapping[What, Changed], goes: Iterable[int]) -> dict[What, Moved]:
    """What each change moves the finish by, over the same goes."""
    earlier: dict[What, list[float]] = {key: [] for key in changes}
    for seed in goes:
        luck = Luck(seed)
        was = worked(world, luck).finished
        for key, change in changes.items():
            earlier[key].append(was - worked(change(world), luck).finished)
    return {key: Moved(fmean(found), _error(found)) for key, found in earlier.items()}


def _error(found: Sequence[float]) -> float:
    return stdev(found) / len(found) ** 0.5 if len(found) > 1 else float("inf")


def reliefs(world: World) -> dict[What, Changed]:
    """Everything that may hold a shop, with what relieves it by a fifth: four fifths of its time are left, and hours are so
    much longer that each has four fifths left to do. Of a service there is no end: few places have no fifth."""
    found: dict[What, Changed] = {}
    for somebody in world.people:
        found["hands", somebody.key] = lambda world, key=somebody.key: quicker_hands(world, key)
    for station in world.stations:
        if any(work.station == station and work.has_machine for work in world.works):
            found["station", station] = lambda world, key=station: quicker_machine(world, key)
    for service in world.services:
        found["service", service] = lambda world, key=service: more_of(world, key, NO_END)
    for work in world.works:
        if work.wait:
            found["wait", work.key] = lambda world, key=work.key: shorter_wait(world, key)
    return found | {("walking", ""): shorter_walks, ("hours", ""): longer_hours}


def is_right(said: What | None, found: Mapping[What, Moved]) -> bool:
    """Whether what was said to hold a shop does. A tie is what moves the finish nine tenths of what the most does, or less by
    no more than luck makes. All work goes through hours: they hold a shop where they move it twice as much as anything else."""
    most = max((key for key in found if key[0] != "hours"), key=lambda key: found[key].earlier)
    best, hours = found[most], found["hours", ""]
    if said is None:
        return best.earlier < LITTLE
    if said[0] == "hours":
        return hours.earlier > TIE * HOURS_MORE * best.earlier
    short = max((1 - TIE) * best.earlier, 2 * (best.error + found[said].error), LITTLE)
    return found[said].earlier >= best.earlier - short and TIE * hours.earlier <= HOURS_MORE * best.earlier


def quicker_hands(world: World, key: str) -> World:
    """One person's hands take four fifths of what they take."""
    return replace(
        world,
        people=tuple(replace(one, pace=one.pace * (1 - FIFTH)) if one.key == key else one for one in world.people),
    )


def quicker_machine(world: World, station: str) -> World:
    """A machine's time is four fifths of what it is."""
    works = (_times(work, 1 - FIFTH, ("machine",)) if work.station == station else work for work in world.works)
    return replace(world, works=tuple(works))


def more_of(world: World, service: str, more: int) -> World:
    return replace(world, services={**world.services, service: world.services[service] + more})


def shorter_wait(world: World, key: str) -> World:
    return world.with_work(key, wait=world.work(key).wait * (1 - FIFTH))


def shorter_walks(world: World) -> World:
    return replace(world, walk=world.walk * (1 - FIFTH))


def longer_hours(world: World) -> World:
    """Everybody stays a quarter longer each session: four fifths are left to do in each hour."""
    people = (
        replace(
            one,
            hours=tuple(
                Hours(
                    hours.days,
                    hours.opens,
                    min(24 * 60 - 1, hours.closes + FIFTH / (1 - FIFTH) * (hours.closes - hours.opens)),
                )
                for hours in one.hours
            ),
        )
        for one in world.people
    )
    return replace(world, people=tuple(people))


def quicker(world: World, operation: str, per_cent: int, kinds: Sequence[str] = ()) -> World:
    """Time elements of an operation, or all of them, take so many per cent of what they take."""
    works = (
        _times(work, per_cent / 100, kinds or tuple(work.times)) if work.key == operation else work
        for work in world.works
    )
    return replace(world, works=tuple(works))


def one_more(world: World, like: str) -> World:
    """One person more, with the hours of another."""
    known = next(one for one in world.people if one.key == like)
    return replace(world, people=(*world.people, replace(known, key="one more")))


def added_hours(world: World, key: str, opens: float, closes: float) -> World:
    """Somebody is there from then to then as well."""
    people = (replace(one, added=(*one.added, (opens, closes))) if one.key == key else one for one in world.people)
    return replace(world, people=tuple(people))


def _times(work: Work, share: float, kinds: Sequence[str]) -> Work:
    times: dict[str, TrueTime] = {
        kind: replace(known, mean=known.mean * share) if kind in kinds else known for kind, known in work.times.items()
    }
    return replace(work, times=times)


def clear_pairs(found: Mapping[str, Moved]) -> Iterator[tuple[str, str]]:
    """(more, less): two changes that really differ, by more than luck makes and by more than a tie."""
    for more, less in permutations(found, 2):
        one, other = found[more], found[less]
        if one.earlier - other.earlier > max((1 - TIE) * one.earlier, 2 * (one.error + other.error), LITTLE):
            yield more, less
