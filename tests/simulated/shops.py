"""Made-up shops by seed, each meant to be held by one thing: hands, a machine, a shared service, a rack with few places, or a
long wait. What really holds one says ``truth``, not the intention."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import exp
from random import Random

from tests.simulated.world import Bench, Hours, Somebody, TrueTime, Work, World

DAYTIME = (Hours((0, 1, 2, 3, 4, 5, 6), 8 * 60, 20 * 60),)
EVENINGS = (Hours((0, 1, 2, 3, 4), 17 * 60, 22 * 60), Hours((5, 6), 9 * 60, 17 * 60))
MEANT = ("hands", "machine", "service", "rack", "other machine")
# As the estimates take them to be where nobody has measured: standard deviations of the logarithm.
BY_HAND, BY_SESSION, BY_MACHINE, GUESSED = 0.25, 0.25, 0.03, 0.25


def shops(count: int, seed: int = 0, trays: tuple[int, int] = (8, 20)) -> Iterator[World]:
    """So many shops; the same seeds make the same."""
    return (shop(one, trays) for one in range(seed, seed + count))


def shop(seed: int, trays: tuple[int, int] = (8, 20), session: float = 0.1) -> World:
    """One shop, its machines and times drawn so that ``MEANT[seed % 5]`` is short."""
    chance = Random(f"simulated {seed}")
    meant = MEANT[seed % len(MEANT)]
    a_tray = chance.choice((4, 5, 6))
    cut = chance.uniform(14, 20)
    hand = {"hands": 1.6, "service": 0.35, "machine": 0.45, "rack": 0.6, "other machine": 0.45}[meant]
    people = 1 if meant == "hands" else 2

    def by_hand(minutes: float) -> TrueTime:
        return TrueTime(minutes * chance.uniform(0.8, 1.25), BY_HAND, session)

    def machine(minutes: float) -> TrueTime:
        return TrueTime(minutes, BY_MACHINE, BY_MACHINE)

    load = {"loading": by_hand(2), "unloading": by_hand(1)}
    works = [
        Work("cut", "cnc", {**load, "setup": by_hand(5), "machine": machine(cut * (2.4 if meant == "machine" else 0.8))},
             attendance="watched", services=("extraction",)),
        Work("clean", "bench", {"hand": by_hand(hand)}),
        Work("sand", "sander", {"setup": by_hand(1), "hand": by_hand(1.3 * hand)}),
    ]  # fmt: skip
    if meant in ("service", "other machine"):
        # The second machine shares the hose with the first, or has one for itself and is slow.
        length = cut * (1.0 if meant == "service" else 2.4)
        works.append(
            Work("profile", "moulder", {**load, "machine": machine(length)}, attendance="none",
                 services=("extraction",) if meant == "service" else ())
        )  # fmt: skip
    dry = 240.0 if meant == "rack" else chance.choice((60.0, 90.0))
    places = 2 if meant == "rack" else 30
    works.append(Work("oil", "finishing", {"hand": by_hand(0.5 * hand)}, wait=dry, holds="rack"))
    works.append(Work("hooks", "bench", {"setup": by_hand(1), "hand": by_hand(hand)}))
    world = World(
        f"shop {seed}",
        tuple(guessed(work, chance) for work in works),
        _stations(works),
        tuple(Somebody(key, DAYTIME if meant != "hands" or chance.random() < 0.5 else EVENINGS) for key in ("ann", "ben")[:people]),
        {"extraction": 1, "rack": places},
        trays=chance.randint(*trays),
        a_tray=a_tray,
    )  # fmt: skip
    designed = {
        "hands": ("hands", "ann"),
        "machine": ("station", "cnc"),
        "service": ("service", "extraction"),
        "rack": ("service", "rack"),
        "other machine": ("station", "moulder"),
    }[meant]
    return replace(world, designed=designed)


def _stations(works: list[Work]) -> Mapping[str, Bench]:
    there = {work.station for work in works}
    known = {
        "cnc": Bench("cnc", "shop", tuple(key for key in ("bench", "sander", "moulder") if key in there)),
        "bench": Bench("bench", "shop"),
        "sander": Bench("sander", "shop"),
        "moulder": Bench("other machine", "shop"),
        "finishing": Bench("finishing", "corner"),
    }
    return {key: bench for key, bench in known.items() if key in there}


def guessed(work: Work, chance: Random, spread: float = GUESSED) -> Work:
    """The same with guesses as far off as guesses usually are: their errors are lognormal, and right on average."""
    guesses = {kind: known.mean / exp(spread * chance.gauss() - spread**2 / 2) for kind, known in work.times.items()}
    return replace(work, guesses=guesses)
