"""Why somebody, a machine or a tray waited: as the log shows, and no more than it shows."""

from datetime import timedelta
from typing import Any

from runboard.review.happened.day import day_of
from runboard.review.happened.nouns import DayPart
from tests.core.pasts import past_of
from tests.core.pressing import Floor
from tests.scenario import a_pass, operation, shop


def minutes(length: timedelta) -> float:
    return round(length.total_seconds() / 60)


def day(floor: Floor, key: str, row: str = "person") -> list[tuple[str, str, float]]:
    """The parts of somebody's or a station's day that take a minute or more: doing, kind or why, minutes."""
    parts = [part for part in day_of(past_of(floor)).parts if (part.row, part.key) == (row, key)]
    return [(part.doing, part.kind or part.why, minutes(part.length)) for part in parts if minutes(part.length)]


def trays_waited(floor: Floor) -> dict[str, float]:
    found = day_of(past_of(floor)).waiting
    return {one.why: minutes(one.length) for one in found if one.row == "tray" and minutes(one.length)}


def small(*operations: dict[str, Any], trays: int = 2, **book: Any) -> Floor:
    """A run of trays of five whose route is these operations."""
    product = {"key": "rail", "name": "Rails", "pieces_a_tray": 5, "operations": list(operations)}
    record = {**shop(), "products": [product], **book}
    record["people"][0]["tidy_up_minutes"] = 0
    floor = Floor(record)
    there = [{"tray": str(number), "pieces": 5} for number in range(1, trays + 1)]
    wanted = {"name": "Rails", "product": product, "orders": [], "trays": there, "wood": "ash"}
    floor.press("run opened", wanted, run="r1")
    return floor


def works(floor: Floor, load: str, length: float, person: str = "ann", **more: Any) -> None:
    floor.press("load started", more, run="r1", load=load, person=person)
    floor.wait(length)
    floor.press("load done", run="r1", load=load, person=person)


CLEAN = operation("clean", "bench")
SAND = operation("sand", "sander")
ENGRAVE = operation("engrave", "laser", a_pass(size="tray", loading=2, machine=20), attendance="watched")


def test_who_begins_nothing_though_a_tray_is_ready_did_not_say_why() -> None:
    floor = small(CLEAN)
    floor.press("person came", {"room": "shop"})
    floor.wait(10)

    works(floor, "clean/1", 5)

    assert day(floor, "ann") == [("waiting", "not said", 10), ("work", "hand", 5)]


def test_start_up_and_tidy_up_are_the_books_and_no_longer() -> None:
    record = shop()
    record["people"][0] |= {"start_up_minutes": 4, "tidy_up_minutes": 3}
    floor = Floor(record)
    floor.open_run()
    floor.press("person came")
    floor.wait(6)
    works(floor, "clean/1", 5)
    floor.wait(8)
    floor.press("person went")

    parts = day(floor, "ann")

    assert parts[:3] == [("waiting", "start-up", 4), ("waiting", "not said", 2), ("work", "hand", 5)]
    assert parts[-1] == ("waiting", "tidy-up", 3)


def test_who_waits_for_a_tray_that_dries_waits_for_that() -> None:
    floor = small(operation("oil", "finishing", wait={"why": "dry", "least_minutes": 30}), CLEAN)
    works(floor, "oil/1", 5)
    floor.wait(32)

    works(floor, "clean/1", 5)

    assert day(floor, "ann")[1:] == [("waiting", "drying", 30), ("waiting", "not said", 2), ("work", "hand", 5)]
    assert trays_waited(floor)["drying"] == 30


def test_what_is_not_drying_but_in_clamps_rests() -> None:
    floor = small(operation("glue", "bench", wait={"why": "clamp", "least_minutes": 20}), CLEAN)
    works(floor, "glue/1", 5)
    floor.wait(20)

    works(floor, "clean/1", 5)

    assert ("waiting", "resting", 20) in day(floor, "ann")


def test_who_waits_for_pieces_on_a_running_machine_waits_for_that_machine() -> None:
    record = shop()
    record["stations"][0]["kind"] = "other machine"
    floor = small({**ENGRAVE, "station": "cnc", "attendance": "none"}, CLEAN, stations=record["stations"])
    floor.press("load started", run="r1", load="engrave/1")
    floor.wait(2)
    floor.press("machine started", run="r1", load="engrave/1")
    floor.wait(20)
    floor.press("load done", run="r1", load="engrave/1")

    works(floor, "clean/1", 5)

    assert day(floor, "ann") == [("work", "loading", 2), ("waiting", "machine", 20), ("work", "hand", 5)]


