"""What is in the air of a room: the press, Now and the plan ask one rule."""

from datetime import timedelta
from typing import Any

import pytest

from runboard.plan.candidates import WhoAsks, candidates
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import TICK
from runboard.run.fold.decide import decide
from runboard.run.refusal import Refused
from runboard.run.rules.air import clear_at, in_the_air
from runboard.shop.book import Station
from tests.core.pressing import Floor
from tests.scenario import key_rails, operation, shop

OIL = {"key": "oil", "name": "Hard oil", "recoat_minutes": 720, "self_heats": False, "solvent": False}
THIN_COAT = operation("thin", "finishing", finish="oil")
THINNED = {**OIL, "solvent": True, "airing_minutes": 180}


def floor_with(finish: dict[str, Any], **more: Any) -> Floor:
    """Two runs of rails oiled with a finish, in a shop whose laser stands in the same room; Ben is there as well."""
    record, product = shop(), key_rails()
    record["stations"] = [{**one, "room": "shop"} for one in record["stations"]]
    oil = product["operations"][4]
    oil["finish"] = "oil"
    oil["wait"] |= more
    floor = Floor({**record, "finishes": [finish]})
    for run in ("r1", "r2"):
        floor.open_run(trays=3, product=product, run=run)
    for person in ("ann", "ben"):
        floor.press("person came", person=person)
    return floor


def begins(floor: Floor, load: str, run: str = "r2") -> str:
    """With which refusal a load may not begin; nothing is pressed."""
    try:
        event = floor.event("load started", run=run, load=load, person="ben")
        decide(floor.ledger, event)
    except Refused as refused:
        return refused.code
    return ""


def offered(floor: Floor) -> set[str]:
    return {
        one.step.key for one in candidates(WhoAsks(floor.state, floor.book, "ben", floor.now)) if one.run.id == "r2"
    }


def station(floor: Floor, key: str) -> Station:
    found = floor.book.station(key)
    assert found is not None
    return found


@pytest.mark.parametrize("when", ["brought on", "drying"])
@pytest.mark.parametrize(("finish", "laser"), [(OIL, ""), (THINNED, "air not clear")])
def test_dust_waits_for_what_dries_and_heat_for_solvent_alone(when: str, finish: dict[str, Any], laser: str) -> None:
    floor = floor_with(finish)

    floor.press("load started" if when == "brought on" else "load done", run="r1", load="oil/1")

    assert begins(floor, "sand:120/1") == "air not clear"
    assert begins(floor, "engrave/1") == laser


def test_a_laser_goes_on_once_the_solvent_has_gone_and_a_sander_once_all_is_dry() -> None:
    floor = floor_with(THINNED)
    floor.press("load done", run="r1", load="oil/1")

    floor.wait(4 * 60)

    assert (begins(floor, "engrave/1"), begins(floor, "sand:120/1")) == ("", "air not clear")
    floor.wait(9 * 60)
    assert begins(floor, "sand:120/1") == ""


@pytest.mark.parametrize("kind", ["load done", "load taken off"])
def test_solvent_is_in_the_air_though_no_wait_follows(kind: str) -> None:
    floor = floor_with(THINNED)
    floor.open_run(trays=3, product={**key_rails(), "operations": [THIN_COAT, *key_rails()["operations"]]}, run="r3")
    floor.press("load started", run="r3", load="thin/1")
    floor.press(kind, run="r3", load="thin/1")

    assert begins(floor, "engrave/1") == "air not clear"
    found = problem_for(floor.state, floor.book, floor.now)
    assert max(one.airs or 0 for one in found.blocks if one.begun) * TICK > timedelta(hours=2.9)
    floor.wait(3 * 60)
    assert begins(floor, "engrave/1") == ""


def test_oil_without_solvent_is_offered_to_nobody_where_somebody_sands_and_may_be_pressed() -> None:
    floor = floor_with(OIL)
    for step in ("cut", "clean", "sand:120", "sand:180", "engrave"):
        floor.press("load done", run="r2", load=f"{step}/1")
    assert "oil" in offered(floor)

    floor.press("load started", run="r1", load="sand:120/1")

    assert "oil" not in offered(floor)
    assert begins(floor, "oil/1") == ""


@pytest.mark.parametrize("finish", [OIL, THINNED])
@pytest.mark.parametrize("then", ["nothing", "goes on early", "run closed"])
def test_the_plan_keeps_the_air_as_long_as_the_press_does(finish: dict[str, Any], then: str) -> None:
    floor = floor_with(finish, **({"least_minutes": 30} if then == "goes on early" else {}))
    floor.press("load done", run="r1", load="oil/1")
    floor.wait(40)
    if then == "goes on early":
        floor.press("load started", {"early": True}, run="r1", load="hooks/1")
    if then == "run closed":
        floor.press("run abandoned", run="r1")

    found = problem_for(floor.state, floor.book, floor.now)

    air = in_the_air(floor.state, floor.book, floor.now)
    for key in ("laser", "sander"):
        until = clear_at(air, station(floor, key), floor.now)
        at = next(one for one in found.stations if one.key == key)
        off = [one.keeps_off(heats=at.heats, dusty=at.dusty) for one in found.blocks if one.begun and one.is_coat]
        most = max((one for one in off if one is not None), default=0) * TICK
        assert timedelta(0) <= most - ((until or floor.now) - floor.now) < TICK
