"""Nothing watched, wet or oily is forgotten: whatever ends, changes or does not fit, what is open stays open."""

import copy
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from runboard.run.calls.dues import Due, dues
from runboard.run.care.care import lock_up_reminders
from runboard.run.refusal import Refused
from runboard.shop.book_json import book_from_json
from tests.core.pressing import Floor
from tests.scenario import key_rails, shop


def waiting(floor: Floor, *kinds: str) -> list[Due]:
    """What is due or will be, of these kinds."""
    return [one for one in dues(floor.state, floor.book).values() if one.kind in kinds]


def asked(floor: Floor) -> set[str]:
    """The kinds of care that are asked about now."""
    return {one.kind for one in dues(floor.state, floor.book).values() if one.kind.startswith("care ")}


def refused(floor: Floor, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> str:
    with pytest.raises(Refused) as refusal:
        floor.press(kind, body, **fields)
    return refusal.value.code


def says(floor: Floor, *kinds: str) -> None:
    for due in waiting(floor, *kinds):
        floor.press("reminder answered", {"reminder": due.id, "done": "in water, in the lidded can"})


def engraving(floor: Floor | None = None, person: str = "ann") -> Floor:
    """The laser in the house runs, and somebody watches it."""
    floor = floor or Floor()
    if not floor.state.runs:
        floor.open_run()
    until = (floor.now + timedelta(hours=5)).isoformat()
    floor.press("person came", {"until": until, "room": "shop"}, person=person)
    floor.press("load started", run="r1", load="engrave/1", person=person)
    floor.press("machine started", {"minutes": 30}, run="r1", load="engrave/1", person=person)
    return floor


def revised(change: Any, from_tray: str = "2") -> dict[str, Any]:
    """The body of a 'route revised' whose product was changed."""
    product = copy.deepcopy(key_rails())
    change({one["key"]: one for one in product["operations"]}, product)
    return {"product": product, "from_tray": from_tray}


# a run ends only when nothing of it runs, is in hands or is asked about


@pytest.mark.parametrize("kind", ["run finished", "run abandoned"])
def test_a_run_whose_laser_runs_does_not_end(kind: str) -> None:
    floor = engraving()

    assert refused(floor, kind, run="r1") == "machine runs"
    assert len(waiting(floor, "machine end", "watch check")) == 2


@pytest.mark.parametrize("kind", ["run finished", "run abandoned"])
def test_a_run_with_a_load_in_hands_does_not_end(kind: str) -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="cut/1", person="ben")

    assert refused(floor, kind, run="r1") == "load in hands"


@pytest.mark.parametrize("kind", ["run finished", "run abandoned"])
def test_a_run_whose_rags_are_asked_about_does_not_end(kind: str) -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="oil/1+2+3")
    floor.press("load done", run="r1", load="oil/1+2+3")

    assert refused(floor, kind, run="r1") == "care open"
    says(floor, "care end")
    floor.press(kind, run="r1")
    assert asked(floor) == {"care morning"}


@pytest.mark.parametrize("kind", ["run finished", "run abandoned"])
def test_a_blind_end_of_a_run_whose_laser_runs_is_kept_to_settle_and_every_due_moment_goes_on(kind: str) -> None:
    floor = engraving()
    before = set(dues(floor.state, floor.book))

    end = floor.blind(kind, run="r1")

    assert floor.state.unsettled[end.id].code == "machine runs"
    assert floor.run.state == "open"
    assert set(dues(floor.state, floor.book)) == before


def test_settling_it_while_the_laser_still_runs_ends_nothing() -> None:
    floor = engraving()
    end = floor.blind("run finished", run="r1")

    assert refused(floor, "entry settled", {"event": end.id, "keep": "press"}, run="r1") == "machine runs"


# by its own tray's route


def to_bench(operations: dict[str, Any], product: dict[str, Any]) -> None:
    operations["engrave"] |= {"station": "bench", "attendance": "hands-on"}


@pytest.mark.parametrize("from_tray", ["1", "2"])
def test_a_new_route_leaves_the_watch_of_a_load_that_runs_by_the_old_one(from_tray: str) -> None:
    floor = engraving()
    before = {one.id for one in waiting(floor, "watch check", "machine end")}

    floor.press("route revised", revised(to_bench, from_tray), run="r1")
    floor.press("room changed", {"room": "shop"})

    assert {one.id for one in waiting(floor, "watch check", "machine end")} == before
    assert len(waiting(floor, "nobody near")) == 1
    assert refused(floor, "person went") == "watch first"


