"""How many to start: enough with the wanted certainty, whole loads, and rates that say where they come from."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binom

from runboard.plan.extras import chance_of_enough, pieces_to_start
from runboard.plan.good_rate import good_rate_from_counts, route_good_rate, until_personal
from runboard.run.refusal import Refused
from runboard.shop.product import Operation, Pass

PASS = (Pass("1", ""),)


@settings(max_examples=100)
@given(st.integers(1, 300), st.floats(0.2, 1), st.floats(0.05, 0.999))
def test_one_fewer_would_not_be_certain_enough(wanted: int, good_rate: float, certainty: float) -> None:
    start = pieces_to_start(wanted, good_rate, certainty)

    assert start.chance >= certainty - 1e-9
    assert start.start == wanted or chance_of_enough(start.start - 1, wanted, good_rate) < certainty + 1e-9


def test_starts_round_up_to_whole_loads_and_say_the_true_chance() -> None:
    start = pieces_to_start(24, 0.85, 0.95, load_pieces=15)

    assert (start.fewest, start.loads, start.start, start.extra) == (32, 3, 45, 21)
    assert start.chance == pytest.approx(chance_of_enough(45, 24, 0.85))
    assert start.chance > 0.9999


def test_nothing_extra_where_every_piece_comes_good() -> None:
    start = pieces_to_start(12, 1.0, 0.99)

    assert (start.start, start.extra, start.chance) == (12, 0, 1.0)


def test_nothing_wanted_starts_nothing() -> None:
    assert pieces_to_start(0, 0.5, 0.9, load_pieces=5).start == 0


@pytest.mark.parametrize("good_rate", [0, -0.1, 1.1, float("nan")])
def test_what_is_no_good_rate_is_refused(good_rate: float) -> None:
    with pytest.raises(Refused) as refused:
        pieces_to_start(10, good_rate, 0.9)

    assert refused.value.code == "good rate out of range"


@pytest.mark.parametrize("certainty", [-0.1, 1, 0.99999, float("nan")])
def test_a_certainty_nobody_can_promise_is_refused(certainty: float) -> None:
    with pytest.raises(Refused) as refused:
        pieces_to_start(10, 0.9, certainty)

    assert refused.value.code == "certainty out of range"


def test_thousands_are_answered() -> None:
    start = pieces_to_start(5000, 0.5, 0.95)

    assert binom.sf(4999, start.start, 0.5) >= 0.95 > binom.sf(4999, start.start - 1, 0.5)


def test_a_rate_that_nobody_counted_is_a_guess_and_says_so() -> None:
    assert good_rate_from_counts(0, 0, 0.9).said == "guess"
    assert good_rate_from_counts(0, 0, 0.9).rate == 0.9


def test_counted_pieces_move_the_guess_and_many_replace_it() -> None:
    few, many = good_rate_from_counts(8, 2, 0.9), good_rate_from_counts(800, 200, 0.9)

    assert few.said == "counted 10"
    assert few.rate == pytest.approx(0.85)
    assert many.rate == pytest.approx(0.8, abs=0.002)


def test_a_route_comes_good_as_its_steps_together_do() -> None:
    steps = [
        Operation("cut", "Cut", "cnc", PASS, good_rate=0.9),
        Operation("sand", "Sand", "sander", PASS, good_rate=0.8),
    ]

    guessed, counted = route_good_rate(steps), route_good_rate(steps, {"sand": (40, 0)})

    assert (guessed.rate, guessed.said) == (pytest.approx(0.72), "guess")
    assert (counted.rate, counted.said) == (pytest.approx(0.9 * 48 / 50), "counted 40")


def test_extras_are_blanks_up_to_where_pieces_become_personal() -> None:
    steps = [
        Operation("cut", "Cut", "cnc", PASS),
        Operation("engrave", "Engrave", "laser", PASS, personal=True),
        Operation("oil", "Oil", "corner", PASS),
    ]

    assert [step.key for step in until_personal(steps)] == ["cut", "engrave"]
    assert len(until_personal(steps[:1])) == 1
