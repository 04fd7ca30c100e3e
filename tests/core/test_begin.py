"""May this load begin here? Now, the plan and the press give one answer."""

import copy
from collections.abc import Iterator
from random import Random
from typing import Any

import pytest

from runboard.plan import candidates as looking
from runboard.plan.candidates import WhoAsks, candidates
from runboard.plan.next_move import moves
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.run.fold.decide import decide
from runboard.run.fold.draft import Draft
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from runboard.run.rules.begin import may_begin, not_offered
from runboard.run.rules.services import Services
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails, operation, shop
from tests.vectors.chooser import Chooser
from tests.vectors.presses import choose
from tests.vectors.scenes import opened, rails, shelves, the_shop


def engraving(wood: str, **more: Any) -> Floor:
    """One tray that is sanded: it could be engraved."""
    floor = Floor({**shop(), "forbidden": ["PVC"], **more})
    floor.press("person came")
    floor.open_run(trays=1, wood=wood)
    floor.press("load done", run="r1", load="sand:180/1")
    return floor


def offered(floor: Floor, person: str = "ann") -> list[str]:
    return [one.load for one in moves(floor.state, floor.book, person, floor.now) if one.code == "start"]


def left_out(floor: Floor) -> list[tuple[str, str]]:
    return [(one.step, one.code) for one in problem_for(floor.state, floor.book, floor.now).left_out]


def test_now_never_offers_to_engrave_what_the_shop_forbids():
    assert "engrave/1" in offered(engraving("ash"))
    assert "engrave/1" not in offered(engraving("PVC"))


def test_no_plan_engraves_what_the_shop_forbids():
    assert left_out(engraving("ash")) == []
    assert left_out(engraving("PVC")) == [("engrave", "material forbidden")]


def test_no_plan_goes_on_with_an_operation_that_its_first_piece_stopped():
    floor = engraving("ash")
    floor.press("first piece checked", {"check": "depth", "result": "fail"}, run="r1", operation="engrave")

    assert left_out(floor) == [("engrave", "first piece failed")]


def cleaning_up(first: dict[str, Any], from_4: dict[str, Any]) -> list[str]:
    """What Ben is offered with six trays cut: 1 to 3 by the first product, the others by a route that came later."""
    floor = Floor()
    floor.press("person came", person="ben")
    floor.open_run(trays=6, product=first)
    floor.press("route revised", {"product": from_4, "from_tray": "4"}, run="r1")
    for board in ("cut/1", "cut/2"):
        floor.press("load done", run="r1", load=board)
    return offered(floor, "ben")


def skilled() -> dict[str, Any]:
    """Key rails whose cleaning up needs a skill that Ben has not."""
    product = copy.deepcopy(key_rails())
    product["operations"][1]["skill"] = "knife"
    return product


def test_a_load_is_judged_by_the_route_of_its_own_tray():
    found = cleaning_up(key_rails(), skilled())

    assert {"clean/1", "clean/2", "clean/3"} <= set(found)
    assert not {"clean/4", "clean/5", "clean/6"} & set(found)


def test_what_one_tray_is_refused_by_its_route_keeps_no_other_back():
    found = cleaning_up(skilled(), key_rails())

    assert {"clean/4", "clean/5", "clean/6"} <= set(found)
    assert not {"clean/1", "clean/2", "clean/3"} & set(found)


def test_a_tray_of_a_forbidden_material_keeps_no_other_back():
    floor = Floor({**shop(), "forbidden": ["PVC"]})
    floor.press("person came")
    floor.open_run(trays=2)
    for tray in ("1", "2"):
        floor.press("load done", run="r1", load=f"sand:180/{tray}")
    floor.press("wood noted", {"wood": "PVC"}, run="r1", tray="1")

    found = offered(floor)

    assert "engrave/2" in found
    assert "engrave/1" not in found


