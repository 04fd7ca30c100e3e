"""A run replayed: its own order, the hours that were, the lengths that were measured, and the same luck for every change."""

import pickle
from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.plan.change import Capacity, OnePersonMore, Times
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import FAR
from runboard.review.held.replay import finishes, problem_of, replay
from runboard.review.held.replayable import Replayable, replayable
from runboard.run.refusal import Refused
from runboard.shop.product import ZERO
from tests.core.pasts import past_of
from tests.core.pressing import Floor
from tests.scenario import key_rails, shop

CLEAN_TAKES = 4


def work(floor: Floor, load: str, minutes: float, person: str = "ann", run: str = "r1") -> None:
    floor.press("load started", run=run, load=load, person=person)
    floor.wait(minutes)
    floor.press("load done", run=run, load=load, person=person)


def rails_made(trays: int = 3) -> Floor:
    """A run of key rails on one evening and the next: cleaning takes four times what was guessed."""
    record = shop()
    record["services"] += [{"key": "clamps", "name": "Clamps", "capacity": 6}]
    floor = Floor(record)
    floor.open_run(trays=trays)
    floor.press("person came", {"until": (floor.now + timedelta(hours=6)).isoformat(), "room": "shop"})
    for board in range(1, -(-trays // 3) + 1):
        load = f"cut/{board}"
        floor.press("load started", run="r1", load=load)
        floor.wait(6)
        floor.press("machine started", {"minutes": 38}, run="r1", load=load)
        floor.wait(38)
        floor.press("machine ended", run="r1", load=load)
        floor.press("unloading started", run="r1", load=load)
        floor.wait(2)
        floor.press("load done", run="r1", load=load)
    for tray in range(1, trays + 1):
        work(floor, f"clean/{tray}", 5 * CLEAN_TAKES)
    return floor


@pytest.fixture(scope="module")
def floor() -> Floor:
    return rails_made()


@pytest.fixture(scope="module")
def known(floor: Floor) -> Replayable:
    found = replayable(past_of(floor))
    assert found is not None
    return found


def test_what_was_measured_is_what_it_takes(known: Replayable) -> None:
    assert abs(known.lengths.known["clean", "hand"] - timedelta(minutes=CLEAN_TAKES)) < timedelta(seconds=2)
    assert known.lengths.known["sand:180", "hand"] == timedelta(minutes=2)


def test_the_replay_keeps_every_rule_of_the_planner(known: Replayable) -> None:
    again = replay(known)

    assert again is not None
    assert not again.problem.left_out
    assert not broken(again.problem, again.plan)


def test_what_was_begun_first_is_begun_first(floor: Floor) -> None:
    other = rails_made(trays=1)
    other.open_run(trays=3, run="r2")
    for tray in ("3", "1", "2"):
        other.press("load done", run="r2", load="cut/1") if tray == "3" else None
        work(other, f"clean/{tray}", 10, run="r2")
    known = replayable(past_of(other, "r2"))
    assert known is not None

    again = replay(known)

    assert again is not None
    cleaned = [block for block in again.problem.blocks if block.step == "clean"]
    assert [block.trays for block in sorted(cleaned, key=lambda block: again.plan.placed[block.index].start)] == [
        ("3",), ("1",), ("2",)
    ]  # fmt: skip


def test_two_loads_of_a_tray_have_each_their_own_moment() -> None:
    product = key_rails()
    product["operations"] = [product["operations"][1], product["operations"][3]]
    product["operations"][1] |= {"personal": False, "checks": []}
    product["operations"][1]["passes"][0]["pieces"] = 3
    floor = Floor()
    floor.open_run(trays=2, product=product, boards={})
    for load in ("clean/1", "clean/2", "engrave/1", "engrave/2", "engrave/1.2", "engrave/2.2"):
        work(floor, load, 5)
    known = replayable(past_of(floor))
    assert known is not None

    again = replay(known)

    assert again is not None
    engraved = [block for block in again.problem.blocks if block.step == "engrave" and block.unloads is None]
    in_turn = sorted(engraved, key=lambda block: again.plan.placed[block.index].start)
    assert [block.load for block in in_turn] == ["engrave/1", "engrave/2", "engrave/1.2", "engrave/2.2"]


def test_the_same_seed_meets_the_same_luck_and_another_does_not(known: Replayable) -> None:
    again = replay(known)
    assert again is not None

    first, second, other = (finishes(again, 8, seed).tolist() for seed in (1, 1, 2))

    assert first == second != other
    assert max(first) < FAR


def test_a_change_that_changes_nothing_of_the_run_saves_exactly_nothing(known: Replayable) -> None:
    as_it_was = replay(known)
    more = replay(known, Capacity("clamps", 9), as_it_was)
    assert as_it_was is not None and more is not None

    assert (finishes(more, 8) == finishes(as_it_was, 8)).all()


def test_a_change_is_tried_on_what_was_measured(known: Replayable) -> None:
    as_it_was = replay(known)
    half = replay(known, Times("r1", "clean", "hand", 50), as_it_was)
    assert as_it_was is not None and half is not None

    clean = next(block for block in half.problem.blocks if block.step == "clean")
    assert clean.hands * 30 == pytest.approx(5 * CLEAN_TAKES * 60 / 2, abs=30)
    assert half.finish < as_it_was.finish


def test_somebody_more_is_there_when_whom_they_are_like_really_was(known: Replayable) -> None:
    problem = problem_of(known, OnePersonMore("ann"))

    ann, more = problem.people[0], problem.people[-1]
    assert ann.key == "ann"
    assert more.windows == ann.windows


def test_a_change_that_makes_no_sense_is_refused(known: Replayable) -> None:
    with pytest.raises(Refused, match="try service unknown"):
        problem_of(known, Capacity("nothing", 3))


def test_it_can_be_sent_to_a_child_process(known: Replayable) -> None:
    there = pickle.loads(pickle.dumps(known))

    assert there == known
    again = replay(there)
    assert pickle.loads(pickle.dumps(again)) == again


# who was there


def test_whoever_goes_though_something_could_be_begun_was_there_no_longer() -> None:
    floor = rails_made(trays=2)
    work(floor, "sand:120/1", 15)
    went = floor.now
    floor.press("person went")
    floor.wait(24 * 60)
    floor.press("person came")
    work(floor, "sand:120/2", 15)

    known = replayable(past_of(floor))

    assert known is not None
    assert not any(start < went + timedelta(minutes=1) < end for start, end in known.there["ann"])


def test_whoever_goes_since_nothing_can_be_begun_would_have_stayed() -> None:
    floor = rails_made(trays=1)
    work(floor, "sand:120/1", 15)
    went = floor.now
    floor.press("person went")

    known = replayable(past_of(floor))

    assert known is not None
    assert any(start < went + timedelta(minutes=30) < end for start, end in known.there["ann"])


def test_hands_at_another_run_and_being_called_away_are_no_time_for_this_one() -> None:
    floor = rails_made(trays=1)
    floor.open_run(trays=1, run="r2")
    floor.press("load done", run="r2", load="cut/1")
    began = floor.now
    work(floor, "clean/1", 30, run="r2")
    floor.press("person called away")
    floor.wait(20)
    floor.press("person came back")
    ended = floor.now
    work(floor, "sand:120/1", 15)

    known = replayable(past_of(floor))

    assert known is not None
    inside = [min(end, ended) - max(start, began) for start, end in known.there["ann"] if start < ended and end > began]
    assert sum(inside, ZERO) < timedelta(minutes=1)


def test_without_its_opening_or_anybody_there_is_no_replay(floor: Floor) -> None:
    past = past_of(floor)

    assert replayable(replace(past, events=(), arrived={})) is None
    nobody = replace(past.book, people=())
    idle = Floor()
    idle.open_run()
    assert (
        replayable(past_of(idle, book=nobody, events=[e for e in idle.ledger.held if e.kind == "run opened"])) is None
    )
