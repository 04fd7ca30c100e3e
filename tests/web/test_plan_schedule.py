"""When it will be done, on the Plan page and on a run's: from the plan at hand, and never waited for."""

import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.planning.planner import Planner
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from runboard.plan.schedule.problem import cannot, from_state
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import LeftOut
from runboard.plan.schedule.search.bounds import Bound
from runboard.plan.schedule.told.compared import Calmer
from runboard.run.rules.begin import LASTING
from runboard.web.fittings import fitted
from runboard.words.pace import every
from runboard.words.plan import Names, left_out_sentences
from tests import scenario
from tests.conftest import START, HandClock
from tests.core.pressing import Floor
from tests.figured import show
from tests.fitting import fit
from tests.web.test_shop_pages import words


class NoWork:
    """Nobody to search: only what the test puts here as going on."""

    def __init__(self) -> None:
        self.task: Any = None
        self.ended: list[str] = []

    def start(self, *_: Any) -> None:
        return None

    give = begin = start
    prepared = True

    def look(self, _: str) -> Any:
        return self.task

    def newest(self, *_: str) -> None:
        return None

    def end(self, task: str) -> None:
        self.ended.append(task)


@pytest.fixture
def work(house: House) -> NoWork:
    found = NoWork()
    fit(house, planner=Planner(house.workshop, found, lambda seq: None))
    return found


def opened(house: House, record: dict[str, Any] | None = None, pieces: int = 12, **more: Any) -> None:
    house.workshop.books.save(record or scenario.shop(), START)
    orders = [{"line": "1", "pieces": pieces, "text": "12", "for": "Mo", **more}]
    open_run(house.workshop, Wish("rail", orders, name="Key rails", start=15), "ann")


def planned(house: House) -> None:
    show(house.workshop)


def plan_page(client: FlaskClient, house: House) -> str:
    planned(house)
    return words(client.get("/plan"))


def operations(record: dict[str, Any]) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = record["products"][0]["operations"]
    return found


def test_the_first_sentence_says_when_and_with_how_much_more(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)

    said = plan_page(client, house)

    assert re.search(r"Done about (\w{3} )?\d+:\d\d \([12] more working days?, (you|Ann and Ben|Ann|Ben)\)", said)
    assert "Bottleneck:" in said


def test_who_works_alone_is_spoken_to(client: FlaskClient, house: House, work: NoWork) -> None:
    record = scenario.shop()
    record["people"] = record["people"][:1]
    opened(house, record)
    client.set_cookie("person", "ann")

    assert ", you)" in plan_page(client, house)


def test_evenings_are_called_so(client: FlaskClient, house: House, work: NoWork) -> None:
    record = scenario.shop()
    for person in record["people"]:
        person["hours"] = [{"days": scenario.ALL_WEEK, "from": "18:00", "to": "22:00"}]
    opened(house, record)

    assert re.search(r"\d more evenings?, ", plan_page(client, house))


def test_the_chart_has_a_list_that_says_the_same(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)

    said = plan_page(client, house)
    page = client.get("/plan").text

    assert re.search(r"\d+:\d\d–\d+:\d\d (Ann|Ben) stays and watches: Engrave, tray 1", said)
    assert re.search(r"(Ann|Ben) goes to House", said)
    assert page.count('class="chart tablet"') >= page.count('class="chart phone"') >= page.count('class="sitting"') > 0
    assert page.count('role="img" aria-label="') == page.count("<svg")
    hatched = re.findall(r'pattern id="([^"]+)"', page)
    assert hatched
    assert len(set(hatched)) == len(hatched)


def test_nothing_of_the_chart_is_styled_in_the_page(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)
    planned(house)

    assert "style=" not in client.get("/plan").text


def test_without_a_run_there_is_no_such_section(client: FlaskClient, house: House, work: NoWork) -> None:
    house.workshop.books.save(scenario.shop(), START)

    assert "When it will be done" not in plan_page(client, house)


def test_before_the_first_plan_the_page_says_so_and_answers(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)

    assert "Working it out …" in words(client.get("/plan"))
    assert client.get("/plan/runs/r1").status_code == 200
    assert "Working it out …" in words(client.get("/plan/search"))


def test_what_fits_nowhere_says_what_to_do(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)
    planned(house)
    found = house.workshop.planned
    nothing = replace(found, answer=replace(found.answer, plan=None))

    house.workshop.planned = replace(nothing, none="none", clash=(0, 1))

    said = words(client.get("/plan"))
    assert "No plan fits into people’s hours" in said
    assert "Lengthen somebody’s hours" in said
    assert "Cut: people’s hours have no room left for it, beside what has been started and what waits. Tray" in said


