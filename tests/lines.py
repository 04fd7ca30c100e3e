"""One person with alike machines, and a line of stations, as problems of a planner. One tick is one unit of time."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from runboard.plan.schedule.problem.nouns import FAR, Block, Lag, Problem, Stretch, Worker
from tests.job_shops import block, flow_shop, shop


def in_given_order(jobs: list[tuple[int, int]]) -> Problem:
    """Two machines in a row, each of which takes the jobs as they come."""
    problem = flow_shop(jobs)
    blocks = tuple(
        replace(one, lags=(*one.lags, Lag(one.index - 2))) if one.index >= 2 else one for one in problem.blocks
    )
    return replace(problem, blocks=blocks)


def person_and_machines(concurrent: int, independent: int, machine: int, machines: int, rounds: int) -> Problem:
    """Each machine is loaded ``rounds`` times: so long takes both, so long it runs alone; then its piece is looked over at
    a place beside it. All by one person who is always there."""
    blocks: list[Block] = []
    for at in range(machines):
        for number in range(rounds):
            tray = f"{at}.{number}"
            both = (Stretch("loading", 0, concurrent, "hands-on"), Stretch("machine", concurrent, machine, "none"))
            before = (len(blocks) - (2 if independent else 1),) if number else ()
            blocks.append(_by_hand(block(len(blocks), at, 1, before), both, tray))
            if independent:
                looked = (Stretch("hand", 0, independent, "hands-on"),)
                blocks.append(_by_hand(block(len(blocks), machines + at, 1, (len(blocks) - 1,)), looked, tray))
    return replace(shop(blocks, 2 * machines), people=(Worker("ann", "Ann", ((0, FAR),)),))


def _by_hand(one: Block, stretches: tuple[Stretch, ...], tray: str) -> Block:
    return replace(one, stretches=stretches, people=(0,), step=f"s{one.station}", trays=(tray,))


def line(tasks: Mapping[str, int], after: Mapping[str, str], stations: Sequence[str], units: int) -> Problem:
    """So many units, each with every task after those that it waits for; each task at the station that lists it."""
    blocks: list[Block] = []
    for unit in range(units):
        first = unit * len(tasks)
        for at, (task, length) in enumerate(tasks.items()):
            station = next(number for number, some in enumerate(stations) if task in some)
            before = tuple(first + list(tasks).index(one) for one in after.get(task, ""))
            made = block(first + at, station, length, before)
            blocks.append(replace(made, step=task, trays=(str(unit),), last=at == len(tasks) - 1))
    return shop(blocks, len(stations))
