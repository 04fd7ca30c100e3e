"""Published job shops and a project as problems of a shop that asks nothing of people."""

from dataclasses import replace
from datetime import UTC, datetime

from runboard.plan.schedule.problem.nouns import FAR, Block, Draws, Lag, PlannedStation, Problem, Stretch, Worker

START = datetime(2026, 6, 1, tzinfo=UTC)
Rows = list[list[int]]

OPTIMA = {"ft06": 55, "la01": 666, "la02": 655, "la03": 597, "la04": 590, "la05": 593, "ft10": 930}

# (durations by job, machines by job)
JOB_SHOPS: dict[str, tuple[Rows, Rows]] = {
    "ft06": (
        [
            [1, 3, 6, 7, 3, 6],
            [8, 5, 10, 10, 10, 4],
            [5, 4, 8, 9, 1, 7],
            [5, 5, 5, 3, 8, 9],
            [9, 3, 5, 4, 3, 1],
            [3, 3, 9, 10, 4, 1],
        ],
        [
            [2, 0, 1, 3, 5, 4],
            [1, 2, 4, 5, 0, 3],
            [2, 3, 5, 0, 1, 4],
            [1, 0, 2, 3, 4, 5],
            [2, 1, 4, 5, 0, 3],
            [1, 3, 5, 0, 4, 2],
        ],
    ),
    "la01": (
        [
            [21, 53, 95, 55, 34],
            [21, 52, 16, 26, 71],
            [39, 98, 42, 31, 12],
            [77, 55, 79, 66, 77],
            [83, 34, 64, 19, 37],
            [54, 43, 79, 92, 62],
            [69, 77, 87, 87, 93],
            [38, 60, 41, 24, 83],
            [17, 49, 25, 44, 98],
            [77, 79, 43, 75, 96],
        ],
        [
            [1, 0, 4, 3, 2],
            [0, 3, 4, 2, 1],
            [3, 4, 1, 2, 0],
            [1, 0, 4, 2, 3],
            [0, 3, 2, 1, 4],
            [1, 2, 4, 0, 3],
            [3, 4, 1, 2, 0],
            [2, 0, 1, 3, 4],
            [3, 1, 4, 0, 2],
            [4, 3, 2, 1, 0],
        ],
    ),
    "la02": (
        [
            [20, 87, 31, 76, 17],
            [25, 32, 24, 18, 81],
            [72, 23, 28, 58, 99],
            [86, 76, 97, 45, 90],
            [27, 42, 48, 17, 46],
            [67, 98, 48, 27, 62],
            [28, 12, 19, 80, 50],
            [63, 94, 98, 50, 80],
            [14, 75, 50, 41, 55],
            [72, 18, 37, 79, 61],
        ],
        [
            [0, 3, 1, 4, 2],
            [4, 2, 0, 1, 3],
            [1, 2, 4, 0, 3],
            [2, 1, 4, 0, 3],
            [4, 0, 3, 2, 1],
            [1, 0, 4, 3, 2],
            [4, 1, 3, 0, 2],
            [1, 0, 2, 3, 4],
            [4, 0, 2, 1, 3],
            [4, 2, 1, 3, 0],
        ],
    ),
    "la03": (
        [
            [23, 45, 82, 84, 38],
            [21, 29, 18, 41, 50],
            [38, 54, 16, 52, 52],
            [37, 54, 74, 62, 57],
            [57, 81, 61, 68, 30],
            [81, 79, 89, 89, 11],
            [33, 20, 91, 20, 66],
            [24, 84, 32, 55, 8],
            [56, 7, 54, 64, 39],
            [40, 83, 19, 8, 7],
        ],
        [
            [1, 2, 0, 4, 3],
            [2, 1, 0, 4, 3],
            [2, 3, 4, 0, 1],
            [4, 0, 2, 1, 3],
            [4, 0, 1, 3, 2],
            [4, 0, 1, 2, 3],
            [3, 2, 0, 4, 1],
            [4, 1, 0, 2, 3],
            [4, 0, 3, 2, 1],
            [4, 1, 0, 2, 3],
        ],
    ),
    "la04": (
        [
            [12, 94, 92, 91, 7],
            [19, 11, 66, 21, 87],
            [14, 75, 13, 16, 20],
            [95, 66, 7, 7, 77],
            [45, 6, 89, 15, 34],
            [77, 20, 76, 88, 53],
            [74, 88, 52, 27, 9],
            [88, 69, 62, 98, 52],
            [61, 9, 62, 52, 90],
            [54, 5, 59, 15, 88],
        ],
        [
            [0, 2, 3, 4, 1],
            [1, 3, 4, 2, 0],
            [1, 0, 3, 4, 2],
            [2, 4, 0, 3, 1],
            [1, 3, 4, 0, 2],
            [3, 2, 0, 4, 1],
            [2, 1, 0, 3, 4],
            [1, 3, 0, 4, 2],
            [2, 4, 0, 1, 3],
            [2, 4, 3, 1, 0],
        ],
    ),
    "la05": (
        [
            [72, 87, 95, 66, 60],
            [5, 35, 48, 39, 54],
            [46, 20, 21, 97, 55],
            [59, 19, 46, 34, 37],
            [23, 73, 25, 24, 28],
            [28, 45, 5, 78, 83],
            [53, 71, 37, 29, 12],
            [12, 87, 33, 55, 38],
            [49, 83, 40, 48, 7],
            [65, 17, 90, 27, 23],
        ],
        [
            [1, 0, 4, 2, 3],
            [4, 3, 0, 2, 1],
            [1, 3, 2, 0, 4],
            [0, 3, 4, 1, 2],
            [4, 2, 3, 1, 0],
            [3, 0, 4, 1, 2],
            [0, 3, 1, 4, 2],
            [4, 2, 3, 1, 0],
            [2, 3, 1, 0, 4],
            [2, 3, 0, 4, 1],
        ],
    ),
    "ft10": (
        [
            [29, 78, 9, 36, 49, 11, 62, 56, 44, 21],
            [43, 90, 75, 11, 69, 28, 46, 46, 72, 30],
            [91, 85, 39, 74, 90, 10, 12, 89, 45, 33],
            [81, 95, 71, 99, 9, 52, 85, 98, 22, 43],
            [14, 6, 22, 61, 26, 69, 21, 49, 72, 53],
            [84, 2, 52, 95, 48, 72, 47, 65, 6, 25],
            [46, 37, 61, 13, 32, 21, 32, 89, 30, 55],
            [31, 86, 46, 74, 32, 88, 19, 48, 36, 79],
            [76, 69, 76, 51, 85, 11, 40, 89, 26, 74],
            [85, 13, 61, 7, 64, 76, 47, 52, 90, 45],
        ],
        [
            [0, 1, 2, 3, 4, 5, 6, 7, 8, 9],
            [0, 2, 4, 9, 3, 1, 6, 5, 7, 8],
            [1, 0, 3, 2, 8, 5, 7, 6, 9, 4],
            [1, 2, 0, 4, 6, 8, 7, 3, 9, 5],
            [2, 0, 1, 5, 3, 4, 8, 7, 9, 6],
            [2, 1, 5, 3, 8, 9, 0, 6, 4, 7],
            [1, 0, 3, 2, 6, 5, 9, 8, 7, 4],
            [2, 0, 1, 5, 4, 6, 8, 9, 7, 3],
            [0, 1, 3, 5, 2, 9, 6, 7, 4, 8],
            [1, 0, 2, 6, 8, 9, 5, 3, 4, 7],
        ],
    ),
}

