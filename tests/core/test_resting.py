"""From when a tray may go on: one answer, given alike by the press, Now, the plan, the card and the calendar."""

import copy
from datetime import datetime, timedelta
from typing import Any

import pytest

from runboard.cards.of_a_run import run_sheet, shelf_labels
from runboard.plan.next_move import moves
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.run.calls.dues import dues
from runboard.run.refusal import Refused
from runboard.run.rules.air import clear_at, in_the_air
from runboard.shop.book_json import book_from_json
from tests.cards.making import link, speech
from tests.core.pressing import Floor
from tests.scenario import key_rails, operation, shop

RECOAT, HANDLE = timedelta(hours=12), timedelta(hours=24)
HARD_OIL = {"key": "hard-oil", "name": "Hard oil", "recoat_minutes": 720, "handle_minutes": 1440, "self_heats": False}


def rails(*coats: dict[str, Any], wait_minutes: int | None = 600) -> dict[str, Any]:
    """Key rails that are oiled with hard oil and dry for ten hours by the route; ``coats`` come between oil and hooks."""
    product = copy.deepcopy(key_rails())
    oil = product["operations"][-2]
    oil["finish"] = "hard-oil"
    oil["wait"] = wait_minutes and {"why": "dry", "least_minutes": wait_minutes, "latest_minutes": None, "holds": {}}
    product["operations"][-1:-1] = coats
    return product


def shop_with(*finishes: dict[str, Any]) -> dict[str, Any]:
    """A shop that is open day and night, so that a plan may begin as soon as a wait is over."""
    people = [{**one, "hours": [{**one["hours"][0], "from": "00:00", "to": "24:00"}]} for one in shop()["people"]]
    return {**shop(), "people": people, "finishes": list(finishes)}


def oiled(product: dict[str, Any], *finishes: dict[str, Any]) -> Floor:
    """A run of one tray that was oiled just now."""
    floor = Floor(shop_with(*(finishes or (HARD_OIL,))))
    floor.press("person came")
    floor.open_run(trays=1, product=product, orders=[{"line": "1", "pieces": 5, "text": "87"}])
    floor.press("load done", run="r1", load="oil/1")
    return floor


def second_coat() -> dict[str, Any]:
    return operation("oil2", "finishing", finish="hard-oil")


def goes_on_at(floor: Floor, load: str) -> datetime:
    """Until when an up-to-date press that begins a load is refused."""
    with pytest.raises(Refused) as refused:
        floor.press("load started", run="r1", load=load)
    assert refused.value.code == "still waiting"
    found: datetime = refused.value.facts["ready_at"]
    return found


def test_work_with_hands_waits_until_the_label_lets_a_piece_be_handled():
    floor = oiled(rails())
    done = floor.now - timedelta(seconds=1)

    assert goes_on_at(floor, "hooks/1") == done + HANDLE


def test_another_coat_waits_for_the_recoat_time_only():
    floor = oiled(rails(second_coat()))
    done = floor.now - timedelta(seconds=1)

    assert goes_on_at(floor, "oil2/1") == done + RECOAT


@pytest.mark.parametrize("hours", [10, 48])
def test_the_later_of_label_and_route_holds(hours: int):
    floor = oiled(rails(wait_minutes=hours * 60))
    done = floor.now - timedelta(seconds=1)

    assert goes_on_at(floor, "hooks/1") == done + max(HANDLE, timedelta(hours=hours))


def test_a_route_without_a_wait_waits_as_the_label_says():
    floor = oiled(rails(wait_minutes=None))
    done = floor.now - timedelta(seconds=1)

    assert goes_on_at(floor, "hooks/1") == done + HANDLE


def test_screen_plan_card_calendar_and_alarm_name_the_same_moment():
    floor = oiled(rails())
    ready = goes_on_at(floor, "hooks/1")
    said = speech(floor.book, now=floor.now)

    (label,) = shelf_labels(floor.book, floor.run, link, said)
    (line,) = run_sheet(floor.book, floor.run, link, said).trays
    over = next(one for one in dues(floor.state, floor.book).values() if one.kind == "wait over")
    plan = greedy_plan(problem := problem_for(floor.state, floor.book, floor.now))
    hooks = next(one for one in problem.blocks if one.step == "hooks")

    assert label.until == said.moment(ready)
    assert said.moment(ready) in line.next
    assert over.due_at == ready
    assert timedelta(0) <= problem.moment(plan.placed[hooks.index].start) - ready < timedelta(minutes=1)


def test_now_offers_it_at_that_moment_and_not_before():
    floor = oiled(rails())
    ready = goes_on_at(floor, "hooks/1")

    def steps(now: datetime) -> set[str]:
        return {one.step for one in moves(floor.state, floor.book, "ann", now)}

    assert "hooks" not in steps(ready - timedelta(seconds=1))
    assert "hooks" in steps(ready)


def test_the_plan_waits_as_long_after_a_coat_that_is_not_begun():
    floor = Floor(shop_with(HARD_OIL))
    floor.open_run(trays=1, product=rails(second_coat()))

    found = {block.step: block for block in problem_for(floor.state, floor.book, floor.now).blocks}

    assert [lag.least * timedelta(seconds=30) for lag in found["oil2"].lags] == [RECOAT]
    assert [lag.least * timedelta(seconds=30) for lag in found["hooks"].lags] == [HANDLE]


def test_what_a_label_says_later_holds_for_a_coat_that_lies_back():
    floor = oiled(rails(), {**HARD_OIL, "handle_minutes": None})
    done = floor.now - timedelta(seconds=1)
    floor.book = book_from_json(shop_with(HARD_OIL))

    floor.ledger.take_book(floor.book)

    assert goes_on_at(floor, "hooks/1") == done + HANDLE


def test_a_coat_put_in_after_the_coat_that_rests_waits_for_the_recoat_time():
    floor = oiled(rails())
    done = floor.now - timedelta(seconds=1)

    floor.press("route revised", {"product": rails(second_coat()), "from_tray": "1"}, run="r1")

    assert goes_on_at(floor, "oil2/1") == done + RECOAT


def test_a_room_is_wet_until_another_coat_could_go_on_though_hands_wait_longer():
    floor = oiled(rails())
    done = floor.now - timedelta(seconds=1)

    sander = floor.book.station("sander")
    assert sander is not None
    assert clear_at(in_the_air(floor.state, floor.book, floor.now), sander, floor.now) == done + RECOAT
    oil = next(one for one in problem_for(floor.state, floor.book, floor.now).blocks if one.step == "oil")
    assert abs(oil.wet * timedelta(seconds=30) - RECOAT) < timedelta(minutes=1)


def test_wiping_off_a_coat_waits_for_no_label():
    product = rails(operation("wipe", "finishing", finish="hard-oil"), wait_minutes=None)
    floor = oiled(product)

    floor.press("load started", run="r1", load="wipe/1")

    assert floor.run.loads["wipe/1"].state == "working"
