"""The kinds of changes beside those of the Plan page of before: what each alters, and that each goes to JSON and back."""

import json
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.change import (
    Capacity,
    Change,
    Helper,
    HoursAdded,
    Instead,
    LoadSize,
    OnePersonMore,
    OneVisit,
    Rested,
    Several,
    Swapped,
    Times,
    TraySize,
    change_from_record,
    change_record,
    several,
)
from runboard.plan.changed import SOMEBODY, changed_problem
from runboard.plan.changed_route import product_with
from runboard.plan.schedule.problem.from_book import as_written
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import Problem
from runboard.run.refusal import Refused
from runboard.shop.product import Product
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails, operation, shop

SOME_DAY = datetime(2026, 6, 2, 16, tzinfo=UTC)
EVERY_KIND: list[Change] = [
    HoursAdded("ann", date(2026, 6, 2), time(9), time(0)),
    OnePersonMore("ann", ("laser",), SOME_DAY),
    Helper("r1", "hooks", "ann", 120, None),
    Capacity("rack", 12),
    TraySize("r1", 4),
    LoadSize("r1", "engrave", 4, grows=False),
    Times("r1", "sand", "", 80),
    Instead("r1", "sand", "abrasive", "mesh discs", 85, 0.98),
    Instead("r1", "sand", "hour", "", 100, 0.98),
    Rested("r1", "oil", 480),
    Swapped("r1", "clean"),
    OneVisit("r1", "oil"),
    Several((Capacity("rack", 12), Times("r1", "hooks", "hand", 80))),
]
TOGETHER = EVERY_KIND[-1]
MINUTE = timedelta(minutes=1)


def a_floor(**body: Any) -> Floor:
    floor = Floor()
    floor.open_run(trays=3, **body)
    return floor


def now_of(floor: Floor) -> Problem:
    return problem_for(floor.state, floor.book, floor.now)


def then_of(floor: Floor, change: Change) -> Problem:
    return changed_problem(floor.state, floor.book, floor.now, as_written, change)


def ticks_of(problem: Problem, operation: str, kind: str = "hand") -> list[int]:
    return [
        stretch.length
        for block in problem.blocks
        if block.operation == operation
        for stretch in block.stretches
        if stretch.kind == kind
    ]


def two_at_the_bench() -> dict[str, Any]:
    steps = [
        operation("clean", "bench", a_pass(setup=3, hand=1)),
        operation("hooks", "bench", a_pass(setup=4, loading=1, hand=2), checks=[{"key": "depth", "text": "Straight"}]),
        operation("engrave", "laser", a_pass(size="jig", pieces=5, machine=10), attendance="watched"),
    ]
    return {**key_rails(), "operations": steps}


# to JSON and back


@pytest.mark.parametrize("change", EVERY_KIND, ids=lambda change: type(change).__name__)
def test_every_kind_of_change_goes_to_json_and_back(change: Change) -> None:
    record = json.loads(json.dumps(change_record(change)))

    assert change_from_record(record) == change
    assert change_record(change_from_record(record)) == record


@pytest.mark.parametrize("change", EVERY_KIND, ids=lambda change: type(change).__name__)
def test_a_record_with_a_field_too_many_or_too_few_is_none(change: Change) -> None:
    record = change_record(change)

    with pytest.raises(Refused, match="change wrong"):
        change_from_record({**record, "surprise": 1})
    for name in record:
        with pytest.raises(Refused, match="change wrong"):
            change_from_record({key: value for key, value in record.items() if key != name})


@pytest.mark.parametrize(
    ("change", "wrong"),
    [
        (EVERY_KIND[0], {"day": "2026-13-01"}),
        (EVERY_KIND[0], {"opens": "9"}),
        (EVERY_KIND[0], {"opens": "09:00:30"}),
        (EVERY_KIND[1], {"skills": "laser"}),
        (EVERY_KIND[1], {"start": "2026-06-02"}),
        (EVERY_KIND[2], {"minutes": 0}),
        (EVERY_KIND[3], {"capacity": 100}),
        (EVERY_KIND[3], {"capacity": True}),
        (EVERY_KIND[3], {"capacity": 2.0}),
        (EVERY_KIND[3], {"service": "a\nb"}),
        (EVERY_KIND[5], {"grows": 1}),
        (EVERY_KIND[6], {"per_cent": 9}),
        (EVERY_KIND[6], {"kind": "wait"}),
        (EVERY_KIND[7], {"means": "glue"}),
        (EVERY_KIND[7], {"means": []}),
        (EVERY_KIND[7], {"good_rate": 1.5}),
        (EVERY_KIND[7], {"good_rate": float("nan")}),
        (EVERY_KIND[7], {"name": "x" * 201}),
        (TOGETHER, {"changes": []}),
        (TOGETHER, {"changes": [change_record(EVERY_KIND[3])] * 2}),
        (TOGETHER, {"changes": [change_record(TOGETHER), change_record(EVERY_KIND[3])]}),
        (EVERY_KIND[3], {"what": "flood"}),
        (EVERY_KIND[3], {"what": ["capacity"]}),
    ],
)
def test_what_is_out_of_bounds_is_refused(change: Change, wrong: dict[str, Any]) -> None:
    with pytest.raises(Refused, match="change wrong"):
        change_from_record({**change_record(change), **wrong})


