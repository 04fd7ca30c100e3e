"""What the shop names by its keys can be answered, however long the keys are that it takes."""

from typing import Any

import pytest

from runboard.plan.next_move import moves
from runboard.run.calls.dues import dues
from runboard.run.log.form import check_form
from runboard.run.log.shapes import KEY, LOAD, TRAY
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails

MOST = KEY["maxLength"]
RUN = "r" * MOST
TRAYS = [f"{number}{'t' * (TRAY['maxLength'] - 2)}" for number in range(11, 22)]
OILED = "oil/" + "+".join(TRAYS[:9])
PRESS = "p" * 64
assert LOAD["maxLength"] - len(OILED) < TRAY["maxLength"]


@pytest.fixture
def floor() -> Floor:
    """A run and trays with the longest keys, of which all that is asked about by a load is asked."""
    found = Floor()
    route = key_rails()
    route["operations"][4] |= {"attendance": "watched", "station": "cnc", "passes": [a_pass(size="run", machine=22)]}
    trays = [{"tray": tray, "pieces": 5, "at": "oil"} for tray in TRAYS]
    wanted = {"name": "Key rails", "product": route, "orders": [{"line": "1", "pieces": 20}], "trays": trays}
    found.press("run opened", wanted, run=RUN)
    return found


def press(floor: Floor, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> None:
    floor.press(kind, body, **{"run": RUN, "id": f"{PRESS[: 64 - 4]}{floor.number:04d}", **fields})


def answered(alert: str, ask_again_at: str = "") -> dict[str, Any]:
    return {"alert": alert, "answer": "seen", **({"ask_again_at": ask_again_at} if ask_again_at else {})}


def test_every_alert_can_be_answered_and_put_off(floor: Floor) -> None:
    press(floor, "machine started", {"minutes": 5}, load=OILED)
    press(floor, "supply out", {"supply": "s" * 200, "until": floor.now.isoformat()})
    press(
        floor, "pieces held", {"why": "x", "pieces": 1, "until": floor.now.isoformat()}, tray=TRAYS[9], operation="oil"
    )
    press(floor, "lead called", {"why": "help"}, tray=TRAYS[10])
    press(floor, "machine started", {"minutes": 5}, load=f"{OILED}.2x", device="other", seen=0)
    found = dues(floor.state, floor.book)
    assert max(map(len, found)) > 450

    for alert in found:
        check_form({"id": "answer-1", "kind": "alert answered", "at": "2026-06-01T17:00:00Z", "body": answered(alert)})
        check_form({"id": "answer-2", "kind": "alert claimed", "at": "2026-06-01T17:00:00Z", "body": {"alert": alert}})
        press(floor, "alert answered", answered(alert, "2026-06-01T18:00:00Z"))
    put_off = [one for one in dues(floor.state, floor.book) if one.startswith("ask again|")]
    assert put_off
    for alert in put_off:
        press(floor, "alert answered", answered(alert))


def test_every_move_can_be_declined(floor: Floor) -> None:
    press(floor, "machine started", {"minutes": 5}, load=OILED)
    floor.wait(10)
    found = moves(floor.state, floor.book, "ann", floor.now)
    assert max(len(one.id) for one in found) > 400

    for move in found:
        press(floor, "move declined", {"move": move.id, "because": "later"})


def test_every_reminder_can_be_answered(floor: Floor) -> None:
    reminder = f"care morning|rags|2026-06-01|{'f' * MOST}|{PRESS}.2"

    press(floor, "reminder answered", {"reminder": reminder, "done": "in the tin"})
