"""What to buy, on a page: counted, bought, changed; who may; twice; from a page that is outdated."""

import re
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.datastructures import MultiDict

from runboard.floor.changing.runs import new_event
from runboard.floor.changing.shop_book import book_record
from runboard.floor.looking.shopping import shopping_now
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from runboard.plan.supplies.shopping import Row
from runboard.web.door.guard import may_ask
from tests import scenario
from tests.conftest import START
from tests.web.test_shop_pages import as_a_browser_posts, words

PAGE = "/plan/shopping"


def rails() -> dict[str, Any]:
    product = scenario.key_rails()
    product["operations"][0]["cutter"] = "six"
    product["operations"][4]["uses"] = [{"supply": "Hard oil", "each": 4, "unit": "ml"}]
    return product


def the_shop() -> dict[str, Any]:
    record = scenario.shop()
    record["supplies"] = [
        {"key": "hooks", "name": "Hooks", "pack": 50, "price": 9.9},
        {"key": "oil", "name": "Hard oil", "unit": "ml", "pack": 500, "price": 18},
    ]
    record["cutters"] = [{"key": "six", "name": "6 mm upcut", "life": 20, "price": 21}]
    record["products"] = [rails()]
    record["money"] = {"currency": "EUR", "locale": "en-IE"}
    return record


@pytest.fixture(autouse=True)
def a_shop(house: House) -> None:
    house.workshop.books.save(the_shop(), START)


def open_a_run(client: FlaskClient, pieces: int = 12) -> None:
    order = {"orders.0.pieces": str(pieces)}
    answer = client.post("/plan/runs/new", data={"product": "rail", "certainty": "0.9", "start": str(pieces), **order})
    assert answer.status_code == 303, words(answer)


def form_of(page: str, action: str, holding: str = "") -> dict[str, str]:
    """The fields of the form that posts there, as a browser sends them; ``holding`` picks one of several."""
    forms = re.findall(rf'<form method="post" action="{action}".*?</form>', page, re.S)
    form = next(form for form in forms if holding in form)
    inputs = re.findall(r"<input[^>]*>", form)
    named = ((re.search(r'name="([^"]*)"', one), re.search(r'value="([^"]*)"', one)) for one in inputs)
    return {name[1]: value[1] if value else "" for name, value in named if name}


def count(client: FlaskClient, **have: str) -> Any:
    form = form_of(client.get(PAGE).text, f"{PAGE}/count")
    return client.post(f"{PAGE}/count", data={**form, **{f"have.{word}": text for word, text in have.items()}})


def row(house: House, word: str) -> Row:
    return next(one for one in shopping_now(house.workshop).rows if one.here.word == word)


def test_what_is_missing_is_said_bought_with_one_press_and_gone(client: FlaskClient, house: House) -> None:
    open_a_run(client)
    assert count(client, hooks="30", **{"hard oil": "500 ml"}).status_code == 303

    seen = client.get(PAGE)
    assert "48 needed, 30 in stock: 18 missing." in words(seen)
    assert "Buy 1 packet (50), €9.90" in words(seen)
    form = form_of(seen.text, f"{PAGE}/bought")
    assert form["amount"] == "50"

    assert client.post(f"{PAGE}/bought", data=form).status_code == 303
    assert "Nothing counted is missing" in words(client.get(PAGE))
    assert row(house, "hooks").here.there == 80


def test_the_same_purchase_sent_twice_is_one(client: FlaskClient, house: House) -> None:
    open_a_run(client)
    count(client, hooks="0")
    form = form_of(client.get(PAGE).text, f"{PAGE}/bought")

    again = [client.post(f"{PAGE}/bought", data=form).status_code for _ in range(2)]

    assert again == [303, 303]
    assert row(house, "hooks").here.there == 50


def test_a_purchase_from_an_outdated_page_is_asked_about(client: FlaskClient, house: House) -> None:
    open_a_run(client)
    count(client, hooks="0")
    page = client.get(PAGE).text
    mine, theirs = form_of(page, f"{PAGE}/bought"), form_of(client.get(PAGE).text, f"{PAGE}/bought")
    client.post(f"{PAGE}/bought", data={**theirs, "amount": "20"})

    answer = client.post(f"{PAGE}/bought", data=mine)

    assert answer.status_code == 409
    assert "Somebody counted or bought Hooks meanwhile" in words(answer)
    assert row(house, "hooks").here.there == 20
    client.post(f"{PAGE}/bought", data=form_of(answer.text, f"{PAGE}/bought"))
    assert row(house, "hooks").here.there == 70


