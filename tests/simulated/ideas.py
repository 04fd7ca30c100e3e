"""Five ideas for a made-up shop: what a review is asked, and what is really done to the shop."""

from collections.abc import Mapping
from datetime import time
from random import Random

from runboard.plan.change import Capacity, Change, HoursAdded, OnePersonMore, Times
from tests.simulated.truth import Changed, added_hours, more_of, one_more, quicker
from tests.simulated.working import sessions
from tests.simulated.world import DAY, World, moment

ANN = "ann"


def five_ideas(world: World, run: str = "r1") -> Mapping[str, tuple[Change, Changed]]:
    """By name the change that a review tries and what it does to the shop: a machine and some hand work made quicker, one more
    of a service, somebody more, and some hours more on the first day."""
    chance = Random(world.name)
    machine = chance.choice([work.key for work in world.works if work.has_machine])
    by_hand = chance.choice([work.key for work in world.works if not work.has_machine])
    service = chance.choice([*world.services]) if world.designed[0] != "service" else world.designed[1]
    opens, closes = _more_hours(world)
    day = moment(opens).date()
    return {
        "machine": (Times(run, machine, "machine", 75), lambda world: quicker(world, machine, 75, ("machine",))),
        "by hand": (Times(run, by_hand, "", 70), lambda world: quicker(world, by_hand, 70)),
        "service": (
            Capacity(service, world.services[service] + 1),
            lambda world: more_of(world, service, 1),
        ),
        "somebody": (OnePersonMore(ANN), lambda world: one_more(world, ANN)),
        "hours": (
            HoursAdded(ANN, day, _clock(opens), _clock(closes)),
            lambda world: added_hours(world, ANN, opens, closes),
        ),
    }


def _more_hours(world: World) -> tuple[float, float]:
    """Up to three hours after the first day's closing."""
    _, closes = next(sessions(world.people[0], 0.0))
    return closes, min(DAY - 1, closes + 3 * 60)


def _clock(at: float) -> time:
    return time(int(at % DAY) // 60, int(at) % 60)
