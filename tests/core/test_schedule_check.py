"""The checker finds the breach of each rule, and nothing in a plan that keeps them all."""

from dataclasses import replace
from typing import Any

import pytest

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import Block, Lag, Placed, Plan, PlannedStation, Problem, Stretch, Worker
from tests.core.instances import MONDAY

SHOP, HOUSE = 0, 1
CNC, BENCH, LASER, SANDER = 0, 1, 2, 3
ANN, BEN = 0, 1


def hand(index: int, station: int = BENCH, length: int = 10, **more: Any) -> Block:
    stretch = Stretch("hand", 0, length, "hands-on", more.pop("draws", ()))
    return a_block(index, station, (stretch,), **more)


def machine(index: int, station: int = CNC, **more: Any) -> Block:
    usual = (Stretch("loading", 0, 5, "hands-on"), Stretch("machine", 5, 40, "watched"))
    return a_block(index, station, more.pop("stretches", usual), **more)


def a_block(index: int, station: int, stretches: tuple[Stretch, ...], **more: Any) -> Block:
    key = str(index)
    return Block(index, "r", key, key, key, (key,), 5, station, stretches, **{"people": (ANN, BEN), **more})


def shop(*blocks: Block) -> Problem:
    stations = (
        PlannedStation("cnc", "CNC", SHOP, frozenset({CNC, BENCH})),
        PlannedStation("bench", "Bench", SHOP, frozenset({BENCH})),
        PlannedStation("laser", "Laser", HOUSE, frozenset({LASER}), heats=True, runs=((0, 300), (400, 900))),
        PlannedStation("sander", "Sander", SHOP, frozenset({SANDER}), dusty=True),
    )
    people = (Worker("ann", "Ann", ((0, 200), (400, 900)), SHOP), Worker("ben", "Ben", ((0, 900),), HOUSE))
    return Problem(MONDAY, stations, people, (("extraction", 1),), ("shop", "house"), ((0, 4), (4, 0)), blocks)


def codes(problem: Problem, *placed: Placed) -> set[str]:
    return {one.code for one in broken(problem, Plan(placed))}


RUN_AND_UNLOAD = (machine(0), hand(1, CNC, 3, unloads=0))
WATCHED_BY_ANN = Placed(0, 0, hands=ANN, watchers=((ANN, 5),))


def test_a_plan_that_keeps_every_rule_breaks_none():
    blocks = (*RUN_AND_UNLOAD, hand(2), hand(3, LASER))
    placed = (WATCHED_BY_ANN, Placed(1, 45, hands=ANN), Placed(2, 10, hands=ANN), Placed(3, 52, hands=ANN))

    assert codes(shop(*blocks), *placed) == set()


def test_watching_passes_from_one_to_another():
    over = Placed(0, 0, hands=ANN, watchers=((ANN, 5), (BEN, 20)))

    assert codes(shop(*RUN_AND_UNLOAD), over, Placed(1, 45, hands=ANN)) == set()


ONE_BREACH = {
    "not each block once": (shop(hand(0), hand(1)), [Placed(0, 0, hands=ANN)]),
    "begun block moved": (shop(hand(0, begun=True, by=ANN)), [Placed(0, 3, hands=ANN)]),
    "setup": (shop(hand(0, family="a", setup=4)), [Placed(0, 0, hands=ANN)]),
    "station held twice": (
        shop(*RUN_AND_UNLOAD, hand(2, CNC, 2)),
        [WATCHED_BY_ANN, Placed(1, 60, hands=ANN), Placed(2, 50, hands=BEN)],
    ),
    "station may not run": (shop(hand(0, LASER)), [Placed(0, 295, hands=BEN)]),
    "before its release": (shop(hand(0, release=20)), [Placed(0, 10, hands=ANN)]),
    "unloaded before its end": (shop(*RUN_AND_UNLOAD), [WATCHED_BY_ANN, Placed(1, 40, hands=BEN)]),
    "too early": (shop(hand(0), hand(1, lags=(Lag(0, 5),))), [Placed(0, 0, hands=ANN), Placed(1, 12, hands=ANN)]),
    "too late": (
        shop(hand(0), hand(1, lags=(Lag(0, 5, 30),))),
        [Placed(0, 0, hands=ANN), Placed(1, 31, hands=ANN)],
    ),
    "service beyond its capacity": (
        shop(hand(0, BENCH, draws=((0, 1),)), hand(1, SANDER, draws=((0, 1),))),
        [Placed(0, 4, hands=ANN), Placed(1, 10, hands=BEN)],
    ),
    "in wet air": (
        shop(hand(0, wet=100), hand(1, SANDER)),
        [Placed(0, 0, hands=ANN), Placed(1, 60, hands=ANN)],
    ),
    "outside hours": (shop(hand(0)), [Placed(0, 195, hands=ANN)]),
    "hands": (shop(hand(0)), [Placed(0, 0)]),
    "somebody else's hands": (shop(hand(0, LASER, begun=True, by=ANN)), [Placed(0, 0, hands=BEN)]),
    "may not do it": (shop(hand(0, people=(BEN,))), [Placed(0, 0, hands=ANN)]),
    "nothing to watch": (shop(hand(0)), [Placed(0, 0, hands=ANN, watchers=((ANN, 0),))]),
    "not watched throughout": (
        shop(*RUN_AND_UNLOAD),
        [Placed(0, 0, hands=ANN, watchers=((ANN, 9),)), Placed(1, 45, hands=ANN)],
    ),
    "hands twice": (shop(hand(0), hand(1, SANDER)), [Placed(0, 0, hands=ANN), Placed(1, 9, hands=ANN)]),
    "out of sight": (
        shop(*RUN_AND_UNLOAD, hand(2, SANDER)),
        [WATCHED_BY_ANN, Placed(1, 45, hands=ANN), Placed(2, 10, hands=ANN)],
    ),
    "walk": (shop(hand(0), hand(1, LASER)), [Placed(0, 0, hands=ANN), Placed(1, 13, hands=ANN)]),
}


