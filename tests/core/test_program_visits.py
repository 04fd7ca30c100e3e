"""Places of a program, and the order of visits: what overlaps keeps the file's order, and the best order is found and proved."""

from itertools import permutations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.plan.program.motion import of_all_axes, timed
from runboard.plan.program.moves import Moves
from runboard.plan.program.places import parts
from runboard.plan.program.routes import bound_by_ways_in, nearest_first, proved, put_in_order, routed, tried_through
from runboard.plan.program.shifting import shifted
from runboard.plan.program.visits import TICKS, Task, grouped, hop_seconds, task_of, visit_order
from runboard.shop.machines import Motion
from tests.core.moves_by_hand import Block, feed, moves, rapid, stop, tool
from tests.core.programs import read

MACHINE = of_all_axes(Motion(), rapid=6000, accel=500)


def square(x: float, y: float, size: float = 10, depth: float = -2) -> list[Block]:
    """A square cut at a place, come to and left at a safe height."""
    corners = [(x + size, y), (x + size, y + size), (x, y + size), (x, y)]
    return [rapid(x, y, 5), feed(x, y, depth), *(feed(*one, depth) for one in corners), rapid(x, y, 5)]


def program(*works: list[Block], start: tuple[float, float, float] = (0, 0, 5)) -> Moves:
    return moves(*(block for work in works for block in work), start=start)


def is_in_order(order: list[int], before: np.ndarray) -> bool:
    rank = {at: place for place, at in enumerate(order)}
    return all(rank[int(one)] < rank[int(other)] for one, other in zip(*np.nonzero(before), strict=True))


tasks = st.integers(2, 7).flatmap(
    lambda many: st.builds(
        lambda ticks, pairs: Task(
            np.array(ticks).reshape(many + 2, many + 2), np.triu(np.array(pairs).reshape(many, many), 1)
        ),
        st.lists(st.integers(0, 500), min_size=(many + 2) ** 2, max_size=(many + 2) ** 2),
        st.lists(st.sampled_from([False, False, False, True]), min_size=many**2, max_size=many**2),
    )
)


def test_a_visit_lies_between_two_hops_at_a_safe_height() -> None:
    (part,) = parts(program(square(10, 0), square(50, 0, depth=-4)))

    one, other = part.visits
    assert (one.entry, one.exit, one.box, one.lowest) == ((10, 0), (10, 0), (10, 0, 20, 10), -2)
    assert (other.entry, other.box, other.lowest, other.place) == ((50, 0), (50, 0, 60, 10), -4, 2)
    assert (part.start, part.end) == ((0, 0), None)
    assert (one.first, one.last, other.first) == (2, 7, 9)


def test_travel_within_the_stock_ends_no_visit() -> None:
    (part,) = parts(program([*square(0, 0)[:-1], rapid(5, 5, -1), *square(5, 5)[1:]]))

    assert len(part.visits) == 1


def test_a_zero_at_the_table_is_seen_by_the_cuts() -> None:
    def cut(x: float) -> list[Block]:
        return [rapid(x, 0, 25), feed(x, 0, 12), feed(x + 9, 0, 12), rapid(x + 9, 0, 25)]

    assert len(parts(program(cut(0), cut(50), start=(0, 0, 25)))[0].visits) == 2


def test_passes_at_one_place_are_one_place_and_an_outline_round_others_is_none_of_theirs() -> None:
    (part,) = parts(program(square(10, 10), square(40, 10), square(10.5, 10, depth=-4), square(0, 0, size=60)))

    assert [visit.place for visit in part.visits] == [1, 2, 1, 3]


def test_a_change_of_tools_and_a_stop_end_a_part() -> None:
    found = parts(program(square(0, 0), [tool(2)], square(50, 0), [stop()], square(90, 0), [rapid(0, 0, 5)]))

    assert [(len(part.visits), part.start, part.end) for part in found] == [
        (1, (0, 0), None), (1, (0, 0), None), (1, (50, 0), (0, 0)),
    ]  # fmt: skip


def test_canned_cycles_are_places() -> None:
    (part,) = parts(read("G21 G90 G0 X0 Y0 Z5", "G99 G81 X10 Y10 Z-5 R2 F100", "X20", "X30", "G80", "M2"))

    assert [visit.place for visit in part.visits] == [1, 2, 3]


def test_one_visit_a_place_saves_the_way_back() -> None:
    far = [square(0, 0), square(300, 0), square(0, 0, depth=-4), square(300, 0, depth=-4)]

    found = visit_order(program(*far), MACHINE)

    one_way = float(hop_seconds(np.array([300.0, 0.0]), MACHINE))
    assert (found.places, found.is_proved) == (2, True)
    assert found.now == pytest.approx(3 * one_way)
    assert found.saving_by_place == found.saving == pytest.approx(2 * one_way)
    assert [visit.place for visit in found.after] == [1, 1, 2, 2]


