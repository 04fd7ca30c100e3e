import json

import pytest

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.looking.look import state_for
from runboard.floor.pressing.taps import take_taps
from runboard.run.refusal import Refused
from tests.floor.fakes import workshop
from tests.scenario import shop


@pytest.fixture
def shopfloor():
    made = workshop(shop())
    open_run(made, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    return made


def tap(made, number, kind, body=None, **fields):
    return {
        "id": f"tap-{number:05d}",
        "kind": kind,
        "at": made.clock.now().isoformat(),
        "person": "ann",
        "run": "r1",
        "seen": made.ledger.last_seq,
        "body": body or {},
        **fields,
    }


def send(made, *taps, device="phone"):
    return take_taps(made, {"device": device, "sent_at": made.clock.now().isoformat(), "taps": list(taps)})


def test_a_batch_twice_counts_once(shopfloor):
    batch = [tap(shopfloor, 1, "load started", load="cut/1"), tap(shopfloor, 2, "machine started", load="cut/1")]

    first = send(shopfloor, *batch)
    again = send(shopfloor, *batch)

    assert [one["answer"] for one in first["taps"]] == ["accepted", "accepted"]
    assert [one["answer"] for one in again["taps"]] == ["known", "known"]
    assert shopfloor.log.last_seq() == 3


def test_one_bad_tap_does_not_hold_the_others(shopfloor):
    answers = send(shopfloor, {"id": "tap-bad01", "kind": "nonsense"}, tap(shopfloor, 1, "load started", load="cut/1"))

    assert [one["answer"] for one in answers["taps"]] == ["refused", "accepted"]
    assert answers["taps"][0]["code"] == "form"


def test_a_refused_press_is_kept_in_its_own_table_and_answered_alike(shopfloor):
    press = tap(shopfloor, 1, "load started", load="clean/1", run="r9")

    answers = [send(shopfloor, press)["taps"][0] for _ in range(2)]

    assert [one["answer"] for one in answers] == ["refused", "refused"]
    assert answers[0]["code"] == answers[1]["code"] == "run unknown"
    assert "tap-00001" in shopfloor.log.refused


def test_no_batch_is_no_batch(shopfloor):
    for raw in (None, [], {"taps": []}, {"device": "phone", "taps": 3}, {"device": "p", "sent_at": "soon", "taps": []}):
        with pytest.raises(Refused) as refused:
            take_taps(shopfloor, raw)
        assert refused.value.code == "batch form"


def test_a_clock_that_runs_ahead_is_corrected_by_the_time_of_sending(shopfloor):
    ahead = shopfloor.clock.pass_(0).replace(hour=18)
    press = tap(shopfloor, 1, "load started", load="cut/1") | {"at": ahead.isoformat()}

    take_taps(shopfloor, {"device": "phone", "sent_at": ahead.isoformat(), "taps": [press]})

    assert shopfloor.ledger.held[-1].moment == shopfloor.clock.now()


def test_the_order_of_a_batch_from_the_future_stays(shopfloor):
    first, second = (
        tap(shopfloor, at, kind, load="cut/1") for at, kind in ((2, "load started"), (1, "machine started"))
    )
    first |= {"at": "2026-06-01T17:00:00Z", "offset_ms": 0}
    second |= {"at": "2026-06-01T17:00:05Z", "offset_ms": 0}

    shopfloor.clock.pass_(10)
    send(shopfloor, first, second)

    assert [event.kind for event in shopfloor.ledger.held[-2:]] == ["load started", "machine started"]


def test_the_tag_changes_when_a_due_moment_passes_without_an_event(shopfloor):
    send(shopfloor, tap(shopfloor, 1, "machine started", load="cut/1"))
    before = state_for(shopfloor, "ann")[0]
    shopfloor.clock.pass_(9)
    same = state_for(shopfloor, "ann")[0]
    shopfloor.clock.pass_(2)

    assert before == same
    assert state_for(shopfloor, "ann")[0] != same


def test_the_tag_covers_log_book_and_person(shopfloor):
    tags = {state_for(shopfloor, "ann")[0], state_for(shopfloor, "ben")[0]}
    send(shopfloor, tap(shopfloor, 1, "load started", load="cut/1"))
    tags.add(state_for(shopfloor, "ann")[0])
    shopfloor.books.save(shopfloor.books.record(), shopfloor.clock.now())
    shopfloor.version = -1
    tags.add(state_for(shopfloor, "ann")[0])

    assert len(tags) == 4


def test_the_state_offers_the_next_move(shopfloor):
    state = json.loads(state_for(shopfloor, "ann")[1])

    assert state["moves"][0]["load"] == "cut/1"
    assert state["runs"]["r1"]["wanted"] == 12


def test_the_due_moments_stored_are_those_of_the_state(shopfloor):
    send(shopfloor, tap(shopfloor, 1, "machine started", load="cut/1"))
    assert sorted(due.kind for due in shopfloor.log.dues.values()) == ["machine end", "watch check"]

    send(shopfloor, tap(shopfloor, 2, "unloading started", load="cut/1"))
    assert shopfloor.log.dues == {}


def test_two_phones_start_the_same_load_and_the_second_joins(shopfloor):
    seen = shopfloor.ledger.last_seq
    send(shopfloor, tap(shopfloor, 1, "load started", load="cut/1"))

    answer = send(shopfloor, tap(shopfloor, 2, "load started", load="cut/1", person="ben", seen=seen), device="other")

    assert answer["taps"][0]["answer"] == "accepted"
    assert shopfloor.ledger.state.runs["r1"].loads["cut/1"].people == ("ann", "ben")


@pytest.mark.parametrize("where", ["kind", "body", "extra", "id"])
def test_a_refused_press_is_kept_cut_short(shopfloor, where):
    long = "x" * 1_000_000
    press = tap(shopfloor, 1, "note written", {"text": "dry"}, run="r9")
    press |= {"kind": {"kind": long}, "body": {"body": {"text": long}}, "id": {}, "extra": {long: {"a": long}}}[where]
    if where == "id":
        press |= {"person": long, "run": long}

    (answer,) = send(shopfloor, press)["taps"]

    ((device, record),) = shopfloor.log.records.values()
    assert (device, record["id"]) == ("phone", press["id"])
    assert record["cut"] > 1_000_000
    assert len(json.dumps(record)) < 4000
    assert len(json.dumps(answer)) < 4000
    assert len(json.dumps(shopfloor.log.refused[press["id"]].facts)) < 4000


def test_a_press_is_no_book_and_a_run_may_be_one(shopfloor):
    long = "x" * 1900
    ticked = tap(shopfloor, 1, "checklist ticked", {"list": "full", "items": [long] * 40}, station="cnc")
    lines = [{"line": str(at), "pieces": 1, "text": long[:190]} for at in range(400)]
    orders = tap(shopfloor, 2, "orders changed", {"orders": lines})

    answers = send(shopfloor, ticked, orders)["taps"]

    assert [one.get("code", one["answer"]) for one in answers] == ["press too large", "accepted"]