def test_where_no_plan_was_found_at_once_the_page_says_that_one_is_looked_for_and_looks_again(
    client: FlaskClient, house: House, work: NoWork
) -> None:
    opened(house)
    planned(house)
    found = house.workshop.planned

    house.workshop.planned = replace(found, answer=replace(found.answer, plan=None))

    assert "Looking for a plan" in words(client.get("/plan"))
    assert 'hx-trigger="every 2s"' in client.get("/plan").text

    house.workshop.planned = replace(house.workshop.planned, none="not found")

    assert "No plan found yet, though there may be one" in words(client.get("/plan"))
    assert 'hx-trigger="every 2s"' not in client.get("/plan").text


def test_a_server_without_a_planner_says_so_only_where_it_is_asked(client: FlaskClient, house: House) -> None:
    fit(house, planner=None)
    opened(house)

    assert "When it will be done" not in words(client.get("/plan"))
    assert "Planning is off" in words(client.get("/plan/search"))


def test_the_hours_of_the_chart_are_full_whenever_the_plan_was_made(
    client: FlaskClient, house: House, work: NoWork, clock: HandClock
) -> None:
    clock.forward(minutes=7, seconds=13.4)
    opened(house)
    planned(house)

    said = re.findall(r'<text class="clock"[^>]*>([^<]+)<', client.get("/plan").text)

    assert said
    assert {text[-3:] for text in said} <= {":00", ":15", ":30", ":45"}


def test_a_plan_older_than_the_log_says_so(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)
    planned(house)

    record_events(
        house.workshop, [new_event(house.workshop, "note written", {"text": "!"}, run="r1", person="ann", device="s")]
    )

    assert "updating with the latest entries" in words(client.get("/plan"))


def test_nobody_has_hours(client: FlaskClient, house: House, work: NoWork) -> None:
    record = scenario.shop()
    for person in record["people"]:
        person["hours"] = []
    opened(house, record)

    said = plan_page(client, house)

    assert "Nothing can be planned yet." in said
    assert "nobody who may do it has hours. Enter their usual hours on the Shop screen" in said


def test_a_load_longer_than_any_hours_names_the_clash(client: FlaskClient, house: House, work: NoWork) -> None:
    record = scenario.shop()
    operations(record)[0]["passes"][0]["machine_minutes"] = 20 * 60
    opened(house, record)

    said = plan_page(client, house)

    assert "Cut: it takes 20 h 02 without a break, and nobody who may do it has more than 14 h at a time." in said


CLASHES: dict[str, tuple[dict[str, object], str]] = {
    "no station": ({}, "its station is not in the shop’s book any more"),
    "station out": ({"station": "Laser"}, "Laser is out of order"),
    "station due": (
        {"station": "Laser", "until": datetime(2026, 6, 1, 16, tzinfo=UTC)},
        "Laser was due back by 16:00, and nobody said it is",
    ),
    "nobody in the book": ({}, "nobody who works here is in the shop’s book"),
    "supply out": ({"station": "Bench", "supply": "Hooks"}, "Hooks has run out"),
    "material forbidden": (
        {"material": "PVC", "forbidden": "PVC", "station": "Laser"},
        "PVC never goes on the Laser",
    ),
    "first piece failed": ({}, "stopped because its first piece failed"),
    "pieces held": ({"station": "Bench", "why": "crack"}, "pieces are on hold (crack)"),
    "service too small": ({"service": "Clamps", "wanted": 3}, "it needs 3 of Clamps at once, and the shop has fewer"),
    "skill nobody has": ({"skill": "turning"}, "it needs the skill ‘turning’, and nobody has it"),
    "nobody has hours": ({"station": "Laser"}, "nobody who may do it has hours"),
    "no window long enough": (
        {"minutes": timedelta(minutes=300), "longest": timedelta(minutes=240)},
        "it takes 5 h without a break, and nobody who may do it has more than 4 h at a time",
    ),
    "quiet too long": (
        {"station": "Laser", "minutes": timedelta(minutes=300), "longest": timedelta(minutes=240)},
        "Laser runs 5 h without a break, and its quiet hours leave 4 h at a time",
    ),
    "latest too soon": (
        {"minutes": timedelta(minutes=300), "longest": timedelta(minutes=240)},
        "it must start within 4 h of the first piece before it, and that work with its wait takes 5 h",
    ),
    "never together": ({"station": "Laser"}, "when Laser may run, nobody who may do it is there"),
}


def _names() -> Names:
    floor = Floor()
    floor.open_run()
    problem = problem_for(floor.state, floor.book, floor.now)
    return Names(problem, floor.state.runs, floor.book, UTC, floor.now)


