"""Which kinds of events a device may make: one table, and corrections need the right to what they correct."""

from datetime import UTC, datetime
from typing import Any

import pytest

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.pressing.access import CREW, GUEST, LEAD, check_access, may_make
from runboard.floor.pressing.taps import take_taps
from runboard.floor.workshop import Workshop
from runboard.run.log.event import Event
from runboard.run.log.kinds import KINDS
from runboard.run.refusal import Refused
from tests.floor.fakes import workshop
from tests.scenario import shop

OF_THE_SERVER = {"server restarted", "signal received"}


@pytest.fixture
def floor() -> Workshop:
    found = workshop(shop())
    open_run(found, Wish("rail", [{"line": "1", "pieces": 24}]), "ann")
    return found


def tap(kind: str, id_: str = "press-1", body: dict[str, Any] | None = None, **fields: Any) -> dict[str, Any]:
    common = {"at": "2026-06-01T16:00:00Z", "person": "ann", "run": "r1", "seen": 1, "body": body or {}}
    return {"id": id_, "kind": kind, **common, **fields}


def sent(floor: Workshop, access: str, *taps: dict[str, Any]) -> list[str]:
    answers = take_taps(floor, {"taps": list(taps)}, "phone-1", access)["taps"]
    return [one.get("code", one["answer"]) for one in answers]


def test_a_kind_that_nobody_knows_is_nobodys_to_press() -> None:
    assert not any(may_make(access, "shop sold") for access in (LEAD, CREW, GUEST))


def test_who_may_do_more_may_do_all_that_another_may() -> None:
    for kind in KINDS:
        assert may_make(CREW, kind) >= may_make(GUEST, kind)
        assert may_make(LEAD, kind) >= may_make(CREW, kind)


def test_no_device_says_what_the_server_says() -> None:
    assert {kind for kind in KINDS if not may_make(LEAD, kind)} == OF_THE_SERVER


@pytest.mark.parametrize("access", ["", "friend", "Lead", "server"])
def test_another_word_is_no_access(access: str) -> None:
    assert not any(may_make(access, kind) for kind in KINDS)


@pytest.mark.parametrize("kind", ["run opened", "run finished", "run abandoned", "orders changed", "route revised"])
def test_what_the_run_is_stays_the_leads(kind: str) -> None:
    assert not may_make(CREW, kind)
    assert may_make(LEAD, kind)


def test_a_helpers_phone_works_and_does_not_end_the_run(floor: Workshop) -> None:
    begin = tap("load started", "press-1", load="cut/1")
    end = tap("run finished", "press-2")

    assert sent(floor, CREW, begin, end) == ["accepted", "access"]
    assert floor.ledger.state.runs["r1"].state == "open"


def test_what_was_taken_before_is_known_whoever_sends_it_again(floor: Workshop) -> None:
    end = tap("run finished")

    assert sent(floor, LEAD, end) == ["accepted"]
    assert sent(floor, CREW, end) == ["known"]


def test_a_press_has_the_device_of_its_session(floor: Workshop) -> None:
    batch = {"device": "phone-9", "taps": [tap("load started", load="cut/1", device="phone-8")]}

    take_taps(floor, batch, "phone-1", CREW)

    assert floor.ledger.arrived["press-1"].device == "phone-1"


@pytest.mark.parametrize("kind", ["event undone", "event amended", "entry settled"])
def test_what_is_not_ones_own_to_do_is_not_ones_own_to_correct(kind: str) -> None:
    arrived = {one.id: one for one in (event("note written", "press-1"), event("run finished", "press-1.2"))}

    for access in (CREW, GUEST):
        with pytest.raises(Refused, match="access"):
            check_access(access, event(kind, "press-2", event="press-1"), arrived)
    check_access(LEAD, event(kind, "press-2", event="press-1"), arrived)


def test_a_correction_of_a_correction_needs_the_right_to_the_first_press_too() -> None:
    undone = event("event undone", "press-2", event="press-1")
    arrived = {one.id: one for one in (event("run finished", "press-1"), undone)}

    with pytest.raises(Refused, match="access"):
        check_access(CREW, event("event undone", "press-3", event="press-2"), arrived)


def test_corrections_that_name_each_other_come_to_an_end() -> None:
    one, other = event("event undone", "press-1", event="press-2"), event("event undone", "press-2", event="press-1")

    check_access(CREW, one, {"press-1": one, "press-2": other})


def event(kind: str, id_: str, **body: Any) -> Event:
    return Event(id=id_, kind=kind, at=datetime(2026, 6, 1, tzinfo=UTC), body=body)
