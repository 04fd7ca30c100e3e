"""The history of a tray: what concerns it and nothing else, oldest first, what was undone marked."""

from runboard.review.history import HistoryEntry, tray_history
from tests.core.pressing import Floor


def history(floor: Floor, tray: str) -> list[HistoryEntry]:
    return tray_history(floor.run, tray, floor.ledger.arrived, floor.state.unsettled)


def kinds(floor: Floor, tray: str) -> list[str]:
    return [one.kind for one in history(floor, tray)]


def test_a_tray_has_its_own_presses_and_those_of_its_board() -> None:
    floor = Floor()
    floor.open_run(trays=4)
    floor.press("load started", run="r1", load="cut/1")
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load started", run="r1", load="clean/3")

    assert kinds(floor, "3") == ["run opened", "load started", "load done", "load started"]
    assert kinds(floor, "1") == ["run opened", "load started", "load done"]
    assert kinds(floor, "4") == ["run opened"]


def test_an_entry_says_the_steps_name_and_the_counts_of_this_tray() -> None:
    floor = Floor()
    floor.open_run()
    counts = {"1": {"good": 4, "scrap": [{"pieces": 1, "why": "tear-out"}]}, "2": {"good": 5}, "3": {"good": 5}}
    floor.press("load started", run="r1", load="cut/1")
    floor.press("load done", {"counts": counts}, run="r1", load="cut/1")

    one, two = history(floor, "1")[-1], history(floor, "2")[-1]

    assert one.facts == {"step": "Cut", "good": 4, "scrap": 1, "why": "tear-out"}
    assert two.facts == {"step": "Cut", "good": 5, "scrap": 0}
    assert (one.person, one.basis, one.undone) == ("ann", "tapped", False)


def test_what_was_undone_stays_and_is_marked() -> None:
    floor = Floor()
    floor.open_run()
    press = floor.press("load started", run="r1", load="clean/1")

    floor.press("event undone", {"event": press.id})

    assert [(one.kind, one.undone) for one in history(floor, "1")] == [("run opened", False), ("load started", True)]


def test_pieces_that_move_stand_in_both_trays() -> None:
    floor = Floor()
    floor.open_run()
    body = {"to": "1a", "pieces": 2, "to_operation": "cut", "why": "rework"}
    floor.press("pieces moved", body, run="r1", tray="1", operation="cut")

    facts = {"why": "rework", "step": "Cut", "from": "1", "to": "1a", "pieces": 2, "to_step": "Cut"}
    assert history(floor, "1")[-1].facts == facts
    assert history(floor, "1a")[-1].facts == facts


def test_late_entries_stand_where_they_happened() -> None:
    floor = Floor()
    floor.open_run()
    floor.wait(60)
    floor.press("load started", run="r1", load="clean/1")
    floor.late(30, "wood noted", {"wood": "oak"}, run="r1", tray="1")

    assert kinds(floor, "1") == ["run opened", "wood noted", "load started"]


def test_pieces_on_hold_stand_in_their_own_trays_history_and_in_no_others() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("pieces held", {"pieces": 2, "why": "knot"}, run="r1", tray="1", operation="cut")

    assert kinds(floor, "1") == ["run opened", "pieces held"]
    assert kinds(floor, "2") == ["run opened"]
