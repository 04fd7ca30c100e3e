"""A run out of one shop and into another: the same events, the same state."""

import json
from typing import Any

import pytest

from runboard.floor.exchange import export_run, import_run
from runboard.floor.runs import Wish, open_run
from runboard.floor.taps import take_taps
from runboard.run.dues import dues
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


def passed_on(record: dict[str, Any]) -> Any:
    return json.loads(json.dumps(record))


def test_a_run_folds_to_the_same_state_in_another_shop(busy: Shop) -> None:
    other = workshop(shop())

    record = export_run(busy.workshop, "r1")
    import_run(other, passed_on(record))

    assert {one["event"]["kind"] for one in record["stand_ins"]} == {"load put aside", "setup changed"}
    assert other.ledger.state.runs["r1"] == busy.workshop.ledger.state.runs["r1"]
    assert set(other.ledger.state.runs) == {"r1"}
    assert not other.ledger.state.unsettled


def test_the_same_file_twice_adds_nothing(busy: Shop) -> None:
    other = workshop(shop())
    record = export_run(busy.workshop, "r1")

    assert import_run(other, record) > 0
    assert import_run(other, record) == 0


def test_a_run_that_is_here_already_is_left_as_it_is(busy: Shop) -> None:
    before = busy.workshop.ledger.state

    assert import_run(busy.workshop, export_run(busy.workshop, "r1")) == 0

    assert busy.workshop.ledger.state == before


def test_what_happened_since_is_added(busy: Shop) -> None:
    other = workshop(shop())
    import_run(other, export_run(busy.workshop, "r1"))

    busy.press("load done", run="r1", load="clean/1")
    added = import_run(other, export_run(busy.workshop, "r1"))

    assert added == 1
    assert other.ledger.state.runs["r1"] == busy.workshop.ledger.state.runs["r1"]


def test_its_timers_come_with_it(busy: Shop) -> None:
    busy.press("load done", run="r1", load="clean/1")
    busy.press("load started", run="r2", load="clean/1")
    other = workshop(shop())

    import_run(other, export_run(busy.workshop, "r2"))

    there, here = other.log.dues, busy.workshop.log.dues  # type: ignore[attr-defined]
    assert {key for key in there if "r2" in key} == {key for key in here if "r2" in key}


def test_what_was_said_of_its_rags_comes_with_it(busy: Shop) -> None:
    for run in ("r1", "r2"):
        busy.press("load done", run=run, load="oil/2", person="ben")
    for kind in ("care end", "care morning"):
        open_ = [one.id for one in dues(busy.workshop.ledger.state, busy.workshop.book).values() if one.kind == kind]
        busy.press("reminder answered", {"reminder": open_[0], "done": "in water, in the can"})
    other = workshop(shop())

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
    other = workshop(shop())

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


def test_an_unknown_run_cannot_be_exported(busy: Shop) -> None:
    with pytest.raises(Refused):
        export_run(busy.workshop, "r9")
