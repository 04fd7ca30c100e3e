"""Trying a change on the Plan page: the answer in words, what is wrong with it, and what is kept for the Review."""

import json
import re
from dataclasses import replace
from datetime import timedelta
from io import BytesIO
from pathlib import Path
from typing import Any, cast

import pytest
from flask.testing import FlaskClient

from runboard.cli import main
from runboard.floor.changing.runs import new_event
from runboard.floor.planning.try_change import LASTS, MOST_KEPT, Trials
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from runboard.plan.change import TraySize
from runboard.plan.search import compare
from runboard.web.fittings import fitted
from runboard.words.trying import ShopNow, answer_of
from tests import scenario
from tests.conftest import START, HandClock
from tests.core.test_changed import by_hand_only, in_the_evenings
from tests.fitting import fit
from tests.web.at_once import AtOnce
from tests.web.test_plan_schedule import NoWork, opened, plan_page, work
from tests.web.test_shop_pages import as_a_browser_posts, words

__all__ = ["work"]


@pytest.fixture(autouse=True)
def aside(house: House) -> AtOnce:
    """Who compares the plans."""
    found = AtOnce()
    fit(house, trials=Trials(house.workshop, found, compare))
    return found


def trials(house: House) -> Trials:
    return cast(Trials, fitted(house.app).trials)


FASTER = {"run": "r1", "what": "times", "operation": "sand", "kind": "hand", "per_cent": "50"}


def tried(client: FlaskClient, **asked: str) -> str:
    return words(client.get("/plan/try", query_string={"run": "r1", **asked}))


def test_the_plan_page_leads_to_it(client: FlaskClient, house: House, work: NoWork) -> None:
    opened(house)

    plan_page(client, house)

    assert 'href="/plan/try"' in client.get("/plan").text
    assert "What would you change?" in words(client.get("/plan/try"))


def test_quicker_work_is_answered_side_by_side(client: FlaskClient, house: House) -> None:
    opened(house)

    said = tried(client, **FASTER)

    assert "Sand: hand work takes 50 % of its time" in said
    assert re.search(r"The finish (does not move|moves .+ earlier); hands-on work is 3\d min less\.", said)
    assert re.search(r"Done \w+ \d+:\d\d \w+ \d+:\d\d", said)
    assert "Hands-on" in said


def test_a_change_that_makes_it_worse_is_shown_as_such(client: FlaskClient, house: House) -> None:
    record = scenario.shop()
    record["people"] = record["people"][:1]
    opened(house, record)

    said = tried(client, what="times", operation="sand", per_cent="1000")

    assert re.search(
        r"The finish moves .+ later; hands-on work is .+ more\. "
        r"The change makes it worse: no plan with it is done as early\.",
        said,
    )


def test_more_work_that_the_night_hides_is_worse_all_the_same(client: FlaskClient, house: House) -> None:
    record = scenario.shop()
    record["people"] = record["people"][:1]
    opened(house, record)

    said = tried(client, what="times", operation="sand", per_cent="300")

    assert re.search(
        r"does not move; hands-on work is .+ more\. Bottleneck: .+ The change makes it worse: more hands-on work",
        said,
    )


def test_where_nothing_moves_it_says_what_holds_the_run(client: FlaskClient, house: House) -> None:
    opened(house)

    said = tried(client, what="capacity", service="extraction", capacity="3")

    assert "Dust extraction: 3 at once" in said
    assert re.search(r"does not move; hands-on work stays the same\. Bottleneck: ", said)


def test_time_that_is_won_before_a_closed_hour_is_said_to_be_lost_there(client: FlaskClient, house: House) -> None:
    opened(house)

    said = tried(client, **FASTER)

    assert re.search(
        r"does not move; hands-on work is 38 min less\. Sand is on the longest chain of work, but before Hooks, "
        r"which waits for the next hours, \w+ \d+:\d\d\. Time saved at Sand is lost in that wait\. "
        r"No plan with the change is done earlier: that is proved\.",
        said,
    )


