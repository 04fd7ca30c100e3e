"""Changes adopted in one press and judged after the next run: what the book and the log have of it."""

from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.floor.changing.adopt import WayBack, adopt_change, judge_change, take_back_change, way_back
from runboard.floor.changing.runs import Wish, close_run, new_event, open_run
from runboard.floor.changing.shop_book import Record, book_record, save_book
from runboard.floor.looking.ledger import changes_adopted
from runboard.floor.looking.look_back import estimates_now
from runboard.floor.looking.review import past_of
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.plan.change import Capacity, Change, Helper, Instead, OneVisit, Several, Swapped, Times
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import TICK
from runboard.review.changes.adopting import adopting_of
from runboard.review.changes.ledger import ledger_of_changes, to_judge
from runboard.review.changes.nouns import NOTHING, Adopted, Idea, Span3, Tried
from runboard.run.refusal import Refused
from tests.floor.fakes import workshop
from tests.scenario import shop

MINUTE = timedelta(minutes=1)
AN_HOUR = Span3(50 * MINUTE, 60 * MINUTE, 75 * MINUTE)
SAVED = Span3(38 * MINUTE, 45 * MINUTE, 52 * MINUTE)
FASTER = Times("r1", "hooks", "hand", 80)
MORE = Capacity("extraction", 2)
HELPER = Helper("r1", "hooks", "ann", 120)


def promised(change: Change, cost: float | None = None) -> Tried:
    return Tried(Idea("it", change, "furthest", cost=cost), AN_HOUR, NOTHING)


