"""What is still to be done, as blocks of work with all that they must keep."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import TICK, Block, Problem
from runboard.plan.schedule.rule.greedy import greedy_plan
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails, shop


def problem(floor: Floor) -> Problem:
    return problem_for(floor.state, floor.book, floor.now)


def of(found: Problem, step: str) -> list[Block]:
    return [block for block in found.blocks if block.step == step]


def opened(trays: int = 6, **more: object) -> Floor:
    floor = Floor()
    floor.open_run(trays=trays, **more)
    return floor


def test_a_board_is_one_load_that_feeds_its_trays():
    found = problem(opened())

    run, unload, *_ = of(found, "cut")
    assert (run.load, run.trays, run.pieces) == ("cut/1", ("1", "2", "3"), 15)
    assert [(one.kind, one.attendance) for one in run.stretches] == [("loading", "hands-on"), ("machine", "watched")]
    assert unload.unloads == run.index
    assert all(block.lags[0].before == unload.index for block in of(found, "clean")[:3])


def test_setup_stands_apart_since_it_comes_only_after_a_change():
    assert {block.setup * TICK for block in of(problem(opened()), "sand:120")} == {timedelta(minutes=1)}


def test_a_wait_is_a_lag_and_keeps_its_room_wet():
    found = problem(opened())

    assert {lag.least * TICK for block in of(found, "hooks") for lag in block.lags} == {timedelta(hours=12)}
    assert {block.wet * TICK for block in of(found, "oil")} == {timedelta(hours=12)}


def test_a_running_machine_is_what_is_left_of_it():
    floor = opened()
    floor.press("load started", run="r1", load="cut/1")
    floor.press("machine started", {"minutes": 30}, run="r1", load="cut/1")
    floor.wait(10)

    run, unload, *_ = of(problem(floor), "cut")

    assert run.begun
    assert timedelta(minutes=19) < run.length * TICK <= timedelta(minutes=20)
    assert (unload.unloads, unload.begun) == (run.index, False)


def test_a_load_put_aside_holds_its_station_until_somebody_goes_on():
    floor = opened()
    floor.press("load done", run="r1", load="cut/1")
    floor.press("load started", run="r1", load="clean/1")
    floor.press("load put aside", run="r1", load="clean/1")

    held, left, *_ = of(problem(floor), "clean")

    assert (held.begun, held.length) == (True, 0)
    assert (left.unloads, left.begun, left.trays) == (held.index, False, ("1",))


def test_what_is_done_is_in_no_block_and_what_is_scrap_is_in_none():
    floor = opened()
    scrap = [{"pieces": 2, "why": "crack"}]
    counts = {"1": {"good": 3, "scrap": scrap}, "2": {"good": 5}, "3": {"good": 5}}
    floor.press("load done", {"counts": counts}, run="r1", load="cut/1")

    found = problem(floor)

    assert [block.load for block in of(found, "cut")] == ["cut/2", "cut/2"]
    assert [block.pieces for block in of(found, "clean")][:3] == [3, 5, 5]


def test_a_skill_that_nobody_has_leaves_its_work_out_and_says_so():
    product = key_rails()
    product["operations"][3]["skill"] = "laser"
    record = shop()
    record["people"] = [{**one, "access": "crew"} for one in record["people"]]
    floor = Floor(record)
    floor.open_run(product=product, trays=3)

    found = problem(floor)

    assert {(one.step, one.code) for one in found.left_out} == {("engrave", "skill nobody has")}
    assert not of(found, "engrave")
    assert not of(found, "oil"), "nor what waits for it"
    assert of(found, "sand:120")


def test_orders_count_what_is_good_already_and_those_before():
    orders = [{"line": "1", "pieces": 8, "due": "2026-06-02T16:00:00Z"}, {"line": "2", "pieces": 4}]

    found = problem(opened(orders=orders))

    assert [(one.line, one.by_then) for one in found.orders] == [("1", 8), ("2", 12)]
    assert found.orders[0].due is not None
    due = datetime(2026, 6, 2, 16, tzinfo=UTC)
    assert timedelta(0) <= due - found.moment(found.orders[0].due) < TICK


def test_a_wait_that_has_begun_keeps_its_room_wet_and_its_places_held_for_what_is_left_of_it():
    product = key_rails()
    product["operations"][4]["wait"] |= {"holds": {"extraction": 1}, "latest_minutes": 900}
    floor = opened(trays=3, product=product)
    for load in ("cut/1", "clean/1", "sand:120/1", "sand:180/1", "engrave/1"):
        floor.press("load done", run="r1", load=load)
    floor.press("load done", run="r1", load="oil/1")
    floor.wait(120)

    found = problem(floor)

    (hooks,) = [block for block in of(found, "hooks") if block.trays == ("1",)]
    (lag,) = hooks.lags
    drying = found.blocks[lag.before]
    assert (drying.begun, drying.length, drying.trays) == (True, 0, ("1",))
    assert timedelta(hours=9.9) < lag.least * TICK <= timedelta(hours=10)
    assert lag.latest is not None
    assert timedelta(hours=12.9) < lag.latest * TICK <= timedelta(hours=13)
    assert (drying.wet, drying.airs, drying.holds) == (lag.least, None, ((0, 1),))


def in_clamps(trays: int = 1) -> Floor:
    """Trays whose oil rests in 8 clamps each; their hooks go on in two loads a tray."""
    product = key_rails()
    product["operations"][4]["wait"] |= {"holds": {"clamps": 8}}
    product["operations"][5]["passes"] = [a_pass(size="jig", pieces=3, hand=2)]
    record = shop()
    record["services"].append({"key": "clamps", "name": "Clamps", "capacity": 12})
    floor = Floor(record)
    floor.open_run(trays=trays, product=product)
    for load in ("cut/1", "clean/1", "sand:120/1", "sand:180/1", "engrave/1", "oil/1"):
        floor.press("load done", run="r1", load=load)
    floor.wait(60)
    return floor


def test_clamps_of_a_tray_that_goes_on_in_two_loads_are_counted_once():
    found = problem(in_clamps())

    hooks = of(found, "hooks")
    (before,) = {lag.before for block in hooks for lag in block.lags}
    assert [block.pieces for block in hooks] == [3, 2]
    assert [block.index for block in found.blocks if block.holds] == [before]
    assert found.blocks[before].holds == ((1, 8),)


def test_what_is_in_clamps_longer_than_its_wait_is_still_held():
    floor = in_clamps()
    floor.wait(30 * 60)

    found = problem(floor)

    (lag,) = of(found, "hooks")[0].lags
    assert (lag.least, found.blocks[lag.before].holds) == (0, ((1, 8),))


def test_a_wait_that_holds_more_than_there_is_leaves_what_follows_it_out_and_is_named_itself():
    product = key_rails()
    product["operations"][4]["wait"] |= {"holds": {"extraction": 2}}

    found = problem(opened(trays=3, product=product))

    assert {(one.step, one.code) for one in found.left_out} == {("oil", "service too small")}
    assert {one.facts["step"] for one in found.left_out} == {"Oil"}
    assert "oil" in {block.step for block in found.blocks}
    assert "hooks" not in {block.step for block in found.blocks}


def test_what_counts_where_not_all_can_be_in_time_is_as_the_shop_says() -> None:
    floor = Floor()
    floor.open_run()

    said = [
        problem_for(floor.state, replace(floor.book, late_counts=counts), floor.now).late_counts
        for counts in ("minutes", "lines")
    ]

    assert said == ["minutes", "lines"]


def test_whoever_went_home_comes_back_with_their_next_hours():
    floor = opened()  # at 18:00 of hours that last until 22:00
    floor.press("person came", {"until": (floor.now + timedelta(hours=4)).isoformat(), "room": "shop"})
    floor.press("person went", {"ticked": []})

    ann = problem(floor).people[0]

    assert ann.windows[0][0] * TICK > timedelta(hours=13)


def test_whoever_with_words_until_when_is_not_there_for_the_rest_of_their_usual_hours():
    floor = opened()
    floor.press("person came", {"until": (floor.now + timedelta(minutes=30)).isoformat(), "room": "shop"})
    floor.wait(60)

    ann = problem(floor).people[0]

    assert ann.windows[0][0] * TICK > timedelta(hours=12)


def test_what_is_past_its_latest_end_already_is_planned_as_soon_as_may_be():
    product = key_rails()
    product["operations"][4]["wait"] |= {"latest_minutes": 730}  # until 04:30, in hours from 08:00 on
    floor = opened(trays=2, product=product)
    for load in ("cut/1", "clean/1", "sand:120/1", "sand:180/1", "engrave/1", "oil/1"):
        floor.press("load done", run="r1", load=load)
    floor.wait(13 * 60)

    found = problem(floor)

    (hooks,) = [block for block in of(found, "hooks") if block.trays == ("1",)]
    assert [lag.latest for lag in hooks.lags] == [None]
    plan = greedy_plan(found)
    assert plan.placed[hooks.index].start > 0
    assert broken(found, plan) == ()
