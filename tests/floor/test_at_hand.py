"""The shop as a page looks at it: names, who a page is for, and what many ask for at once, made once."""

import threading

from runboard.floor.changing.products import add_product, copy_product, remove_product, runs_by_another_route
from runboard.floor.changing.route_change import move_earlier
from runboard.floor.changing.runs import Wish, add_board, losable_boards, lose_board, open_run, open_run_once
from runboard.floor.changing.shop_book import book_record, save_book
from runboard.floor.looking.at_hand import book_now, first_person, made_once, names_now, run_now, runs_now
from runboard.floor.workshop import Workshop
from tests.floor.fakes import workshop
from tests.scenario import shop

WISH = Wish("rail", [{"line": "1", "pieces": 12}])


def here() -> Workshop:
    return workshop(shop())


def test_what_still_stands_is_made_once_for_all_who_ask() -> None:
    made, shopfloor = list[str](), here()

    def make() -> str:
        made.append("made")
        return f"page {len(made)}"

    together = [
        threading.Thread(target=made_once, args=(shopfloor, "when", "ann", "as it stands", make)) for _ in range(4)
    ]
    for one in together:
        one.start()
    for one in together:
        one.join()

    assert made == ["made"]
    assert made_once(shopfloor, "when", "ann", "as it stands", make) == "page 1"
    assert made_once(shopfloor, "when", "ann", "otherwise", make) == "page 2"
    assert made_once(shopfloor, "when", "ben", "otherwise", make) == "page 3"


def test_a_page_is_for_who_asks_else_for_the_first_lead() -> None:
    shopfloor = here()
    leads = [one.key for one in book_now(shopfloor).people if one.access == "lead"]

    assert first_person(shopfloor, "ben") == "ben"
    assert first_person(shopfloor, "nobody known") == leads[0]


def test_whom_no_book_knows_is_somebody() -> None:
    names = names_now(here())

    assert (names.person("ann"), names.person("gone"), names.person("")) == (names.book.people[0].name, "somebody", "")
    assert (names.station("bench"), names.station("sold")) == ("Bench", "sold")


def test_a_form_that_comes_twice_opens_one_run() -> None:
    shopfloor = here()

    first = open_run_once(shopfloor, WISH, "once", "ann")

    assert open_run_once(shopfloor, WISH, "once", "ann") == first
    assert open_run_once(shopfloor, WISH, "another", "ann") != first
    assert [one.id for one in runs_now(shopfloor)] == ["r1", "r2"]


def test_a_board_more_stands_behind_the_last_and_may_be_lost() -> None:
    shopfloor = here()
    run = open_run(shopfloor, WISH, "ann")

    add_board(shopfloor, run, "ann")
    before = run_now(shopfloor, run)
    assert before is not None
    lose_board(shopfloor, run, losable_boards(before)[-1], "knots", "ann")
    after = run_now(shopfloor, run)

    assert after is not None
    assert len(before.boards) == 2
    assert losable_boards(after) == losable_boards(before)[:-1]


def test_a_product_is_copied_under_a_name_of_its_own_and_taken_out_again() -> None:
    shopfloor = here()
    stool = add_product(shopfloor, "Stool", "cut 10, sand 5", 4)

    copies = [copy_product(shopfloor, stool), copy_product(shopfloor, stool)]
    names = [product.name for key in copies if (product := book_now(shopfloor).product(key))]
    remove_product(shopfloor, stool)

    assert names == ["Stool, copy", "Stool, copy 2"]
    assert book_now(shopfloor).product(stool) is None


def test_a_run_whose_product_has_another_route_now_is_named() -> None:
    shopfloor = here()
    run = open_run(shopfloor, WISH, "ann")
    product = book_now(shopfloor).product("rail")
    assert product is not None
    before = runs_by_another_route(shopfloor, product)
    record = book_record(shopfloor)
    move_earlier(record["products"][0], record["products"][0]["operations"][-1]["key"])
    changed = save_book(shopfloor, record).products[0]

    assert before == []
    assert [one.id for one in runs_by_another_route(shopfloor, changed)] == [run]
