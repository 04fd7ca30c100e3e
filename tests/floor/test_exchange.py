"""A run out of one shop and into another: the same events, the same state."""

import json
from typing import Any

import pytest

from runboard.floor.changing.exchange import export_run, import_run, look_at_run
from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.pressing.taps import take_taps
from runboard.floor.workshop import Workshop
from runboard.run.calls.dues import dues
from runboard.run.fold.state import ShopState
from runboard.run.refusal import Refused
from tests.floor.fakes import workshop
from tests.scenario import shop


class Shop:
    """A shop with two runs of rails, and a phone that presses for Ann."""

    def __init__(self) -> None:
        self.workshop = workshop(shop())
        self.number = 0
        for _ in range(2):
            open_run(self.workshop, Wish("rail", [{"line": "1", "pieces": 24}]), "ann")

    def press(self, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> str:
        self.number += 1
        press = {
            "id": f"press-{self.number:03d}",
            "kind": kind,
            "at": self.workshop.clock.now().isoformat(),
            "person": "ann",
            "seen": self.workshop.ledger.last_seq,
            "body": body or {},
            **fields,
        }
        answer = take_taps(self.workshop, {"device": "phone", "taps": [press]})["taps"][0]
        assert answer["answer"] == "accepted", answer
        self.workshop.clock.pass_(5)  # type: ignore[attr-defined]
        return str(press["id"])

    def cut(self, run: str, load: str = "cut/1") -> None:
        self.press("load started", run=run, load=load)
        self.press("machine started", {"minutes": 10}, run=run, load=load)
        self.press("machine ended", run=run, load=load)
        self.press("unloading started", run=run, load=load)
        self.press("load done", run=run, load=load)


@pytest.fixture
def busy() -> Shop:
    """Both runs take turns at the CNC and in Ann's hands; something is undone, somebody is called away."""
    made = Shop()
    made.press("person came", {"until": "2026-06-01T22:00:00Z"})
    made.cut("r2")
    made.cut("r1")
    made.press("load started", run="r1", load="clean/1")
    made.press("person called away")
    made.press("person came back")
    made.press("load started", run="r1", load="clean/1")
    made.cut("r2", "cut/2")  # leaves r1's tray 1 on the bench
    wrong = made.press("load started", run="r1", load="clean/1")
    made.press("event undone", {"event": wrong})
    made.press("load started", run="r1", load="clean/1")
    return made


def friend(busy: Shop) -> Workshop:
    """Another shop, later that day."""
    made = workshop(shop())
    made.clock = busy.workshop.clock
    return made


def passed_on(record: dict[str, Any]) -> Any:
    return json.loads(json.dumps(record))


def test_a_run_folds_to_the_same_state_in_another_shop(busy: Shop) -> None:
    other = friend(busy)

    record = export_run(busy.workshop, "r1")
    import_run(other, passed_on(record))

    assert {one["event"]["kind"] for one in record["stand_ins"]} == {"load put aside", "setup changed"}
    assert other.ledger.state.runs["r1"] == busy.workshop.ledger.state.runs["r1"]
    assert set(other.ledger.state.runs) == {"r1"}
    assert not other.ledger.state.unsettled


def test_the_same_file_twice_adds_nothing(busy: Shop) -> None:
    other = friend(busy)
    record = export_run(busy.workshop, "r1")

    assert import_run(other, record) > 0
    assert import_run(other, record) == 0


def test_a_run_that_is_here_already_is_left_as_it_is(busy: Shop) -> None:
    before = busy.workshop.ledger.state

    assert import_run(busy.workshop, export_run(busy.workshop, "r1")) == 0

    assert busy.workshop.ledger.state == before


def test_what_happened_since_is_added(busy: Shop) -> None:
    other = friend(busy)
    import_run(other, export_run(busy.workshop, "r1"))

    busy.press("load done", run="r1", load="clean/1")
    added = import_run(other, export_run(busy.workshop, "r1"))

    assert added == 1
    assert other.ledger.state.runs["r1"] == busy.workshop.ledger.state.runs["r1"]


def test_its_timers_come_with_it(busy: Shop) -> None:
    busy.press("load done", run="r1", load="clean/1")
    busy.press("load started", run="r2", load="clean/1")
    other = friend(busy)

    import_run(other, export_run(busy.workshop, "r2"))

    there, here = other.log.dues, busy.workshop.log.dues  # type: ignore[attr-defined]
    assert {key for key in there if "r2" in key} == {key for key in here if "r2" in key}


def test_what_was_said_of_its_rags_comes_with_it(busy: Shop) -> None:
    for run in ("r1", "r2"):
        busy.press("load done", run=run, load="oil/2", person="ben")
    for kind in ("care end", "care morning"):
        open_ = [one.id for one in dues(busy.workshop.ledger.state, busy.workshop.book).values() if one.kind == kind]
        busy.press("reminder answered", {"reminder": open_[0], "done": "in water, in the can"})
    other = friend(busy)

    import_run(other, json.loads(json.dumps(export_run(busy.workshop, "r1"))))

    assert other.ledger.state.care
    assert [one.id for one in dues(other.ledger.state, other.book).values() if one.kind.startswith("care ")] == []


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"runboard_run": 2}, "file no run"),
        ({"events": 3}, "file no run"),
        ({"events": []}, "file no run"),
        ({"events": [{}]}, "file event wrong"),
        ({"stand_ins": [3]}, "file event wrong"),
        ({"time_zone": "Asia/Tokyo"}, "file zone"),
    ],
)
def test_a_wrong_file_is_refused_and_nothing_is_stored(busy: Shop, change: dict[str, Any], code: str) -> None:
    other = friend(busy)

    with pytest.raises(Refused) as refused:
        import_run(other, {**export_run(busy.workshop, "r1"), **change})

    assert refused.value.code == code
    assert other.log.last_seq() == 0