def test_work_with_slack_is_said_to_have_it_and_what_holds_the_run_instead(client: FlaskClient, house: House) -> None:
    opened(house)

    said = tried(client, what="times", operation="engrave", kind="machine", per_cent="50")

    assert re.search(r"does not move; .+ Engrave has slack: .+ Bottleneck: Hooks waits for the next hours", said)


def test_what_was_not_proved_is_not_said_to_be_sure(client: FlaskClient, house: House) -> None:
    """A worse plan of a heuristic, or the same finish, may only be what was found."""
    opened(house)
    asked = TraySize("r1", 3)
    found = trials(house).answer("r1", asked)
    assert found is not None
    assert found.before is not None
    assert found.after is not None
    unsure = replace(found.after, bound=0)

    shop = ShopNow(house.workshop.book, house.workshop.ledger.state.runs, lambda problem, plan, run: None)

    same = answer_of(shop, "r1", asked, replace(found, after=unsure))
    later = answer_of(shop, "r1", asked, replace(found, after=replace(unsure, finish=unsure.finish + 99)))

    assert "This is not proved: both plans were made at once" in " ".join(same)
    assert "Neither is proved the best" in " ".join(later)


def without_a_skill() -> dict[str, Any]:
    """A shop in which nobody may engrave."""
    record = scenario.shop()
    record["people"] = [{**one, "access": "crew"} for one in record["people"]]
    record["products"][0]["operations"][3]["skill"] = "laser"
    return record


def test_what_only_the_change_makes_possible_is_named(client: FlaskClient, house: House) -> None:
    opened(house, without_a_skill())

    said = tried(client, what="person", like="ann", skills="laser")

    assert "With the change, this gets done too, which fits no plan as things are: Engrave." in said
    assert "makes it worse" not in said


def test_a_run_of_which_nothing_can_be_planned_may_be_made_possible(client: FlaskClient, house: House) -> None:
    record = without_a_skill()
    record["products"][0]["operations"][0]["skill"] = "laser"
    opened(house, record)

    assert "As things are, no plan fits. With the change one does, done " in tried(
        client, what="person", like="ann", skills="laser"
    )
    assert "Nothing of this run can be planned, as things are or with the change." in tried(client, **FASTER)


def test_what_is_left_out_of_both_is_said(client: FlaskClient, house: House) -> None:
    opened(house, without_a_skill())

    assert "is left out of both. The Plan page says what." in tried(client, **FASTER)


def test_one_person_more_and_other_trays_have_their_words(client: FlaskClient, house: House) -> None:
    opened(house)

    person = tried(client, what="person", like="ann", **{"from": START.date().isoformat()})
    trays = tried(client, what="trays", pieces="3")

    assert re.search(r"One more person, with Ann’s hours, from \w+ \d+ \w+ 20\d\d on, for steps that need no", person)
    assert "3 pieces per tray, in trays not started yet" in trays


def test_hours_added_say_what_is_in_time_and_how_long_people_are_there(client: FlaskClient, house: House) -> None:
    tomorrow = START + timedelta(days=1)
    opened(house, in_the_evenings(to="20:00"), due=(START + timedelta(days=2, hours=10)).isoformat())
    hours = {"what": "hours", "person": "ann", "day": tomorrow.date().isoformat(), "opens": "06:00", "closes": "17:30"}

    said = tried(client, **hours)

    assert re.search(r"Extra hours: Ann, Sun 8 Mar 2026, 06:00–17:30 The finish moves .+ earlier", said)
    assert "The one order line with a due date is on time; as things are it is late." in said
    assert re.search(r"\d+ min more in the shop, with \d more room changes\.", said)
    assert re.search(r"Order lines on time 0 of 1 1 of 1 In the shop \d.+ \d.+ Room changes \d+ \d+", said)
    assert client.post("/plan/try", data={"run": "r1", **hours}).location == "/review/runs/r1/changes"
    assert "Extra hours: Ann" in words(client.get("/review/runs/r1/changes"))


def test_hours_to_the_end_of_a_day_are_said_as_such(client: FlaskClient, house: House) -> None:
    opened(house, in_the_evenings(to="20:00"))
    asked = {"what": "hours", "person": "ann", "day": START.date().isoformat(), "opens": "20:30"}

    assert "20:30–24:00" in tried(client, closes="24:00", **asked)
    assert "20:30–24:00" in tried(client, closes="00:00", **asked)


