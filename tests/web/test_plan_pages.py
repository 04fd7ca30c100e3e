"""The Plan screen: a product from one line, its operations through forms, a run opened, changed and ended."""

from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.datastructures import MultiDict

from runboard.floor.changing.shop_book import book_record
from runboard.house import House
from runboard.run.fold.state import RunState
from tests import scenario
from tests.conftest import START
from tests.web.test_shop_pages import as_a_browser_posts, inputs, words

LINE = "cut 40 board of 10, clean up 5, sand 25, engrave 20 a tray, oil, overnight, hooks 10"
UNCLEAR = "cut 40, clean up 5, engrave 20"


pytestmark = pytest.mark.usefixtures("small_shop")


def product(house: House, key: str = "rail") -> dict[str, Any]:
    return next(one for one in book_record(house.workshop)["products"] if one["key"] == key)


def operation(house: House, key: str) -> dict[str, Any]:
    return next(one for one in product(house)["operations"] if one["key"] == key)


def run(house: House, key: str = "r1") -> RunState:
    return house.workshop.ledger.state.runs[key]


def an_order(at: int = 0, **more: str) -> dict[str, str]:
    return {f"orders.{at}.{name}": value for name, value in ({"pieces": "12"} | more).items()}


def open_one(client: FlaskClient, **more: str) -> None:
    answer = client.post("/plan/runs/new", data={"product": "rail", "certainty": "0.9", **an_order(), **more})
    assert answer.status_code == 303, words(answer)
    assert answer.headers["Location"] in ("/", *(f"/plan/runs/r{at}/before" for at in range(1, 9)))


# a product from one line


def test_one_line_makes_a_product_that_is_usable_at_once(client: FlaskClient, house: House) -> None:
    made = client.post("/plan/products/new", data={"name": "Peg rail", "text": LINE})
    opened = client.post("/plan/runs/new", data={"product": "peg-rail", **an_order()})

    assert made.headers["Location"] == "/plan/products/peg-rail"
    assert [one["key"] for one in product(house, "peg-rail")["operations"]][:3] == ["cut", "clean-up", "sand"]
    assert opened.status_code == 303
    assert run(house).product == "peg-rail"


def test_a_machines_load_that_nobody_said_is_asked_for_and_not_taken_for_a_tray(
    client: FlaskClient, house: House
) -> None:
    asked = client.post("/plan/products/new", data={"name": "Peg rail", "text": UNCLEAR})

    assert asked.status_code == 422
    assert "Cut, at the CNC" in words(asked) and "Engrave, at the Laser" in words(asked)
    assert "Clean up, at the Bench" not in words(asked)
    assert all(one["key"] != "peg-rail" for one in book_record(house.workshop)["products"])

    client.post("/plan/products/new", data={"name": "Peg rail", "text": UNCLEAR, "load.1": "10", "load.3": "5"})

    cut, _, engrave = (one["passes"][0] for one in product(house, "peg-rail")["operations"])
    assert (cut["size"], cut["pieces"]) == ("board", 10)
    assert (engrave["size"], engrave["pieces"]) == ("tray", None)


def test_the_preview_is_a_part_for_htmx_and_a_page_for_everybody_else(client: FlaskClient) -> None:
    part = client.post("/plan/products/preview", data={"text": LINE}, headers={"HX-Request": "true"})
    whole = client.post("/plan/products/preview", data={"text": LINE})

    assert "<html" not in part.text
    assert "overnight" not in part.text
    assert "Then drying 12 h" in words(part)
    assert "HX-Request" in part.headers["Vary"]
    assert "<html" in whole.text


def test_a_line_that_cannot_be_read_says_where_and_keeps_what_was_typed(client: FlaskClient, house: House) -> None:
    answer = client.post("/plan/products/new", data={"name": "Peg rail", "text": "overnight, cut 40"})

    assert answer.status_code == 422
    assert "is a wait" in words(answer)
    assert "overnight, cut 40</textarea>" in answer.text
    assert len(book_record(house.workshop)["products"]) == 1


def test_an_empty_plan_teaches_the_first_step(client: FlaskClient, house: House) -> None:
    house.workshop.books.save({**scenario.shop(), "products": []}, START)
    assert "One line of text is enough to start" in words(client.get("/plan"))

    house.workshop.books.save({"runboard_book": 1}, START)
    assert "first add a station" in words(client.get("/plan"))


