"""That time saved off the constraint gives no more pieces, of a line that is replayed.

The line is the textbook one of ``test_line_balance``: its stations carry 290, 120, 240 and 190 s a piece, so the slowest sets
the pace until it is quicker than the next (the theory of constraints; Goldratt, *The Goal*, from memory).
"""

from dataclasses import replace
from datetime import timedelta
from functools import cache
from typing import Any

from runboard.review.held.known import Lengths, Replayable
from runboard.review.held.replay import replay
from runboard.review.held.replayable import replayable
from tests.core.pasts import past_of
from tests.core.pressing import Floor
from tests.outside.said import calculated
from tests.scenario import a_pass, operation, shop

SECONDS = {"one": 290, "two": 120, "three": 240, "four": 190}
TRAYS, A_TRAY = 12, 3


def line_shop() -> dict[str, Any]:
    """A bench for each station of the line, and at each somebody who can do that alone."""
    record = shop()
    record["stations"] = [{"key": key, "name": key, "kind": "bench", "room": "shop"} for key in SECONDS]
    hours = [{"days": ["mon", "tue", "wed", "thu", "fri", "sat", "sun"], "from": "00:00", "to": "24:00"}]
    record["people"] = [record["people"][0]] + [
        {"key": f"at-{key}", "name": key, "access": "crew", "hours": hours, "skills": [key]} for key in SECONDS
    ]
    record["products"], record["jobs"] = [], []
    return record


@cache
def the_line() -> Replayable:
    floor = Floor(line_shop())
    works = [operation(key, key, a_pass(hand=seconds / 60), skill=key) for key, seconds in SECONDS.items()]
    product = {"key": "guitar", "name": "Pieces", "pieces_a_tray": A_TRAY, "wood": "", "operations": works}
    floor.open_run(trays=TRAYS, pieces=A_TRAY, product=product, boards={})
    for key in SECONDS:
        floor.press("person came", person=f"at-{key}")
    found = replayable(past_of(floor))
    assert found is not None
    return found


def seconds_a_piece(less: dict[str, int]) -> float:
    """What lies between two trays at the end of the replayed line, in its middle, for each piece."""
    line = the_line()
    known = {(key, "hand"): timedelta(seconds=seconds - less.get(key, 0)) for key, seconds in SECONDS.items()}
    again = replay(replace(line, lengths=Lengths({**line.lengths.known, **known})))
    assert again is not None
    ends = sorted(again.plan.end(again.problem, block.index) for block in again.problem.blocks if block.last)
    return (ends[-2] - ends[2]) * 30 / (len(ends) - 4) / A_TRAY


@calculated(
    "The stations of a published line balance (tests/outside/test_line_balance.py), the slowest of which sets the pace",
    {("", 0): 290, ("two", 60): 290, ("three", 50): 290, ("one", 50): 240, ("one", 100): 240},
)
def test_time_saved_off_the_constraint_gives_no_more_pieces_an_hour(station: str, less: int) -> float:
    return seconds_a_piece({station: less})


@calculated(
    "The same line: 3600 s over its slowest station",
    {("", 0): 12.41, ("two", 60): 12.41, ("three", 50): 12.41, ("one", 50): 15.00, ("one", 100): 15.00},
    within=0.005,
)
def test_pieces_an_hour_are_those_of_the_slowest_station(station: str, less: int) -> float:
    return 3600 / seconds_a_piece({station: less})