def test_a_shop_without_its_stations_cannot_take_it(busy: Shop) -> None:
    other = workshop({**shop(), "stations": [], "products": []})

    with pytest.raises(Refused) as refused:
        import_run(other, export_run(busy.workshop, "r1"))

    assert refused.value.code == "file unknown names"
    assert "cnc" in refused.value.facts["names"]


def test_another_run_of_that_key_is_not_mixed_with_it(busy: Shop) -> None:
    with pytest.raises(Refused) as refused:
        import_run(Shop().workshop, export_run(busy.workshop, "r1"))

    assert refused.value.code == "run known"


# a file that acts beyond its own run


def an_event(number: int, kind: str, at: str = "2026-06-01T16:30:00Z", **fields: Any) -> dict[str, Any]:
    return {"id": f"harm-{number:04d}", "kind": kind, "at": at, "person": "ann", "body": {}, **fields}


def with_events(record: dict[str, Any], *events: dict[str, Any], **changes: Any) -> dict[str, Any]:
    return {**record, "events": [*record["events"], *events], **changes}


@pytest.fixture
def host() -> Shop:
    """Another shop at work: a run r2 of its own at the CNC, Ben here until the evening, one press that did not fit."""
    made = Shop()
    made.workshop.clock.pass_(24 * 60)  # type: ignore[attr-defined]
    made.number = 500
    made.press("person came", {"until": "2026-06-02T22:00:00Z"}, person="ben")
    made.press("load started", run="r2", load="cut/1", person="ben")
    made.press("machine started", {"minutes": 40}, run="r2", load="cut/1", person="ben")
    return made


def renamed(record: dict[str, Any], key: str = "f1") -> dict[str, Any]:
    """The same run under a key that no run has here."""
    whole: dict[str, Any] = json.loads(json.dumps(record).replace('"r1"', f'"{key}"').replace("|r1|", f"|{key}|"))
    return whole


def refused(shop_: Shop, record: dict[str, Any]) -> Refused:
    before, stored = shop_.workshop.ledger.state, shop_.workshop.log.last_seq()
    with pytest.raises(Refused) as why:
        import_run(shop_.workshop, record)
    assert shop_.workshop.log.last_seq() == stored
    assert shop_.workshop.ledger.state == before
    return why.value


@pytest.mark.parametrize(
    ("kind", "body"),
    [
        ("run finished", {}),
        ("run abandoned", {}),
        ("note written", {"text": "hello"}),
        ("orders changed", {"orders": []}),
    ],
)
def test_a_file_says_nothing_of_another_run(busy: Shop, host: Shop, kind: str, body: dict[str, Any]) -> None:
    file = with_events(renamed(export_run(busy.workshop, "r1")), an_event(1, kind, run="r2", body=body))

    why = refused(host, file)

    assert why.code == "file other run"
    assert why.facts["run"] == "r2"


