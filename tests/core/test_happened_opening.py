"""The run as it was opened, for the plan of then and for a replay."""

from runboard.review.opening import ENLARGED, REVISED, opening_state
from tests.core.pasts import past_of
from tests.core.pressing import Floor
from tests.scenario import key_rails


def worked_on() -> Floor:
    floor = Floor()
    floor.open_run(trays=3)
    floor.press("load started", run="r1", load="cut/1")
    floor.press("load done", run="r1", load="cut/1")
    longer = key_rails()
    longer["operations"].insert(4, {**longer["operations"][1], "key": "wipe", "name": "Wipe"})
    floor.press("route revised", {"product": longer, "from_tray": "2"}, run="r1")
    floor.press("board added", {"board": "cut/2", "pieces": {"4": 5}}, run="r1")
    return floor


def test_nothing_is_begun_in_a_run_as_it_was_opened() -> None:
    state = opening_state(past_of(worked_on()))

    (run,) = state.runs.values()
    assert (run.state, dict(run.loads), dict(run.past)) == ("open", {}, {})
    assert {key: dict(tray.at) for key, tray in run.trays.items()} == {key: {"cut": 5} for key in "123"}
    assert not state.stations and not state.people and not state.unsettled


def test_its_later_routes_are_known_and_hold_from_their_trays_on() -> None:
    (run,) = opening_state(past_of(worked_on())).runs.values()

    assert ["wipe" in run.route_of(tray).by_key for tray in run.trays.values()] == [False, True, True]


def test_the_plan_of_then_knows_no_later_route_and_a_replay_may_know_of_the_boards() -> None:
    past = past_of(worked_on())

    (then,) = opening_state(past, ()).runs.values()
    (whole,) = opening_state(past, REVISED | ENLARGED).runs.values()

    assert (len(then.revisions), list(then.trays), list(whole.trays)) == (1, ["1", "2", "3"], ["1", "2", "3", "4"])


def test_without_its_opening_there_is_no_run() -> None:
    past = past_of(worked_on(), events=(), arrived={})

    assert not opening_state(past).runs