def test_a_copy_has_the_route_and_a_name_of_its_own(client: FlaskClient, house: House) -> None:
    client.post("/plan/products/rail/copy")
    client.post("/plan/products/rail/copy")

    names = [one["name"] for one in book_record(house.workshop)["products"]]
    assert names == ["Entry key rails", "Entry key rails, copy", "Entry key rails, copy 2"]
    assert product(house, "entry-key-rails-copy")["operations"] == product(house)["operations"]


# an operation


@pytest.mark.parametrize("key", ["cut", "clean", "sand", "engrave", "oil", "hooks"])
def test_an_operation_saved_unread_stays_the_same(client: FlaskClient, house: House, key: str) -> None:
    before = operation(house, key)
    form = client.get(f"/plan/products/rail/operations/{key}").text

    answer = client.post(f"/plan/products/rail/operations/{key}", data=as_a_browser_posts(form))

    assert answer.status_code == 303
    assert operation(house, key) == before


def test_an_operation_takes_all_that_it_can_ask(client: FlaskClient, house: House) -> None:
    form = as_a_browser_posts(client.get("/plan/products/rail/operations/engrave").text)
    form |= {
        "checklist": ["air on\r\nfocus set"],
        "cautions": ["Stay with it."],
        "skill": ["laser"],
        "good_rate": ["95"],
        "passes.0.machine_minutes": ["1h30"],
        "setup_sheet.0.label": ["Power"],
        "setup_sheet.0.text": ["60 %"],
        "checks.1.text": ["Width"],
        "checks.1.per": ["run"],
        "checks.1.nominal": ["5 1/2 in"],
        "checks.1.plus": ["0.1 mm"],
        "uses.0.supply": ["tape"],
        "uses.0.each": ["0,5"],
        "uses.0.unit": ["m"],
        "wait.why": ["cool"],
        "wait.least_minutes": ["2 h"],
    }

    answer = client.post("/plan/products/rail/operations/engrave", data=form)

    found = operation(house, "engrave")
    assert answer.status_code == 303
    assert found["checklist"] == ["air on", "focus set"]
    assert found["passes"][0]["machine_minutes"] == 90
    assert found["setup_sheet"] == [["Power", "60 %"]]
    assert found["checks"][1] == {
        "key": "width",
        "text": "Width",
        "per": "run",
        "nominal": 139.7,
        "plus": 0.1,
        "minus": None,
    }
    assert found["uses"] == [{"supply": "tape", "each": 0.5, "unit": "m"}]
    assert (found["good_rate"], found["skill"], found["cautions"]) == (0.95, "laser", ["Stay with it."])
    assert found["wait"] == {"why": "cool", "least_minutes": 120, "latest_minutes": None, "holds": {}}


def test_what_is_wrong_in_an_operation_stands_at_its_field(client: FlaskClient, house: House) -> None:
    form = as_a_browser_posts(client.get("/plan/products/rail/operations/cut").text)
    form |= {"attendance": ["none"], "passes.0.machine_minutes": ["long"], "good_rate": ["300"]}

    answer = client.post("/plan/products/rail/operations/cut", data=form)

    assert answer.status_code == 422
    assert 'id="attendance-error"' in answer.text
    assert "asks for at least 'watched'" in words(answer)
    assert 'id="passes.0.machine_minutes-error"' in answer.text
    assert "Enter a number from 1 to 100." in answer.text
    assert inputs(answer)["passes.0.machine_minutes"] == "long"
    assert operation(house, "cut")["passes"][0]["machine_minutes"] == 38


def test_a_length_in_inches_and_one_that_no_inch_says_both_stay_exact(client: FlaskClient, house: House) -> None:
    record = scenario.shop() | {"units": "in"}
    record["products"][0]["operations"][0]["checks"] = [
        {"key": "a", "text": "A", "nominal": 139.7, "plus": 0.05, "minus": 0.123456}
    ]
    house.workshop.books.save(record, START)
    answer = client.get("/plan/products/rail/operations/cut")

    client.post("/plan/products/rail/operations/cut", data=as_a_browser_posts(answer.text))

    assert inputs(answer)["checks.0.nominal"] == "5 1/2 in"
    check = operation(house, "cut")["checks"][0]
    assert (check["nominal"], check["plus"], check["minus"]) == (139.7, 0.05, 0.123456)