@pytest.mark.parametrize("code", CLASHES)
def test_every_clash_is_named_once_with_all_that_it_keeps_out(code: str) -> None:
    facts, clash = CLASHES[code]
    out = [LeftOut("r1", "engrave", (tray,), code, facts) for tray in ("1", "2", "4")]

    (said,) = left_out_sentences(_names(), out)

    assert said.startswith("Engrave: ")
    assert clash in said
    assert said.endswith(" Trays 1, 2 and 4.")
    assert "{" not in said


def test_a_step_given_to_somebody_who_is_gone_asks_for_no_skill() -> None:
    out = [LeftOut("r1", "engrave", ("1",), "skill nobody has", {"skill": ""})]

    assert "it is assigned to somebody who is not in the shop any more" in left_out_sentences(_names(), out)[0]


def test_every_clash_that_the_problem_knows_has_a_sentence() -> None:
    source = Path(cannot.__file__).read_text("utf-8")

    known = set(re.findall(r'(?:return |\()"([a-z ]+)", (?:facts|\{)', source))
    assert known | set(LASTING.values()) == set(CLASHES)


def test_a_station_out_of_use_keeps_out_what_waits_for_it(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)
    shop = house.workshop
    record_events(shop, [new_event(shop, "station out of use", {}, station="laser", person="ann", device="s")])

    said = plan_page(client, house)

    assert "This is what can be planned; the rest waits:" in said
    assert (
        "Engrave: Laser is out of order, with no date. Put it back in use, or say until when it is out. Trays 1 to 3."
        in said
    )


# one run


def test_a_run_says_how_likely_each_order_line_is_in_time(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house, due="2030-01-01T10:00:00+00:00")
    planned(house)

    said = words(client.get("/plan/runs/r1"))

    assert " hands-on work left" in said
    assert "What is due Tue 1 Jan 2030, 11:00 12 for Mo: “12”" in said
    assert "on time: almost certain" in said


def test_the_route_s_times_say_where_they_come_from(
    client: FlaskClient, house: House, work: NoWork, clock: HandClock
) -> None:
    opened(house)
    shop = house.workshop
    for kind, minutes in (("load started", 3), ("machine started", 40), ("unloading started", 2), ("load done", 0)):
        record_events(shop, [new_event(shop, kind, {}, run="r1", load="cut/1", person="ann", device="s")])
        clock.forward(minutes=minutes)

    said = words(client.get("/plan/runs/r1"))

    assert "Sand 120 by hand per piece 3 min a guess" in said
    assert re.search(r"Cut machine time per board \d+ min measured once", said)


def test_a_run_that_is_over_has_no_such_section(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)
    planned(house)
    client.post("/plan/runs/r1/end", data={"how": "abandoned"})

    assert "done-at" not in client.get("/plan/runs/r1").text


# one press further down


@pytest.mark.parametrize(
    ("bound", "why"),
    [
        (Bound(10, "hands"), "hands-on work alone fills the hours until then."),
        (Bound(10, "hands", {"people": ["Ann"]}), "work that only Ann may do fills the hours until then."),
        (Bound(10, "station", {"station": "Laser"}), "Laser is busy until then"),
        (Bound(10, "watched", {"station": "Laser"}), "hands-on work and watching Laser"),
        (Bound(10, "wait", {"step": "oil", "run": "r1"}), "the work before Oil, the wait after it"),
        (Bound(10, "hours"), "one thing after the other"),
        (Bound(10, "evenings"), "does not fit into fewer days"),
        (Bound(10, "search"), "a search tried everything earlier"),
    ],
    ids=lambda one: one.rule if isinstance(one, Bound) else "",
)
def test_the_bound_names_the_rule_that_makes_it(
    client: FlaskClient, house: House, work: NoWork, bound: Bound, why: str
) -> None:
    opened(house)
    planned(house)
    house.workshop.planned = replace(house.workshop.planned, bound=bound)

    said = words(client.get("/plan/search"))

    assert "No plan can be done before " in said
    assert why in said
    assert re.search(r"A better plan could save at most \d+ min in the shop\.", said)


def test_a_bound_that_is_reached_is_a_proof(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)
    planned(house)
    finish = house.workshop.planned.answer.finish
    house.workshop.planned = replace(house.workshop.planned, bound=Bound(finish, "search"))

    assert "No plan is done earlier: that is proved." in words(client.get("/plan/search"))


def searched(client: FlaskClient, house: House) -> str:
    planned(house)
    return words(client.get("/plan/search"))


def test_takt_stands_against_the_pace_of_the_slowest_station(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house, due="2030-01-01T10:00:00+00:00")

    said = searched(client, house)

    assert re.search(
        r"One piece is needed every \d+ h to be ready by .+ 11:00\. The Sander makes one every 5\.3 min\.", said
    )
    assert re.search(r"takes 15 min of hands-on work.*; \d+ h of somebody’s time is there for it\.", said)
    assert "People’s time sets the pace" in said
    assert not re.search("too slow|not enough|which is later", said)


