"""A change tried on a run: what it alters and what it leaves, and the two plans side by side."""

from datetime import date, time, timedelta
from typing import Any

import pytest

from runboard.plan.change import Capacity, Change, HoursAdded, OnePersonMore, Swapped, Times, TraySize
from runboard.plan.changed import SOMEBODY, changed_problem
from runboard.plan.changed_run import swappable
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.from_book import as_written
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import TICK, Problem
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.rule.greedy import Greedy, greedy
from runboard.plan.schedule.told.compared import Compared, compared
from runboard.plan.schedule.told.effort import person_loads
from runboard.plan.schedule.told.forecast import usual_spread
from runboard.run.refusal import Refused
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails, operation, shop


def a_floor(trays: int = 3, record: dict[str, Any] | None = None, **body: Any) -> Floor:
    floor = Floor(record)
    floor.open_run(trays=trays, **body)
    return floor


def now_of(floor: Floor) -> Problem:
    return problem_for(floor.state, floor.book, floor.now)


def then_of(floor: Floor, change: Change) -> Problem:
    return changed_problem(floor.state, floor.book, floor.now, as_written, change)


def beside(floor: Floor, change: Change, goes: int = 0) -> Compared:
    found = compared(now_of(floor), then_of(floor, change), "r1", usual_spread, goes)
    for side in (found.before, found.after):
        assert side is None or not broken(side.problem, side.plan)
    return found


def alone() -> dict[str, Any]:
    record = shop()
    return {**record, "people": record["people"][:1]}


def by_hand_only() -> dict[str, Any]:
    """Three operations by hand, of which the first two could change places."""
    steps = [operation(key, "bench", a_pass(hand=minutes)) for key, minutes in (("cut", 1), ("file", 2), ("pack", 1))]
    return {**key_rails(), "operations": steps}


def moved(found: Compared) -> int:
    assert found.before is not None
    assert found.after is not None
    return found.after.finish - found.before.finish


def test_one_person_more_is_never_later_and_hands_stay_the_same() -> None:
    found = beside(a_floor(record=alone()), OnePersonMore("ann"))

    assert moved(found) < 0
    assert found.after is not None
    assert SOMEBODY in [found.after.problem.people[one.hands].key for one in found.after.plan.placed if one.hands]


def test_who_comes_later_works_only_from_then_on() -> None:
    floor = a_floor(record=alone())
    start = floor.now + timedelta(days=2)

    *_, somebody = then_of(floor, OnePersonMore("ann", (), start)).people

    assert somebody.windows
    assert min(opens for opens, _ in somebody.windows) >= now_of(floor).tick(start)


TUESDAY = date(2026, 6, 2)


def in_the_evenings(**hours: str) -> dict[str, Any]:
    """One person with two hours each evening, or with none."""
    record = alone()
    evening = {"days": record["people"][0]["hours"][0]["days"], "from": "18:00", "to": "20:00"}
    return {**record, "people": [{**record["people"][0], "hours": [{**evening, **hours}] if hours else []}]}


