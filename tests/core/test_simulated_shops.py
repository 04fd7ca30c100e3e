"""The made-up shops that the review is tried on are shops as the product knows them, and their truth is one."""

from collections import defaultdict
from dataclasses import replace

import pytest

from runboard.run.fold.decide import decide
from runboard.run.fold.ledger import Ledger
from runboard.run.log.event import Event
from tests.core.pressing import conserved
from tests.examples import examples
from tests.simulated.history import History, history
from tests.simulated.luck import Luck
from tests.simulated.shops import MEANT, shop
from tests.simulated.truth import is_right, longer_hours, more_of, moved, quicker_hands, reliefs
from tests.simulated.working import worked
from tests.simulated.world import moment

SHOPS = range(examples(2 * len(MEANT)))


def spans(past: History) -> dict[str, list[tuple[float, float]]]:
    """When each person's hands were at something, in seconds."""
    found = defaultdict(list)
    for run in past.state.runs.values():
        for load in run.past.values():
            for span in load.spans:
                assert span.ended_at is not None
                found[span.person].append((span.began_at.timestamp(), span.ended_at.timestamp()))
    found.pop("", None)
    return found


@pytest.mark.parametrize("seed", SHOPS)
def test_a_log_of_a_made_up_shop_folds_with_nothing_to_settle(seed: int):
    past = history(replace(shop(seed), works=tuple(replace(work, scrap=0.05) for work in shop(seed).works)), seed)

    state = past.state

    run = state.runs["r1"]
    assert not state.unsettled
    assert run.state == "finished"
    assert run.closed_at == moment(past.courses[0].finished)
    assert conserved(run)
    assert sum(tray.good for tray in run.trays.values()) == past.courses[0].good < run_pieces(past)


def run_pieces(past: History) -> int:
    return past.world.pieces


@pytest.mark.parametrize("seed", range(len(MEANT)))
def test_every_press_of_a_made_up_shop_is_taken_from_a_phone_that_is_up_to_date(seed: int):
    past = history(shop(seed), seed, look_every=2)
    ledger = Ledger(past.book)

    for event in past.events:
        seen: Event = replace(event, seen=ledger.last_seq)
        ledger.keep(decide(ledger, seen), ledger.last_seq + 1)

    assert ledger.state.runs["r1"].state == "finished"


@pytest.mark.parametrize("seed", SHOPS)
def test_nobody_in_a_made_up_shop_is_at_two_things_at_once(seed: int):
    past = history(shop(seed), seed)

    for person, at_work in spans(past).items():
        ends = [ended for _, ended in sorted(at_work)]
        assert all(began >= before for (began, _), before in zip(sorted(at_work)[1:], ends, strict=False)), person


def test_hands_in_the_log_are_as_long_as_they_really_were():
    past = history(shop(0), 0, extras=6)

    found = sum(ended - began for at_work in spans(past).values() for began, ended in at_work)

    assert found / 60 == pytest.approx(past.courses[0].hands, abs=0.01)


def test_the_same_seed_makes_the_same_run_and_another_seed_another():
    one, same, other = (history(shop(3), seed, runs=2) for seed in (1, 1, 2))

    assert one.events == same.events
    assert one.events != other.events
    assert len(one.state.runs) == 2


# Of each kind one whose people are there by day: in evenings hours may hold more.
@pytest.mark.parametrize("seed", [0, 7, 2, 3, 28, 5])
def test_what_a_made_up_shop_was_meant_to_be_held_by_moves_its_finish_most(seed: int):
    world = shop(seed)

    found = moved(world, reliefs(world), range(examples(5)))

    assert is_right(world.designed, found)


def test_a_change_that_changes_nothing_moves_no_finish():
    world = shop(2)

    found = moved(world, {("same", ""): lambda world: world}, range(5))

    assert found["same", ""].earlier == found["same", ""].error == 0


def test_quicker_hands_and_longer_hours_are_worth_something_only_where_they_are_short():
    by_hand, by_machine = shop(0), shop(1)

    hands = {world.name: worked(world, Luck(1)).finished - worked(quicker_hands(world, "ann"), Luck(1)).finished
             for world in (by_hand, by_machine)}  # fmt: skip

    assert hands[by_hand.name] > 5 * hands[by_machine.name]
    assert worked(longer_hours(shop(4)), Luck(1)).finished < worked(shop(4), Luck(1)).finished
    assert worked(more_of(by_hand, "rack", 5), Luck(1)).finished == worked(by_hand, Luck(1)).finished