@pytest.mark.parametrize("code", ONE_BREACH)
def test_each_rule_s_breach_is_found(code: str):
    problem, placed = ONE_BREACH[code]

    assert codes(problem, *placed) == {code}


def test_a_setup_is_hands_and_comes_only_after_a_change():
    alike = (hand(0, family="a", setup=4), hand(1, family="a", setup=4))

    assert codes(shop(*alike), Placed(0, 0, 4, ANN), Placed(1, 14, 0, ANN)) == set()
    assert codes(shop(*alike), Placed(0, 0, 4, ANN), Placed(1, 14, 4, ANN)) == {"setup"}
    assert codes(shop(*alike), Placed(0, 20, 0, ANN), Placed(1, 0, 4, ANN)) == set()


def test_a_wait_holds_clamps_once_until_the_last_that_waits_for_it_begins():
    waits = (Lag(0, 50),)
    blocks = (hand(0, holds=((0, 1),)), hand(1, lags=waits), hand(2, SANDER, lags=waits), hand(3, draws=((0, 1),)))
    problem = shop(*blocks)
    after = (Placed(1, 60, hands=ANN), Placed(2, 80, hands=ANN))

    def with_work_at(tick: int) -> set[str]:
        return codes(problem, Placed(0, 0, hands=ANN), *after, Placed(3, tick, hands=BEN))

    assert with_work_at(80) == set()
    assert with_work_at(70) == {"service beyond its capacity"}, "its least is over and it is still clamped"
    assert with_work_at(30) == {"service beyond its capacity"}


def test_what_nothing_waits_for_holds_nothing():
    clamped = hand(0, holds=((0, 1),))

    assert codes(shop(clamped, hand(1, draws=((0, 1),))), Placed(0, 0, hands=ANN), Placed(1, 20, hands=ANN)) == set()


@pytest.mark.parametrize(
    ("airs", "sander", "burner"),
    [(None, {"in wet air"}, set()), (40, {"in wet air"}, {"in wet air"}), (0, {"in wet air"}, set())],
)
def test_dust_waits_for_every_wet_finish_and_heat_for_solvent_alone(
    airs: int | None, sander: set[str], burner: set[str]
):
    oil, there = hand(0, wet=100, airs=airs), (Placed(0, 0, hands=ANN), Placed(1, 30, hands=ANN))

    def beside(station: int) -> set[str]:
        problem = shop(oil, hand(1, station))
        hot = replace(problem.stations[CNC], heats=True)
        return codes(replace(problem, stations=(hot, *problem.stations[1:])), *there)

    assert (beside(SANDER), beside(CNC)) == (sander, burner)


def test_solvent_in_the_air_keeps_dust_out_longer_than_the_finish_is_wet():
    oil = hand(0, wet=20, airs=100)

    assert codes(shop(oil, hand(1, SANDER)), Placed(0, 0, hands=ANN), Placed(1, 60, hands=ANN)) == {"in wet air"}


def test_somebody_walks_from_where_they_were_last_seen():
    assert codes(shop(hand(0)), Placed(0, 3, hands=BEN)) == {"walk"}
    assert codes(shop(hand(0)), Placed(0, 4, hands=BEN)) == set()


def test_two_machines_in_different_rooms_are_watched_by_two_people():
    blocks = (machine(0), hand(1, CNC, 3, unloads=0), machine(2, LASER), hand(3, LASER, 3, unloads=2))
    unloads = Placed(1, 60, hands=BEN), Placed(3, 70, hands=BEN)
    by_ben = Placed(2, 4, hands=BEN, watchers=((BEN, 9),))
    by_ann = replace(by_ben, watchers=((ANN, 9),))

    assert codes(shop(*blocks), WATCHED_BY_ANN, unloads[0], by_ben, unloads[1]) == set()
    assert "out of sight" in codes(shop(*blocks), WATCHED_BY_ANN, unloads[0], by_ann, unloads[1])


def test_hands_elsewhere_while_watching_need_no_walk_back_to_the_machine():
    problem = shop(*RUN_AND_UNLOAD, hand(2, LASER))
    cnc = replace(problem.stations[CNC], watched_from=frozenset({CNC, LASER}))
    problem = replace(problem, stations=(cnc, *problem.stations[1:]))

    assert codes(problem, WATCHED_BY_ANN, Placed(1, 45, hands=ANN), Placed(2, 20, hands=ANN)) == set()


def test_what_has_happened_is_no_breach():
    late = machine(0, begun=True, by=ANN, stretches=(Stretch("machine", 0, 250, "watched"),))
    beside = hand(1, SANDER, 230, begun=True, by=ANN)

    assert codes(shop(late, beside), Placed(0, 0, watchers=((ANN, 0),)), Placed(1, 0, hands=ANN)) == set()


def test_whoever_takes_over_what_was_begun_walks_there_first_and_who_is_at_it_does_not():
    problem = shop(machine(0, begun=True, by=ANN, stretches=(Stretch("machine", 0, 40, "watched"),)))
    elsewhere = replace(problem, people=(replace(problem.people[ANN], room=HOUSE), problem.people[BEN]))

    def watched(*watchers: tuple[int, int]) -> set[str]:
        return codes(elsewhere, Placed(0, 0, watchers=watchers))

    assert watched((ANN, 0)) == set()
    assert watched((BEN, 0)) == watched((ANN, 0), (BEN, 3)) == {"walk"}
    assert watched((ANN, 0), (BEN, 4)) == set()