@pytest.mark.parametrize("amount", ["", "some", "0", "-5", "1e99", "nan", "²"])
def test_an_amount_that_is_none_is_refused(client: FlaskClient, house: House, amount: str) -> None:
    open_a_run(client)
    count(client, hooks="0")
    form = form_of(client.get(PAGE).text, f"{PAGE}/bought")

    answer = client.post(f"{PAGE}/bought", data={**form, "amount": amount})

    assert answer.status_code == 422
    assert "Enter how much" in words(answer)
    assert row(house, "hooks").here.there == 0


def test_a_count_that_is_no_number_keeps_the_others_that_were_typed(client: FlaskClient, house: House) -> None:
    answer = count(client, hooks="a few", **{"hard oil": "120"})

    assert answer.status_code == 422
    assert 'value="a few"' in answer.text
    assert 'value="120"' in answer.text
    assert row(house, "hooks").here.there is None
    assert row(house, "hard oil").here.there is None


def test_what_is_wrong_with_a_count_stands_at_the_top_and_leads_to_its_field(client: FlaskClient) -> None:
    page = count(client, hooks="-3").text

    assert '<a href="#have-1">Hooks: Enter how much, 0 or more.</a>' in page
    assert 'id="have-1"' in page


@pytest.mark.parametrize("counted", [1, 12])
def test_a_count_is_taken_back_from_its_own_notice(client: FlaskClient, house: House, counted: int) -> None:
    record = the_shop()
    record["supplies"] += [{"key": f"s{at}", "name": f"Thing {at}"} for at in range(counted)]
    house.workshop.books.save(record, START)
    answer = count(client, **{f"thing {at}": str(at) for at in range(counted)})
    form = form_of(client.get(answer.location).text, f"{PAGE}/back")

    seen = client.post(f"{PAGE}/back", data=form, follow_redirects=True)

    assert "Undone." in words(seen)
    assert ">Undo</button>" not in seen.text
    assert row(house, "thing 0").here.there is None
    assert client.post(f"{PAGE}/back", data=form).status_code == 409


def test_a_purchase_and_a_change_are_taken_back_too(client: FlaskClient, house: House) -> None:
    open_a_run(client)
    count(client, hooks="0")
    for what in ("bought", "changed"):
        answer = client.post(f"{PAGE}/{what}", data=form_of(client.get(PAGE).text, f"{PAGE}/{what}"))
        assert (
            client.post(f"{PAGE}/back", data=form_of(client.get(answer.location).text, f"{PAGE}/back")).status_code
            == 303
        )

    (wear,) = shopping_now(house.workshop).wear
    assert (row(house, "hooks").here.there, wear.times) == (0, 0)


def test_nothing_is_taken_back_that_no_form_of_this_page_said(client: FlaskClient, house: House) -> None:
    open_a_run(client)
    opened = next(event.id for event in house.workshop.ledger.arrived.values() if event.kind == "run opened")

    for once in ("", opened, opened.rpartition("-")[0], "f" * 32):
        assert client.post(f"{PAGE}/back", data={"once": once}).status_code == 409
    assert "r1" in house.workshop.ledger.state.runs


def test_an_empty_count_says_so_and_what_is_left_empty_stays(client: FlaskClient, house: House) -> None:
    assert count(client).status_code == 409
    count(client, hooks="7,5")
    count(client, **{"hard oil": "10"})

    assert (row(house, "hooks").here.there, row(house, "hard oil").here.there) == (7.5, 10)


def test_more_supplies_than_one_press_holds_are_all_counted(client: FlaskClient, house: House) -> None:
    record = the_shop()
    record["supplies"] += [{"key": f"s{at}", "name": f"Thing {at}"} for at in range(20)]
    house.workshop.books.save(record, START)

    assert count(client, **{f"thing {at}": str(at) for at in range(20)}).status_code == 303

    assert [row(house, f"thing {at}").here.there for at in range(20)] == [*range(20)]


def test_a_helper_may_take_back_what_they_counted_and_the_lead_is_offered_to_open_a_run(client: FlaskClient) -> None:
    assert may_ask("crew", "plan_shopping.back", reading=False)
    assert "Open a run" in words(client.get("/plan"))