def test_a_blind_start_of_a_load_that_was_never_seen_to_begin_is_watched_by_its_own_trays_route() -> None:
    """Its end was said after its pieces were counted further on: the load is known, and no press said by which route."""
    floor = Floor()
    floor.open_run()
    floor.press("route revised", revised(to_bench), run="r1")
    floor.press("load done", run="r1", load="oil/1")
    floor.press("machine ended", run="r1", load="engrave/1")

    floor.blind("machine started", {"minutes": 20}, run="r1", load="engrave/1")

    assert len(waiting(floor, "watch check")) == 1


def test_a_new_route_leaves_the_care_for_a_coat_by_the_old_one() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="oil/1")

    def no_oil(operations: dict[str, Any], product: dict[str, Any]) -> None:
        operations["oil"] |= {"station": "bench", "name": "Brush off"}

    floor.press("route revised", revised(no_oil), run="r1")
    floor.press("load done", run="r1", load="oil/1")

    assert "care end" in asked(floor)


def test_a_new_route_does_not_clear_the_air_of_an_earlier_trays_coat() -> None:
    oil = {"key": "oil", "name": "Danish oil", "self_heats": True, "solvent": True}
    product = key_rails()
    next(one for one in product["operations"] if one["key"] == "oil")["finish"] = "oil"
    floor = Floor(shop() | {"finishes": [oil]})
    floor.open_run(product=product)
    floor.press("load started", run="r1", load="oil/1")

    def no_oil(operations: dict[str, Any], product: dict[str, Any]) -> None:
        product["operations"].remove(operations["oil"])

    floor.press("route revised", revised(no_oil), run="r1")

    assert refused(floor, "load started", run="r1", load="sand:120/2", person="ben") == "air not clear"


# however a coat enters the log


def bulk(floor: Floor) -> None:
    for tray in ("1", "2", "3"):
        floor.press("pieces counted", {"good": 5}, run="r1", tray=tray, operation="oil")


def filled_in(floor: Floor) -> None:
    floor.press("load started", {"early": True}, run="r1", load="hooks/1")


def from_a_card(floor: Floor) -> None:
    floor.press("load done", {"counts": {"1": {"good": 5}}}, run="r1", load="oil/1", basis="paper")


def counted_later(floor: Floor) -> None:
    floor.press("pieces counted", {"good": 5}, run="r1", tray="2", operation="hooks")


@pytest.mark.parametrize("enters", [bulk, filled_in, from_a_card, counted_later])
def test_however_a_coat_enters_the_log_its_rags_are_asked_about(enters: Any) -> None:
    floor = Floor()
    floor.open_run()

    enters(floor)

    assert {"care end", "care morning"} <= asked(floor)
    assert lock_up_reminders(floor.state, floor.book)


# who is near


def test_a_look_needs_hands_near() -> None:
    floor = engraving()
    floor.press("load started", run="r1", load="sand:120/2", person="ben")

    assert refused(floor, "watch checked", run="r1", load="engrave/1", person="ben") == "hands elsewhere"


def test_a_blind_look_from_another_station_silences_nothing() -> None:
    floor = engraving()
    floor.press("load started", run="r1", load="sand:120/2", person="ben")
    floor.press("room changed", {"room": "shop"})
    before = {one.id for one in waiting(floor, "nobody near", "watch check")}

    floor.blind("watch checked", run="r1", load="engrave/1", person="ben")

    assert {one.id for one in waiting(floor, "nobody near", "watch check")} == before


def test_whoever_confirms_a_look_watches_from_then_on() -> None:
    floor = engraving()
    floor.press("person came", {"room": "house"}, person="ben")

    floor.press("watch checked", run="r1", load="engrave/1", person="ben")

    assert floor.run.loads["engrave/1"].watcher == "ben"


@pytest.mark.parametrize("place", ["sander", "saw"])
def test_a_sander_or_a_cutter_is_no_place_to_watch_a_laser_from(place: str) -> None:
    record = shop()
    record["stations"] += [{"key": "saw", "name": "Saw", "kind": "hand cutter", "room": "house"}]
    for station in record["stations"]:
        if station["key"] == "sander":
            station["room"] = "house"
    book = book_from_json(record)

    from runboard.shop.book import may_work_while_watching

    assert not may_work_while_watching(book, "laser", place)
    next(one for one in record["stations"] if one["key"] == "laser")["watch_from"] = ["sander"]
    assert may_work_while_watching(book_from_json(record), "laser", "sander")


