"""What a plan makes of the moves: which comes first, and what the others cost."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from runboard.plan.answer import Answer, ShownFirst, answer, standing_of, too_late
from runboard.plan.clashes import Clash, clashes
from runboard.plan.move import Move
from runboard.plan.next_move import moves
from runboard.plan.offers import Offer, offer_for, offered
from runboard.plan.prices import Price, Question
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import LeftOut
from runboard.plan.why import says_more
from tests.core.one_after_another import one_after_another
from tests.core.pressing import Floor


def floor_with_a_board(trays: int = 6, until: str = "2026-06-01T20:00:00Z") -> Floor:
    floor = Floor()
    floor.press("person came", {"until": until, "room": "shop"})
    floor.open_run(trays=trays)
    floor.press("load done", run="r1", load="cut/1")
    return floor


def question(floor: Floor, *first: str) -> Question:
    """A plan in which these loads come first."""
    problem = problem_for(floor.state, floor.book, floor.now)
    order = sorted(range(len(problem.blocks)), key=lambda at: problem.blocks[at].load not in first)
    plan = one_after_another(problem, order)
    return Question(floor.state, problem, plan, lambda block, person: Price())


def dear(asking: Question, load: str, price: Price) -> Question:
    """Beginning this load now costs so much."""
    blocks = {block.index for block in asking.problem.blocks if block.load == load}
    return replace(asking, price=lambda block, person: price if block in blocks else Price())


def asked(floor: Floor, asking: Question, shown: str = "", *, busy: bool = False) -> tuple[Offer, list[Move]]:
    found = moves(floor.state, floor.book, "ann", floor.now)
    offer = offer_for(asking, "ann", found, shown, busy=busy)
    return offer, offered(found, offer, floor.now)


def loads(found: list[Move]) -> list[str]:
    return [f"{move.code} {move.load}".strip() for move in found]


def test_the_first_thing_of_the_plan_comes_first_and_the_others_keep_their_order_and_words():
    floor = floor_with_a_board()
    greedy = moves(floor.state, floor.book, "ann", floor.now)
    assert loads(greedy)[0] == "start cut/2"

    _, found = asked(floor, question(floor, "clean/1"))

    assert loads(found)[0] == "start clean/1"
    assert [replace(move, price={}) for move in found[1:]] == [move for move in greedy if move.load != "clean/1"]


def test_the_plans_own_move_costs_nothing_and_at_most_three_sorts_of_others_have_a_price():
    floor = floor_with_a_board()
    floor.press("load done", run="r1", load="clean/1")
    floor.press("load done", run="r1", load="sand:120/2")

    offer, found = asked(floor, question(floor, "cut/2"))

    assert (found[0].load, found[0].price) == ("cut/2", {"minutes": 0.0, "windows": 0})
    assert 2 <= len({move.step for move in found if move.price}) <= 4
    assert offer.prices[found[0].id] == Price()


def test_what_costs_something_does_not_come_first():
    floor = floor_with_a_board()
    asking = question(floor, "clean/1")

    offer, _ = asked(floor, dear(asking, "cut/2", Price(minutes=10.0)))

    assert offer.first == "start|r1|clean/1"
    assert offer.prices["start|r1|cut/2"] == Price(minutes=10.0)


def test_what_was_shown_first_stays_while_it_costs_little():
    floor = floor_with_a_board()

    _, found = asked(floor, question(floor, "cut/2"), "start|r1|clean/1")

    assert loads(found)[0] == "start clean/1"


def test_of_alike_trays_the_first_comes_first_whichever_was_shown_before():
    floor = floor_with_a_board()

    _, found = asked(floor, question(floor, "clean/3"), "start|r1|clean/2")

    assert loads(found)[0] == "start clean/1"


def test_what_the_plan_gives_to_somebody_else_who_is_here_is_theirs():
    floor = floor_with_a_board()
    floor.press("person came", {"until": "2026-06-01T20:00:00Z"}, person="ben")
    asking = question(floor, "clean/3")
    bens = next(block.index for block in asking.problem.blocks if block.load == "clean/1")
    plan = replace(
        asking.plan,
        placed=tuple(replace(one, hands=1) if one.block == bens else one for one in asking.plan.placed),
    )

    _, found = asked(floor, replace(asking, plan=plan))

    assert loads(found)[0] == "start clean/2"


def test_what_was_shown_first_goes_where_it_costs_a_window():
    floor = floor_with_a_board()
    asking = question(floor, "clean/1")
    _, found = asked(floor, dear(asking, "cut/2", Price(minutes=60.0, windows=1)), "start|r1|cut/2")

    assert loads(found)[0] == "start clean/1"
    assert next(move.price for move in found if move.load == "cut/2")["windows"] == 1


def test_it_never_changes_while_somebody_is_in_the_middle_of_something():
    floor = floor_with_a_board()
    floor.press("load started", run="r1", load="clean/1")

    offer, found = asked(floor, question(floor, "cut/2"), "start|r1|clean/2", busy=True)

    assert loads(found)[0] == "start clean/2"
    assert offer.first == "start|r1|clean/2"


def test_late_in_a_session_the_first_offer_is_to_stop_well():
    floor = floor_with_a_board()
    floor.press("time said", {"until": (floor.now + timedelta(minutes=19)).isoformat()})

    _, found = asked(floor, question(floor, "clean/1"))

    assert found[0].code == "stop"
    assert not found[0].price


def test_a_stopped_load_comes_first_whatever_it_costs():
    floor = floor_with_a_board()
    floor.press("load started", run="r1", load="cut/2")
    floor.press("machine started", run="r1", load="cut/2")
    floor.press("load stopped", {"why": "power"}, run="r1", load="cut/2")

    _, found = asked(floor, question(floor, "clean/1"))

    assert found[0].code == "settle"


def waiting(asking: Question, minutes: float, dear: bool) -> Question:
    """A plan that begins nothing for so long; anything else now ends it half an hour later, or no later."""
    placed = tuple(replace(one, start=one.start + int(2 * minutes)) for one in asking.plan.placed)
    price = Price(minutes=30.0) if dear else Price()
    return replace(asking, plan=replace(asking.plan, placed=placed), price=lambda block, person: price)


def test_a_small_job_fills_a_gap_of_the_plan():
    floor = floor_with_a_board()
    found = [one for one in moves(floor.state, floor.book, "ann", floor.now) if one.load != "cut/2"]
    asking = waiting(question(floor), 30, dear=True)

    offer = offer_for(asking, "ann", found)

    assert offered(found, offer, floor.now)[0].id == "job|bins"


def test_nobody_is_told_to_wait_where_something_costs_nothing():
    floor = floor_with_a_board()

    _, found = asked(floor, waiting(question(floor), 30, dear=False))

    assert found[0].code == "start"


def test_nothing_useful_can_be_done_where_all_costs_more_than_waiting():
    floor = floor_with_a_board()
    asking = waiting(question(floor), 30, dear=True)
    found = [one for one in moves(floor.state, floor.book, "ann", floor.now) if one.load == "clean/2"]

    offer = offer_for(asking, "ann", found)

    assert [one.code for one in offered(found, offer, floor.now)] == ["free", "start"]
    assert [one.code for one in offered(found, offer, floor.now + timedelta(minutes=31))] == ["start"]
    assert [one.code for one in offered([replace(found[0], id="new")], offer, floor.now)] == ["start"]


def test_an_older_plan_goes_on_with_its_next_thing():
    floor = floor_with_a_board()
    offer, _ = asked(floor, question(floor, "clean/1", "clean/2"))
    floor.press("load done", run="r1", load="clean/1")

    found = offered(moves(floor.state, floor.book, "ann", floor.now), offer, floor.now)

    assert loads(found)[0] == "start clean/2"


def test_an_older_plan_that_unloads_a_machine_does_not_begin_another_load_at_it():
    floor = floor_with_a_board()
    floor.press("machine started", run="r1", load="cut/2")
    floor.press("machine ended", run="r1", load="cut/2")
    offer, found = asked(floor, question(floor, "cut/2"))
    others = [move for move in found if move.code == "start"]
    another_board = replace(others[0], id="start|r1|cut/3", load="cut/3", step="cut")

    assert (offer.things[0].load, offer.things[0].is_fresh) == ("cut/2", False)
    older = replace(offer, first="gone", things=offer.things[:1])
    assert loads(offered([*others, another_board], older, floor.now)) == loads([*others, another_board])


def test_an_older_plan_that_begins_a_load_does_not_unload_it_and_goes_on_with_it_where_it_was_put_aside():
    floor = floor_with_a_board()
    offer, found = asked(floor, question(floor, "cut/2"))
    begins = next(move for move in found if move.load == "cut/2")
    older = replace(offer, first="gone", things=offer.things[:1])
    first = next(move for move in found if move.load == "clean/1")

    unload, goes_on = (replace(begins, id=code, code=code) for code in ("unload", "go on"))

    assert offered([first, unload], older, floor.now)[0].load == "clean/1"
    assert offered([first, goes_on], older, floor.now)[0].code == "go on"


def test_the_plan_says_what_waits_behind_its_first_thing():
    floor = floor_with_a_board()

    hand, _ = asked(floor, question(floor, "clean/1", "sand:120/1"))
    machine, _ = asked(floor, question(floor, "cut/2"))

    assert (hand.because["code"], hand.because["facts"]["next"]) == ("waited for", "Sand 120")
    assert machine.because["code"] == "machine runs"


def test_an_ended_machine_is_unloaded_for_what_comes_next_there():
    floor = floor_with_a_board(9)
    floor.press("machine started", run="r1", load="cut/2")
    floor.press("machine ended", run="r1", load="cut/2")

    offer, found = asked(floor, question(floor, "cut/2"))

    assert found[0].id == "unload|r1|cut/2"
    assert offer.because == {"code": "frees", "facts": {"station": "CNC", "next": "Cut"}}


def whys(found: list[Move]) -> dict[str, str]:
    return {f"{move.code} {move.load}": move.why["code"] for move in found if move.why}


def test_the_first_move_has_the_plans_reason_where_it_is_the_plans_own_and_no_other_has_one():
    floor = floor_with_a_board()

    _, found = asked(floor, question(floor, "clean/1", "sand:120/1"))

    assert whys(found) == {"start clean/1": "waited for"}
    assert found[0].because == {
        "code": "next in line",
        "facts": {"station": "Bench", "step": "Clean", "after": "Sand 120"},
    }


def test_what_stays_first_because_it_costs_little_does_not_take_the_reason_of_the_plans_own():
    floor = floor_with_a_board()

    _, found = asked(floor, question(floor, "cut/2"), "start|r1|clean/1")

    assert (loads(found)[0], whys(found)) == ("start clean/1", {})


def test_the_reason_of_an_older_plan_does_not_pass_to_its_next_thing():
    floor = floor_with_a_board()
    offer, _ = asked(floor, question(floor, "clean/1", "clean/2"))
    floor.press("load done", run="r1", load="clean/1")

    found = offered(moves(floor.state, floor.book, "ann", floor.now), offer, floor.now)

    assert (loads(found)[0], whys(found)) == ("start clean/2", {})


def test_what_comes_first_for_cares_sake_has_no_other_reason_beside_it():
    floor = floor_with_a_board()
    floor.press("time said", {"until": (floor.now + timedelta(minutes=19)).isoformat()})

    _, found = asked(floor, question(floor, "clean/1"))

    assert (found[0].code, whys(found)) == ("stop", {})


@pytest.mark.parametrize(
    ("reason", "because", "more"),
    [
        ("waited for", "next in line", True),
        ("machine runs", "machine idle", True),
        ("machine runs", "machine earns", False),
        ("then it waits", "then it waits", False),
        ("frees", "machine waits", True),
        ("unload", "machine waits", False),
        ("last", "next in line", False),
    ],
)
def test_a_reason_is_added_only_where_it_says_more_than_what_is_said_already(reason: str, because: str, more: bool):
    assert says_more({"code": reason}, {"code": because}) is more


def test_of_what_no_plan_can_hold_a_clash_is_told_once_and_what_was_pressed_is_not():
    out = [
        LeftOut("r1", "oil", ("1",), "pieces held"),
        LeftOut("r1", "hooks", ("1",), "skill nobody has", {"skill": "riveting"}),
        LeftOut("r1", "hooks", ("2",), "skill nobody has", {"skill": "riveting"}),
        LeftOut("r1", "cut", ("3",), "station out"),
    ]

    assert clashes(out) == [Clash("skill nobody has", {"skill": "riveting"})]


def test_a_machine_that_takes_longer_than_somebody_has_is_too_late_to_load():
    floor = floor_with_a_board()
    floor.press("time said", {"until": (floor.now + timedelta(minutes=40)).isoformat()})

    (found,) = too_late(floor.state, floor.book, "ann", floor.now)

    assert (found.station, found.step, found.minutes) == ("cnc", "cut", 46)
    assert abs(found.at - floor.now - timedelta(minutes=30)) < timedelta(seconds=2)


def test_nothing_is_too_late_while_nobody_thinks_of_stopping():
    floor = floor_with_a_board()

    assert too_late(floor.state, floor.book, "ann", floor.now) == []


def nothing_to_do(floor: Floor) -> list[Move]:
    """What is left for somebody who can begin nothing now: to stop, and that nothing waits."""
    found = moves(floor.state, floor.book, "ann", floor.now)
    nothing = Move("free", "free", {"code": "nothing left", "facts": {}}, (9,))
    stop = Move("stop|ann", "stop", {"code": "nothing left", "facts": {}}, (9,))
    return [stop, nothing, *(one for one in found if one.code == "take over")]


def test_nobody_is_sent_home_whom_the_plan_needs_before_their_session_is_over():
    floor = floor_with_a_board()
    asking = waiting(question(floor, "clean/1"), 8, dear=True)
    found = nothing_to_do(floor)

    offer = offer_for(asking, "ann", found)
    first, *others = offered(found, offer, floor.now)

    assert (first.code, first.because["code"], first.facts["next"]) == ("free", "then", "Clean")
    assert first.facts["at"] == floor.now + timedelta(minutes=8)
    assert [one.code for one in others] == ["stop"]


def test_they_stop_where_the_plan_has_nothing_more_for_them_in_this_session():
    floor = floor_with_a_board()
    asking = waiting(question(floor, "clean/1"), 60 * 24, dear=True)
    found = nothing_to_do(floor)

    assert offered(found, offer_for(asking, "ann", found), floor.now)[0].code == "stop"
    waits = found[::-1]
    assert offered(waits, offer_for(asking, "ann", waits), floor.now)[0].code == "stop"


def test_when_the_session_ends_it_is_time_to_stop_whatever_is_planned():
    floor = floor_with_a_board()
    floor.press("time said", {"until": (floor.now + timedelta(minutes=19)).isoformat()})
    asking = waiting(question(floor, "clean/1"), 4, dear=True)
    found = nothing_to_do(floor)

    assert offered(found, offer_for(asking, "ann", found), floor.now)[0].code == "stop"


def test_trays_of_which_not_the_same_is_left_are_not_alike():
    floor = floor_with_a_board()
    scrap = [{"pieces": 1, "why": "knot"}]
    floor.press("pieces counted", {"good": 4, "scrap": scrap}, run="r1", tray="1", operation="cut")

    _, found = asked(floor, question(floor, "clean/3"))

    assert loads(found)[0] == "start clean/2"


def shown_before(floor: Floor, move: str) -> Answer:
    """The last answer, in which the plan's own move is another than the one shown first."""
    before = answer(floor.state, floor.book, floor.now)
    assert before.offers["ann"].own != move and before.offers["ann"].prices[move] == Price()
    hands = floor.state.people["ann"].hands
    return replace(before, shown={"ann": ShownFirst(move, hands, standing_of(floor.state))})


