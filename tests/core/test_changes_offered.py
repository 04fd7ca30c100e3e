"""Ideas by rules from what a run was: each rule where it should speak, and silent where it should not."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import cache
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import hypergeom

from runboard.plan.change import (
    Capacity,
    Helper,
    HoursAdded,
    Instead,
    OneVisit,
    Rested,
    Swapped,
    Times,
    TraySize,
    change_from_record,
    change_record,
)
from runboard.review.changes.gathering import at_least, gathered
from runboard.review.changes.nouns import Idea, Span3, Verdict
from runboard.review.changes.offers import MOST_OFFERED, OFFERED, offers
from runboard.review.changes.seen import idea_of
from runboard.review.happened.nouns import DayPart, Happened, OperationBar, ProcessLine
from runboard.review.held.nouns import Held, HeldStretch, What
from runboard.review.measured.study import ElementStudy, TimeStudy
from runboard.review.past import Past
from runboard.words.changes import reason_of, verdict_in_words
from tests.core.pasts import past_of
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails, operation, shop

MINUTE = timedelta(minutes=1)
HOUR = timedelta(hours=1)
NOW = datetime(2026, 6, 2, 18, tzinfo=UTC)
NOTHING = TimeStudy((), 1.0)


def quiet(**more: Any) -> Happened:
    """A run in which nothing happened that any rule speaks of."""
    fields: dict[str, Any] = dict.fromkeys(
        ("bars", "day", "planned", "waiting", "lost", "yields", "process", "order_lines"), ()
    )
    fields |= dict.fromkeys(("wanted", "started", "good"), 60)
    fields |= {"scrap": 0, "hands": 9 * HOUR, "first_pass": None, "rolled": None, "promised": None, "finished": None}
    return Happened(**{**fields, **more})


def held_by(what: What | None, *stretches: HeldStretch) -> Held:
    return Held(what, 5 * HOUR, stretches, (), NOW, NOW)


def record() -> dict[str, Any]:
    """The small shop with a rack of nine places, on which each tray dries for longer than its label asks."""
    found = shop()
    found["services"].append({"key": "rack", "name": "Rack", "capacity": 9})
    found["finishes"] = [{"key": "oil", "name": "Oil", "handle_minutes": 480, "sheet_date": "2026-03-14"}]
    found["products"][0]["operations"][4]["wait"] = {
        "why": "dry", "least_minutes": 720, "latest_minutes": None, "holds": {"rack": 1},
    }  # fmt: skip
    return found


@cache
def a_past(dries_by_label: bool = False) -> Past:
    book = record()
    if dries_by_label:
        book["products"][0]["operations"][4]["finish"] = "oil"
    floor = Floor(book)
    floor.open_run(trays=6, product=book["products"][0])
    return past_of(floor)


def study(*elements: ElementStudy) -> TimeStudy:
    return TimeStudy(elements, 1.0)


def element(step: str, kind: str, **more: Any) -> ElementStudy:
    found = ElementStudy(step, step, step.partition(":")[0], kind, 10 * MINUTE, 10 * MINUTE, 10 * MINUTE, "guess")
    return replace(found, guessed_total=60 * MINUTE, **more)


def offered(
    past: Past, found: TimeStudy = NOTHING, happened: Happened | None = None, held: Held | None = None
) -> list[Idea]:
    return list(offers(past, found, happened or quiet(), held))


def only(ideas: list[Idea], because: str) -> list[Idea]:
    return [idea for idea in ideas if idea.because == because]


def test_a_run_of_which_nothing_speaks_has_no_offer() -> None:
    assert offered(a_past()) == []


# what is shared


def waited_for(step: str, station: str) -> Happened:
    part = DayPart("station", station, NOW, NOW + 2 * HOUR, "waiting", why="service taken", step=step)
    return quiet(day=(part, replace(part, why="no load")))


def test_a_station_that_waits_for_places_is_offered_one_and_three_more() -> None:
    ideas = offered(a_past(), happened=waited_for("oil", "finishing"))

    assert [idea.change for idea in ideas] == [Capacity("rack", 10), Capacity("rack", 12)]
    assert {idea.because for idea in ideas} == {"service taken"}
    assert ideas[0].facts == {"service": "Rack", "waited": 2 * HOUR}


def test_a_service_that_work_draws_on_is_offered_once_more() -> None:
    ideas = offered(a_past(), happened=waited_for("cut", "cnc"))

    assert [idea.change for idea in ideas] == [Capacity("extraction", 2)]


def test_what_held_the_run_comes_first() -> None:
    happened = quiet(process=(ProcessLine("operation", "sand:120", "Sand", "sander", HOUR, 9 * HOUR, 40),))

    ideas = offered(a_past(), happened=happened, held=held_by(("service", "rack")))

    assert [idea.because for idea in ideas][:2] == ["service holds", "service holds"]
    assert ideas[0].facts == {"service": "Rack", "held": 5 * HOUR}


def test_what_is_a_matter_of_seconds_is_not_offered() -> None:
    part = DayPart("station", "cnc", NOW, NOW + MINUTE, "waiting", why="service taken", step="cut")

    assert offered(a_past(), happened=quiet(day=(part,))) == []


# scrap


def chipped(lost: dict[str, int], wood: dict[str, str] | None = None) -> Past:
    """Six trays of five, of two boards, of which cutting lost so many."""
    floor = Floor()
    floor.open_run(trays=6)
    for tray in ("1", "2", "3", "4", "5", "6"):
        floor.press("wood noted", {"wood": (wood or {}).get(tray, "ash")}, run="r1", tray=tray)
        bad = lost.get(tray, 0)
        body = {"good": 5 - bad, "scrap": [{"pieces": bad, "why": "chipped"}] if bad else []}
        floor.press("pieces counted", body, run="r1", tray=tray, operation="cut")
    return past_of(floor)


def test_scrap_of_one_board_is_more_than_chance() -> None:
    past = chipped({"1": 2, "2": 2, "3": 2})

    (found,) = [one for one in gathered(past) if one.by == "board"]
    (idea,) = only(offered(past), "scrap gathers")

    assert (found.which, found.lost, found.of, found.others_lost, found.others) == ("1", 6, 15, 0, 15)
    assert idea.change == Instead("r1", "cut", "board", "", 100, 0.996)
    assert idea.facts["by"] == "board"


def test_scrap_in_one_wood_offers_the_other() -> None:
    past = chipped({"1": 2, "3": 2, "5": 3}, {"1": "oak", "3": "oak", "5": "oak"})

    (idea,) = only(offered(past), "scrap gathers")

    assert idea.change == Instead("r1", "cut", "wood", "ash", 100, 0.996)


@pytest.mark.parametrize("lost", [{}, {"1": 1, "2": 1}, {"1": 1, "4": 1, "5": 1}, {str(at): 1 for at in range(1, 7)}])
def test_what_chance_alone_gathers_is_not_offered(lost: dict[str, int]) -> None:
    assert only(offered(chipped(lost)), "scrap gathers") == []


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_the_chance_is_the_hypergeometric_one(data: st.DataObject) -> None:
    pieces = data.draw(st.integers(1, 300))
    all_lost, of = (data.draw(st.integers(0, pieces)) for _ in range(2))
    lost = data.draw(st.integers(0, min(all_lost, of)))

    assert at_least(lost, of, all_lost, pieces) == pytest.approx(hypergeom.sf(lost - 1, pieces, all_lost, of))


# times


def test_a_machine_that_takes_far_longer_than_its_program_says_is_tried_as_that() -> None:
    long = element("cut", "machine", lengths=(20 * MINUTE,) * 4, median=20 * MINUTE)

    (idea,) = offered(a_past(), study(long))

    assert (idea.change, idea.because) == (Times("r1", "cut", "machine", 50), "machine long")
    assert offered(a_past(), study(replace(long, median=12 * MINUTE))) == []
    assert offered(a_past(), study(replace(long, lengths=(20 * MINUTE,) * 3))) == []


def test_an_element_of_wide_spread_is_tried_at_its_lower_quartile() -> None:
    lengths = tuple(each * MINUTE for each in (2, 4, 6, 8, 20))
    wide = element("hooks", "hand", lengths=lengths, mean=8 * MINUTE, deviation=7 * MINUTE)

    (idea,) = offered(a_past(), study(wide))

    assert (idea.change, idea.because) == (Times("r1", "hooks", "hand", 50), "wide")
    assert (idea.facts["low"], idea.facts["median"], idea.facts["high"]) == (4 * MINUTE, 6 * MINUTE, 8 * MINUTE)
    assert offered(a_past(), study(replace(wide, deviation=3 * MINUTE))) == []


def test_a_step_of_several_passes_is_tried_alone() -> None:
    long = element("sand:120", "hand", taken_total=170 * MINUTE)

    (idea,) = offered(a_past(), study(long))

    assert idea.change == Times("r1", "sand:120", "hand", 80)


def test_what_took_most_beyond_its_guess_is_tried_with_a_jig() -> None:
    hooks = element("hooks", "hand", taken_total=170 * MINUTE)
    cut = element("cut", "machine", taken_total=90 * MINUTE)
    quick = element("clean", "hand", taken_total=10 * MINUTE)

    (idea,) = offered(a_past(), study(cut, hooks, quick))

    assert (idea.change, idea.because) == (Times("r1", "hooks", "hand", 80), "furthest")


def test_the_station_that_held_the_run_is_tried_with_a_fifth_less() -> None:
    cut = element("cut", "machine", taken_total=60 * MINUTE)

    (idea,) = offered(a_past(), study(cut), held=held_by(("station", "cnc")))

    assert (idea.change, idea.because) == (Times("r1", "cut", "machine", 80), "station holds")


# setups, walks, waits


def alternating() -> Past:
    product = key_rails()
    product["operations"] = [
        operation("clean", "bench", a_pass(setup=5, hand=1)),
        operation("hooks", "bench", a_pass(setup=5, hand=1)),
        operation("sand", "sander", a_pass(hand=1)),
    ]
    floor = Floor()
    floor.open_run(trays=3, product=product, boards={})
    floor.press("person came", {"room": "shop"})
    for tray in ("1", "2", "3"):
        for step in ("clean", "hooks"):
            floor.press("load started", run="r1", load=f"{step}/{tray}")
            floor.wait(12)
            floor.press("load done", run="r1", load=f"{step}/{tray}")
    return past_of(floor)


def test_operations_that_alternate_at_a_station_are_offered_one_visit_and_larger_trays() -> None:
    ideas = offered(alternating())

    assert {idea.because for idea in ideas} == {"setups"}
    assert {idea.change for idea in ideas} == {OneVisit("r1", "clean"), TraySize("r1", 10)}
    assert ideas[0].facts == {"station": "Bench", "setups": 6, "least": 2, "length": 30 * MINUTE}


def test_walks_between_rooms_are_offered_one_visit_and_larger_trays() -> None:
    happened = quiet(process=(ProcessLine("operation", "clean", "Clean", "bench", HOUR, HOUR, 20),))

    product = key_rails()
    product["operations"] = [
        operation("engrave", "laser", a_pass(machine=9)),
        operation("clean", "bench", a_pass(hand=1)),
    ]
    floor = Floor()
    floor.open_run(trays=3, product=product, boards={})

    ideas = only(offered(past_of(floor), happened=happened), "walks")

    assert {idea.change for idea in ideas} == {OneVisit("r1", "engrave"), TraySize("r1", 10)}
    assert ideas[0].facts == {"step": "Clean", "walks": 20, "length": HOUR}


def test_another_order_is_offered_where_the_rooms_change_less_often() -> None:
    product = key_rails()
    product["operations"] = [
        operation(key, station, a_pass(hand=1))
        for key, station in (("a", "laser"), ("b", "sander"), ("c", "laser"), ("d", "sander"))
    ]
    floor = Floor()
    floor.open_run(trays=3, product=product, boards={})
    happened = quiet(process=(ProcessLine("operation", "b", "B", "sander", HOUR, HOUR, 20),))

    changes = [idea.change for idea in offered(past_of(floor), happened=happened)]

    assert {change.first for change in changes if isinstance(change, Swapped)} == {"a", "b", "c"}


def test_a_rest_longer_than_its_label_asks_is_tried_as_that() -> None:
    (idea,) = offered(a_past(dries_by_label=True))

    assert (idea.change, idea.because) == (Rested("r1", "oil", 480), "wait long")
    assert idea.facts == {"step": "Oil", "least": 12 * HOUR, "label": 8 * HOUR}


# people


def test_hands_that_hold_the_run_are_offered_a_helper_where_most_hands_are() -> None:
    bars = tuple(
        OperationBar(key, key.capitalize(), HOUR, HOUR, HOUR, hours * HOUR, 0.5)
        for key, hours in (("cut", 1), ("hooks", 3))
    )

    (idea,) = offered(a_past(), happened=quiet(bars=bars), held=held_by(("hands", "ann")))

    assert idea.change == Helper("r1", "hooks", "ann", 90, None)
    assert idea.facts == {"person": "Ann", "step": "Hooks", "hands": 3 * HOUR}


def test_a_run_that_waited_with_nobody_there_is_offered_two_hours_more() -> None:
    empty = HeldStretch(("hours", ""), NOW - 20 * HOUR, NOW, timedelta(0))

    (idea,) = offered(a_past(), held=held_by(("hours", ""), empty))

    assert isinstance(idea.change, HoursAdded)
    assert (f"{idea.change.opens:%H:%M}", f"{idea.change.closes:%H:%M}") == ("18:00", "20:00")  # in Berlin


# all of them


def many() -> list[Idea]:
    elements = [element(key, "hand", taken_total=170 * MINUTE) for key in ("hooks", "clean", "oil")]
    wide = [
        replace(one, lengths=tuple(each * MINUTE for each in (2, 4, 6, 8, 20)), mean=8 * MINUTE, deviation=7 * MINUTE)
        for one in elements
    ]
    happened = replace(
        waited_for("oil", "finishing"), process=(ProcessLine("operation", "clean", "Clean", "bench", HOUR, HOUR, 20),)
    )
    return offered(a_past(dries_by_label=True), study(*wide), happened, held_by(("service", "rack")))


def test_there_are_at_most_a_dozen_each_once_and_under_one_id() -> None:
    ideas = many()

    assert 5 < len(ideas) <= MOST_OFFERED
    assert len({idea.change for idea in ideas}) == len({idea.id for idea in ideas}) == len(ideas)
    assert [idea.id for idea in many()] == [idea.id for idea in ideas]
    assert all(change_from_record(change_record(idea.change)) == idea.change for idea in ideas)


def test_each_rule_has_its_words() -> None:
    facts = {
        "service holds": {"service": "Rack", "held": HOUR},
        "service taken": {"service": "Rack", "waited": HOUR},
        "hands hold": {"person": "Ann", "step": "Hooks", "hands": HOUR},
        "scrap gathers": {
            "by": "board",
            "which": "3",
            "step": "Clean",
            "lost": 4,
            "of": 15,
            "others_lost": 0,
            "others": 45,
            "in_a_hundred": 9,
        },
        "machine long": {"step": "Cut", "median": HOUR, "guess": MINUTE},
        "wait long": {"step": "Oil", "least": HOUR, "label": MINUTE},
        "furthest": {"step": "Hooks", "kind": "hand", "taken": HOUR, "guess": MINUTE},
        "wide": {"step": "Hooks", "kind": "hand", "low": MINUTE, "median": HOUR, "high": HOUR},
        "station holds": {"station": "CNC", "step": "Cut", "kind": "machine"},
        "setups": {"station": "Bench", "setups": 6, "least": 2, "length": HOUR},
        "walks": {"step": "Cut", "walks": 7, "length": HOUR},
        "nobody there": {"person": "Ann", "length": HOUR},
    }

    assert set(facts) == set(OFFERED)
    for because, said in facts.items():
        sentence = reason_of(idea_of(Capacity("rack", 2), because, said))
        assert sentence not in ("", because)
        assert "{" not in sentence


@pytest.mark.parametrize(
    ("code", "span", "said"),
    [
        ("saved", (38, 45, 52), "Saved 38 min to 52 min of hands-on time for 60 pieces; promised 1 h."),
        (
            "worse",
            (-52, -45, -38),
            "It made things worse: 38 min to 52 min more hands-on time for 60 pieces; promised 1 h less.",
        ),
        (
            "too little",
            None,
            "Too few times were measured, before or after, to say whether it worked. It promised 1 h.",
        ),
        (
            "no difference",
            (-5, 10, 20),
            "No difference beyond chance: 5 min more to 20 min of hands-on time saved for 60 pieces; promised 1 h.",
        ),
    ],
)
def test_a_verdict_is_said_so(code: str, span: tuple[int, int, int] | None, said: str) -> None:
    saved = None if span is None else Span3(*(each * MINUTE for each in span))

    assert verdict_in_words(Verdict(code, "hands", 60, saved, Span3(HOUR, HOUR, HOUR))) == said
