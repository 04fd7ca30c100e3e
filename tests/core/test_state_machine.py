"""Any order of taps from three phones keeps the rules; most are taken, and everything there is, is reached."""

from random import Random

import pytest
from hypothesis import HealthCheck, settings
from hypothesis.stateful import run_state_machine_as_test

from runboard.run.fold import ledger as ledgers
from runboard.run.log.kinds import KINDS
from tests.core.taps import Tally, Taps
from tests.examples import examples


@pytest.fixture(autouse=True)
def tally(monkeypatch: pytest.MonkeyPatch) -> Tally:
    """A fresh tally; and snapshots so often that a late press of a short log rewinds to one."""
    monkeypatch.setattr(ledgers, "SNAPSHOT_EVERY", 8)
    monkeypatch.setattr(ledgers, "RECENT", 4)
    monkeypatch.setattr(Taps, "tally", Tally())
    return Taps.tally


def test_any_order_of_taps_from_three_phones_keeps_the_rules(tally: Tally) -> None:
    run_state_machine_as_test(
        Taps,
        settings=settings(
            max_examples=examples(30),
            stateful_step_count=50,
            derandomize=True,
            database=None,
            suppress_health_check=list(HealthCheck),
        ),
    )

    assert tally.answers["taken"] >= 0.6 * sum(tally.answers.values()), tally.answers


def an_evening(random: Random, steps: int) -> None:
    """The machine's rules by dice of our own: what Hypothesis draws depends on the modules that are loaded."""
    machine = Taps()
    machine.opens()
    for _ in range(steps):
        name, arguments = random.choice(RULES)
        drawn = {"random": random, "which": random.randrange(3), "other": random.randrange(3)}
        drawn |= {"presses": random.randint(2, 9), "minutes": random.choice((1, 5, 15, 40)), "on": True}
        getattr(machine, name)(**{argument: drawn[argument] for argument in arguments})
        machine.pieces_are_conserved()
        machine.nobody_and_nothing_is_in_two_places()
        machine.the_live_state_is_the_rebuilt_one()
        machine.note_what_was_reached()
    machine.teardown()


RULES = (
    ("presses", ("random", "which", "presses")),
    ("presses", ("random", "which", "presses")),
    ("presses_what_is_rare", ("random", "which")),
    ("presses_what_is_rare", ("random", "which")),
    ("finishes_and_starts_the_next", ("random", "which")),
    ("says_it_late", ("random", "which", "minutes")),
    ("both_work_and_one_is_offline", ("random", "which", "other")),
    ("loses_the_network", ("which",)),
    ("finds_the_network", ("which",)),
    ("settles_what_did_not_fit", ("random", "which")),
    ("sends_twice", ("random", "which")),
    ("waits", ("minutes",)),
    ("undoes_the_last_press", ("which",)),
    ("amends_a_count", ("random", "which")),
    ("a_second_run_is_opened", ()),
    ("a_run_is_changed", ("random",)),
    ("a_run_is_closed", ("random",)),
    ("the_server_comes_back", ()),
    ("a_sensor_says", ("on",)),
)


def test_most_presses_are_taken_and_everything_is_reached(tally: Tally) -> None:
    random = Random(1)

    for _ in range(20):
        an_evening(random, 60)

    presses = sum(tally.answers.values())
    assert presses > 1000
    assert tally.answers["taken"] >= 0.6 * presses, tally.answers
    assert tally.answers["to settle"] > 20
    assert set(KINDS) - set(tally.kinds) == set()
    for wanted in ("rework joins again", "split", "partial load", "two open runs", "waiting"):
        assert tally.reached[wanted], wanted