def first_now(floor: Floor, before: Answer) -> str:
    return answer(floor.state, floor.book, floor.now, before=before).offers["ann"].first


ORDERS = [{"line": "1", "pieces": 8}, {"line": "2", "pieces": 5}]
DUE = [{"line": "1", "pieces": 5, "due": "2026-06-03T18:00:00Z"}]


def shown_another(*, busy: bool = False) -> tuple[Floor, Answer, str, str]:
    """(floor, the last answer, the plan's own move, the harmless other that was shown)."""
    floor = floor_with_a_board(3)
    floor.press("load done", run="r1", load="clean/1")
    if busy:
        floor.press("load started", run="r1", load="clean/3")
    own = answer(floor.state, floor.book, floor.now).offers["ann"].own
    other = next(one for one in ("start|r1|clean/2", "start|r1|sand:120/1") if one != own)
    before = shown_before(floor, other)
    assert first_now(floor, before) == other
    return floor, before, own, other


CHANGES = pytest.mark.parametrize(
    ("kind", "body", "about"),
    [
        ("orders changed", {"orders": ORDERS}, {"run": "r1"}),
        ("orders changed", {"orders": DUE}, {"run": "r1"}),
        ("time said", {"until": "2026-06-01T20:30:00Z"}, {}),
        ("person came", {"until": "2026-06-01T20:00:00Z", "room": "shop"}, {"person": "ben"}),
        ("station out of use", {"why": "broken"}, {"station": "laser"}),
    ],
)  # fmt: skip


@CHANGES
def test_the_line_that_is_shown_is_given_up_when_orders_people_or_machines_change(
    kind: str, body: dict[str, Any], about: dict[str, str]
):
    floor, before, own, other = shown_another()

    floor.press("note written", {"text": "nothing"}, run="r1")
    assert first_now(floor, before) == other

    floor.press(kind, body, **about)
    assert first_now(floor, before) == own


@CHANGES
def test_whoever_is_busy_is_shown_the_same_whatever_changes(kind: str, body: dict[str, Any], about: dict[str, str]):
    floor, before, _, other = shown_another(busy=True)

    floor.press(kind, body, **about)

    assert first_now(floor, before) == other