def test_visits_are_put_together_only_where_nothing_between_overlaps() -> None:
    (part,) = parts(program(square(0, 0), square(5, 0, size=30), square(0, 0, depth=-4), square(100, 0)))

    assert [[visit.first for visit in group] for group in grouped(part.visits)] == [[1], [9], [16], [23]]


def test_an_outline_stays_behind_what_lies_within_it() -> None:
    holes = [square(x, y) for x in (200, 20, 110) for y in (100, 20)]

    found = visit_order(program(*holes, square(0, 0, size=250)), MACHINE)

    assert found.saving > 0 and found.is_proved
    assert found.after[-1].box == (0, 0, 250, 250)
    assert sorted(visit.first for visit in found.after) == [visit.first for visit in found.before]


def test_what_is_in_the_best_order_is_left_alone() -> None:
    found = visit_order(program(*(square(x, 0) for x in (0, 50, 100, 150))), MACHINE)

    assert (found.saving, found.after) == (0, found.before)
    assert found.is_proved


def test_a_program_that_cuts_nothing_has_nothing_to_save() -> None:
    found = visit_order(moves(rapid(9, 9, 9)), MACHINE)

    assert (found.places, found.saving, found.most) == (0, 0, 0)


def test_a_hop_from_rest_to_rest_takes_as_long_as_by_the_passes() -> None:
    for way in ((300, 0), (0, 7), (-40, 90), (3, -3)):
        hop = timed(moves(rapid(*way, 5), start=(0, 0, 5)), MACHINE).total
        assert float(hop_seconds(np.array(way, float), MACHINE)) == pytest.approx(hop)


@given(tasks)
def test_few_groups_are_put_in_the_best_order(task: Task) -> None:
    allowed = [[*order] for order in permutations(range(len(task.before))) if is_in_order([*order], task.before)]

    order, bound = put_in_order(task, 0.1)

    assert is_in_order(order, task.before)
    assert task.cost(order) == bound == min(map(task.cost, allowed))
    assert bound_by_ways_in(task) <= bound


@settings(max_examples=10, deadline=None)
@given(tasks)
def test_the_circuit_and_the_routing_keep_the_order_and_the_circuit_proves_the_best(task: Task) -> None:
    closed = task.before | (
        np.linalg.matrix_power(task.before.astype(int) + np.eye(len(task.before), dtype=int), 8) > 0
    )
    np.fill_diagonal(closed, False)
    best = tried_through(task, closed)

    order, bound = proved(task, closed, nearest_first(task, closed), 10)
    way = routed(task, closed, nearest_first(task, closed), 0.02)
    other = shifted(task.ticks, closed, nearest_first(task, closed), 20)

    assert all(is_in_order(one, task.before) for one in (order, way, other))
    assert sorted(other) == [*range(len(task.before))]
    assert task.cost(other) <= task.cost(nearest_first(task, closed))
    assert task.cost(order) == bound == task.cost(best)


def grid(columns: int, rows: int) -> list[list[Block]]:
    """Pieces of two pockets and an outline each, in a bad order: all first pockets, all second ones, then the outlines."""
    places = [(70 * column, 50 * row) for column in range(columns) for row in range(rows)]
    first, second = [square(x + 5, y + 5) for x, y in places], [square(x + 40, y + 5) for x, y in places]
    return [*first, *second, *(square(x, y, size=60) for x, y in places)]


def test_pieces_with_pockets_and_outlines_are_done_one_after_another() -> None:
    found = visit_order(program(*grid(3, 2)), MACHINE, seconds=2)

    (part,) = parts(program(*grid(3, 2)))
    task = task_of(part, [[visit] for visit in part.visits], MACHINE)
    rank = {visit: at for at, visit in enumerate(part.visits)}
    assert is_in_order([rank[visit] for visit in found.after], task.before)
    assert found.saving > 0.2 * found.now
    assert found.saving <= found.most + len(found.before) / TICKS


def test_the_circuit_keeps_what_has_its_place_among_all_others() -> None:
    chance = np.random.default_rng(4)
    before = np.zeros((12, 12), bool)
    before[:6, 6:] = before[6, 7:] = True
    task = Task(chance.integers(1, 1000, (14, 14)), before)

    order, bound = proved(task, before, [*range(12)], 20)

    assert order[6] == 6 and set(order[:6]) == {*range(6)}
    assert task.cost(order) == bound