def test_a_file_opens_no_second_run(busy: Shop, host: Shop) -> None:
    record = renamed(export_run(busy.workshop, "r1"))
    opened = {**record["events"][0], "id": "harm-0001", "run": "f2"}

    assert refused(host, with_events(record, opened)).code == "file other run"


@pytest.mark.parametrize("kind", ["event undone", "event amended", "entry settled"])
def test_a_file_corrects_only_what_is_in_it(busy: Shop, host: Shop, kind: str) -> None:
    body = {"event": "press-501"} | ({"keep": "press"} if kind == "entry settled" else {})
    file = with_events(renamed(export_run(busy.workshop, "r1")), an_event(1, kind, body=body))

    assert refused(host, file).code == "file other run"


@pytest.mark.parametrize(
    ("kind", "fields"),
    [
        ("station out of use", {"station": "cnc", "body": {"why": "mine now"}}),
        ("station out of use", {"station": "cnc", "run": "f1"}),
        ("station back in use", {"station": "cnc"}),
        ("signal received", {"station": "cnc", "body": {"on": False}}),
        ("person went", {"person": "ben"}),
        ("person went", {"person": "ben", "run": "f1"}),
        ("person called away", {"person": "ben"}),
        ("person came", {"person": "ann", "body": {"until": "2026-06-03T22:00:00Z"}}),
        ("time said", {"person": "ben", "body": {"until": "2026-06-02T16:45:00Z"}}),
        ("job started", {"person": "ben", "body": {"job": "bins"}}),
        ("move declined", {"person": "ben", "body": {"move": "load started|r2|cut/1", "because": "no"}}),
        ("server restarted", {"body": {"open": ["r2|cut/1"]}}),
        ("alert answered", {"body": {"alert": "watch check|r2|cut/1|1|0", "answer": "stopped"}}),
        ("restart answered", {"body": {"restart": "press-501"}}),
    ],
)
def test_what_a_file_says_of_the_shop_changes_nothing_here(
    busy: Shop, host: Shop, kind: str, fields: dict[str, Any]
) -> None:
    before = host.workshop.ledger.state
    file = with_events(renamed(export_run(busy.workshop, "r1")), an_event(1, kind, at="2026-06-02T16:40:00Z", **fields))

    import_run(host.workshop, file)

    after = host.workshop.ledger.state
    assert "f1" in after.runs
    assert outside(after) == outside(before)


def outside(state: ShopState) -> Any:
    """What of a shop is no affair of the run f1."""
    people = {key: (one.came_at, one.until, one.away, one.hands, one.declined) for key, one in state.people.items()}
    return (
        {key: run for key, run in state.runs.items() if key != "f1"},
        {key: (one.out, one.signal, one.load) for key, one in state.stations.items() if key == "cnc"},
        people.get("ben"),
        people["ann"][:3] if "ann" in people else (None, None, False),
        state.unsettled,
        state.asks,
    )


def test_a_run_that_was_worked_where_this_shop_worked_is_refused(busy: Shop, host: Shop) -> None:
    at = "2026-06-02T16:06:00Z"  # r2 is at the CNC
    file = with_events(
        renamed(export_run(busy.workshop, "r1")),
        an_event(1, "machine started", at="2026-06-02T16:01:00Z", run="f1", load="cut/2"),
        an_event(2, "machine ended", at=at, run="f1", load="cut/2"),
    )

    why = refused(host, file)

    assert why.code == "file outside"
    assert why.facts["what"] == "run"


def test_an_amendment_in_a_file_leaves_an_event(busy: Shop) -> None:
    other = friend(busy)
    record = export_run(busy.workshop, "r1")
    amends = {"event": record["events"][0]["id"], "body": {"trays": "gone"}}

    with pytest.raises(Refused) as why:
        import_run(other, with_events(record, an_event(1, "event amended", body=amends)))

    assert why.value.code == "file event wrong"
    assert other.log.last_seq() == 0


def test_a_file_is_looked_at_before_it_is_taken(busy: Shop) -> None:
    other = friend(busy)
    record = with_events(export_run(busy.workshop, "r1"), an_event(1, "station out of use", station="laser"))

    found = look_at_run(other, record)

    assert (found.run.name, found.is_new, other.log.last_seq()) == ("Entry key rails, run 1", True, 0)
    assert found.left_out == {"station out of use": 1}
    assert len(found.fresh) == import_run(other, record)


def test_an_unknown_run_cannot_be_exported(busy: Shop) -> None:
    with pytest.raises(Refused):
        export_run(busy.workshop, "r9")
