"""What a forecast outside of the planner's child is made with: this computer's cores, and the spread that was learned."""

import os
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager

from runboard.floor.planning.plans import Planned
from runboard.plan.estimates import spread_in
from runboard.plan.schedule.rule.rule import Cores
from runboard.plan.schedule.told.forecast import Spread


@contextmanager
def all_cores() -> Iterator[Cores]:
    """This computer's cores, as threads: the compiled rule lets them work at the same time."""
    many = os.cpu_count() or 1
    with ThreadPoolExecutor(many) as threads:
        yield Cores(many, threads.map)


def spread_of(planned: Planned) -> Spread:
    """The spread of each time element as it was learned."""
    return spread_in(planned.answer.state, planned.estimates)