def test_a_pace_that_is_too_slow_says_what_would_change_it(
    client: FlaskClient, house: House, work: NoWork, clock: HandClock
) -> None:
    opened(house, due=(clock.now() + timedelta(minutes=20)).isoformat())

    said = searched(client, house)

    assert "That is too slow. More hours, or less work per piece there, would help." in said
    assert "That is not enough. More hours, or one more person, would help." in said


def test_what_only_waits_make_late_says_when_it_is_there(
    client: FlaskClient, house: House, work: NoWork, clock: HandClock
) -> None:
    opened(house, due=(clock.now() + timedelta(hours=9)).isoformat())

    said = searched(client, house)

    assert re.search(r"The plan has them ready at \w+ \d+:\d\d, which is later: waits", said)


def test_what_was_due_already_is_late(client: FlaskClient, house: House, work: NoWork, clock: HandClock) -> None:
    opened(house, due=(clock.now() - timedelta(hours=1)).isoformat())

    assert re.search(r"Pieces due .+ are not ready yet\. The Sander makes one every", searched(client, house))


def test_without_a_due_moment_there_is_no_takt(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)

    said = searched(client, house)

    assert "No order line has a due date. The Sander is the slowest" in said
    assert "is needed every" not in said


def test_a_machine_s_hands_never_read_as_leave_to_go(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)

    said = searched(client, house)

    assert re.search(r"Laser: 3 min hands-on, then it runs 22 min\. Hands alone would do for 8 such machines\.", said)
    assert "who must stay with it or be near, and those rules come first." in said


def test_trays_in_work_are_said_with_their_rate(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)

    said = searched(client, house)

    assert re.search(r"On average [\d.]+ trays are in work\. One is done every .+ and takes .+ to last", said)


def test_the_pace_is_one_press_further_down_and_not_on_the_first_page(
    client: FlaskClient, house: House, work: NoWork
) -> None:
    opened(house)

    assert "How fast it goes" not in plan_page(client, house)
    part = client.get("/plan/search", headers={"HX-Request": "true"}).text
    assert "How fast it goes" not in part, "what is asked for each second does without it"


@pytest.mark.parametrize(
    ("ticks", "said"),
    [
        (Fraction(3, 2), "45 s"),
        (2, "1 min"),
        (Fraction(48, 5), "4.8 min"),
        (Fraction(199, 10), "10 min"),
        (180, "1 h 30"),
        (7200, "60 h"),
    ],
)
def test_short_spans_are_said_finer_than_clocks_say_them(ticks: Fraction | int, said: str) -> None:
    assert every(Fraction(ticks)) == said


class Running:
    id, subject, state, done, total = "t1", "", "running", 3, 15
    latest = result = failure = None
    is_over = False


def test_a_search_shows_how_far_it_is_and_can_be_stopped(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)
    planned(house)
    fitted(house.app).planner.task, work.task = "t1", Running()

    page = client.get("/plan/search").text
    part = client.get("/plan/search", headers={"HX-Request": "true"}).text
    stopped = client.post("/plan/search/end")

    assert 'max="15" value="3"' in page
    assert 'hx-trigger="every 1s"' in part
    assert "<html" not in part
    assert (stopped.status_code, work.ended) == (303, ["t1"])


def test_look_further_is_a_press(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)
    planned(house)

    assert "Look further" in words(client.get("/plan/search"))
    assert client.post("/plan/search").status_code == 303


def test_a_search_that_needed_too_much_memory_says_so(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)
    planner = fitted(house.app).planner
    planner.turn()
    planner.too_large = 1

    for page in ("/plan", "/plan/search"):
        assert "ran out of memory" in words(client.get(page))


def test_more_than_can_be_planned_at_once_says_so(
    client: FlaskClient, house: House, work: NoWork, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened(house)
    monkeypatch.setattr(from_state, "MOST_PLANNED", 5)

    fitted(house.app).planner.turn()

    for page in ("/plan", "/plan/runs/r1", "/plan/search", "/"):
        assert client.get(page).status_code == 200
    assert "Too much is open to plan at once" in words(client.get("/plan"))


def test_what_walking_less_costs_is_said_where_a_calmer_plan_was_seen(
    client: FlaskClient, house: House, work: NoWork
) -> None:
    opened(house)
    before = plan_page(client, house)
    walks = sum(one.walks for one in house.workshop.figured.figures.whole.loads)

    house.workshop.planned = replace(house.workshop.planned, calmer=Calmer(2, 95))

    assert " in all. With " not in before
    assert f"{walks} room change{'s' * (walks != 1)} in all. With 2 fewer, done 1 h 35 later." in words(
        client.get("/plan")
    )