# j301_1: durations, what each draws on the four resources, successors; numbered from 1.
CAPACITIES = (12, 13, 4, 12)
ACTIVITIES: dict[int, tuple[int, tuple[int, int, int, int], tuple[int, ...]]] = {
    1: (0, (0, 0, 0, 0), (2, 3, 4)),
    2: (8, (4, 0, 0, 0), (6, 11, 15)),
    3: (4, (10, 0, 0, 0), (7, 8, 13)),
    4: (6, (0, 0, 0, 3), (5, 9, 10)),
    5: (3, (3, 0, 0, 0), (20,)),
    6: (8, (0, 0, 0, 8), (30,)),
    7: (5, (4, 0, 0, 0), (27,)),
    8: (9, (0, 1, 0, 0), (12, 19, 27)),
    9: (2, (6, 0, 0, 0), (14,)),
    10: (7, (0, 0, 0, 1), (16, 25)),
    11: (9, (0, 5, 0, 0), (20, 26)),
    12: (2, (0, 7, 0, 0), (14,)),
    13: (6, (4, 0, 0, 0), (17, 18)),
    14: (3, (0, 8, 0, 0), (17,)),
    15: (9, (3, 0, 0, 0), (25,)),
    16: (10, (0, 0, 0, 5), (21, 22)),
    17: (6, (0, 0, 0, 8), (22,)),
    18: (5, (0, 0, 0, 7), (20, 22)),
    19: (3, (0, 1, 0, 0), (24, 29)),
    20: (7, (0, 10, 0, 0), (23, 25)),
    21: (2, (0, 0, 0, 6), (28,)),
    22: (7, (2, 0, 0, 0), (23,)),
    23: (2, (3, 0, 0, 0), (24,)),
    24: (3, (0, 9, 0, 0), (30,)),
    25: (3, (4, 0, 0, 0), (30,)),
    26: (7, (0, 0, 4, 0), (31,)),
    27: (8, (0, 0, 0, 7), (28,)),
    28: (3, (0, 8, 0, 0), (31,)),
    29: (7, (0, 7, 0, 0), (32,)),
    30: (2, (0, 7, 0, 0), (32,)),
    31: (2, (0, 0, 2, 0), (32,)),
    32: (0, (0, 0, 0, 0), ()),
}


