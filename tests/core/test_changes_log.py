import pytest

from runboard.run.refusal import Refused
from tests.core.pressing import Floor

RANGE = {"low": 50, "mid": 60, "high": 75}
CHANGE = {"kind": "capacity", "service": "rack", "capacity": 12}
ADOPTED = {"of": "rail", "change": CHANGE, "earlier": RANGE, "hands": {"low": 0, "mid": 0, "high": 0}, "did": "book"}
SAVED = {"low": 38, "mid": 45, "high": 52}


def adopted() -> Floor:
    floor = Floor()
    floor.open_run()
    floor.press("change adopted", {**ADOPTED, "cost": 20, "revision": 7}, run="r1")
    return floor


def the_change(floor: Floor):
    (found,) = floor.state.changes.values()
    return found


def test_an_adopted_change_is_kept_with_its_promise():
    change = the_change(adopted())

    assert change.change == CHANGE
    assert (change.product, change.earlier, change.cost, change.verdict) == ("rail", (50, 60, 75), 20, "")


def test_the_same_change_is_adopted_once():
    floor = adopted()

    with pytest.raises(Refused) as refused:
        floor.press("change adopted", ADOPTED, run="r1")

    assert refused.value.code == "change adopted"


def test_a_change_that_was_dropped_may_be_adopted_again():
    floor = adopted()
    floor.press("change judged", {"adopted": the_change(floor).id, "verdict": "dropped"}, run="r1")

    floor.press("change adopted", ADOPTED, run="r1")

    assert [change.verdict for change in floor.state.changes.values()] == ["dropped", ""]


def test_a_verdict_says_what_was_saved_and_is_given_once():
    floor = adopted()
    verdict = {"adopted": the_change(floor).id, "verdict": "kept", "saved": SAVED}
    floor.press("change judged", verdict, run="r1")

    with pytest.raises(Refused) as refused:
        floor.press("change judged", verdict, run="r1")

    assert (the_change(floor).verdict, the_change(floor).saved) == ("kept", (38, 45, 52))
    assert refused.value.code == "change judged"


def test_a_verdict_of_a_change_that_nobody_adopted_is_refused():
    floor = adopted()

    with pytest.raises(Refused) as refused:
        floor.press("change judged", {"adopted": "press-gone", "verdict": "kept"}, run="r1")

    assert refused.value.code == "change unknown"


def test_an_undone_adoption_leaves_nothing():
    floor = adopted()

    floor.press("event undone", {"event": the_change(floor).id})

    assert not floor.state.changes