def test_nobody_s_supply_or_cutter_is_not_found(client: FlaskClient) -> None:
    once = {"once": "0" * 32, "times": "0"}

    assert client.post(f"{PAGE}/bought", data={**once, "supply": "gold", "amount": "1"}).status_code == 404
    assert client.post(f"{PAGE}/changed", data={**once, "cutter": "gold", "station": "cnc"}).status_code == 404
    assert client.post(f"{PAGE}/learned", data={**once, "supply": "gold"}).status_code == 404


def test_a_form_of_nobody_s_making_is_refused(client: FlaskClient, house: House) -> None:
    answer = client.post(f"{PAGE}/bought", data={"supply": "hooks", "amount": "5", "times": "0", "once": "../x"})

    assert answer.status_code == 409
    assert row(house, "hooks").here.bought == 0


# cutters


def test_a_cutter_that_is_worn_before_the_end_is_said_and_changed_with_one_press(
    client: FlaskClient, house: House
) -> None:
    open_a_run(client, 45)
    seen = client.get(PAGE)
    assert "change it before trays 4 and 7" in words(seen)
    assert "Buy 2, €42.00" in words(seen)
    form = form_of(seen.text, f"{PAGE}/changed")

    answers = [client.post(f"{PAGE}/changed", data=form).status_code for _ in range(2)]

    (wear,) = shopping_now(house.workshop).wear
    assert answers == [303, 303]
    assert (wear.times, wear.used) == (1, 0)
    assert house.workshop.ledger.state.stations["cnc"].setups == 1


def test_a_cutter_that_somebody_changed_meanwhile_is_asked_about(client: FlaskClient, house: House) -> None:
    first, second = (form_of(client.get(PAGE).text, f"{PAGE}/changed") for _ in range(2))
    client.post(f"{PAGE}/changed", data=first)

    answer = client.post(f"{PAGE}/changed", data=second)

    assert answer.status_code == 409
    assert "Somebody changed 6 mm upcut meanwhile" in words(answer)


def test_a_change_at_a_machine_that_runs_is_asked_about(client: FlaskClient, house: House) -> None:
    open_a_run(client)
    for kind in ("load started", "machine started"):
        body = {"pieces": {"1": 5, "2": 5, "3": 2}} if kind == "load started" else {}
        event = new_event(
            house.workshop, kind, body, run="r1", load="cut/1", station="cnc", person="ann", device="phone"
        )
        record_events(house.workshop, [event])

    answer = client.post(f"{PAGE}/changed", data=form_of(client.get(PAGE).text, f"{PAGE}/changed"))

    assert answer.status_code == 409
    assert "The CNC is entered as running." in words(answer)
    assert "It is off: I fitted a new one at the CNC" in words(answer)
    assert shopping_now(house.workshop).wear[0].times == 0
    client.post(f"{PAGE}/changed", data=form_of(answer.text, f"{PAGE}/changed"))
    assert shopping_now(house.workshop).wear[0].times == 1


def test_boards_that_are_missing_are_bought_and_those_that_suffice_are_said(client: FlaskClient, house: House) -> None:
    record = the_shop()
    board = {
        "key": "plank",
        "name": "Ash plank",
        "length": 1000,
        "width": 200,
        "thickness": 20,
        "wood": "ash",
        "price": 15,
    }
    record["stocks"] = [board | {"have": 1}]
    record["products"][0]["piece"] = {"length": 300, "width": 60, "thickness": 20, "stocks": ["plank"]}
    house.workshop.books.save(record, START)
    open_a_run(client)

    short = client.get(PAGE)
    record["stocks"][0]["have"] = 9
    house.workshop.books.save(record, START)
    there = client.get(PAGE)

    assert "Ash plank Buy 1, €15.00. 2 needed for Entry key rails, 1 in stock." in words(short)
    assert "Enough of these Ash plank Enter how many there are Ash plank 2 needed" in words(there)
    assert client.get("/shop/stocks/plank").status_code == 200


# where else it is said


def test_the_preview_of_a_run_says_what_runs_out_before_it_starts(client: FlaskClient) -> None:
    count(client, hooks="30", **{"hard oil": "500"})

    order = {"product": "rail", "certainty": "0.9", "start": "12", "orders.0.pieces": "12"}
    seen = words(client.post("/plan/runs/preview", data=order | {"start": "30"}))

    assert "Enough of Hard oil." in seen
    assert "Hooks: enough for tray 1, not for tray 2 at Hooks. 120 needed, 30 in stock: 90 short." in seen
    assert "Hooks: Buy 2 packets (100), €19.80" in seen
    assert "6 mm upcut wears out part-way: change it before tray 4." in seen


