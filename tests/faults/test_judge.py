"""The judge of a storm's alarms: a page rings by its own seconds, and goes on while a moment goes and comes back unheard."""

from dataclasses import replace
from threading import Event
from typing import Any

import pytest

from runboard.run.fold.shown import MOST_SHOWN
from runboard.run.fold.state import Unsettled
from tests.core.pressing import Floor
from tests.faults.alarms import Episode, lateness, rang_first
from tests.faults.outbox import Wire
from tests.faults.report import _as_seen
from tests.faults.watcher import Watcher

KEY = ("end", "2026-03-07T09:00:10.000Z")
DUE_AT = 1772874010.0


def page() -> Watcher:
    over: Any = Event()
    return Watcher(Wire("http://127.0.0.1", ""), "ann", over)


def said(*keys: tuple[str, str]) -> dict[str, Any]:
    return {"dues": [{"id": key, "due_at": due_at} for key, due_at in keys]}


def test_a_page_that_holds_a_moment_rings_for_it_though_nobody_answers() -> None:
    watcher = page()
    watcher.shown(said(KEY), DUE_AT - 5)

    watcher.second(DUE_AT - 0.5)
    watcher.second(DUE_AT + 0.5)
    watcher.second(DUE_AT + 1.5)

    assert watcher.rang == [[*KEY, DUE_AT + 0.5, float("inf")]]


def test_a_page_ends_ringing_when_it_hears_of_the_answer() -> None:
    watcher = page()
    watcher.shown(said(KEY), DUE_AT + 1)

    watcher.shown(said(), DUE_AT + 4)

    assert watcher.rang == [[*KEY, DUE_AT + 1, DUE_AT + 4]]


def test_a_moment_that_comes_back_while_the_page_still_rings_has_rung() -> None:
    again = Episode(KEY, "nobody near", DUE_AT, put_at=DUE_AT + 7, gone_at=float("inf"))

    assert rang_first(again, [(KEY, DUE_AT + 1, float("inf"))]) == again.begins
    assert rang_first(again, [(KEY, DUE_AT + 1, DUE_AT + 6)]) is None
    assert rang_first(again, [(KEY, DUE_AT + 1, DUE_AT + 6), (KEY, DUE_AT + 9, DUE_AT + 20)]) == DUE_AT + 9


def test_what_a_freeze_took_is_no_lateness_of_a_server_that_was_up() -> None:
    due = Episode(KEY, "end", DUE_AT, put_at=DUE_AT - 60, gone_at=float("inf"))
    up = [(DUE_AT - 90, DUE_AT + 0.25), (DUE_AT + 4.25, DUE_AT + 60)]

    assert lateness(due, DUE_AT + 0.2, up) == (pytest.approx(0.2), True)
    assert lateness(due, DUE_AT + 5.0, up) == (pytest.approx(1.0), False)
    assert lateness(Episode(KEY, "end", DUE_AT + 1, DUE_AT - 60, float("inf")), DUE_AT + 5.0, up) == (
        pytest.approx(0.75),
        False,
    )


def test_a_phone_is_held_to_the_newest_of_what_does_not_fit_as_a_page_is_told_them() -> None:
    floor = Floor()
    floor.open_run(trays=3)
    source = floor.event("load started", run="r1", load="cut/1")
    entries = {
        f"event-{at}": Unsettled(f"event-{at}", "load started", "r1", "cut/1", "ann", floor.now, "no", {}, source)
        for at in range(MOST_SHOWN + 3)
    }

    seen = _as_seen(replace(floor.state, unsettled=entries), floor.book)

    assert [one["event"] for one in seen["unsettled"]] == list(entries)[3:]