def test_hours_added_are_worked_on_that_day_alone_and_nothing_is_later() -> None:
    floor = a_floor(6, in_the_evenings(to="20:00"))
    change = HoursAdded("ann", TUESDAY, time(9), time(13))

    then, now = then_of(floor, change), now_of(floor)

    added = set(then.people[0].windows) - set(now.people[0].windows)
    nine = floor.now.replace(day=2, hour=7, second=0)  # in the shop's zone
    ten_to_one = nine + timedelta(hours=4) - timedelta(minutes=10)  # tidying up is no work
    assert added == {(then.tick(nine), (ten_to_one - then.start) // TICK)}
    assert moved(beside(floor, change)) < 0


def test_hours_that_touch_the_usual_ones_make_them_longer() -> None:
    floor = a_floor(record=in_the_evenings(to="20:00"))

    _, usual, *_ = now_of(floor).people[0].windows
    _, longer, *_ = then_of(floor, HoursAdded("ann", TUESDAY, time(17), time(21))).people[0].windows

    an_hour = timedelta(hours=1) // TICK
    assert longer == (usual[0] - an_hour, usual[1] + an_hour)


def test_hours_of_the_only_one_who_has_none_let_the_work_into_the_plan() -> None:
    floor = a_floor(record=in_the_evenings(), product=by_hand_only(), boards={})

    found = beside(floor, HoursAdded("ann", TUESDAY, time(8), time(0)))

    assert not now_of(floor).blocks
    assert "nobody has hours" in {one.code for one in found.let_in}
    assert found.after is not None
    assert found.after.plan.placed


def test_both_sides_say_what_is_in_time_and_how_long_people_are_there() -> None:
    floor = Floor(in_the_evenings(to="20:00"))
    noon = floor.now.replace(day=2, hour=20).isoformat()
    floor.open_run(6, orders=[{"line": "1", "pieces": 5, "due": noon}, {"line": "2", "pieces": 20}])

    found = beside(floor, HoursAdded("ann", TUESDAY, time(0), time(17)))

    assert found.before is not None
    assert found.after is not None
    assert [(one.lines, one.in_time) for one in (found.before, found.after)] == [(1, 0), (1, 1)]
    for one in (found.before, found.after):
        assert one.presence == sum(load.presence for load in person_loads(one.problem, one.plan)) >= one.hands
        assert one.walks == walks_in(one.problem, one.plan)


def test_one_person_more_does_only_what_their_skills_allow() -> None:
    record = alone()
    record["products"][0]["operations"][3]["skill"] = "laser"
    floor = a_floor(record=record, product=record["products"][0])

    def may(*skills: str) -> bool:
        problem = then_of(floor, OnePersonMore("ann", skills))
        return any(1 in block.people for block in problem.blocks if block.operation == "engrave")

    assert not may()
    assert may("laser")


def test_a_capacity_that_nothing_waits_for_moves_nothing() -> None:
    assert moved(beside(a_floor(), Capacity("extraction", 2))) == 0


def test_other_trays_hold_as_many_pieces_and_keep_their_boards() -> None:
    floor = a_floor(trays=6)

    problem = then_of(floor, TraySize("r1", 4))

    def pieces(one: Problem, step: str) -> list[int]:
        return [block.pieces for block in one.blocks if block.step == step]

    assert pieces(problem, "sand:120") == [4, 4, 4, 3] * 2
    assert sum(pieces(problem, "hooks")) == sum(pieces(now_of(floor), "hooks"))
    assert pieces(problem, "cut") == pieces(now_of(floor), "cut")


def test_trays_that_are_begun_stay_as_they_are() -> None:
    floor = a_floor(trays=6)
    floor.press("person came", {"room": "shop"})
    floor.press("load started", run="r1", load="cut/1")

    problem = then_of(floor, TraySize("r1", 3))

    assert [block.pieces for block in problem.blocks if block.step == "sand:120"] == [5, 5, 5, 3, 3, 3, 3, 3]
    assert next(block.begun for block in problem.blocks if block.load == "cut/1")


def test_trays_that_are_all_begun_cannot_be_others() -> None:
    floor = a_floor(trays=3)
    floor.press("person came", {"room": "shop"})
    floor.press("load started", run="r1", load="cut/1")

    with pytest.raises(Refused, match="try trays begun"):
        then_of(floor, TraySize("r1", 3))


def test_a_time_times_a_factor_changes_that_operation_alone() -> None:
    floor = a_floor()

    now, then = now_of(floor), then_of(floor, Times("r1", "engrave", "machine", 50))

    for one, other in zip(now.blocks, then.blocks, strict=True):
        is_it = one.operation == "engrave" and any(part.kind == "machine" for part in one.stretches)
        assert (other.length < one.length) == is_it


def test_longer_work_is_shown_as_worse_and_shorter_as_no_worse() -> None:
    floor = a_floor(record=alone())

    assert moved(beside(floor, Times("r1", "sand", "", 300))) > 0
    assert moved(beside(floor, Times("r1", "sand", "", 50))) <= 0


@pytest.mark.parametrize("step", ["cut", "clean", "sand", "engrave", "oil", "hooks"])
@pytest.mark.parametrize("trays", [2, 5, 7])
def test_less_time_is_never_shown_as_later(trays: int, step: str) -> None:
    floor = a_floor(trays, alone())

    for per_cent in (90, 50):
        assert moved(beside(floor, Times("r1", step, "", per_cent))) <= 0


def test_the_same_luck_meets_both() -> None:
    found = beside(a_floor(), Capacity("extraction", 2), goes=8)

    assert found.before is not None
    assert found.after is not None
    assert found.before.outlook == found.after.outlook is not None


def test_both_are_searched_equally_long(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[int | None] = []

    def counted(problem: Problem, goes: int | None = None) -> Greedy:
        asked.append(goes)
        return greedy(problem, goes)

    monkeypatch.setattr("runboard.plan.schedule.told.compared.greedy", counted)
    beside(a_floor(6), TraySize("r1", 2))

    assert len(asked) == 2
    assert len(set(asked)) == 1


def test_neighbours_change_places_where_nothing_binds_them() -> None:
    floor = a_floor(product=by_hand_only(), boards={})

    assert [(one.key, other.key) for one, other in swappable(floor.run)] == [("cut", "file"), ("file", "pack")]
    problem = then_of(floor, Swapped("r1", "cut"))
    first = {block.step for block in problem.blocks if not block.lags}
    assert first == {"file"}
    assert sum(block.pieces for block in problem.blocks if block.step == "cut") == 15
    assert moved(beside(floor, Swapped("r1", "cut"))) == 0


def test_what_is_begun_or_bound_keeps_its_place() -> None:
    floor = a_floor(product=by_hand_only(), boards={})
    floor.press("person came", {"room": "shop"})
    floor.press("load started", run="r1", load="cut/1")

    assert [one.key for one, _ in swappable(floor.run)] == ["file"]
    # Boards are cut first, texts begin at the laser, oil dries.
    assert [one.key for one, _ in swappable(a_floor().run)] == ["clean"]
    with pytest.raises(Refused, match="try order"):
        then_of(a_floor(), Swapped("r1", "sand"))


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (OnePersonMore("nobody"), "try hours of nobody"),
        (HoursAdded("nobody", TUESDAY, time(9), time(13)), "try nobody"),
        (HoursAdded("ann", TUESDAY, time(13), time(9)), "try hours"),
        (HoursAdded("ann", TUESDAY, time(9), time(9, 10)), "try hours"),
        (HoursAdded("ann", date(2026, 5, 31), time(9), time(13)), "try hours"),
        (HoursAdded("ann", date(2027, 6, 2), time(9), time(13)), "try hours"),
        (HoursAdded("ann", TUESDAY, time(9), time(13)), "try hours usual"),
        (Capacity("steam", 2), "try service unknown"),
        (Capacity("extraction", 0), "try capacity"),
        (Capacity("extraction", 1), "try the same"),
        (TraySize("r1", 0), "try pieces"),
        (TraySize("r1", 5), "try the same"),
        (TraySize("r9", 5), "run unknown"),
        (Times("r1", "sand", "", 5), "try per cent"),
        (Times("r1", "sand", "", 100), "try the same"),
        (Times("r1", "sand", "machine", 50), "try no such time"),
        (Times("r1", "weld", "", 50), "try no such time"),
        (Swapped("r1", "weld"), "try order"),
    ],
)
def test_what_makes_no_sense_is_refused_with_why(change: Change, code: str) -> None:
    with pytest.raises(Refused, match=code):
        then_of(a_floor(), change)


def test_a_capacity_too_small_for_a_wait_leaves_out_what_follows_it() -> None:
    record = shop()
    record["services"].append({"key": "clamps", "name": "Clamps", "capacity": 4})
    record["products"][0]["operations"][1]["wait"] = {
        "why": "clamp", "least_minutes": 30, "latest_minutes": None, "holds": {"clamps": 2},
    }  # fmt: skip
    floor = a_floor(record=record, product=record["products"][0])

    found = beside(floor, Capacity("clamps", 1))

    assert found.before is not None
    assert "service too small" in {one.code for one in found.left_out}
    assert moved(beside(floor, Capacity("clamps", 2))) >= 0