def test_pieces_past_a_step_that_was_put_in_still_wait_for_their_coat():
    floor = Floor()
    floor.open_run(trays=1)
    floor.press("load done", run="r1", load="oil/1")
    product = copy.deepcopy(key_rails())
    product["operations"].insert(-1, operation("look", "bench"))

    floor.press("route revised", {"product": product, "from_tray": "1"}, run="r1")

    with pytest.raises(Refused, match="still waiting"):
        floor.press("load started", run="r1", load="hooks/1")


# what is not offered, and yet taken from whoever presses it


def asked(floor: Floor, load: str, person: str = "ann") -> Event:
    return Event("e", "load started", floor.now, run="r1", load=load, person=person)


def reason(floor: Floor, load: str, person: str = "ann") -> str:
    draft, event = Draft(floor.state, floor.book), asked(floor, load, person)
    assert may_begin(draft, event) is None
    return not_offered(draft, event)


def test_what_was_given_to_somebody_else_is_not_offered():
    floor = engraving("ash")
    floor.press("operation given", {"trays": ["1"], "to": "ben"}, run="r1", operation="engrave")

    assert reason(floor, "engrave/1") == "given to others"
    assert reason(floor, "engrave/1", "ben") == ""
    assert "engrave/1" not in offered(floor)


def test_a_station_in_its_quiet_hours_is_not_offered():
    quiet = [{"days": ["mon"], "from": "17:00", "to": "24:00"}]
    stations = [{**one, "quiet": quiet} if one["key"] == "laser" else one for one in shop()["stations"]]
    floor = engraving("ash", stations=stations)

    assert reason(floor, "engrave/1") == "quiet hours"
    assert "engrave/1" not in offered(floor)


def test_a_station_whose_service_others_draw_on_is_not_offered():
    stations = [{**one, "services": ["extraction"]} if one["key"] == "sander" else one for one in shop()["stations"]]
    floor = Floor({**shop(), "stations": stations})
    floor.press("person came", person="ben")
    floor.open_run(trays=6)
    floor.press("load done", run="r1", load="clean/1")
    assert reason(floor, "sand:120/1", "ben") == ""
    floor.press("machine started", run="r1", load="cut/2")

    assert reason(floor, "sand:120/1", "ben") == "service taken"
    assert "sand:120/1" not in offered(floor, "ben")


def clamping(**oil: Any) -> dict[str, Any]:
    """Rails whose oil rests in 8 clamps for half an hour."""
    product = key_rails()
    product["operations"][4] |= {"passes": [a_pass(hand=1)], **oil}
    product["operations"][4]["wait"] |= {"why": "clamp", "least_minutes": 30, "holds": {"clamps": 8}}
    return product


def in_clamps(capacity: int, done: int, **oil: Any) -> Floor:
    """Four trays of a run of which ``done`` were oiled and rest in their clamps; the others could be oiled."""
    product, record = clamping(**oil), shop()
    record["services"].append({"key": "clamps", "name": "Clamps", "capacity": capacity})
    floor = Floor(record)
    floor.press("person came")
    floor.open_run(trays=4, product=product)
    for tray in range(1, 5):
        floor.press("load done", run="r1", load=f"engrave/{tray}")
    for tray in range(1, done + 1):
        floor.press("load done", run="r1", load=f"oil/{tray}")
    floor.wait(60)
    return floor


def test_work_whose_wait_needs_clamps_that_hold_other_trays_is_not_offered_until_one_is_taken_out():
    floor = in_clamps(16, 2)
    assert reason(floor, "oil/3") == "service taken"
    assert "oil/3" not in offered(floor)

    floor.press("load started", run="r1", load="hooks/1")

    assert reason(floor, "oil/3") == ""


def test_clamps_that_a_load_at_work_will_need_are_no_longer_free():
    floor = in_clamps(16, 1)
    floor.open_run(trays=1, product=clamping(station="bench"), run="r2")
    floor.press("load done", run="r2", load="engrave/1")
    assert reason(floor, "oil/3") == ""

    floor.press("load started", run="r2", load="oil/1", person="ben")

    assert reason(floor, "oil/3") == "service taken"


