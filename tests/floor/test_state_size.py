"""What senders can make many of does not make the state long: it carries what a screen shows, and the log has the rest."""

import json
from collections.abc import Callable
from typing import Any

import pytest

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.looking.look import state_for
from runboard.floor.pressing.taps import take_taps
from runboard.floor.workshop import Workshop
from runboard.run.calls.dues import dues
from runboard.run.fold.shown import MOST_SHOWN
from tests.floor.fakes import FakeLog, workshop
from tests.scenario import shop

LONG = "x" * 190
MANY = 400
Press = tuple[str, dict[str, Any], dict[str, Any]]
RUN = {"run": "r1"}

# By number: a press that adds one more of something to the state.
MADE: dict[str, Callable[[int], Press]] = {
    "notes": lambda at: ("note written", RUN, {"text": f"{at} {LONG * 10}"}),
    "moves declined": lambda at: ("move declined", {}, {"move": f"{at}{'m' * 70}", "because": LONG}),
    "supplies out": lambda at: ("supply out", RUN, {"supply": f"{at} {LONG}"}),
    "guests": lambda at: ("person came", {"person": f"guest-{at}"}, {"name": f"{at} {LONG}"}),
    "first pieces": lambda at: (
        "first piece checked",
        {**RUN, "operation": "engrave"},
        {"result": "pass", "check": f"{at}{'c' * 70}"},
    ),
    "presses that do not fit": lambda at: (
        "load done",
        {**RUN, "load": f"sand:120/{at % 3 + 1}", "seen": 0},
        {"counts": {str(at % 3 + 1): {"good": 1, "scrap": [{"pieces": 9, "why": LONG}] * 20}}},
    ),
    "supplies that are due": lambda at: ("supply out", RUN, {"supply": f"{at}", "until": "2026-06-01T15:00:00Z"}),
    "guests who should have gone": lambda at: (
        "person came",
        {"person": f"guest-{at}"},
        {"name": f"{at}", "until": "2026-06-01T16:01:00Z"},
    ),
    "machines that are said to run": lambda at: ("machine started", {**RUN, "load": f"cut/x{at}", "seen": 0}, {}),
    "calls": lambda at: ("lead called", {**RUN, "tray": "1"}, {"why": "help", "note": LONG * 10}),
    "materials": lambda at: (
        "machine started",
        {**RUN, "load": "cut/1"},
        {"minutes": 9, "materials": [f"{at}-{one}-{LONG}" for one in range(9)]},
    ),
}

# What is shown of each may be long.
MOST = {"presses that do not fit": 60_000, "first pieces": 40_000, "machines that are said to run": 90_000}


@pytest.fixture
def shopfloor() -> Workshop:
    made = workshop(shop())
    open_run(made, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    take_taps(
        made,
        {"device": "other", "taps": [press(made, "other-1", "note written", RUN, {"text": "so that some are blind"})]},
    )
    return made


def press(made: Workshop, id_: str, kind: str, fields: dict[str, Any], body: dict[str, Any]) -> dict[str, Any]:
    common = {"at": made.clock.now().isoformat(), "person": "ann", "seen": 2**40}
    return {"id": id_, "kind": kind, **common, **fields, "body": body}


def length(made: Workshop) -> int:
    return len(state_for(made, "ann")[1])


@pytest.mark.parametrize("what", MADE)
def test_many_of_them_make_the_state_no_longer_than_a_screen_shows(shopfloor: Workshop, what: str) -> None:
    before = length(shopfloor)
    taps = [press(shopfloor, f"press-{at:04d}", *MADE[what](at)) for at in range(MANY)]

    answers = take_taps(shopfloor, {"device": "phone", "taps": taps})["taps"]

    assert {one["answer"] for one in answers} == {"accepted"}
    assert isinstance(shopfloor.log, FakeLog) and len(shopfloor.log.stored) > MANY
    assert length(shopfloor) - before < MOST.get(what, 25_000)


def test_the_newest_that_do_not_fit_are_shown_and_how_many_more_there_are(shopfloor: Workshop) -> None:
    taps = [press(shopfloor, f"press-{at:04d}", *MADE["presses that do not fit"](at)) for at in range(MANY)]
    take_taps(shopfloor, {"device": "phone", "taps": taps})

    state = json.loads(state_for(shopfloor, "ann")[1])

    total = len(shopfloor.ledger.state.unsettled)
    assert (len(state["unsettled"]), state["more"]) == (MOST_SHOWN, {"unsettled": total - MOST_SHOWN})
    assert state["unsettled"][-1]["event"] == "press-0399"


def test_starts_that_are_made_up_at_one_station_silence_no_other(shopfloor: Workshop) -> None:
    laser = press(shopfloor, "laser-1", "machine started", {**RUN, "load": "engrave/x", "seen": 0}, {})
    many = [
        press(shopfloor, f"cnc-{at:04d}", "machine started", {**RUN, "load": f"cut/x{at}", "seen": 0}, {})
        for at in range(100)
    ]
    take_taps(shopfloor, {"device": "phone", "taps": [laser, *many]})

    rung = {due.load for due in dues(shopfloor.ledger.state, shopfloor.book).values() if due.kind == "watch check"}

    assert "engrave/x" in rung and "cut/x99" in rung
    assert len(rung) < 20
