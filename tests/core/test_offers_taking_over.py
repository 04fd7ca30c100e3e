"""Where a plan hands a watch from one person to another, both are told in time, and nobody is let go before the press."""

from dataclasses import replace
from datetime import timedelta

from runboard.plan.move import Move
from runboard.plan.next_move import moves
from runboard.plan.offers import Offer, offer_for, offered
from runboard.plan.prices import Question
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import Plan
from tests.core.one_after_another import one_after_another
from tests.core.pressing import Floor

ANN, BEN = 0, 1


def watched(done: tuple[str, ...] = ()) -> Floor:
    """Ann watches the CNC, which runs for forty minutes; Ben is in the shop too."""
    floor = Floor()
    for person in ("ann", "ben"):
        floor.press("person came", {"until": "2026-06-01T20:00:00Z", "room": "shop"}, person=person)
    floor.open_run(trays=6)
    floor.press("load done", run="r1", load="cut/1")
    for step in done:
        for tray in "123":
            floor.press("load done", run="r1", load=f"{step}/{tray}", person="ben")
    floor.press("machine started", run="r1", load="cut/2")
    return floor


def handed(floor: Floor, minutes: int, later: int = 0) -> Question:
    """A plan in which Ben takes over at the CNC in so many minutes; his hands have nothing for ``later`` minutes."""
    problem = problem_for(floor.state, floor.book, floor.now)
    plan = one_after_another(problem, list(range(len(problem.blocks))))
    placed = tuple(
        replace(one, watchers=((ANN, 0), (BEN, 2 * minutes)))
        if problem.blocks[one.block].begun
        else replace(one, start=one.start + 2 * later, hands=BEN)
        for one in plan.placed
    )
    return Question(floor.state, problem, Plan(placed), lambda block, person: None)


def asked(floor: Floor, asking: Question, person: str, later: float = 0) -> tuple[Offer, list[Move]]:
    now = floor.now + timedelta(minutes=later)
    offer = offer_for(asking, person, moves(floor.state, floor.book, person, floor.now))
    return offer, offered(moves(floor.state, floor.book, person, now), offer, now)


def test_whose_turn_comes_soon_is_told_when() -> None:
    floor = watched()

    _, found = asked(floor, handed(floor, 12), "ben")

    (taking,) = (move for move in found if move.code == "take over")
    assert taking.facts["at"] - floor.now == timedelta(minutes=12)
    assert found[0].code == "start"


def test_whose_turn_comes_much_later_is_not_told_yet() -> None:
    floor = watched()

    _, found = asked(floor, handed(floor, 30), "ben")

    assert [move.facts.get("at") for move in found if move.code == "take over"] == [None]


def test_it_comes_first_where_nothing_else_waits_for_them_before() -> None:
    floor = watched()
    asking = handed(floor, 4, later=60)
    found = [move for move in moves(floor.state, floor.book, "ben", floor.now) if move.code in ("start", "take over")]

    offer = offer_for(asking, "ben", found)

    assert offered(found, offer, floor.now)[0].code == "take over"


def test_when_it_is_time_to_go_it_comes_before_all_else() -> None:
    floor = watched()

    offer, found = asked(floor, handed(floor, 12), "ben", later=12)

    assert offer.first != found[0].id
    assert found[0].code == "take over"


def test_time_to_stop_stays_first() -> None:
    floor = watched()
    floor.press("time said", {"until": (floor.now + timedelta(minutes=9)).isoformat()}, person="ben")

    _, found = asked(floor, handed(floor, 0), "ben")

    assert found[0].code == "stop"


def test_the_watcher_is_not_let_go_before_the_press() -> None:
    floor = watched(("clean", "sand:120", "sand:180"))
    asking = handed(floor, 12)

    _, before = asked(floor, asking, "ann", later=13)
    floor.press("watch taken", run="r1", load="cut/2", person="ben")
    after = moves(floor.state, floor.book, "ann", floor.now)

    assert "start engrave/1" not in [f"{move.code} {move.load}" for move in before]
    assert "start engrave/1" in [f"{move.code} {move.load}" for move in after]


def test_once_it_is_pressed_nobody_is_told_again() -> None:
    floor = watched()
    offer, _ = asked(floor, handed(floor, 0), "ben")

    floor.press("watch taken", run="r1", load="cut/2", person="ben")

    found = offered(moves(floor.state, floor.book, "ben", floor.now), offer, floor.now)
    assert "take over" not in [move.code for move in found]
