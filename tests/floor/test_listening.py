"""A look at a watched machine is asked of its watcher alone at first, while their page hears it; of all once it is missed."""

import json
from datetime import timedelta
from typing import Any

import pytest

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.looking.listening import LISTENS_FOR, note_page, pushed_to
from runboard.floor.looking.look import state_for
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.run.calls.climb import Steps
from runboard.run.calls.dues import MISSED_AFTER, Due, dues
from runboard.run.calls.push import pushings
from tests.floor.fakes import FakeClock, workshop
from tests.scenario import shop


@pytest.fixture
def here() -> Workshop:
    """Ann watches the laser, Ben is at the bench; both have come."""
    found = workshop(shop())
    run = open_run(found, Wish("rail", [{"line": "1", "pieces": 12}]))
    tell(found, "person came", {"room": "shop"}, person="ben")
    tell(found, "person came", {"room": "house"}, person="ann")
    tell(found, "machine started", {"minutes": 20}, run=run, load="engrave/1", person="ann")
    return found


def tell(here: Workshop, kind: str, body: dict[str, Any], **fields: str) -> None:
    passes(here, timedelta(seconds=1))
    record_events(here, [new_event(here, kind, body, **fields)])


def passes(here: Workshop, span: timedelta) -> None:
    assert isinstance(here.clock, FakeClock)
    here.clock.moment += span


def due(here: Workshop, kind: str = "watch check") -> Due:
    return next(one for one in dues(here.ledger.state, here.book).values() if one.kind == kind)


def first(here: Workshop, kind: str = "watch check") -> str:
    """Who is asked alone, as Ben's page is told."""
    state = json.loads(state_for(here, "ben")[1])
    return next((one.get("first", "") for one in state["dues"] if one["kind"] == kind), "")


def test_a_look_is_asked_of_its_watcher_alone_while_their_page_hears_it(here: Workshop) -> None:
    note_page(here, "ann", "", hears=True)

    assert first(here) == "ann"
    assert first(here, "machine end") == ""


def test_everybody_is_asked_at_once_where_no_page_of_the_watcher_may_sound(here: Workshop) -> None:
    note_page(here, "ann", "", hears=False)
    note_page(here, "ben", "", hears=True)

    assert first(here) == ""


def test_everybody_is_asked_as_soon_as_the_watchers_page_has_fallen_silent(here: Workshop) -> None:
    note_page(here, "ann", "", hears=True)
    before = state_for(here, "ben")[0]

    passes(here, LISTENS_FOR + timedelta(seconds=1))

    assert first(here) == ""
    assert state_for(here, "ben")[0] != before


@pytest.mark.parametrize(("kind", "body"), [("person called away", {}), ("room changed", {"room": "shop"})])
def test_everybody_is_asked_at_once_where_the_watcher_is_gone(here: Workshop, kind: str, body: dict[str, Any]) -> None:
    note_page(here, "ann", "", hears=True)

    tell(here, kind, body, person="ann")

    assert first(here) == ""


def test_nobody_near_is_told_to_everybody_at_once(here: Workshop) -> None:
    note_page(here, "ann", "annas", hears=True)
    tell(here, "room changed", {"room": "shop"}, person="ann")

    assert first(here, "nobody near") == ""
    assert pushed_to(here, due(here, "nobody near")) == [""]


def test_whoever_takes_the_watch_is_asked_first_from_then_on(here: Workshop) -> None:
    for person in ("ann", "ben"):
        note_page(here, person, "", hears=True)

    tell(here, "watch taken", {}, run="r1", load="engrave/1", person="ben")

    assert first(here) == "ben"


def test_a_person_whom_nobody_knows_listens_to_nothing(here: Workshop) -> None:
    for number in range(50):
        note_page(here, f"nobody {number}", f"device {number}", hears=True)

    assert not vars(here.kept.get("pages", object)).get("heard")


def test_a_look_is_pushed_to_the_watchers_own_phone_and_to_all_once_it_is_missed(here: Workshop) -> None:
    look = due(here)
    for person in ("ann", "ben"):
        note_page(here, person, f"phone of {person}", hears=True)
    passes(here, look.due_at - here.clock.now())
    for person in ("ann", "ben"):
        note_page(here, person, f"phone of {person}", hears=True)

    assert pushed_to(here, look) == ["phone of ann"]
    passes(here, MISSED_AFTER)
    note_page(here, "ann", "phone of ann", hears=True)
    assert pushed_to(here, look) == [""]


def test_a_look_is_pushed_again_when_it_is_missed_and_everybody_is_asked(here: Workshop) -> None:
    look = due(here)

    sent = [pushings(look, Steps(), look.due_at + timedelta(seconds=seconds)) for seconds in (-1, 0, 19, 20, 59, 60)]

    assert sent == [0, 1, 1, 2, 2, 3]
