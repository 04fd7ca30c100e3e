from dataclasses import replace
from datetime import timedelta

from runboard.plan.move import Move
from runboard.plan.next_move import moves
from tests.core.pressing import Floor


def offered(floor: Floor, person: str = "ann") -> list[Move]:
    return moves(floor.state, floor.book, person, floor.now)


def codes(found: list[Move]) -> list[str]:
    return [f"{move.code} {move.load}".strip() for move in found]


def with_a_run(trays: int = 6) -> Floor:
    floor = Floor()
    floor.press("person came", {"until": "2026-06-01T20:00:00Z"})
    floor.open_run(trays=trays)
    return floor


def test_a_fresh_run_begins_with_its_first_board():
    floor = with_a_run()

    first = offered(floor)[0]

    assert (first.code, first.load) == ("start", "cut/1")
    assert first.pieces == {"1": 5, "2": 5, "3": 5}


def test_an_ended_machine_comes_first():
    floor = with_a_run()
    floor.press("load done", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/2")
    floor.press("machine ended", run="r1", load="cut/2")

    assert codes(offered(floor))[0] == "unload cut/2"


def test_a_machine_that_should_have_ended_comes_first():
    floor = with_a_run()
    floor.press("load done", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/2")
    floor.press("load started", run="r1", load="clean/1")
    before = codes(offered(floor))[0]
    floor.wait(39)

    assert before == "start clean/2"
    assert codes(offered(floor))[0] == "unload cut/2"


def test_while_a_machine_is_watched_only_work_in_its_sight_is_offered():
    floor = with_a_run()
    floor.press("load done", run="r1", load="cut/1")
    for tray in "123":
        floor.press("load done", run="r1", load=f"sand:180/{tray}")
    floor.press("load started", run="r1", load="engrave/1")
    floor.press("machine started", run="r1", load="engrave/1")

    assert [move.code for move in offered(floor)] == ["watch"]


def test_the_laser_is_not_offered_while_the_cnc_is_watched():
    floor = with_a_run()
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load done", run="r1", load="sand:180/1")
    floor.press("machine started", run="r1", load="cut/2")

    stations = {move.station for move in offered(floor)}

    assert "laser" not in stations
    assert "bench" in stations


def test_the_next_move_is_looked_for_from_where_the_hands_will_be_free():
    floor = with_a_run()
    floor.press("load done", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/2")
    floor.press("load started", run="r1", load="clean/1")

    assert offered(floor)[0].load == "clean/2"


def test_a_change_of_grit_is_no_reason_to_leave_the_sander():
    floor = with_a_run(3)
    floor.press("load done", run="r1", load="cut/1")
    for tray in "23":
        floor.press("load done", run="r1", load=f"clean/{tray}")
        floor.press("load done", run="r1", load=f"sand:180/{tray}")
    floor.press("load started", run="r1", load="clean/1")
    floor.press("load started", run="r1", load="sand:120/1")

    assert codes(offered(floor))[0] == "start sand:180/1"


def test_nothing_longer_than_the_session_is_offered():
    floor = with_a_run()
    floor.press("time said", {"until": (floor.now + timedelta(minutes=40)).isoformat()})

    found = offered(floor)

    assert "start cut/1" not in codes(found)
    assert found[0].code == "job"


def test_at_the_end_of_the_session_the_first_offer_is_to_stop_well():
    floor = with_a_run()
    floor.press("load done", run="r1", load="cut/1")
    floor.press("time said", {"until": (floor.now + timedelta(minutes=15)).isoformat()})

    assert offered(floor)[0].code == "stop"


def test_nobody_is_sent_home_while_something_dries_that_is_ready_within_the_session():
    floor = with_a_run(3)
    floor.press("load done", {"counts": {tray: {"good": 5} for tray in "123"}}, run="r1", load="oil/1+2+3")

    floor.press("time said", {"until": (floor.now + timedelta(hours=14)).isoformat()})
    no_jobs = replace(floor.book, jobs=())
    assert [one.code for one in moves(floor.state, no_jobs, "ann", floor.now)] == ["free", "stop"]

    floor.press("time said", {"until": (floor.now + timedelta(minutes=5)).isoformat()})
    assert offered(floor)[0].code == "stop"


def test_a_declined_move_is_not_offered_again_today():
    floor = with_a_run()
    first = offered(floor)[0]

    floor.press("move declined", {"move": first.id, "because": "too loud now"})

    assert first.id not in [move.id for move in offered(floor)]


def test_what_dries_is_offered_when_it_is_dry():
    floor = with_a_run(3)
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load done", {"counts": {tray: {"good": 5} for tray in "123"}}, run="r1", load="oil/1+2+3")

    assert "hooks" not in {move.step for move in offered(floor)}
    floor.wait(721)
    floor.press("time said", {"until": (floor.now + timedelta(hours=3)).isoformat()})
    assert "hooks" in {move.step for move in offered(floor)}


def test_no_sanding_and_no_laser_where_a_finish_is_wet():
    floor = with_a_run(6)
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load done", run="r1", load="cut/2")
    floor.press("load done", run="r1", load="clean/4")
    floor.press("load done", run="r1", load="sand:120/4")
    floor.press("load done", {"counts": {"1": {"good": 5}}}, run="r1", load="oil/1")

    assert "sander" not in {move.station for move in offered(floor)}


def test_a_service_that_is_in_use_holds_back_what_needs_it():
    floor = with_a_run()
    record = dict(floor.ledger.arrived["event-00002"].body["product"])
    record["operations"] = [
        one | ({"services": ["extraction"]} if one["key"] == "sand" else {}) for one in record["operations"]
    ]
    floor.press("route revised", {"product": record, "from_tray": "1"}, run="r1")
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load done", run="r1", load="clean/1")
    floor.press("machine started", run="r1", load="cut/2")

    assert "sander" not in {move.station for move in offered(floor)}


def test_what_ran_out_holds_back_only_what_needs_it():
    floor = with_a_run(3)
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load done", {"counts": {"1": {"good": 5}}}, run="r1", load="oil/1")
    floor.press("wait ended", run="r1", tray="1", operation="oil")
    assert "hooks" in {move.step for move in offered(floor)}

    floor.press("supply out", {"supply": "hooks"}, run="r1")

    assert "hooks" not in {move.step for move in offered(floor)}
    assert "clean" in {move.step for move in offered(floor)}


def test_texts_are_proposed_for_pieces_that_become_personal():
    floor = with_a_run(3)
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load done", run="r1", load="sand:180/1")

    engrave = next(move for move in offered(floor) if move.step == "engrave")

    assert [one["text"] for one in engrave.places["1"]] == ["12"] * 5


def test_two_people_are_not_sent_to_one_station():
    floor = with_a_run()
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load started", run="r1", load="clean/1")

    assert "bench" not in {move.station for move in offered(floor, "ben")}


def with_a_watched_cnc(ben: str = "shop") -> Floor:
    """Ann watches the CNC; Ben is in the shop too."""
    floor = with_a_run()
    floor.press("person came", {"until": "2026-06-01T20:00:00Z", "room": ben}, person="ben")
    floor.press("load done", run="r1", load="cut/1")
    floor.press("machine started", run="r1", load="cut/2")
    return floor


def test_another_who_is_here_may_take_over_a_watch_and_it_comes_last():
    floor = with_a_watched_cnc()

    found = offered(floor, "ben")

    assert codes(found)[-1] == "take over cut/2"
    assert codes(found)[0] == "start clean/1"
    assert found[-1].facts["person"] == "Ann"
    assert "take over" not in [move.code for move in offered(floor)]


def test_who_has_taken_a_watch_over_watches_and_the_other_may_take_it_back():
    floor = with_a_watched_cnc()

    floor.press("watch taken", run="r1", load="cut/2", person="ben")

    assert codes(offered(floor))[-1] == "take over cut/2"
    assert "take over" not in [move.code for move in offered(floor, "ben")]


def test_nobody_takes_over_a_watch_who_is_away_or_watches_elsewhere():
    floor = with_a_watched_cnc()
    floor.press("load done", run="r1", load="sand:180/1")
    floor.press("machine started", run="r1", load="engrave/1", person="ben")
    elsewhere = offered(floor, "ben")
    floor.press("person called away", person="ben")

    assert [move.code for move in elsewhere] == ["watch"]
    assert "take over" not in [move.code for move in offered(floor, "ben")]


def test_taking_over_hides_neither_that_nothing_waits_nor_that_it_is_time_to_stop():
    floor = with_a_watched_cnc()
    for step in ("clean", "sand:120", "sand:180"):
        for tray in "123":
            floor.press("load done", run="r1", load=f"{step}/{tray}", person="ben")
    floor.press("time said", {"until": (floor.now + timedelta(minutes=8)).isoformat()}, person="ben")

    assert codes(offered(floor, "ben"))[0] == "stop"
    assert codes(offered(floor, "ben"))[-1] == "take over cut/2"


def test_many_moves_never_leave_taking_over_out():
    floor = with_a_watched_cnc()

    found = moves(floor.state, floor.book, "ben", floor.now, most=2)

    assert codes(found) == ["start clean/1", "take over cut/2"]


def test_nobody_is_sent_home_while_the_only_work_is_in_another_s_hands():
    floor = with_a_run(3)
    floor.press("person came", {"until": "2026-06-01T20:00:00Z", "room": "shop"}, person="ben")
    floor.press("load started", run="r1", load="cut/1")

    found = moves(floor.state, replace(floor.book, jobs=()), "ben", floor.now)

    assert [one.code for one in found] == ["free", "stop"]
    assert found[0].facts["at"] > floor.now