def test_once_their_session_is_over_nobody_counts_as_near() -> None:
    floor = engraving()
    until = floor.state.people["ann"].until

    (alone,) = waiting(floor, "nobody near")
    floor.now = until + timedelta(minutes=1)
    floor.press("note written", {"text": "Tea"}, person="ben", run="r1")

    assert alone.due_at == until
    assert [one.id for one in waiting(floor, "nobody near")] == [alone.id]


def test_somebody_who_looks_after_their_session_is_near_until_the_next_look() -> None:
    floor = engraving()
    floor.now = floor.state.people["ann"].until + timedelta(minutes=1)

    floor.press("watch checked", run="r1", load="engrave/1")

    (alone,) = waiting(floor, "nobody near")
    assert alone.due_at == floor.run.loads["engrave/1"].checked_at + timedelta(minutes=2)


def test_who_was_called_away_or_went_is_not_near() -> None:
    for kind in ("person called away", "person went"):
        floor = engraving()
        floor.press("person came", {"room": "house"}, person="ben")
        floor.press("watch checked", run="r1", load="engrave/1", person="ben")
        floor.press("person called away")
        assert waiting(floor, "nobody near") == []
        if kind == "person went":
            floor.blind(kind, person="ben")
        else:
            floor.press(kind, person="ben")
        assert len(waiting(floor, "nobody near")) == 1


# blind presses that do not fit


def beside_itself() -> tuple[Floor, str]:
    """The laser is held by tray 1's loading; another phone says that tray 2's engraving was started there."""
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="engrave/1")
    start = floor.blind("machine started", {"minutes": 20}, run="r1", load="engrave/2", person="ben")
    assert floor.state.unsettled[start.id].code == "station busy"
    return floor, start.id


def test_a_blind_start_that_does_not_fit_is_watched_all_the_same() -> None:
    floor, _ = beside_itself()

    about = waiting(floor, "watch check", "machine end")

    assert {(one.kind, one.load) for one in about} == {("watch check", "engrave/2"), ("machine end", "engrave/2")}


def test_keeping_the_shops_version_does_not_end_that_watch_but_saying_that_it_is_not_running_does() -> None:
    floor, start = beside_itself()
    before = {one.id for one in waiting(floor, "watch check", "machine end")}
    floor.press("entry settled", {"event": start, "keep": "shop"}, run="r1")
    assert {one.id for one in waiting(floor, "watch check", "machine end")} == before

    (end,) = waiting(floor, "machine end")
    floor.press("alert answered", {"alert": end.id, "answer": "stopped"})

    assert waiting(floor, "watch check", "machine end") == []


def test_seen_as_an_answer_to_it_asks_again_an_interval_later() -> None:
    floor, _ = beside_itself()
    (check,) = waiting(floor, "watch check")
    floor.now = check.due_at + timedelta(seconds=30)

    seen = floor.press("alert answered", {"alert": check.id, "answer": "seen"}, person="ben")

    (after,) = waiting(floor, "watch check")
    assert after.id != check.id
    assert after.due_at == seen.moment + timedelta(minutes=2)


def test_keeping_the_press_makes_the_load_run_and_asks_once() -> None:
    floor, start = beside_itself()
    floor.press("entry settled", {"event": start, "keep": "press"}, run="r1")

    assert floor.run.loads["engrave/2"].state == "running"
    assert len(waiting(floor, "watch check")) == len(waiting(floor, "machine end")) == 1


def test_a_blind_start_on_a_run_that_is_over_is_watched() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("run finished", run="r1")

    floor.blind("machine started", {"minutes": 20}, run="r1", load="engrave/2", person="ben")

    assert {one.kind for one in waiting(floor, "watch check", "machine end")} == {"watch check", "machine end"}
    assert refused(floor, "person went", person="ben") == "watch first"


def test_the_end_that_the_same_phone_said_later_ends_it() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("run finished", run="r1")
    floor.blind("machine started", {"minutes": 20}, run="r1", load="engrave/2", person="ben")

    floor.blind("machine ended", run="r1", load="engrave/2", person="ben")

    assert waiting(floor, "watch check", "machine end") == []