def test_who_waits_for_pieces_in_anothers_hands_had_nothing_to_begin() -> None:
    floor = small(CLEAN, SAND)
    floor.press("person came", person="ben")
    works(floor, "clean/1", 12)

    works(floor, "sand/1", 5, person="ben")

    assert day(floor, "ben") == [("waiting", "no load", 12), ("work", "hand", 5)]
    assert day(floor, "sander", "station") == [("work", "hand", 5)]


def test_who_waits_for_a_service_waits_for_that_and_so_does_the_station() -> None:
    dusty = {"services": ["extraction"]}
    floor = small(operation("clean", "bench", **dusty), operation("sand", "sander", **dusty), trays=3)
    works(floor, "clean/1", 5)
    works(floor, "clean/2", 5)
    works(floor, "sand/1", 5, person="ben")
    works(floor, "clean/3", 9)

    works(floor, "sand/2", 5, person="ben")

    taken = [("work", "hand", 5), ("waiting", "service taken", 9), ("work", "hand", 5)]
    assert day(floor, "ben") == taken
    assert day(floor, "sander", "station") == taken


def test_walking_is_as_long_as_the_book_says_and_never_longer_than_the_gap() -> None:
    floor = small(CLEAN, ENGRAVE)
    works(floor, "clean/1", 5)
    floor.wait(6)
    floor.press("load started", run="r1", load="engrave/1")
    floor.wait(2)
    floor.press("machine started", run="r1", load="engrave/1")
    floor.wait(20)
    floor.press("load done", run="r1", load="engrave/1")
    floor.wait(1)

    works(floor, "clean/2", 5)

    assert day(floor, "ann") == [
        ("work", "hand", 5),
        ("waiting", "other room", 4),
        ("walking", "", 2),
        ("work", "loading", 2),
        ("watching", "", 20),
        ("walking", "", 1),
        ("work", "hand", 5),
    ]


def test_being_called_away_is_no_waiting_and_its_load_was_put_aside() -> None:
    floor = small(CLEAN)
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(3)
    floor.press("person called away")
    floor.wait(25)
    floor.press("person came back")
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(3)
    floor.press("load done", run="r1", load="clean/1")

    assert day(floor, "ann") == [("work", "hand", 3), ("away", "", 25), ("work", "hand", 3)]
    assert day(floor, "bench", "station") == [("work", "hand", 3), ("waiting", "put aside", 25), ("work", "hand", 3)]


def test_a_machine_that_ended_and_is_not_taken_off_needs_unloading() -> None:
    floor = small(ENGRAVE)
    floor.press("load started", run="r1", load="engrave/1")
    floor.wait(2)
    floor.press("machine started", run="r1", load="engrave/1")
    floor.wait(20)
    floor.press("machine ended", run="r1", load="engrave/1")
    floor.wait(7)
    floor.press("unloading started", run="r1", load="engrave/1")
    floor.wait(1)
    floor.press("load done", run="r1", load="engrave/1")

    assert day(floor, "laser", "station") == [
        ("work", "loading", 2),
        ("work", "machine", 20),
        ("waiting", "needs unloading", 7),
        ("work", "unloading", 1),
    ]


def test_a_machine_with_ready_pieces_waits_for_hands_or_for_anybody_at_all() -> None:
    floor = small(SAND, CLEAN)
    works(floor, "sand/1", 5)
    works(floor, "clean/1", 12)
    floor.press("person went")
    floor.wait(30)
    floor.press("person came")

    works(floor, "sand/2", 5)

    assert day(floor, "sander", "station") == [
        ("work", "hand", 5),
        ("waiting", "no person", 12),
        ("waiting", "nobody there", 30),
        ("work", "hand", 5),
    ]


def test_a_machine_out_of_use_waits_for_nothing_else() -> None:
    floor = small(SAND)
    works(floor, "sand/1", 5)
    floor.press("station out of use", {"why": "belt"}, station="sander")
    floor.wait(40)
    floor.press("station back in use", station="sander")

    works(floor, "sand/2", 5)

    assert ("waiting", "out of use", 40) in day(floor, "sander", "station")