@pytest.mark.parametrize("record", [None, [], "capacity", {}, {"what": None}])
def test_what_is_no_record_is_no_change(record: object) -> None:
    with pytest.raises(Refused, match="change wrong"):
        change_from_record(record)


def test_changes_put_together_are_each_there_once() -> None:
    assert several(TOGETHER, EVERY_KIND[3]) == TOGETHER
    assert several(EVERY_KIND[3], EVERY_KIND[3]) == EVERY_KIND[3]


# what each alters


def test_a_helper_works_at_one_operation_and_so_long() -> None:
    problem = then_of(a_floor(), Helper("r1", "hooks", "ann", 90))

    who = [person.key for person in problem.people].index(SOMEBODY)
    assert {block.operation for block in problem.blocks if who in block.people} == {"hooks"}
    assert sum(closes - opens for opens, closes in problem.people[who].windows) == 180


def test_a_helper_comes_when_it_is_said() -> None:
    floor = a_floor()

    problem = then_of(floor, Helper("r1", "hooks", "ann", 90, floor.now + timedelta(days=1)))

    assert problem.people[-1].windows[0][0] >= now_of(floor).tick(floor.now + timedelta(days=1))


def test_a_helper_and_somebody_more_are_two() -> None:
    change = several(OnePersonMore("ann"), Helper("r1", "hooks", "ann", 90))

    assert len({person.key for person in then_of(a_floor(), change).people}) == 4


def test_a_larger_load_is_fewer_loads_of_a_longer_machine_time() -> None:
    floor = a_floor(product=two_at_the_bench(), boards={})

    grown = then_of(floor, LoadSize("r1", "engrave", 10))
    kept = then_of(floor, LoadSize("r1", "engrave", 10, grows=False))

    assert ticks_of(now_of(floor), "engrave", "machine") == [20, 20, 20]
    assert ticks_of(grown, "engrave", "machine") == [40, 40]
    assert ticks_of(kept, "engrave", "machine") == [20, 20]


def test_one_visit_needs_no_setup_and_no_load_of_its_own_and_as_much_work_by_hand() -> None:
    floor = a_floor(product=two_at_the_bench(), boards={})

    problem = then_of(floor, OneVisit("r1", "clean"))

    assert "hooks" not in {block.operation for block in problem.blocks}
    before = sum(ticks_of(now_of(floor), "clean")) + sum(ticks_of(now_of(floor), "hooks"))
    assert sum(ticks_of(problem, "clean")) == before
    assert not ticks_of(problem, "clean", "loading")


def test_one_visit_takes_what_was_learned_of_either() -> None:
    floor = a_floor(product=two_at_the_bench(), boards={})

    def learned(run, step, part):
        return part.length * {"clean": 3, "hooks": 0.5}.get(step.operation.key, 1)

    problem = changed_problem(floor.state, floor.book, floor.now, learned, OneVisit("r1", "clean"))

    assert ticks_of(problem, "clean") == [2 * 5 * (3 + 1)] * 3


def test_another_abrasive_takes_other_times_and_its_good_rate_moves_no_time() -> None:
    floor = a_floor()

    assert then_of(floor, Instead("r1", "clean", "tool", "rasp", 50)) == then_of(floor, Times("r1", "clean", "", 50))
    assert then_of(floor, Instead("r1", "clean", "tool", "rasp", 100, 0.99)) == now_of(floor)


def test_several_changes_alter_what_each_of_them_does() -> None:
    floor = a_floor(product=two_at_the_bench(), boards={})

    # in whichever order: a time names an operation that one visit leaves no more
    change = several(OneVisit("r1", "clean"), Times("r1", "hooks", "hand", 50))

    assert ticks_of(then_of(floor, change), "clean") == [2 * 5 * (1 + 1)] * 3


def oiled(least: int, sheet_date: str = "2026-03-14") -> Floor:
    """A run whose oil dries for so long by the route, and for eight hours by its label."""
    record = shop()
    record["finishes"] = [{"key": "oil", "name": "Oil", "handle_minutes": 480, "sheet_date": sheet_date}]
    product = key_rails()
    wait = {"why": "dry", "least_minutes": least, "latest_minutes": None, "holds": {}}
    product["operations"][4] |= {"finish": "oil", "wait": wait}
    floor = Floor(record)
    floor.open_run(trays=3, product=product)
    return floor


