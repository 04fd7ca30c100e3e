"""All that plans beside the server: the compiled rule is loaded into it only where somebody presses."""

import pytest

from runboard.floor.planning import planning
from runboard.floor.planning.planning import Planning
from runboard.floor.pressing.taps import take_taps
from runboard.floor.workshop import Workshop
from runboard.plan.schedule.rule import rule
from tests.floor.fakes import FakeKept, FakeWork
from tests.floor.fakes import workshop as fake_workshop
from tests.scenario import shop


@pytest.fixture
def floor() -> Workshop:
    return fake_workshop(shop())


@pytest.fixture
def loads(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What was loaded; nothing was compiled or kept before."""
    found: list[str] = []
    monkeypatch.setattr(rule, "_WARM", [])
    monkeypatch.setattr(rule, "_KEPT", [])
    monkeypatch.setattr(planning, "warm", lambda: bool(found.append("warm")) or True)
    return found


def press(floor: Workshop, key: str) -> None:
    at = floor.clock.now().isoformat()
    tap = {"id": f"press-{key}", "kind": "person came", "at": at, "person": "ann", "seen": 2**50, "body": {}}
    (answer,) = take_taps(floor, {"device": "phone", "sent_at": at, "taps": [tap]})["taps"]
    assert answer["answer"] == "accepted", answer


def test_the_compiled_rule_is_loaded_at_the_first_press_after_it_was_kept(floor: Workshop, loads: list[str]) -> None:
    child = FakeKept(prepared=None)
    beside = Planning(floor, child, FakeWork(), lambda seq: None, loaded=lambda: loads.append("told"))
    press(floor, "a")
    beside.turn()
    assert not rule.is_at_hand(), "while the child compiles"

    child.prepared = True
    beside.turn()
    beside.turn()
    assert rule.is_at_hand(), "for children"
    assert loads == [], "nobody has pressed since"

    press(floor, "b")
    beside.turn()
    assert loads == ["warm", "told"]


def test_without_a_compiler_nothing_is_loaded(floor: Workshop, loads: list[str]) -> None:
    beside = Planning(floor, FakeKept(prepared=False), FakeWork(), lambda seq: None, loaded=lambda: None)
    beside.turn()

    press(floor, "a")
    beside.turn()

    assert not rule.is_at_hand()
    assert loads == []