def test_operations_move_come_and_go(client: FlaskClient, house: House) -> None:
    client.post("/plan/products/rail/route", data={"seen": "1", "earlier": "sand"})
    client.post("/plan/products/rail/route", data={"seen": "2", "text": "drill 10, sand 5", "after": "cut"})
    client.post("/plan/products/rail/route", data={"seen": "3", "remove": "clean"})

    keys = [one["key"] for one in product(house)["operations"]]
    assert keys == ["cut", "drill", "sand-2", "sand", "engrave", "oil", "hooks"]


def test_a_changed_product_says_that_open_runs_keep_their_route_with_the_way_there(client: FlaskClient) -> None:
    open_one(client)
    assert "keeps the route" not in words(client.get("/plan/products/rail"))

    answer = client.post("/plan/products/rail/route", data={"seen": "1", "text": "drill 10", "after": "cut"})

    page = client.get(answer.headers["Location"])
    assert "is open and keeps its own route" in words(page)
    assert 'href="/plan/runs/r1/route"' in page.text


def test_a_step_that_cannot_be_read_is_said_and_kept(client: FlaskClient) -> None:
    answer = client.post("/plan/products/rail/route", data={"seen": "1", "text": "40", "after": "cut"})

    assert answer.status_code == 422
    assert "says no work" in words(answer)
    assert inputs(answer)["text"] == "40"


def test_two_people_at_one_operation_the_second_is_told(client: FlaskClient, house: House) -> None:
    form = as_a_browser_posts(client.get("/plan/products/rail/operations/clean").text)
    client.post("/plan/products/rail/operations/clean", data=form | {"name": ["Tidy edges"]})

    late = client.post("/plan/products/rail/operations/clean", data=form | {"name": ["Deburr"]})
    again = client.post("/plan/products/rail/operations/clean", data=as_a_browser_posts(late.text))

    assert late.status_code == 422
    assert "Someone else saved this meanwhile" in words(late)
    assert inputs(late)["name"] == "Deburr"
    assert again.status_code == 303
    assert operation(house, "clean")["name"] == "Deburr"


# opening a run


def test_the_outlook_says_in_plain_words_what_a_run_takes(client: FlaskClient) -> None:
    data = {"product": "rail", "certainty": "0.9", "pieces_a_tray": "5", **an_order()}

    answer = client.post("/plan/runs/preview", data=data, headers={"HX-Request": "true"})

    text = words(answer)
    assert "Start 15: 12 wanted, 3 extra" in text
    assert "of 100 turn out good (a guess)" in text
    assert "3 trays, 1 board" in text
    assert "hands-on" in text
    assert "Uses up: 60 hooks" in text
    assert "<html" not in answer.text


def test_a_run_opens_with_its_orders_due_in_the_shops_time(client: FlaskClient, house: House) -> None:
    first = an_order(0, **{"for": "Miller", "text": "12", "date": "2026-03-29", "time": "17:00"})

    open_one(client, **first, **an_order(1, pieces="3", date="2026-03-12"), paste="7, Bauer, 2\n9\n")

    orders = run(house).orders
    assert [(one.line, one.pieces, one.whom, one.text) for one in orders] == [
        ("1", 12, "Miller", "12"),
        ("2", 3, "", ""),
        ("3", 2, "Bauer", "7"),
        ("4", 1, "", "9"),
    ]
    assert str(orders[0].due) == "2026-03-29 15:00:00+00:00"  # the day of the clock change: summer time
    assert str(orders[1].due) == "2026-03-12 22:59:00+00:00"


def test_the_same_form_sent_twice_opens_one_run(client: FlaskClient, house: House) -> None:
    once = inputs(client.get("/plan/runs/new"))["once"]

    open_one(client, once=once)
    open_one(client, once=once)
    open_one(client)

    assert list(house.workshop.ledger.state.runs) == ["r1", "r2"]


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"orders.0.pieces": "many"}, "Enter a whole number of pieces"),
        ({"orders.0.pieces": "0"}, "Enter a whole number of pieces"),
        ({"orders.0.date": "soon"}, "Enter a date"),
        ({"orders.0.time": "17:00"}, "Enter the day too."),
        ({"paste": "a, b, c, d"}, "Line 1, 'a, b, c, d'"),
        ({"pieces_a_tray": "-1"}, "Enter a whole number of pieces"),
        ({"begun.0.trays": "first"}, "Enter trays like 1-3"),
        ({"pieces_a_tray": "1", "orders.0.pieces": "9000"}, "400 at most"),
    ],
)
def test_what_is_wrong_opens_no_run(client: FlaskClient, house: House, typed: dict[str, str], said: str) -> None:
    answer = client.post("/plan/runs/new", data={"product": "rail", **an_order(), **typed})

    assert answer.status_code == 422
    assert said in words(answer)
    for name, value in typed.items():
        assert value in (inputs(answer).get(name), answer.text.partition('id="paste"')[2].split("\n")[1].split("<")[0])
    assert not house.workshop.ledger.state.runs