def test_the_preview_of_a_run_says_what_nobody_counted(client: FlaskClient) -> None:
    order = {"product": "rail", "certainty": "0.9", "start": "12", "orders.0.pieces": "12"}

    assert "Not counted: Hooks" in words(client.post("/plan/runs/preview", data=order))


@pytest.mark.parametrize("address", ["/plan", "/plan/runs/r1"])
def test_what_runs_out_of_an_open_run_stands_at_the_top(client: FlaskClient, address: str) -> None:
    open_a_run(client)
    count(client, hooks="30", **{"hard oil": "500"})

    seen = words(client.get(address))

    run = " (Entry key rails, run 1)" if address == "/plan" else ""
    assert f"Hooks: enough for tray 1, not for tray 2 at Hooks{run}." in seen
    assert "What to buy" in seen


def test_nothing_stands_at_the_top_where_everything_suffices(client: FlaskClient, house: House) -> None:
    record = the_shop()
    record["cutters"] = []
    del record["products"][0]["operations"][0]["cutter"]
    house.workshop.books.save(record, START)
    open_a_run(client)
    count(client, hooks="300", **{"hard oil": "500"})

    seen = words(client.get("/plan"))
    assert "enough for" not in seen
    assert "What to buy" in seen


# what a piece really uses


def finish_trays(house: House, *trays: str) -> None:
    from runboard.floor.changing.runs import new_event
    from runboard.floor.pressing.taps import record_events

    for tray in trays:
        event = new_event(house.workshop, "load done", {}, run="r1", load=f"hooks/{tray}", device="server")
        record_events(house.workshop, [event])


def test_the_real_use_is_shown_and_one_press_takes_it_into_the_route(client: FlaskClient, house: House) -> None:
    open_a_run(client, 45)
    count(client, hooks="500")
    finish_trays(house, "1", "2", "3")
    count(client, hooks=str(500 - 15 * 5))
    finish_trays(house, "4", "5")
    count(client, hooks=str(500 - 25 * 5))

    seen = client.get(PAGE)
    assert "you enter 4, real use is 5 per piece, from 2 pairs of counts and 25 pieces" in words(seen)
    answer = client.post(f"{PAGE}/learned", data=form_of(seen.text, f"{PAGE}/learned"))

    assert answer.status_code == 303
    (use,) = book_record(house.workshop)["products"][0]["operations"][-1]["uses"]
    assert use["each"] == 5
    assert row(house, "hooks").needed == 20 * 5, "the run that is open goes on with what was learned of its own route"


def test_a_learned_use_that_the_route_writes_otherwise_by_now_is_refused(client: FlaskClient, house: House) -> None:
    open_a_run(client)
    asked = {"supply": "hooks", "product": "rail", "operation": "hooks", "written": "4"}

    assert client.post(f"{PAGE}/learned", data=asked).status_code == 409


# forms


def test_a_supply_and_a_cutter_have_their_forms(client: FlaskClient, house: House) -> None:
    fields = {"name": "Cartons", "pack": "25", "price": "11", "low": "10", "seen": "1"}
    assert client.post("/shop/supplies/new", data=fields).status_code == 303
    cutter = {"name": "V bit", "what": "cutter", "life": "200", "life_in": "minutes", "supply": "", "seen": "2"}
    assert client.post("/shop/cutters/new", data=cutter).status_code == 303

    record = book_record(house.workshop)
    assert record["supplies"][-1] == {
        "key": "cartons", "name": "Cartons", "unit": "", "pack": 25, "price": 11, "low": 10
    }  # fmt: skip
    assert (record["cutters"][-1]["key"], record["cutters"][-1]["life"]) == ("v-bit", 200)


def test_the_cutter_of_a_step_is_chosen_in_its_form(client: FlaskClient, house: House) -> None:
    address = "/plan/products/rail/operations/hooks"
    fields: MultiDict[str, str] = MultiDict(as_a_browser_posts(client.get(address).text))
    fields["cutter"] = "six"

    assert client.post(address, data=fields).status_code == 303

    assert book_record(house.workshop)["products"][0]["operations"][-1]["cutter"] == "six"
