"""Made-up shops by seed, each meant to be held by one thing: hands, a machine, a shared service, a rack with few places, or a
long wait. What really holds one says ``truth``, not the intention.

They have three to six operations, one to three people, a machine that must be watched and one that need not be, an extraction
that both may share, a rack, two or three rooms, and days or evenings.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import exp
from random import Random

from tests.simulated.world import Bench, Hours, Somebody, TrueTime, Work, World

ALL_DAYS = (0, 1, 2, 3, 4, 5, 6)
DAYTIME = (Hours(ALL_DAYS, 8 * 60, 20 * 60),)
EVENINGS = (Hours((0, 1, 2, 3, 4), 17 * 60, 22 * 60), Hours((5, 6), 9 * 60, 17 * 60))
# As the estimates take them to be where nobody has measured: standard deviations of the logarithm.
BY_HAND, BY_SESSION, BY_MACHINE, GUESSED = 0.25, 0.25, 0.03, 0.25


@dataclass(frozen=True)
class Meant:
    """What makes one thing short: minutes of hand work a piece, of both machines, of drying, places on the rack, and how many
    people there may be."""

    by: tuple[str, str]
    hand: float = 0.45
    cut: float = 14.0
    profile: float = 0.0
    dry: tuple[float, float] = (60, 90)
    places: int = 30
    people: tuple[int, ...] = (2,)
    trays: float = 1.0


MEANT: Sequence[Meant] = (
    Meant(("hands", "ann"), hand=1.6, people=(1,)),
    Meant(("station", "cnc"), cut=42, people=(1, 2)),
    Meant(("service", "extraction"), hand=0.35, cut=17, profile=17, people=(2, 3)),
    Meant(("service", "rack"), hand=0.6, dry=(150, 260), places=2, people=(1, 2)),
    Meant(("station", "moulder"), profile=40, people=(2, 3)),
    Meant(("wait", "oil"), hand=0.3, cut=8, dry=(300, 400), people=(2,), trays=0.5),
)


def shops(count: int, seed: int = 0, trays: tuple[int, int] = (8, 20)) -> Iterator[World]:
    """So many shops; the same seeds make the same."""
    return (shop(one, trays) for one in range(seed, seed + count))


def shop(seed: int, trays: tuple[int, int] = (8, 20), session: float = 0.1) -> World:
    """One shop, meant to be held as ``MEANT[seed % 6]`` says. ``session`` is how much hand work varies from session to session."""
    chance = Random(f"simulated {seed}")
    meant = MEANT[seed % len(MEANT)]
    works = [guessed(work, chance) for work in _works(meant, chance, session)]
    hours = EVENINGS if meant.by[0] in ("hands", "station") and chance.random() < 0.4 else DAYTIME
    people = tuple(Somebody(key, hours) for key in ("ann", "ben", "cleo")[: chance.choice(meant.people)])
    return World(
        f"shop {seed}",
        tuple(works),
        _stations({work.station for work in works}, chance),
        people,
        {"extraction": 1, "rack": meant.places},
        walk=chance.choice((0.5, 1.0, 2.0)),
        trays=max(3, round(meant.trays * chance.randint(*trays))),
        a_tray=chance.choice((4, 5, 6)),
        a_board=chance.choice((2, 3)),
        designed=meant.by,
    )


def _works(meant: Meant, chance: Random, session: float) -> Iterator[Work]:
    def hands(minutes: float) -> TrueTime:
        return TrueTime(minutes * chance.uniform(0.8, 1.25), BY_HAND, session)

    def machine(minutes: float) -> TrueTime:
        return TrueTime(minutes * chance.uniform(0.9, 1.1), BY_MACHINE, BY_MACHINE)

    load = {"loading": hands(2), "unloading": hands(1)}
    extraction = ("extraction",)
    yield Work("cut", "cnc", {**load, "setup": hands(5), "machine": machine(meant.cut)}, attendance="watched", services=extraction)  # fmt: skip
    if chance.random() < 0.7:
        yield Work("clean", "bench", {"hand": hands(meant.hand)})
    if chance.random() < 0.7:
        yield Work("sand", "sander", {"setup": hands(1), "hand": hands(1.3 * meant.hand)})
    if meant.profile:
        # The second machine shares the hose with the first, or has one for itself and is slow.
        shared = extraction if meant.by[0] == "service" else ()
        yield Work("profile", "moulder", {**load, "machine": machine(meant.profile)}, attendance="none", services=shared)  # fmt: skip
    yield Work("oil", "finishing", {"hand": hands(0.5 * meant.hand)}, wait=round(chance.uniform(*meant.dry)), holds="rack")  # fmt: skip
    yield Work("hooks", "bench", {"setup": hands(1), "hand": hands(meant.hand)})


def _stations(there: set[str], chance: Random) -> Mapping[str, Bench]:
    known = {
        "cnc": Bench("cnc", "shop", tuple(key for key in ("bench", "sander", "moulder") if key in there)),
        "bench": Bench("bench", "shop"),
        "sander": Bench("sander", "shop"),
        "moulder": Bench("other machine", chance.choice(("shop", "shed"))),
        "finishing": Bench("finishing", "corner"),
    }
    return {key: bench for key, bench in known.items() if key in there}


def guessed(work: Work, chance: Random, spread: float = GUESSED) -> Work:
    """The same with guesses as far off as guesses usually are: their errors are lognormal, and right on average."""
    guesses = {kind: known.mean / exp(spread * chance.gauss() - spread**2 / 2) for kind, known in work.times.items()}
    return Work(**{**vars(work), "guesses": guesses})