def test_a_run_without_an_order_is_asked_for_one(client: FlaskClient) -> None:
    answer = client.post("/plan/runs/new", data={"product": "rail"})

    assert "No pieces are wanted yet" in words(answer)


def test_trays_may_begin_half_way(client: FlaskClient, house: House) -> None:
    open_one(client, **{"begun.0.trays": "1-2", "begun.0.at": "engrave", "start": "15"})

    assert [dict(tray.at) for tray in run(house).trays.values()] == [{"engrave": 5}, {"engrave": 5}, {"cut": 5}]


def test_a_run_is_copied_with_its_orders_but_not_their_due_moments(client: FlaskClient, house: House) -> None:
    open_one(client, **an_order(0, **{"for": "Miller", "date": "2026-03-29"}))
    form = as_a_browser_posts(client.get("/plan/runs/new?copy=r1").text)

    client.post("/plan/runs/new", data=form)

    copy = run(house, "r2").orders[0]
    assert (copy.whom, copy.pieces, copy.due) == ("Miller", 12, None)


# a run on its way


def test_orders_change_as_an_event_and_not_from_an_outdated_form(client: FlaskClient, house: House) -> None:
    open_one(client)
    form = as_a_browser_posts(client.get("/plan/runs/r1").text)

    client.post("/plan/runs/r1/orders", data=form | {"orders.0.pieces": ["10"]})
    late = client.post("/plan/runs/r1/orders", data=form | {"orders.0.pieces": ["11"]})

    assert run(house).orders[0].pieces == 10
    assert late.status_code == 422
    assert inputs(late)["orders.0.pieces"] == "11"


def test_the_route_changes_on_the_way_from_a_tray_on(client: FlaskClient, house: House) -> None:
    open_one(client)
    form = as_a_browser_posts(client.get("/plan/runs/r1/operations/hooks").text)

    answer = client.post("/plan/runs/r1/operations/hooks", data=form | {"name": ["Screw hooks"], "from_tray": ["2"]})

    assert (answer.status_code, answer.headers["Location"]) == (303, "/plan/runs/r1/route")
    trays = run(house).trays
    assert [run(house).route_of(tray).steps[-1].name for tray in trays.values()] == [
        "Hooks",
        "Screw hooks",
        "Screw hooks",
    ]
    assert product(house)["operations"][-1]["name"] == "Hooks"


def test_a_change_that_would_strand_pieces_is_refused_with_its_sentence(client: FlaskClient, house: House) -> None:
    open_one(client)

    answer = client.post("/plan/runs/r1/route", data={"seen": "1", "remove": "cut", "from_tray": "1"})

    assert answer.status_code == 422
    assert "the new route leaves out" in words(answer)
    assert len(run(house).revisions) == 1


def test_what_is_wrong_in_a_runs_operation_stands_at_its_field(client: FlaskClient, house: House) -> None:
    open_one(client)
    form = as_a_browser_posts(client.get("/plan/runs/r1/operations/sand").text)

    answer = client.post("/plan/runs/r1/operations/sand", data=form | {"passes.1.hand_minutes": ["long"]})

    assert answer.status_code == 422
    assert 'id="passes.1.hand_minutes-error"' in answer.text
    assert len(run(house).revisions) == 1


def test_a_route_changed_from_an_outdated_form_is_told_so(client: FlaskClient, house: House) -> None:
    open_one(client)
    form = as_a_browser_posts(client.get("/plan/runs/r1/operations/hooks").text)
    client.post("/plan/runs/r1/route", data={"seen": "1", "text": "wrap 5", "from_tray": "1"})

    late = client.post("/plan/runs/r1/operations/hooks", data=form | {"name": ["Screw hooks"]})

    assert "Someone else saved this meanwhile" in words(late)
    assert inputs(late)["name"] == "Screw hooks"
    assert len(run(house).revisions) == 2