@pytest.mark.parametrize("kind", ["load started", "load done"])
def test_a_blind_coat_that_does_not_fit_has_its_rags_asked_about(kind: str) -> None:
    floor = Floor()
    floor.open_run()
    floor.press("run finished", run="r1")

    coat = floor.blind(kind, run="r1", load="oil/2", person="ben")

    assert coat.id in floor.state.unsettled
    assert {"care end", "care morning"} <= asked(floor)
    floor.press("entry settled", {"event": coat.id, "keep": "shop"}, run="r1")
    assert {"care end", "care morning"} <= asked(floor)


def test_a_blind_count_past_a_coat_that_does_not_fit_asks_about_the_coat() -> None:
    floor = Floor()
    floor.open_run()

    count = floor.blind("pieces counted", {"good": 9}, run="r1", tray="1", operation="hooks", person="ben")

    assert count.id in floor.state.unsettled
    assert "care end" in asked(floor)


# what the book says later


def coated(record: dict[str, Any] | None = None, **more: Any) -> Floor:
    floor = Floor(record)
    floor.open_run(**more)
    floor.press("load started", run="r1", load="oil/1")
    floor.press("load done", run="r1", load="oil/1")
    assert "care end" in asked(floor)
    return floor


def saves(floor: Floor, record: dict[str, Any]) -> None:
    """Another book from now on; what held before is known, as the store knows it."""
    book = book_from_json(record).following(floor.book, floor.now)
    floor.book = book
    floor.ledger.take_book(book)


def station_becomes(record: dict[str, Any], key: str, kind: str | None) -> dict[str, Any]:
    record = copy.deepcopy(record)
    record["stations"] = (
        [{**one, "kind": kind or one["kind"]} for one in record["stations"] if kind or one["key"] != key]
        if kind is None
        else [{**one, "kind": kind if one["key"] == key else one["kind"]} for one in record["stations"]]
    )
    if kind is None:
        record["products"] = []
    return record


@pytest.mark.parametrize("kind", ["bench", None])
def test_another_kind_of_station_or_none_leaves_open_rags_open(kind: str | None) -> None:
    floor = coated()
    before = asked(floor)

    saves(floor, station_becomes(shop(), "finishing", kind))
    floor.ledger.refold()

    assert asked(floor) == before


@pytest.mark.parametrize("finishes", [[], [{"key": "oil", "name": "Oil", "self_heats": False}]])
def test_what_the_book_says_of_a_finish_later_leaves_open_rags_open(finishes: list[dict[str, Any]]) -> None:
    product = key_rails()
    next(one for one in product["operations"] if one["key"] == "oil")["finish"] = "oil"
    record = shop() | {"finishes": [{"key": "oil", "name": "Oil", "self_heats": True}]}
    floor = coated(record, product=product)
    before = asked(floor)

    saves(floor, shop() | {"finishes": finishes})
    floor.ledger.refold()

    assert asked(floor) == before


def test_a_label_that_says_otherwise_holds_for_the_coats_after_it() -> None:
    product = key_rails()
    next(one for one in product["operations"] if one["key"] == "oil")["finish"] = "oil"
    record = shop() | {"finishes": [{"key": "oil", "name": "Oil", "self_heats": True}]}
    floor = coated(record, product=product)
    says(floor, "care end", "care morning")
    saves(floor, shop() | {"finishes": [{"key": "oil", "name": "Wax", "self_heats": False}]})
    floor.wait(60)

    floor.press("load started", run="r1", load="oil/2")

    assert asked(floor) == set()


# undo, the morning, the night


def test_a_coat_taken_back_and_done_again_is_asked_about_again() -> None:
    floor = Floor()
    floor.open_run()
    first = floor.press("load started", run="r1", load="oil/1")
    says(floor, "care start")
    floor.press("load done", run="r1", load="oil/1")
    says(floor, "care end")
    for event in [one for one in list(floor.ledger.arrived.values()) if one.kind in ("load done", "load started")]:
        floor.press("event undone", {"event": event.id})
    assert first.id in floor.ledger.arrived

    floor.press("load started", run="r1", load="oil/1")
    assert "care start" in asked(floor)
    floor.press("load done", run="r1", load="oil/1")
    assert "care end" in asked(floor)