def test_another_order_is_offered_where_the_route_allows_it(client: FlaskClient, house: House) -> None:
    record = scenario.shop()
    record["products"] = [by_hand_only()]
    opened(house, record)

    assert "File before Cut The finish does not move" in tried(client, what="order", first="cut")


def test_where_no_two_can_change_places_the_page_says_why(client: FlaskClient, house: House) -> None:
    record = scenario.shop()
    del record["products"][0]["operations"][1:3]
    opened(house, record)

    assert "No two neighbouring steps can swap" in tried(client)


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ({"what": "trays", "pieces": "many"}, "Enter a whole number"),
        ({"what": "trays", "pieces": "9" * 30}, "Enter a whole number"),
        ({"what": "trays", "pieces": "0"}, ": 1 to"),
        ({"what": "person", "like": "ann", "from": "soon"}, "Choose a day"),
        ({"what": "person", "like": "zoe"}, "Choose somebody with usual hours"),
        (
            {"what": "hours", "person": "zoe", "day": "2026-06-12", "opens": "9:00", "closes": "10:00"},
            "Choose somebody",
        ),
        ({"what": "hours", "person": "ann", "day": "soon", "opens": "9:00", "closes": "10:00"}, "Choose a day"),
        ({"what": "hours", "person": "ann", "day": "2026-06-12", "opens": "9:-1", "closes": "x"}, "Choose a day"),
        ({"what": "hours", "person": "ann", "day": "2020-06-12", "opens": "9:00", "closes": "10:00"}, "still to come"),
        ({"what": "capacity", "service": "steam", "capacity": "2"}, "Choose shared equipment"),
        ({"what": "times", "operation": "sand", "per_cent": "5"}, "80 is a fifth less"),
        ({"what": "times", "operation": "sand", "per_cent": "100"}, "It is like that already"),
        ({"what": "order", "first": "cut"}, "These two cannot swap"),
        ({"what": "magic"}, "Choose one of the changes"),
    ],
)
def test_what_cannot_be_tried_gets_a_sentence(
    client: FlaskClient, house: House, asked: dict[str, str], sentence: str
) -> None:
    opened(house)

    said = tried(client, **asked)

    assert "That can’t be tried" in said
    assert sentence in said


def test_a_change_is_kept_once_for_the_review_and_taken_off(client: FlaskClient, house: House) -> None:
    opened(house)
    for _ in range(2):
        answer = client.post("/plan/try", data=FASTER)
        assert (answer.status_code, answer.location) == (303, "/review/runs/r1/changes")

    page = client.get("/review/runs/r1/changes")
    said = words(page)

    assert said.count("Sand: hand work takes 50 % of its time") == 1
    assert "Changes to try" in said
    assert "See changes kept to try" in tried(client)
    found = re.search(r'name="change" value="(\w+)"', page.text)
    assert found is not None
    client.post("/plan/try/drop", data={"run": "r1", "change": found[1]})
    assert "takes 50 % of its time" not in words(client.get("/review/runs/r1/changes"))


