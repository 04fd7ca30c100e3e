"""Every press of a guest: their own, at the current operation of their one tray, by the rules though it was made blind."""

from typing import Any

import pytest

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.letting_in.guest_rights import guest_person
from runboard.floor.letting_in.helper import work_at
from runboard.floor.pressing.access import GUEST, may_make
from runboard.floor.pressing.taps import Sender, record_events, take_taps_of, why_refused
from runboard.floor.workshop import Workshop
from runboard.run.log.event import write_moment
from runboard.run.log.kinds import KINDS
from runboard.run.refusal import Refused
from tests.floor.fakes import FakeClock, workshop
from tests.scenario import shop

DEVICE = "abcdef0123456789"
MIA = guest_person(DEVICE)
SAND = {"load": "sand:120/4", "operation": "sand:120", "station": "sander"}
LASER = {"load": "engrave/1", "operation": "engrave", "station": "laser"}


class Guest:
    """A guest's phone at one tray."""

    def __init__(self, floor: Workshop, tray: str = "4") -> None:
        self.floor, self.tray, self.count = floor, tray, 0
        lead(floor, "person came", {"name": "Mia"}, person=MIA)

    @property
    def sender(self) -> Sender:
        return Sender(DEVICE, GUEST, ("r1", self.tray))

    def event(self, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> dict[str, Any]:
        self.count += 1
        at = write_moment(self.floor.clock.now())
        common = {"id": f"press-{self.count}", "kind": kind, "at": at, "person": MIA, "run": "r1", "body": body or {}}
        return {**common, "seen": 0, **fields}

    def send(self, *events: dict[str, Any]) -> list[str]:
        answers = take_taps_of(self.floor, {"taps": list(events)}, self.sender)["taps"]
        return [one.get("code", one["answer"]) for one in answers]

    def press(self, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> str:
        return self.send(self.event(kind, body, **fields))[0]


def lead(floor: Workshop, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> None:
    clock = floor.clock
    assert isinstance(clock, FakeClock)
    clock.pass_(1)
    record_events(floor, [new_event(floor, kind, body or {}, **{"person": "ann", **fields})])


def show(floor: Workshop, station: str) -> None:
    lead(floor, "shown how", {"person": MIA}, station=station)


@pytest.fixture
def floor() -> Workshop:
    """Tray 1 at the laser, trays 3 and 4 to be sanded, tray 2 to be oiled, the others on boards."""
    found = workshop(shop())
    orders = [{"line": str(number), "pieces": 1, "text": str(number)} for number in range(1, 31)]
    begun = {"1": "engrave", "2": "oil", "3": "sand:120", "4": "sand:120"}
    open_run(found, Wish("rail", orders, start=45, begun=begun), "ann")
    return found


@pytest.fixture
def mia(floor: Workshop) -> Guest:
    return Guest(floor)


@pytest.fixture
def at_laser(floor: Workshop) -> Guest:
    show(floor, "laser") if MIA in floor.ledger.state.people else None
    found = Guest(floor, "1")
    show(floor, "laser")
    return found


def test_a_guest_works_their_trays_current_operation(floor: Workshop, mia: Guest) -> None:
    show(floor, "sander")

    counts = {"counts": {"4": {"good": 4, "scrap": [{"pieces": 1, "why": "crack"}]}}}
    assert mia.press("load started", {"pieces": {"4": 5}}, **SAND) == "accepted"
    assert mia.press("load done", counts, **SAND) == "accepted"

    work = work_at(floor.ledger.state, "r1", "4")
    assert work is not None and work.step is not None
    assert (work.step.key, work.pieces) == ("sand:180", 4)


def test_starting_a_machine_needs_to_be_shown_how_also_from_a_phone_that_was_offline(mia: Guest) -> None:
    assert mia.press("load started", **SAND) == "not shown"
    assert mia.press("load started", **SAND, seen=0) == "not shown"


@pytest.mark.parametrize(
    ("fields", "code"),
    [
        ({"person": "ann"}, "not yourself"),
        ({"person": "guest-99999999"}, "not yourself"),
        ({"entered_by": "ann"}, "not yourself"),
        ({"basis": "paper"}, "not yourself"),
        ({"run": "r2"}, "not your tray"),
        ({"tray": "1"}, "not your tray"),
        ({"load": "sand:120/1"}, "not this step"),
        ({"load": "sand:120/4+1"}, "not this step"),
        ({"load": "cut/2", "operation": "cut", "station": "cnc"}, "not this step"),
        ({"operation": "oil"}, "not this step"),
        ({"station": "laser"}, "not this step"),
        ({"body": {"pieces": {"1": 5}}}, "not your tray"),
        ({"body": {"pieces": {"4": 5, "1": 1}}}, "not your tray"),
        ({"body": {"places": {"1": []}}}, "not your tray"),
        ({"body": {"early": True}}, "not early"),
    ],
)
def test_what_is_not_theirs_is_refused(floor: Workshop, mia: Guest, fields: dict[str, Any], code: str) -> None:
    show(floor, "sander")
    before = floor.ledger.last_seq

    event = mia.event("load started") | SAND | fields

    assert mia.send(event) == [code]
    assert floor.ledger.last_seq == before


def test_a_press_of_another_tray_is_refused_whatever_its_kind(floor: Workshop, mia: Guest) -> None:
    show(floor, "sander")
    show(floor, "laser")
    for kind in [one for one in KINDS if may_make(GUEST, one) and one != "event undone"]:
        body = {
            "alert answered": {"alert": "machine end|r1|engrave/1|1", "answer": "ended"},
            "alert claimed": {"alert": "machine end|r1|engrave/1|1"},
            "checklist ticked": {"list": "full"},
            "first piece checked": {"result": "pass"},
            "note written": {"text": "x"},
            "lead called": {"why": "help"},
            "load stopped": {"why": "power"},
            "pieces counted": {"good": 5},
        }.get(kind, {})

        said = mia.press(kind, body, tray="1", **LASER)

        assert said in ("not your tray", "not this step"), kind


def test_kinds_that_no_guest_makes_are_refused(mia: Guest) -> None:
    assert mia.press("run finished") == mia.press("shown how", {"person": MIA}, station="sander") == "access"
    assert mia.press("person came", {"name": "Ann"}) == "access"
    assert mia.press("operation given", {"to": MIA, "trays": ["4"]}, operation="sand:120") == "access"


def test_counts_of_another_tray_are_refused(floor: Workshop, mia: Guest) -> None:
    show(floor, "sander")
    mia.press("load started", **SAND)

    assert mia.press("load done", {"counts": {"1": {"good": 5}}}, **SAND) == "not your tray"
    assert mia.press("load done", {"counts": {"*": {"good": 5}}}, **SAND) == "not your tray"
    assert (
        mia.press("pieces counted", {"good": 5}, tray="4", operation="sand:120", load="sand:120/1") == "not this step"
    )


def test_what_is_not_begun_is_not_ended(mia: Guest) -> None:
    for kind in ("load done", "machine ended", "unloading started", "machine started", "load put aside"):
        assert mia.press(kind, **SAND) == "not begun"


def test_a_load_with_other_trays_on_it_is_the_leads(floor: Workshop) -> None:
    mia = Guest(floor, "2")
    lead(
        floor,
        "load started",
        {"pieces": {"1": 5, "2": 5}},
        run="r1",
        load="oil/1+2",
        operation="oil",
        station="finishing",
    )

    assert mia.press("load done", load="oil/1+2", operation="oil", station="finishing") == "shared load"


def test_a_board_that_feeds_other_trays_is_the_leads(floor: Workshop) -> None:
    board = next(key for key, feeds in floor.ledger.state.runs["r1"].boards.items() if len(feeds) > 1)
    tray = next(iter(floor.ledger.state.runs["r1"].boards[board]))
    mia = Guest(floor, tray)
    show(floor, "cnc")

    assert mia.press("load started", load=board, operation="cut", station="cnc") == "shared load"
    assert mia.press("load started", load=f"cut/{tray}", operation="cut", station="cnc") == "not this step"


def test_undo_takes_back_only_their_own_press(floor: Workshop, mia: Guest) -> None:
    show(floor, "sander")
    lead(floor, "note written", {"text": "look"}, run="r1", tray="4")
    note = floor.ledger.held[-1].id
    assert mia.press("load started", id="own-press", **SAND) == "accepted"

    assert mia.press("event undone", {"event": note}) == "not your press"
    assert mia.press("event undone", {"event": "own-press"}) == "accepted"
    assert mia.press("event undone", {"event": "never-was"}) == "event unknown"


def test_they_answer_only_their_own_machines_alerts(at_laser: Guest) -> None:
    assert started(at_laser) == ["accepted"] * 3
    at = {"run": "r1"}

    assert (
        at_laser.press("alert answered", {"alert": "machine end|r1|engrave/1|1", "answer": "seen"}, **at) == "accepted"
    )
    for alert in ("machine end|r1|cut/1|1", "call|press-1", "care end|rags|2026-06-01|x|1", "session end|ann|1", "x"):
        assert at_laser.press("alert answered", {"alert": alert, "answer": "seen"}, **at) == "not your tray"


def started(guest: Guest) -> list[str]:
    return guest.send(
        guest.event("load started", {"pieces": {"1": 5}}, **LASER),
        guest.event("checklist ticked", {"list": "full"}, **LASER),
        guest.event("machine started", {"minutes": 22}, **LASER),
    )


def test_a_machine_starts_only_after_its_list_was_ticked_by_the_same_person(floor: Workshop, at_laser: Guest) -> None:
    at_laser.press("load started", **LASER)
    assert at_laser.press("machine started", {"minutes": 22}, **LASER) == "list first"

    lead(floor, "checklist ticked", {"list": "full"}, station="laser")
    assert at_laser.press("machine started", {"minutes": 22}, **LASER) == "list first"

    at_laser.press("checklist ticked", {"list": "full"}, **LASER)
    assert at_laser.press("machine started", {"minutes": 22}, **LASER) == "accepted"
    assert at_laser.press("watch checked", {"at_check": 0}, **LASER) == "accepted"


def test_texts_are_placed_as_the_shop_proposes_them_and_not_otherwise(floor: Workshop, at_laser: Guest) -> None:
    placed = [{"position": at, "line": str(at), "text": str(at)} for at in range(1, 6)]
    swapped = [{**placed[0], "text": "99"}, *placed[1:]]

    assert at_laser.press("load started", {"pieces": {"1": 5}, "places": {"1": swapped}}, **LASER) == "texts changed"
    assert at_laser.press("load started", {"pieces": {"1": 5}, "places": {"1": placed}}, **LASER) == "accepted"
    assert floor.ledger.state.runs["r1"].trays["1"].places[3] == ("3", "3")


def test_what_is_given_to_another_is_not_started(floor: Workshop, mia: Guest) -> None:
    show(floor, "sander")
    lead(floor, "operation given", {"to": "ben", "trays": ["4"]}, run="r1", operation="sand:120")

    assert mia.press("load started", **SAND) == "given to another"


def test_a_first_piece_is_shown_before_the_rest_is_done(floor: Workshop, mia: Guest) -> None:
    show(floor, "sander")
    lead(floor, "operation given", {"to": MIA, "trays": ["4"], "look": True}, run="r1", operation="sand:120")
    mia.press("load started", **SAND)

    assert mia.press("load done", **SAND) == "look first"
    lead(floor, "look given", {"result": "pass"}, run="r1", tray="4", operation="sand:120")
    assert mia.press("load done", **SAND) == "accepted"


def test_nobody_takes_the_watch_of_a_machine_that_they_were_not_shown(floor: Workshop) -> None:
    mia = Guest(floor, "1")
    lead(floor, "load started", {"pieces": {"1": 5}}, run="r1", **LASER)
    lead(floor, "machine started", {"minutes": 22}, run="r1", **LASER)

    assert mia.press("watch taken", **LASER) == "not shown"
    show(floor, "laser")
    assert mia.press("watch taken", **LASER) == "accepted"


def test_a_tray_that_is_through_takes_calls_only(floor: Workshop) -> None:
    lead(floor, "pieces counted", {"good": 5}, run="r1", tray="4", operation="hooks")
    mia = Guest(floor)

    assert mia.press("load started", load="hooks/4", operation="hooks", station="bench") == "tray through"
    assert mia.press("lead called", {"why": "help"}, tray="4") == "accepted"


def test_whether_a_press_would_be_taken_is_known_before(floor: Workshop, mia: Guest) -> None:
    def tried() -> Refused | None:
        event = new_event(floor, "load started", {"pieces": {"4": 5}}, run="r1", person=MIA, **SAND)
        return why_refused(floor, event, mia.sender)

    found = tried()
    show(floor, "sander")

    assert found is not None and found.code == "not shown"
    assert tried() is None
    assert floor.ledger.state.runs["r1"].loads == {}


def test_a_guests_press_is_never_to_be_settled_by_others(floor: Workshop, mia: Guest) -> None:
    """Made blind, it is refused where it does not fit: the helper is told, and nobody has to decide for them."""
    lead(
        floor, "load started", {"pieces": {"3": 5}}, run="r1", load="sand:120/3", operation="sand:120", station="sander"
    )
    show(floor, "sander")

    assert mia.press("load started", **SAND) == "station busy"
    assert floor.ledger.state.unsettled == {}