def test_a_wait_that_is_longer_than_its_label_asks_can_be_as_long_as_that() -> None:
    floor = oiled(720)

    then = then_of(floor, Rested("r1", "oil", 480))

    assert {lag.least for block in now_of(floor).blocks for lag in block.lags} == {0, 1440}
    assert {lag.least for block in then.blocks for lag in block.lags} == {0, 960}


def test_no_wait_is_shorter_than_its_label_asks_and_without_a_label_it_stays() -> None:
    with pytest.raises(Refused, match="try label") as refused:
        then_of(oiled(720), Rested("r1", "oil", 479))
    assert refused.value.facts == {"least": timedelta(hours=8)}
    with pytest.raises(Refused, match="try the same"):
        then_of(oiled(720), Rested("r1", "oil", 720))
    for floor in (oiled(720, ""), a_floor()):
        with pytest.raises(Refused, match="try no wait"):
            then_of(floor, Rested("r1", "oil", 480))


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (Helper("r1", "weld", "ann", 60), "try no operation"),
        (Helper("r1", "hooks", "nobody", 60), "try hours of nobody"),
        (Helper("r1", "hooks", "ann", 0), "try minutes"),
        (LoadSize("r1", "clean", 3), "try load size"),
        (LoadSize("r1", "cut", 30), "try load size"),
        (LoadSize("r1", "engrave", 5), "try the same"),
        (LoadSize("r1", "engrave", 8), "try load trays"),
        (LoadSize("r1", "hooks", 8), "try load hands"),
        (LoadSize("r1", "hooks", 0), "try pieces"),
        (Instead("r1", "weld", "tool", "rasp", 100, 0.9), "try no operation"),
        (Instead("r1", "clean", "tool", "rasp"), "try the same"),
        (Instead("r1", "clean", "tool", "rasp", 90, 1.5), "try good rate"),
        (Instead("r1", "clean", "tool", "rasp", 5), "try per cent"),
        (OneVisit("r1", "oil"), "try visit"),
        (OneVisit("r1", "clean"), "try visit"),
        (OneVisit("r1", "hooks"), "try visit"),
    ],
)
def test_what_makes_no_sense_is_refused_with_why(change: Change, code: str) -> None:
    with pytest.raises(Refused, match=code):
        then_of(a_floor(), change)


# what it makes of a product


def product_of(floor: Floor) -> Product:
    return floor.run.route.product


def test_a_product_with_other_times_has_them_in_its_route() -> None:
    floor = a_floor()

    changed = product_with(product_of(floor), floor.book, Times("r1", "hooks", "hand", 80))

    assert changed.operations[-1].passes[0].hand == MINUTE * 2 * 0.8
    assert changed.operations[:-1] == product_of(floor).operations[:-1]


def test_a_product_with_another_tool_says_so_to_whoever_works() -> None:
    floor = a_floor()

    changed = product_with(product_of(floor), floor.book, Instead("r1", "clean", "tool", "a fine rasp", 100, 0.98))

    assert [said.text for said in changed.operations[1].instructions] == ["a fine rasp"]
    assert changed.operations[1].good_rate == 0.98


def test_a_product_in_another_wood_is_of_that_wood() -> None:
    floor = a_floor()

    assert product_with(product_of(floor), floor.book, Instead("r1", "cut", "wood", "oak", 110)).wood == "oak"


def test_a_product_with_one_visit_keeps_the_checks_of_both() -> None:
    floor = a_floor(product=two_at_the_bench(), boards={})

    changed = product_with(product_of(floor), floor.book, OneVisit("r1", "clean"))

    assert [one.key for one in changed.operations] == ["clean", "engrave"]
    assert [check.key for check in changed.operations[0].checks] == ["depth"]
    assert changed.operations[0].passes[0].hand == 3 * MINUTE


def test_what_is_no_change_of_a_route_makes_no_product() -> None:
    floor = a_floor()

    with pytest.raises(Refused, match="change not route"):
        product_with(product_of(floor), floor.book, Capacity("extraction", 2))


# whatever comes

NAMES = st.sampled_from(["r1", "sand", "", "x" * 201, "a\nb", "é"])
JUNK = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=9) | NAMES,
    lambda some: st.lists(some, max_size=3) | st.dictionaries(st.text(max_size=9), some, max_size=3),
    max_leaves=6,
)


@settings(max_examples=300, deadline=None)
@given(change=st.sampled_from(EVERY_KIND), data=st.data())
def test_whatever_a_record_says_is_a_change_that_is_written_as_that_or_is_refused(
    change: Change, data: st.DataObject
) -> None:
    record = change_record(change)
    name = data.draw(st.sampled_from(sorted(record)))
    record[name] = data.draw(JUNK)

    try:
        found = change_from_record(record)
    except Refused as refused:
        assert refused.code == "change wrong"
    else:
        assert change_from_record(change_record(found)) == found