def block(index: int, station: int, length: int, lags: tuple[int, ...], draws: Draws = ()) -> Block:
    stretch = Stretch("machine", 0, length, "none", draws)
    waits = tuple(Lag(one) for one in lags)
    return Block(index, "r", str(index), "s", str(index), (str(index),), 1, station, (stretch,), (), lags=waits)


def shop(blocks: list[Block], stations: int, services: tuple[tuple[str, int], ...] = ()) -> Problem:
    rows = tuple(PlannedStation(str(at), str(at), 0) for at in range(stations))
    return Problem(START, rows, (), services, ("shop",), ((0,),), tuple(blocks))


def job_shop(durations: Rows, machines: Rows) -> Problem:
    """One tick a unit of time; each operation after the one before it in its job."""
    blocks: list[Block] = []
    for lengths, order in zip(durations, machines, strict=True):
        for at, (length, machine) in enumerate(zip(lengths, order, strict=True)):
            blocks.append(block(len(blocks), machine, length, (len(blocks) - 1,) if at else ()))
    return shop(blocks, 1 + max(max(order) for order in machines))


def flow_shop(jobs: list[tuple[int, int]]) -> Problem:
    """Two machines that each job passes in the same order."""
    return job_shop([list(job) for job in jobs], [[0, 1] for _ in jobs])


def one_person(problem: Problem) -> Problem:
    """The same, all of it in the hands of one person who is always there."""
    by_hand = tuple(
        replace(one, people=(0,), stretches=tuple(replace(part, attendance="hands-on") for part in one.stretches))
        for one in problem.blocks
    )
    return replace(problem, people=(Worker("ann", "Ann", ((0, FAR),)),), blocks=by_hand)


def project() -> Problem:
    """Each activity at a station of its own, drawing on services."""
    keys = [key for key, (length, _, _) in ACTIVITIES.items() if length]
    blocks: list[Block] = []
    for key in keys:
        length, wanted, _ = ACTIVITIES[key]
        before = tuple(keys.index(one) for one in keys if key in ACTIVITIES[one][2])
        draws = tuple((at, many) for at, many in enumerate(wanted) if many)
        blocks.append(block(len(blocks), len(blocks), length, before, draws))
    return shop(blocks, len(blocks), tuple((f"R{at + 1}", many) for at, many in enumerate(CAPACITIES)))