def test_trays_wait_for_each_other_where_they_go_on_together() -> None:
    floor = small(CLEAN, operation("oil", "finishing", a_pass(size="run")))
    works(floor, "clean/1", 5)
    works(floor, "clean/2", 10)

    works(floor, "oil/1+2", 5)

    assert trays_waited(floor) == {"station taken": 5, "other trays": 10}


def test_pieces_that_are_held_wait_for_what_they_are_held_for() -> None:
    floor = small(CLEAN)
    floor.press("pieces held", {"why": "number not confirmed"}, run="r1", tray="1", operation="clean")
    floor.wait(15)
    floor.press("pieces released", run="r1", tray="1")

    works(floor, "clean/1", 5)

    assert trays_waited(floor)["held"] == 15


def test_a_day_that_nobody_ended_ends_with_the_last_sign_and_an_open_one_now() -> None:
    floor = small(CLEAN)
    works(floor, "clean/1", 5)
    floor.wait(24 * 60)
    floor.press("person came")
    floor.wait(3)

    days = [part for part in day_of(past_of(floor)).parts if part.row == "person"]

    assert [minutes(part.length) for part in days if minutes(part.length)] == [5, 3]
    assert days[-1].ended_at == floor.now


def test_another_runs_work_carries_its_run() -> None:
    floor = small(CLEAN)
    floor.open_run(run="r2")
    floor.press("load started", run="r2", load="clean/1")
    floor.wait(4)
    floor.press("load done", run="r2", load="clean/1")
    works(floor, "clean/1", 5)

    work = [part for part in day_of(past_of(floor)).parts if part.doing == "work" and part.row == "person"]

    assert [(part.run, minutes(part.length)) for part in work] == [("r2", 4), ("", 5)]


def test_a_small_job_of_the_shops_own_is_work_of_no_run() -> None:
    floor = small(CLEAN)
    floor.press("job started", {"job": "bins"})
    floor.wait(5)
    floor.press("job done", {"job": "bins"})

    (part,) = [part for part in day_of(past_of(floor)).parts if minutes(part.length)]

    assert part == DayPart("person", "ann", part.began_at, part.ended_at, "work", "job", step="bins")


def test_who_could_have_begun_something_else_had_not_nothing_to_begin() -> None:
    floor = small(CLEAN, SAND, trays=3)
    works(floor, "clean/1", 5)
    floor.press("person came", person="ben")
    works(floor, "clean/2", 12)

    works(floor, "sand/2", 5, person="ben")

    assert day(floor, "ben") == [("waiting", "not said", 12), ("work", "hand", 5)]


def test_a_station_waits_for_hands_where_any_tray_is_ready_for_it() -> None:
    floor = small(CLEAN, SAND, trays=3)
    works(floor, "clean/1", 5)
    works(floor, "clean/2", 5)
    works(floor, "sand/1", 5)
    works(floor, "clean/3", 12)

    works(floor, "sand/3", 5)

    assert day(floor, "sander", "station") == [("work", "hand", 5), ("waiting", "no person", 12), ("work", "hand", 5)]


def test_a_rack_that_is_full_keeps_off_what_would_rest_on_it_until_somebody_takes_something_off() -> None:
    services = [*shop()["services"], {"key": "rack", "name": "Rack", "capacity": 1}]
    wait = {"why": "dry", "least_minutes": 10, "holds": {"rack": 1}}
    floor = small(operation("oil", "finishing", wait=wait), CLEAN, services=services)
    works(floor, "oil/1", 5)
    floor.wait(25)
    works(floor, "clean/1", 5)

    works(floor, "oil/2", 5)

    waited = trays_waited(floor)
    assert (waited["service taken"], waited["drying"]) == (25, 10)
    assert ("waiting", "service taken", 25) in day(floor, "finishing", "station")
    found = day_of(past_of(floor))
    assert {one.of for one in (*found.waiting, *found.parts) if one.why == "service taken"} == {"rack"}


def test_dust_waits_for_what_a_finish_leaves_in_the_air_of_its_room() -> None:
    floor = small(operation("oil", "finishing", wait={"why": "dry", "least_minutes": 30}), CLEAN)
    floor.open_run(run="r2")
    floor.press("load done", run="r2", load="clean/1")
    works(floor, "oil/1", 5)
    floor.wait(122)
    floor.press("load started", run="r2", load="sand:120/1", person="ben")
    floor.wait(5)
    floor.press("load done", run="r2", load="sand:120/1", person="ben")

    past = past_of(floor, "r2")

    assert round(sum(one.length.total_seconds() for one in day_of(past).waiting if one.why == "air") / 60) == 125


