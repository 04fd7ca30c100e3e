from datetime import timedelta

from runboard.run.calls.dues import dues
from tests.core.pressing import Floor


def due(floor: Floor, kind: str):
    return [one for one in dues(floor.state, floor.book).values() if one.kind == kind]


def running() -> Floor:
    floor = Floor()
    floor.open_run()
    floor.press("machine started", run="r1", load="cut/1")
    return floor


def test_a_machine_that_runs_is_due_at_its_end():
    floor = running()

    (end,) = due(floor, "machine end")

    assert end.due_at == floor.run.loads["cut/1"].end_at
    assert end.id == "machine end|r1|cut/1|1"


def test_a_new_estimate_moves_the_alert_to_a_new_name():
    floor = running()
    floor.press("machine started", {"minutes": 10}, run="r1", load="cut/1")

    assert [one.id for one in due(floor, "machine end")] == ["machine end|r1|cut/1|2"]


def test_the_alert_is_over_once_somebody_is_at_the_machine():
    floor = running()
    floor.press("unloading started", run="r1", load="cut/1")

    assert due(floor, "machine end") == []


def test_an_end_that_a_sensor_saw_is_due_until_somebody_answers():
    floor = running()
    floor.press("machine ended", run="r1", load="cut/1", person="", basis="sensor")
    (end,) = due(floor, "machine end")

    floor.press("alert answered", {"alert": end.id, "answer": "ended"})

    assert end.due_at <= floor.now
    assert due(floor, "machine end") == []


def test_a_claim_alone_does_not_silence_an_alert():
    floor = running()
    (end,) = due(floor, "machine end")
    floor.press("alert claimed", {"alert": end.id})

    assert due(floor, "machine end") == [end]


def test_a_wait_is_due_when_it_is_over_and_before_its_latest_end():
    floor = Floor()
    product = floor.ledger.book.product("rail")
    floor.open_run()
    floor.press("load done", {"counts": {"1": {"good": 5}}}, run="r1", load="oil/1")

    (over,) = due(floor, "wait over")

    assert product is not None
    assert over.due_at == floor.run.trays["1"].rests["oil"].ready_at
    assert due(floor, "wait latest") == []


def test_the_session_ends_early_enough_to_tidy_up():
    floor = Floor()
    until = floor.now + timedelta(hours=2)
    floor.press("person came", {"until": until.isoformat()})

    (end,) = due(floor, "session end")

    assert end.due_at == until - timedelta(minutes=10)


def test_asked_again_later_it_is_due_later():
    floor = Floor()
    floor.open_run()
    floor.press("load done", {"counts": {"1": {"good": 5}}}, run="r1", load="oil/1")
    (over,) = due(floor, "wait over")
    again = floor.now + timedelta(minutes=30)

    answer = {"alert": over.id, "answer": "seen", "ask_again_at": again.isoformat()}
    floor.press("alert answered", answer)

    (ask,) = due(floor, "ask again")
    assert ask.due_at == again
    assert due(floor, "wait over") == []