def test_what_lies_in_clamps_itself_may_go_on_and_be_clamped_again():
    floor, product = in_clamps(16, 2), clamping()
    product["operations"].insert(5, operation("wipe", "bench", wait=product["operations"][4]["wait"]))

    floor.press("route revised", {"product": product, "from_tray": "1"}, run="r1")

    assert reason(floor, "wipe/1") == ""


def test_now_offers_as_many_trays_as_there_are_clamps_for():
    floor = in_clamps(16, 0, passes=[a_pass(size="run", hand=1)])
    assert "oil/1+2" in offered(floor)

    floor.press("load done", run="r1", load="oil/1+2")

    assert not [one for one in offered(floor) if one.startswith("oil")]


@pytest.mark.parametrize("size", ["tray", "run"])
@pytest.mark.parametrize("machine", [0, 5])
def test_the_plan_holds_what_rests_as_now_does(size: str, machine: int):
    floor = in_clamps(32, 0, passes=[a_pass(size=size, hand=1, machine=machine)])
    for load in ("oil/1+2+3",) if size == "run" else ("oil/1", "oil/2", "oil/3"):
        floor.press("load done", run="r1", load=load)
    floor.wait(60)

    found = problem_for(floor.state, floor.book, floor.now)

    clamps = [count for block in found.blocks if block.begun for _, count in block.holds]
    assert sum(clamps) == Services(floor.state, floor.book).now["clamps"]
    assert sum(clamps) == (8 if machine and size == "run" else 24)


def test_what_rests_goes_on_though_its_station_is_out_of_use_since():
    floor = in_clamps(32, 1)
    floor.press("station out of use", station="finishing")

    assert "1" not in {tray for one in problem_for(floor.state, floor.book, floor.now).left_out for tray in one.trays}


def evening(seed: int) -> Iterator[Floor]:
    """A floor after each of many presses of any kind."""
    floor, random = Floor({**the_shop(), "forbidden": ["ash"] if seed % 2 else []}), Random(seed)
    for run, body in (("r1", opened(rails(), 3, 2, 2)), ("r2", opened(shelves(), 2, 2, None))):
        floor.press("run opened", body, run=run)
    for _ in range(60):
        floor.wait(random.choice((0.5, 2, 7, 25)))
        kind, fields, body = choose(Chooser(floor.state, floor.book, random, floor.now, wild=0.1))
        try:
            floor.press(kind, body, **{"person": random.choice(("ann", "ben")), **fields})
        except Refused:
            continue
        yield floor


@pytest.mark.parametrize("seed", range(12))
def test_whatever_now_offers_to_begin_is_taken(seed: int):
    """Over evenings of any presses: no second list of rules can differ from the one that a press is judged by."""
    for floor in evening(seed):
        for person in ("ann", "ben"):
            hands = floor.state.people.get(person)
            if hands is not None and hands.hands is not None:
                continue  # what comes after what their hands are at
            for move in moves(floor.state, floor.book, person, floor.now, most=99):
                if move.code == "start":
                    pieces = {"pieces": dict(move.pieces)}
                    event = floor.event("load started", pieces, run=move.run, load=move.load, person=person)
                    assert event.id not in decide(floor.ledger, event).state.unsettled


@pytest.mark.parametrize("seed", range(12))
def test_no_tray_is_passed_over_for_what_another_was_refused(seed: int, monkeypatch: pytest.MonkeyPatch):
    for floor in evening(seed):
        for person in ("ann", "ben"):
            scene = WhoAsks(floor.state, floor.book, person, floor.now)
            found = [one.load for one in candidates(scene)]
            with monkeypatch.context() as each_asked:
                each_asked.setattr(looking, "OF_ANY_TRAY", frozenset())
                assert found == [one.load for one in candidates(scene)]


def test_who_watches_the_cnc_does_not_begin_at_the_laser():
    floor = Floor()
    floor.press("person came")
    floor.open_run(trays=6)
    floor.press("load done", run="r1", load="sand:180/1")
    floor.press("machine started", run="r1", load="cut/2")

    refused = may_begin(Draft(floor.state, floor.book), asked(floor, "engrave/1"))

    assert refused is not None
    assert refused.code == "watch first"