def test_a_first_piece_that_failed_and_a_supply_that_ran_out_keep_a_load_off() -> None:
    floor = small(
        operation("clean", "bench", uses=[{"supply": "hooks", "each": 1}], checks=[{"key": "a", "text": "A"}])
    )
    floor.press("supply out", {"supply": "hooks"}, run="r1")
    floor.wait(10)
    floor.press("supply in", {"supply": "hooks"}, run="r1")
    floor.press("first piece checked", {"result": "fail", "check": "a"}, run="r1", operation="clean")
    floor.wait(6)
    floor.press("first piece decided", {"what": "go on"}, run="r1", operation="clean")

    works(floor, "clean/1", 5)

    # Both trays waited; the second still does, for the station and then for somebody.
    waited = trays_waited(floor)
    assert (waited["supply"], waited["first piece"]) == (20, 12)


def test_quiet_hours_are_the_books() -> None:
    record = shop()
    record["stations"][2]["quiet"] = [{"days": ["mon"], "from": "18:10", "to": "18:30"}]
    floor = small(SAND, stations=record["stations"])
    works(floor, "sand/1", 5)
    floor.wait(40)

    works(floor, "sand/2", 5)

    assert ("waiting", "quiet hours", 20) in day(floor, "sander", "station")


def test_nothing_of_other_days_than_the_runs_stands_in_its_review() -> None:
    floor = small(CLEAN)
    floor.open_run(run="r2")
    works(floor, "clean/1", 5)
    floor.press("run abandoned", run="r1")
    floor.press("load started", run="r2", load="clean/1")
    floor.wait(60 * 24)
    floor.press("load done", run="r2", load="clean/1")

    past = past_of(floor)

    others = [(part.row, minutes(part.length)) for part in day_of(past).parts if part.run == "r2"]
    assert others == [("person", 6 * 60 - 5), ("station", 6 * 60 - 5)]
    assert max(part.ended_at for part in day_of(past).parts) == past.days[1]


def test_a_bench_waits_for_nobody_in_the_sums() -> None:
    floor = small(CLEAN)
    works(floor, "clean/1", 5)
    floor.wait(10)
    works(floor, "clean/2", 5)

    found = day_of(past_of(floor))

    assert ("waiting", "no person", 10) in day(floor, "bench", "station")
    assert {one.row for one in found.waiting} == {"person", "tray"}


def test_who_puts_right_what_stopped_early_does_that() -> None:
    floor = small(ENGRAVE)
    floor.press("load started", run="r1", load="engrave/1")
    floor.wait(2)
    floor.press("machine started", run="r1", load="engrave/1")
    floor.wait(7)
    floor.press("load stopped", {"why": "slip"}, run="r1", load="engrave/1")
    floor.wait(6)
    floor.press("stop settled", {"how": "resume"}, run="r1", load="engrave/1")
    floor.wait(2)

    assert ("waiting", "stopped", 6) in day(floor, "ann")
    assert ("waiting", "stopped", 6) in day(floor, "laser", "station")
    assert trays_waited(floor)["stopped"] == 6


def test_half_a_tray_does_not_wait_for_its_other_half() -> None:
    floor = small({**ENGRAVE, "station": "bench"}, SAND, CLEAN, trays=1)
    floor.press("load done", {"counts": {"1": {"good": 3}}}, run="r1", load="engrave/1")
    works(floor, "sand/1", 10)
    floor.wait(6)
    floor.press("load done", run="r1", load="engrave/1.2")

    works(floor, "clean/1", 5)

    assert day(floor, "ann")[-2:] == [("waiting", "not said", 6), ("work", "hand", 5)]


def test_who_was_called_away_is_not_there() -> None:
    floor = small(CLEAN)
    works(floor, "clean/1", 5)
    floor.press("person called away")
    floor.wait(20)
    floor.press("person came back")
    floor.wait(3)

    works(floor, "clean/2", 5)

    assert trays_waited(floor)["nobody there"] == 20
    assert day(floor, "bench", "station")[1:3] == [("waiting", "nobody there", 20), ("waiting", "no person", 3)]