def test_a_board_is_added_and_another_is_lost(client: FlaskClient, house: House) -> None:
    open_one(client)

    client.post("/plan/runs/r1/boards")
    client.post("/plan/runs/r1/boards", data={"lost": "cut/1", "why": "split"})

    assert [tray.started for tray in run(house).trays.values()] == [5] * 6
    assert sum(tray.scrapped for tray in run(house).trays.values()) == 15
    assert "split" in str(run(house).trays["1"].scrap)


@pytest.mark.parametrize(("how", "state"), [("finished", "finished"), ("abandoned", "abandoned")])
def test_a_run_ends_once(client: FlaskClient, house: House, how: str, state: str) -> None:
    open_one(client)

    client.post("/plan/runs/r1/end", data={"how": how, "note": "enough"})
    twice = client.post("/plan/runs/r1/end", data={"how": how})

    assert run(house).state == state
    assert twice.status_code == 422
    assert f"is {state}." in words(twice)
    assert state in words(client.get("/plan"))


def test_a_run_is_saved_as_a_file_with_its_events(client: FlaskClient) -> None:
    open_one(client)

    answer = client.get("/plan/runs/r1/run.json")

    assert answer.json is not None
    assert [one["kind"] for one in answer.json["events"]] == ["run opened"]


@pytest.mark.parametrize(
    "path",
    [
        "/plan/products/nothing",
        "/plan/runs/r9",
        "/plan/runs/new?product=nothing",
        "/plan/products/rail/operations/nothing",
        "/plan/runs/r9/operations/cut",
        "/plan/runs/new?copy=r9",
    ],
)
def test_what_nobody_knows_is_not_found(client: FlaskClient, path: str) -> None:
    assert client.get(path).status_code == 404


def test_a_form_may_name_a_field_twice_or_send_nothing(client: FlaskClient) -> None:
    odd = MultiDict([("product", "rail"), ("orders.0.pieces", "3"), ("orders.0.pieces", "4"), ("orders.x.pieces", "1")])

    assert client.post("/plan/runs/preview", data=odd).status_code == 200
    assert client.post("/plan/products/rail/operations/cut", data={}).status_code == 422


def test_the_route_asks_which_finish_it_is_and_names_a_wait_that_its_label_makes_longer(
    client: FlaskClient, house: House
) -> None:
    for page in ("/plan/products/rail", "/plan/runs/new?product=rail"):
        assert "Oil: which finish?" in client.get(page).text
    record = book_record(house.workshop)
    record["finishes"] = [{"key": "oil", "name": "Danish oil", "handle_minutes": 4320}]
    next(one for one in record["products"][0]["operations"] if one["key"] == "oil")["finish"] = "oil"
    house.workshop.books.save(record, START)

    for page in ("/plan/products/rail", "/plan/runs/new?product=rail"):
        said = client.get(page).text.replace("\u00a0", " ")
        assert "which finish?" not in said
        assert "Oil: the route waits 12 h, the finish’s label says 3 days. It waits 3 days." in said


def test_a_machine_time_keeps_the_program_it_is_from_until_somebody_types_another(
    client: FlaskClient, house: House
) -> None:
    record = scenario.shop()
    said = {"what": "program", "name": "rail.ngc", "digest": "a" * 64, "seconds": 2237.0, "day": "2026-05-01"}
    said |= {"reach_x": 300, "reach_y": None, "reach_z": None}
    record["products"][0]["operations"][0]["passes"][0] |= {"machine_minutes": 2237 / 60, "reckoned": said}
    house.workshop.books.save(record, START)
    form = as_a_browser_posts(client.get("/plan/products/rail/operations/cut").text)

    client.post("/plan/products/rail/operations/cut", data=form | {"name": ["Rout"]})
    kept = operation(house, "cut")["passes"][0]["reckoned"]
    form = as_a_browser_posts(client.get("/plan/products/rail/operations/cut").text)
    client.post("/plan/products/rail/operations/cut", data=form | {"passes.0.machine_minutes": ["40"]})

    assert kept == said
    assert operation(house, "cut")["passes"][0]["reckoned"] is None
