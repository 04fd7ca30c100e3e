"""A load over several trays waits for those that are ready just before it, where they still fit in."""

import pytest

from runboard.plan.next_move import moves
from tests.core.pressing import Floor
from tests.scenario import shop


@pytest.fixture
def floor() -> Floor:
    """Three trays to oil in one go; the first is engraved already, the others wait at the laser."""
    record = shop()
    record["products"][0]["operations"][4]["passes"][0]["pieces"] = 15
    made = Floor(record)
    trays = [{"tray": key, "pieces": 5, "at": at} for key, at in (("1", "oil"), ("2", "engrave"), ("3", "engrave"))]
    made.press(
        "run opened",
        {"name": "Rails", "product": record["products"][0], "orders": [], "wood": "ash", "trays": trays},
        run="r1",
    )
    made.press("person came", {"until": "2026-06-01T20:00:00Z", "room": "house"})
    return made


def offered(floor: Floor) -> list[str]:
    return [one.load for one in moves(floor.state, floor.book, "ann", floor.now) if one.code == "start"]


def engrave(floor: Floor, tray: str) -> None:
    for kind in ("load started", "machine started", "unloading started", "load done"):
        floor.press(kind, run="r1", load=f"engrave/{tray}")


def test_the_trays_before_it_come_first(floor: Floor) -> None:
    engrave(floor, "2")

    assert offered(floor)[:2] == ["engrave/3", "oil/1+2"]


def test_once_it_is_full_it_comes_first(floor: Floor) -> None:
    engrave(floor, "2")
    engrave(floor, "3")

    assert offered(floor)[0] == "oil/1+2+3"


def test_held_pieces_are_not_waited_for(floor: Floor) -> None:
    for tray in ("2", "3"):
        floor.press("pieces held", {"why": "text"}, run="r1", tray=tray, operation="engrave")

    assert offered(floor)[0] == "oil/1"
