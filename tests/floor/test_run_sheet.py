"""The run sheet: a look is passed by initials, as it stood; a stop by nobody."""

import pytest

from runboard.floor.changing import run_sheet as looking
from runboard.floor.changing.run_sheet import pass_look, run_sheet_of
from runboard.floor.changing.runs import new_event
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.plan.before.finding import Finding, Level
from runboard.plan.before.run_sheet import RunSheet
from runboard.run.refusal import Refused
from tests.floor.test_exchange import Shop


@pytest.fixture
def workshop() -> Workshop:
    return Shop().workshop


def finds(monkeypatch: pytest.MonkeyPatch, *found: Finding) -> None:
    monkeypatch.setattr(looking, "LOOKS", (lambda asked: found,))


def boards(short: int, level: Level = "look") -> Finding:
    return Finding("stock", level, "boards-short", {"short": short})


def pass_it(workshop: Workshop, finding: Finding, initials: str = "AN") -> RunSheet:
    pass_look(workshop, "r1", finding.check, finding.mark, initials, "ann")
    return run_sheet_of(workshop, "r1")


def test_a_look_is_open_until_somebody_says_by_initials_that_they_looked(
    workshop: Workshop, monkeypatch: pytest.MonkeyPatch
) -> None:
    finds(monkeypatch, Finding("wood", "green", "wood-fine"), boards(2))
    before = run_sheet_of(workshop, "r1")

    after = pass_it(workshop, boards(2))

    assert (before.looks, before.is_ready) == (1, False)
    assert [each.finding.check for each in before.checked] == ["stock", "wood"]
    assert (after.looks, after.is_ready) == (0, True)
    assert after.checked[0].passed is not None
    assert (after.checked[0].passed.initials, after.checked[0].passed.person) == ("AN", "ann")


def test_what_is_found_anew_is_asked_again(workshop: Workshop, monkeypatch: pytest.MonkeyPatch) -> None:
    finds(monkeypatch, boards(2))
    pass_it(workshop, boards(2))

    finds(monkeypatch, boards(3))

    assert run_sheet_of(workshop, "r1").looks == 1


def test_passing_twice_is_one_press_in_the_log(workshop: Workshop, monkeypatch: pytest.MonkeyPatch) -> None:
    finds(monkeypatch, boards(2))
    pass_it(workshop, boards(2))
    pass_it(workshop, boards(2), "KM")

    assert [event.get("initials") for event in workshop.ledger.held if event.kind == "look passed"] == ["AN"]


@pytest.mark.parametrize(
    ("shown", "stands", "initials", "code"),
    [
        (boards(2), boards(2), "  ", "initials missing"),
        (boards(2), boards(3), "AN", "look changed"),
        (Finding("gone", "look", "boards-short"), boards(3), "AN", "look changed"),
        (boards(2, "stop"), boards(2, "stop"), "AN", "look stops"),
    ],
)
def test_nobody_goes_past(
    workshop: Workshop,
    monkeypatch: pytest.MonkeyPatch,
    shown: Finding,
    stands: Finding,
    initials: str,
    code: str,
) -> None:
    finds(monkeypatch, stands)

    with pytest.raises(Refused) as refused:
        pass_it(workshop, shown, initials)

    assert refused.value.code == code
    assert not run_sheet_of(workshop, "r1").is_ready


def test_passing_can_be_undone_like_any_press(workshop: Workshop, monkeypatch: pytest.MonkeyPatch) -> None:
    finds(monkeypatch, boards(2))
    pass_it(workshop, boards(2))
    passed = next(event for event in workshop.ledger.held if event.kind == "look passed")

    record_events(workshop, [new_event(workshop, "event undone", {"event": passed.id}, person="ann")])

    assert run_sheet_of(workshop, "r1").looks == 1