def test_a_coat_after_the_mornings_answer_is_asked_about_next_morning() -> None:
    floor = Floor()
    floor.open_run()
    floor.now = datetime(2026, 6, 1, 4, 0, tzinfo=UTC)  # 6 in Berlin, before that day's morning
    floor.press("load started", run="r1", load="oil/1", at=(floor.now + timedelta(hours=12, minutes=1)).isoformat())
    floor.now += timedelta(hours=12, minutes=2)
    floor.press("load done", run="r1", load="oil/1")
    says(floor, "care end", "care morning")

    floor.wait(60)
    floor.press("load started", run="r1", load="oil/2")
    floor.press("load done", run="r1", load="oil/2")

    assert "care morning" in asked(floor)


def test_whoever_locks_up_after_midnight_is_asked_too() -> None:
    floor = Floor()
    floor.open_run()
    floor.now = datetime(2026, 6, 1, 21, 30, tzinfo=UTC)  # 23:30 in Berlin
    floor.press("load started", run="r1", load="oil/1")
    floor.press("load done", run="r1", load="oil/1")
    says(floor, "care end")
    floor.wait(60)

    assert refused(floor, "person went") == "rags first"


# before its run was opened


def test_nothing_is_said_of_a_run_before_it_was_opened_but_blind() -> None:
    floor = Floor()
    floor.open_run()
    opened = floor.run.opened_at
    floor.now = opened + timedelta(minutes=5)
    coat = floor.press("load done", run="r1", load="oil/1")
    before = (opened - timedelta(minutes=1)).isoformat()

    assert refused(floor, "load started", run="r1", load="cut/1", at=before) == "before run"
    assert refused(floor, "event amended", {"event": coat.id, "at": before}) == "before run"
    late = floor.blind("load done", run="r1", load="oil/2", at=before)

    assert late.id not in floor.state.unsettled
    assert floor.ledger.arrived[late.id].moment > opened


# a wait that somebody finds not over


def test_a_coat_that_is_not_dry_yet_waits_on_and_is_offered_to_nobody() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load done", run="r1", load="oil/1+2+3")
    floor.wait(721)
    (over, *_) = [one for one in waiting(floor, "wait over") if one.tray == "1"]
    until = (floor.now + timedelta(hours=12)).replace(microsecond=0)

    floor.press("alert answered", {"alert": over.id, "answer": "still running", "ask_again_at": until.isoformat()})

    (after,) = [one for one in waiting(floor, "wait over", "ask again") if one.tray == "1"]
    assert after.due_at == until
    assert refused(floor, "load started", run="r1", load="hooks/1", person="ben") == "still waiting"
    assert floor.run.trays["2"].rests["oil"].ready_at < floor.now


def test_what_stopped_early_knows_how_long_it_would_have_run_on() -> None:
    floor = engraving()
    floor.wait(10)

    floor.press("load stopped", {"why": "power", "good": [1], "spoilt": [2]}, run="r1", load="engrave/1")

    stop = floor.run.loads["engrave/1"].stop
    assert stop is not None
    assert 19 <= stop["left_minutes"] <= 20
    assert stop["spoilt"] == [2]


# a log from before


def test_an_answer_that_names_the_count_of_coats_is_of_the_coat_it_was_said_of() -> None:
    floor = coated()
    (key,) = floor.state.care
    times = floor.state.care[key]["times"]

    for reminder in (f"care end|{key}|{times}", f"care morning|{key}", f"care lock-up|{key}|{times}"):
        floor.press("reminder answered", {"reminder": reminder, "done": "in water, in the lidded can"})

    assert asked(floor) == set()
    assert lock_up_reminders(floor.state, floor.book) == []


def test_an_end_of_a_run_that_was_taken_before_stays_taken() -> None:
    floor = coated()
    end = replace(floor.event("run finished", run="r1"), v=1)

    floor.ledger.keep(floor.ledger.try_event(end), floor.ledger.last_seq + 1)

    assert floor.run.state == "finished"
    assert "care end" in asked(floor)


def test_no_solvent_comes_beside_a_laser_that_only_a_press_says_to_run() -> None:
    record = shop()
    record["stations"] = [one | ({"room": "house"} if one["key"] == "finishing" else {}) for one in record["stations"]]
    floor = Floor(record)
    floor.open_run()
    floor.open_run(run="r2")
    floor.press("run finished", run="r1")
    floor.blind("machine started", {"minutes": 20}, run="r1", load="engrave/2", person="ben")

    assert refused(floor, "load started", run="r2", load="oil/1") == "solvent beside heat"