def test_what_is_kept_goes_with_the_run_into_another_shop(
    client: FlaskClient, house: House, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    opened(house)
    client.post("/plan/try", data=FASTER)
    there, file = tmp_path / "there", tmp_path / "run.json"
    book = tmp_path / "book.json"
    book.write_text(json.dumps(scenario.shop()), "utf-8")

    file.write_bytes(client.get("/plan/runs/r1/run.json").data)
    codes = [main(["import", "--data", str(there), str(one)]) for one in (book, file, file)]
    capsys.readouterr()
    codes.append(main(["export", "--data", str(there), "--run", "r1"]))

    assert codes == [0, 0, 0, 0]
    (kept,) = json.loads(capsys.readouterr().out)["changes_to_try"]
    assert kept["change"].startswith("Sand: hand work takes 50")
    client.post("/plan/try/drop", data={"run": "r1", "change": kept["id"]})
    look = client.post("/shop/import", data={"file": (BytesIO(file.read_bytes()), "run.json")})
    client.post("/shop/import", data=as_a_browser_posts(look.text))
    assert "Sand: hand work takes 50 % of its time" in words(client.get("/review/runs/r1/changes"))


def test_what_fits_into_no_plan_is_said_and_not_kept(client: FlaskClient, house: House) -> None:
    record = scenario.shop()
    record["services"].append({"key": "clamps", "name": "Clamps", "capacity": 4})
    wait = {"why": "clamp", "least_minutes": 30, "latest_minutes": None, "holds": {"clamps": 2}}
    record["products"][0]["operations"][1]["wait"] = wait
    opened(house, record)
    asked = {"what": "capacity", "service": "clamps", "capacity": "1"}

    assert "it needs 2 of Clamps at once, and the shop has fewer" in tried(client, **asked)
    assert client.post("/plan/try", data={"run": "r1", **asked}).status_code == 409


def test_nothing_of_the_run_is_touched(client: FlaskClient, house: House) -> None:
    opened(house)
    before = house.workshop.ledger.last_seq, house.workshop.books.revision()

    client.post("/plan/try", data=FASTER)

    assert (house.workshop.ledger.last_seq, house.workshop.books.revision()) == before


def test_what_is_wrong_is_not_kept(client: FlaskClient, house: House) -> None:
    opened(house)

    assert client.post("/plan/try", data={**FASTER, "per_cent": "1"}).status_code == 409
    assert client.post("/plan/try", data={**FASTER, "run": "r9"}).status_code == 404
    assert "takes 50 % of its time" not in words(client.get("/review/runs/r1/changes"))


def test_without_an_open_run_there_is_nothing_to_try_it_on(client: FlaskClient) -> None:
    assert "No run is open" in words(client.get("/plan/try"))
    assert client.get("/plan/try?run=r9").status_code == 409


def test_a_change_is_compared_aside_and_once_however_often_the_page_is_asked_for(
    client: FlaskClient, house: House, aside: AtOnce
) -> None:
    opened(house)
    aside.waits = True

    first = client.get("/plan/try", query_string=FASTER).text
    for _ in range(12):
        assert "Working it out …" in tried(client, **FASTER)
    aside.finish()
    said = tried(client, **FASTER)

    assert 'hx-trigger="every 1s" hx-select="#tried"' in first
    assert "/plan/try?run=r1&amp;what=times&amp;operation=sand" in first
    assert "The finish" not in first
    assert re.search(r"The finish (does not move|moves)", said)
    assert len(aside.tasks) == 1


def test_what_is_kept_is_what_was_answered_and_an_old_answer_is_made_anew(
    client: FlaskClient, house: House, aside: AtOnce, clock: HandClock
) -> None:
    opened(house)
    tried(client, **FASTER)
    record_events(
        house.workshop, [new_event(house.workshop, "note written", {"text": "!"}, run="r1", person="ann", device="s")]
    )
    assert client.post("/plan/try", data=FASTER).location == "/review/runs/r1/changes"
    assert len(aside.tasks) == 1

    clock.forward(minutes=LASTS.total_seconds() / 60)
    aside.waits = True
    answer = client.post("/plan/try", data=FASTER)

    assert answer.status_code == 303
    assert answer.location.startswith("/plan/try?run=r1&what=times")
    assert len(aside.tasks) == 2


def test_where_it_cannot_be_compared_there_is_a_sentence_and_another_try(
    client: FlaskClient, house: House, aside: AtOnce
) -> None:
    opened(house)
    aside.is_full = True
    assert "Too much is being worked out right now." in tried(client, **FASTER)
    aside.is_full, aside.waits = False, True
    tried(client, **FASTER)
    aside.fail()

    assert "That failed." in tried(client, **FASTER)
    assert "Working it out …" in tried(client, **FASTER)


def test_only_the_last_few_comparisons_are_kept(client: FlaskClient, house: House, aside: AtOnce) -> None:
    opened(house)
    aside.waits = True

    for per_cent in range(50, 60):
        tried(client, **FASTER | {"per_cent": str(per_cent)})

    assert len(aside.tasks) == MOST_KEPT
