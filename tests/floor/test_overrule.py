"""Overruling a time: what is refused, and that one press takes it back."""

from datetime import timedelta

import pytest

from runboard.floor.changing.overrule import overrule_time, take_back_time
from runboard.floor.changing.runs import new_event
from runboard.floor.looking.look_back import estimates_now
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.plan.estimates import KnownTime
from runboard.run.refusal import Refused
from tests.floor.test_exchange import Shop


def shop() -> Workshop:
    return Shop().workshop


def clean(workshop: Workshop) -> KnownTime:
    run = workshop.ledger.state.runs["r1"]
    step = run.route.step("clean")
    assert step is not None
    return estimates_now(workshop).of(run, step, "hand")


def test_it_is_what_everybody_reckons_with_until_it_is_taken_back() -> None:
    workshop = shop()

    event = overrule_time(workshop, "rail", "clean", "hand", 3.5, "a new brush", "ann")
    said = clean(workshop)
    record_events(workshop, [new_event(workshop, "event undone", {"event": event.id}, person="ann")])

    assert (said.length, said.said) == (timedelta(minutes=3.5), "said")
    assert clean(workshop).said == "guess"


def test_what_was_taken_back_is_not_taken_back_twice() -> None:
    workshop = shop()
    event = overrule_time(workshop, "rail", "clean", "hand", 3.5, "a new brush", "ann")

    take_back_time(workshop, event.id, "ann")
    with pytest.raises(Refused) as refused:
        take_back_time(workshop, event.id, "ann")

    assert (clean(workshop).said, refused.value.code) == ("guess", "time taken back")


@pytest.mark.parametrize(
    ("asked", "code"),
    [
        ({"product": "lamp"}, "product unknown"),
        ({"step": "paint"}, "step unknown"),
        ({"kind": "machine"}, "time not on route"),
        ({"kind": "wait"}, "time not on route"),
        ({"why": " "}, "why missing"),
        ({"minutes": -1}, "form"),
    ],
)
def test_what_is_wrong_is_refused_and_nothing_is_kept(asked: dict, code: str) -> None:
    workshop = shop()

    with pytest.raises(Refused) as refused:
        overrule_time(
            workshop, **{"product": "rail", "step": "clean", "kind": "hand", "minutes": 3, "why": "so", **asked}
        )

    assert (refused.value.code, workshop.ledger.state.overruled) == (code, {})
