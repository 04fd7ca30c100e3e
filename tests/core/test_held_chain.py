"""What holds a plan: besides hands, stations, waits and hours, what is shared: services, and the air of a room."""

from dataclasses import replace
from datetime import UTC
from itertools import pairwise

import hypothesis
import pytest
from hypothesis import given

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import FAR, Block, Lag, Placed, Plan, Problem, Stretch
from runboard.plan.schedule.rule.greedy import by_start
from runboard.plan.schedule.rule.rule import Rule
from runboard.plan.schedule.told.holding import HeldSpan, Holder, chain, held_spans, holder
from runboard.words.plan import Names, holds_sentence
from tests.core.instances import problems
from tests.core.pressing import Floor
from tests.core.test_optimum_properties import two_benches, work

COAT, PACK = 0, 1
DRY = 100


def racked(places: int, trays: int = 4, windows: tuple[tuple[int, int], ...] = ((0, FAR),)) -> Problem:
    """Each tray is coated in ten ticks and dries on a place of the rack for a hundred; it is packed in five."""
    blocks: list[Block] = []
    for tray in range(trays):
        coat = replace(work(len(blocks), COAT, 10), trays=(str(tray),), step="coat", holds=((0, 1),))
        pack = replace(work(len(blocks) + 1, PACK, 5, Lag(coat.index, DRY)), trays=(str(tray),), step="pack", last=True)
        blocks += [coat, pack]
    return replace(two_benches(*blocks, windows=windows), services=(("rack", places),))


def planned(problem: Problem) -> Plan:
    rule = Rule(problem)
    assert rule.finish(by_start([int(block.trays[0]) for block in problem.blocks])) >= 0
    plan = rule.plan()
    assert not broken(problem, plan)
    return plan


def held(problem: Problem) -> Holder | None:
    return holder(problem, planned(problem))


def test_a_rack_that_is_full_holds_what_could_be_coated() -> None:
    problem = racked(places=2, trays=8)

    spans = held_spans(problem, planned(problem))

    found = held(problem)
    assert found is not None and found.name == ("service", "rack")
    assert HeldSpan("service", 0, 20, 110) in spans


def test_a_rack_holds_what_is_coated_at_the_moment_another_takes_a_tray_off() -> None:
    problem = racked(places=1, trays=2)
    plan = Plan((Placed(0, 0, hands=0), Placed(1, 110, hands=1), Placed(2, 110, hands=0), Placed(3, 220, hands=1)))

    links = chain(problem, plan)

    assert [(link.block, link.why) for link in links] == [(0, "now"), (2, "service"), (3, "wait")]
    assert HeldSpan("service", 0, 10, 110) in held_spans(problem, plan)


def test_a_rack_with_places_enough_holds_nothing() -> None:
    problem = racked(places=4)

    assert "service" not in {span.what for span in held_spans(problem, planned(problem))}
    assert "service" not in {link.why for link in chain(problem, planned(problem))}


def test_what_a_full_rack_keeps_from_the_evening_holds_it_though_hands_are_last() -> None:
    """Two are coated in the first evening, which has time for all; in the next, one takes off before one coats again."""
    problem = racked(places=2, windows=((0, 90), (1000, 1090), (2000, 2090)))

    spans = held_spans(problem, planned(problem))

    assert HeldSpan("service", 0, 20, 90) in spans


def test_a_service_that_is_drawn_on_holds_who_waits_for_it() -> None:
    machine = replace(work(0, COAT, 40), stretches=(Stretch("hand", 0, 40, "hands-on", ((0, 1),)),))
    sanding = replace(work(1, PACK, 30, by=1), stretches=(Stretch("hand", 0, 30, "hands-on", ((0, 1),)),))
    problem = two_benches(machine, sanding)
    plan = Plan((Placed(0, 0, hands=0), Placed(1, 40, hands=1)))

    links = chain(problem, plan)

    assert [(link.block, link.why) for link in links] == [(0, "now"), (1, "service")]
    assert held_spans(problem, plan) == [HeldSpan("service", 0, 0, 40), HeldSpan("hands", 1, 40, 70)]


def test_dust_that_waits_for_a_wet_finish_is_held_by_the_air_of_its_room() -> None:
    coat = replace(work(0, COAT, 10), wet=60)
    sanding = work(1, PACK, 20, by=1)
    problem = two_benches(coat, sanding)
    problem = replace(problem, stations=(problem.stations[0], replace(problem.stations[1], dusty=True)))
    plan = Plan((Placed(0, 0, hands=0), Placed(1, 70, hands=1)))
    assert not broken(problem, plan)

    found = holder(problem, plan)

    assert [link.why for link in chain(problem, plan)] == ["now", "room"]
    assert found is not None and found.name == ("room", "shop")


def test_a_finish_that_waits_for_the_dust_is_held_by_the_air_too() -> None:
    coat = replace(work(0, COAT, 10), wet=60)
    sanding = work(1, PACK, 20, by=1)
    problem = two_benches(coat, sanding)
    problem = replace(problem, stations=(problem.stations[0], replace(problem.stations[1], dusty=True)))
    plan = Plan((Placed(0, 20, hands=0), Placed(1, 0, hands=1)))
    assert not broken(problem, plan)

    assert [link.why for link in chain(problem, plan)] == ["now", "room"]


@given(problems())
@hypothesis.settings(max_examples=60, deadline=None)
def test_from_the_start_to_the_finish_one_thing_at_a_time_holds_it(problem: Problem) -> None:
    rule = Rule(problem)
    if rule.finish([0] * len(problem.blocks)) < 0:
        return
    plan = rule.plan()

    spans = held_spans(problem, plan)

    assert all(span.start < span.end for span in spans)
    assert all(one.end == other.start for one, other in pairwise(spans))
    if plan.finish(problem):
        assert (spans[0].start, spans[-1].end) == (0, plan.finish(problem))


@pytest.mark.parametrize("what", ["hands", "station", "wait", "service", "room"])
def test_whatever_holds_a_plan_has_its_sentence(what: str) -> None:
    floor = Floor()
    problem = racked(2)

    said = holds_sentence(Names(problem, {}, floor.book, UTC, floor.now), Holder(what, 0, 0.5))

    assert said.startswith("Bottleneck: ")