def a_run(here: Workshop, *, is_over: bool = True) -> str:
    run = open_run(here, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    if is_over:
        close_run(here, run, "run finished", "ann")
    here.clock.pass_(60)  # type: ignore[attr-defined]
    return run


@pytest.fixture
def here() -> Workshop:
    made = workshop(shop())
    a_run(made)
    return made


def the_line(here: Workshop) -> Adopted:
    (line,) = ledger_of_changes(here.ledger.state)
    return line


def hooks_take(here: Workshop) -> float:
    return float(book_record(here)["products"][0]["operations"][-1]["passes"][0]["hand_minutes"])


def extractions(here: Workshop) -> int:
    return int(book_record(here)["services"][0]["capacity"])


def test_a_change_of_the_route_is_the_next_run_s_route(here: Workshop) -> None:
    adopt_change(here, "r1", promised(FASTER, 30), "ann")

    assert hooks_take(here) == 1.6
    run = a_run(here)
    assert here.ledger.state.runs[run].route.product.operations[-1].passes[0].hand == 1.6 * MINUTE
    line = the_line(here)
    assert (line.change, line.earlier, line.cost, line.did, line.because) == (FASTER, AN_HOUR, 30, "route", "furthest")


def test_a_change_of_what_is_shared_is_in_the_book(here: Workshop) -> None:
    adopt_change(here, "r1", promised(MORE), "ann")

    assert extractions(here) == 2
    assert the_line(here).did == "book"


@pytest.mark.parametrize(
    "change", [HELPER, Instead("r1", "hooks", "hour", "", 100, 0.99), Instead("r1", "hooks", "board", "", 100, 0.99)]
)
def test_what_no_book_can_say_is_noted_all_the_same(here: Workshop, change: Change) -> None:
    before = book_record(here)

    adopt_change(here, "r1", promised(change), "ann")

    assert book_record(here) == before
    assert (the_line(here).did, the_line(here).change) == ("noted", change)


def test_several_changes_are_made_and_taken_back_together(here: Workshop) -> None:
    before = book_record(here)
    change = Several((Swapped("r1", "clean"), FASTER, MORE, HELPER))

    made = adopt_change(here, "r1", promised(change), "ann")

    assert (hooks_take(here), extractions(here)) == (1.6, 2)
    assert [one["key"] for one in book_record(here)["products"][0]["operations"]][1:3] == ["sand", "clean"]
    assert judge_change(here, made.id, a_run(here), "dropped", "ann") == WayBack("undone", "route")
    assert {**book_record(here), "revision": 0} == {**before, "revision": 0}


# twice, at the wrong moment, from a stale screen


def test_a_change_is_adopted_once(here: Workshop) -> None:
    adopt_change(here, "r1", promised(FASTER), "ann")

    with pytest.raises(Refused, match="change adopted"):
        adopt_change(here, "r1", promised(FASTER), "ann")

    assert hooks_take(here) == 1.6
    assert len(ledger_of_changes(here.ledger.state)) == 1


def test_while_its_run_is_open_nothing_is_adopted(here: Workshop) -> None:
    run = a_run(here, is_over=False)

    with pytest.raises(Refused, match="run open"):
        adopt_change(here, run, promised(replace(FASTER, run=run)), "ann")


def change_hooks(here: Workshop, **fields: object) -> None:
    record: Record = book_record(here)
    record["products"][0]["operations"][-1] |= fields
    save_book(here, record)


def test_a_change_of_what_somebody_else_has_changed_since_is_refused(here: Workshop) -> None:
    seen = here.book.revision
    change_hooks(here, name="Screw in")

    with pytest.raises(Refused, match="book outdated"):
        adopt_change(here, "r1", promised(FASTER), "ann", seen)

    assert hooks_take(here) == 2
    assert not ledger_of_changes(here.ledger.state)


def test_another_change_of_the_book_stops_nobody(here: Workshop) -> None:
    seen = here.book.revision
    change_hooks(here, name="Screw in")

    adopt_change(here, "r1", promised(MORE), "ann", seen)

    assert extractions(here) == 2


def test_what_the_book_has_lost_is_adopted_no_more(here: Workshop) -> None:
    record = book_record(here)
    record["products"] = []
    save_book(here, record)

    with pytest.raises(Refused, match="product unknown"):
        adopt_change(here, "r1", promised(FASTER), "ann")


def test_an_idea_that_could_not_be_tried_is_not_adopted(here: Workshop) -> None:
    refused = replace(promised(FASTER), refused=("try fits nowhere", {}))

    with pytest.raises(Refused, match="idea not tried"):
        adopt_change(here, "r1", refused, "ann")


def test_what_the_log_would_refuse_leaves_the_book_as_it_was(here: Workshop) -> None:
    with pytest.raises(Refused, match="person unknown"):
        adopt_change(here, "r1", promised(FASTER), "nobody")

    assert hooks_take(here) == 2


# set against the shop as it is now


def set_extractions(here: Workshop, count: int) -> None:
    record: Record = book_record(here)
    record["services"][0]["capacity"] = count
    save_book(here, record)


def test_an_idea_of_an_old_run_takes_nothing_away_that_the_shop_has_since(here: Workshop) -> None:
    set_extractions(here, 9)

    with pytest.raises(Refused, match="change done"):
        adopt_change(here, "r1", promised(MORE), "ann")

    assert extractions(here) == 9
    assert not ledger_of_changes(here.ledger.state)


def test_a_time_that_the_route_says_already_is_not_taken_off_twice(here: Workshop) -> None:
    adopt_change(here, "r1", promised(FASTER), "ann")

    with pytest.raises(Refused, match="change done"):
        adopt_change(here, "r1", promised(replace(FASTER, per_cent=90)), "ann")

    assert hooks_take(here) == 1.6


# taken back before anybody judged it


@pytest.mark.parametrize("change", [FASTER, MORE, HELPER])
def test_a_change_that_nobody_judged_yet_is_taken_back(here: Workshop, change: Change) -> None:
    before = {**book_record(here), "revision": 0}
    made = adopt_change(here, "r1", promised(change), "ann")

    take_back_change(here, made.id, "ann")

    assert {**book_record(here), "revision": 0} == before
    assert not ledger_of_changes(here.ledger.state)


def test_what_the_book_says_otherwise_since_is_not_taken_back(here: Workshop) -> None:
    made = adopt_change(here, "r1", promised(MORE), "ann")
    set_extractions(here, 5)

    with pytest.raises(Refused, match="change not as made"):
        take_back_change(here, made.id, "ann")

    assert extractions(here) == 5
    assert the_line(here).id == made.id


def test_what_was_judged_is_not_taken_back(here: Workshop) -> None:
    made = adopt_change(here, "r1", promised(MORE), "ann")
    judge_change(here, made.id, a_run(here), "kept", "ann")

    with pytest.raises(Refused, match="change judged"):
        take_back_change(here, made.id, "ann")

    assert extractions(here) == 2


# judged


def test_a_change_that_is_kept_stays_and_says_what_it_saved(here: Workshop) -> None:
    made = adopt_change(here, "r1", promised(FASTER), "ann")
    run = a_run(here)

    assert [line.id for line in to_judge(here.ledger.state, run)] == [made.id]
    assert judge_change(here, made.id, run, "kept", "ann", SAVED) == WayBack("nothing")

    line = the_line(here)
    assert (line.verdict, line.saved, line.judged_after) == ("kept", SAVED, run)
    assert hooks_take(here) == 1.6
    assert to_judge(here.ledger.state, run) == ()


def test_a_dropped_change_is_taken_back_where_the_book_still_has_what_it_made(here: Workshop) -> None:
    made = adopt_change(here, "r1", promised(FASTER), "ann")
    run = a_run(here)
    assert way_back(here, made) == WayBack("undone", "route")

    judge_change(here, made.id, run, "dropped", "ann")

    assert hooks_take(here) == 2


def test_a_route_that_is_another_since_is_not_edited_by_dropping(here: Workshop) -> None:
    made = adopt_change(here, "r1", promised(FASTER), "ann")
    run = a_run(here)
    change_hooks(here, name="Screw in")

    assert judge_change(here, made.id, run, "dropped", "ann") == WayBack("by hand", "route")

    assert hooks_take(here) == 1.6
    assert the_line(here).verdict == "dropped"


def test_dropping_what_was_only_noted_undoes_nothing(here: Workshop) -> None:
    made = adopt_change(here, "r1", promised(HELPER), "ann")

    assert judge_change(here, made.id, a_run(here), "dropped", "ann") == WayBack("nothing")


def test_a_change_is_judged_once(here: Workshop) -> None:
    made = adopt_change(here, "r1", promised(FASTER), "ann")
    run = a_run(here)
    judge_change(here, made.id, run, "kept", "ann")

    with pytest.raises(Refused, match="change judged"):
        judge_change(here, made.id, run, "dropped", "ann")

    assert hooks_take(here) == 1.6


@pytest.mark.parametrize("after", ["r1", "r2"])
def test_only_a_finished_run_that_was_opened_since_can_judge(here: Workshop, after: str) -> None:
    made = adopt_change(here, "r1", promised(FASTER), "ann")
    a_run(here, is_over=False)

    with pytest.raises(Refused, match="change not tried"):
        judge_change(here, made.id, after, "kept", "ann")


def test_a_change_that_was_taken_back_meanwhile_cannot_be_judged(here: Workshop) -> None:
    with pytest.raises(Refused, match="change unknown"):
        judge_change(here, "press-gone", "r1", "kept", "ann")


def test_a_change_that_was_dropped_may_be_adopted_again(here: Workshop) -> None:
    made = adopt_change(here, "r1", promised(FASTER), "ann")
    judge_change(here, made.id, a_run(here), "dropped", "ann")

    adopt_change(here, "r2", promised(FASTER), "ann")

    assert [line.verdict for line in ledger_of_changes(here.ledger.state)] == ["", "dropped"]


@pytest.mark.parametrize(
    "change", [{}, {"what": "flood"}, {"what": "several", "changes": 5}, {"what": "capacity", "service": []}]
)
@pytest.mark.parametrize("did", ["route", "book", "noted"])
def test_whatever_a_phone_says_was_adopted_is_listed_and_can_be_dropped(
    here: Workshop, change: Record, did: str
) -> None:
    before, nothing = book_record(here), {"low": 0, "mid": 0, "high": 0}
    body = {"of": "rail", "change": change, "earlier": nothing, "hands": nothing, "did": did, "revision": 1}
    record_events(here, [new_event(here, "change adopted", body, run="r1", person="ann", device="phone")])
    here.clock.pass_(5)  # type: ignore[attr-defined]

    judge_change(here, the_line(here).id, a_run(here), "dropped", "ann")

    assert (the_line(here).change, the_line(here).verdict) == (None, "dropped")
    assert {**book_record(here), "revision": 0} == {**before, "revision": 0}


# what was learned


def by_hand_alone() -> Workshop:
    """A shop whose rails are cleaned up and hooked."""
    record = shop()
    steps = record["products"][0]["operations"]
    record["products"][0]["operations"] = [steps[1], steps[5]]
    return workshop(record)


def worked(here: Workshop) -> str:
    """A run of which hooks took twice their guess, measured three times: with every tray."""
    run = open_run(here, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    here.clock.pass_(5)  # type: ignore[attr-defined]
    for tray in here.ledger.state.runs[run].trays:
        press(here, "load started", run, tray)
        here.clock.pass_(20)  # type: ignore[attr-defined]
        press(here, "load done", run, tray)
    close_run(here, run, "run finished", "ann")
    here.clock.pass_(60)  # type: ignore[attr-defined]
    return run


def press(here: Workshop, kind: str, run: str, tray: str) -> None:
    record_events(here, [new_event(here, kind, {}, run=run, load=f"hooks/{tray}", person="ann", device="phone")])


def hooks_are_believed_to_take(here: Workshop, run: str) -> float:
    known = here.ledger.state.runs[run]
    step = known.route.step("hooks")
    assert step is not None
    return estimates_now(here).of(known, step, "hand").length / MINUTE


def test_what_was_learned_is_overruled_by_what_the_change_promises() -> None:
    here = by_hand_alone()
    run = worked(here)
    before = hooks_are_believed_to_take(here, run)
    assert before > 2.5

    adopt_change(here, run, promised(replace(FASTER, run=run)), "ann", why="Hooks with a jig")

    assert hooks_are_believed_to_take(here, a_run(here)) == pytest.approx(0.8 * before, abs=0.01)
    (said,) = here.ledger.state.overruled["rail", "hooks", "hand"]
    assert (said.why, said.person) == ("Hooks with a jig", "ann")


def test_dropping_the_change_brings_back_what_was_learned() -> None:
    here = by_hand_alone()
    run = worked(here)
    before = hooks_are_believed_to_take(here, run)
    made = adopt_change(here, run, promised(replace(FASTER, run=run)), "ann", why="Hooks with a jig")
    after = a_run(here)

    judge_change(here, made.id, after, "dropped", "ann")

    assert hooks_are_believed_to_take(here, a_run(here)) == pytest.approx(before)
    assert the_line(here).verdict == "dropped"


@pytest.mark.parametrize("why", ["", "Hooks with a jig"])
def test_where_nothing_was_learned_the_route_alone_says_it(here: Workshop, why: str) -> None:
    adopt_change(here, "r1", promised(FASTER), "ann", why=why)

    assert not here.ledger.state.overruled
    assert hooks_are_believed_to_take(here, a_run(here)) == pytest.approx(1.6)


def test_one_visit_is_believed_to_take_what_both_took() -> None:
    here = by_hand_alone()
    run = worked(here)
    before = hooks_are_believed_to_take(here, run)

    adopt_change(here, run, promised(OneVisit(run, "clean")), "ann", why="Clean and hooks in one go")

    after = a_run(here)
    known = here.ledger.state.runs[after]
    (step,) = known.route.steps
    assert estimates_now(here).of(known, step, "hand").length / MINUTE == pytest.approx(before + 1, abs=0.2)


def hands_of_the_next_run(here: Workshop) -> float:
    """Minutes of hands in a plan of the next run, of as many pieces."""
    run = open_run(here, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    problem = problem_for(here.ledger.state, here.book, here.clock.now(), estimates_now(here))
    parts = [part for block in problem.blocks if block.run == run for part in block.stretches]
    close_run(here, run, "run finished", "ann")
    return sum(part.length for part in parts if part.attendance == "hands-on") * TICK / MINUTE


def test_a_plan_of_the_next_run_asks_so_much_less_of_hands_as_the_change_is_shown_with() -> None:
    here = by_hand_alone()
    run = worked(here)
    change = replace(FASTER, run=run)
    past = past_of(here, run)
    shown = adopting_of(past, here.book, here.ledger.state, [change], estimates_now(here))[change]
    assert shown.made is not None
    (moved,) = shown.made.moved
    before = hands_of_the_next_run(here)

    made = adopt_change(here, run, promised(change), "ann", why="Hooks with a jig")

    pieces = sum(tray.started for tray in here.ledger.state.runs[run].trays.values())
    saved = pieces * (moved.before - moved.after) / MINUTE
    assert moved.before / MINUTE > 2.5
    assert before - hands_of_the_next_run(here) == pytest.approx(saved, rel=0.1)
    (entry,) = changes_adopted(here)[1]
    assert (entry.line.id, entry.moved) == (made.id, (moved,))


def test_a_run_that_was_open_when_a_change_was_adopted_does_not_judge_it(here: Workshop) -> None:
    open_ = a_run(here, is_over=False)
    adopt_change(here, "r1", promised(FASTER), "ann")
    close_run(here, open_, "run finished", "ann")

    assert not to_judge(here.ledger.state, open_)
