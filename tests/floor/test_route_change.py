"""A route changed: operations in the book, and a run on its way from a tray on."""

import pytest

from runboard.floor.changing.route_change import (
    Record,
    add_steps,
    copy_of,
    first_untouched,
    move_earlier,
    product_from_text,
    put_operation,
    remove_operation,
    revise_route,
    run_product,
)
from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError, book_from_json
from runboard.shop.problem import Unreadable
from tests.floor.fakes import workshop
from tests.scenario import key_rails, shop

BOOK = book_from_json(shop())


def keys(product: Record) -> list[str]:
    return [one["key"] for one in product["operations"]]


def on_its_way() -> tuple[Workshop, str]:
    """A run of three trays whose first has been cut."""
    here = workshop(shop())
    run = open_run(here, Wish("rail", [{"line": "1", "pieces": 12}]))
    press = new_event(here, "pieces counted", {"good": 5}, run=run, tray="1", operation="cut", person="ann")
    record_events(here, [press])
    return here, run


def state(here: Workshop, run: str) -> RunState:
    return here.ledger.state.runs[run]


def test_a_line_of_text_is_a_product_with_a_key_of_its_own() -> None:
    product = product_from_text(BOOK, " Rail ", "cut 40, sand 25")

    assert (product.key, product.name, len(product.operations)) == ("rail-2", "Rail", 2)


def test_steps_come_behind_the_one_named_and_take_no_key_twice() -> None:
    product = key_rails()

    add_steps(product, BOOK, "sand 5, drill 10", after="clean")
    add_steps(product, BOOK, "wrap 5")

    assert keys(product) == ["cut", "clean", "sand-2", "drill", "sand", "engrave", "oil", "hooks", "wrap"]


def test_a_line_that_says_no_step_is_refused() -> None:
    with pytest.raises(Unreadable):
        add_steps(key_rails(), BOOK, "  ,")


def test_an_operation_changes_places_with_the_one_before_it() -> None:
    product = key_rails()

    move_earlier(product, "sand")
    move_earlier(product, "cut")

    assert keys(product)[:3] == ["cut", "sand", "clean"]


def test_the_last_operation_stays() -> None:
    product = key_rails()
    for key in keys(product)[1:]:
        remove_operation(product, key)

    with pytest.raises(Refused, match="last operation"):
        remove_operation(product, "cut")


@pytest.mark.parametrize("change", [move_earlier, remove_operation])
def test_an_operation_that_is_not_there_is_refused(change: object) -> None:
    assert callable(change)
    with pytest.raises(Refused, match="operation unknown"):
        change(key_rails(), "polish")


def test_a_new_pass_gets_a_key_from_its_name() -> None:
    product = key_rails()
    passes = [{"key": "120", "name": "120"}, {"key": "", "name": "120"}, {"key": "", "name": "Side A"}]

    put_operation(product, "sand", {"name": "Sand", "passes": passes, "checks": []})

    assert [one["key"] for one in product["operations"][2]["passes"]] == ["120", "120-2", "side-a"]


def test_a_copy_shares_nothing_with_its_pattern() -> None:
    pattern = key_rails()

    copy = copy_of(pattern, "Peg rails", {"rail"})
    copy["operations"].clear()

    assert (copy["key"], len(pattern["operations"])) == ("peg-rails", 6)


def test_a_run_on_its_way_takes_the_change_from_a_tray_on() -> None:
    here, run = on_its_way()

    revise_route(here, run, lambda product: add_steps(product, here.book, "wrap 5"), "2", "gifts", "ann")

    found = state(here, run)
    assert [found.route_of(tray).steps[-1].key for tray in found.trays.values()] == ["hooks", "wrap", "wrap"]
    assert here.book.product("rail") == BOOK.product("rail")
    last = here.log.events()[-1]
    assert (last.kind, last.person, last.get("why"), last.get("from_tray")) == ("route revised", "ann", "gifts", "2")


def test_what_would_strand_pieces_is_refused_and_stores_nothing() -> None:
    here, run = on_its_way()

    with pytest.raises(Refused, match="would strand"):
        revise_route(here, run, lambda product: remove_operation(product, "clean"), "1")

    assert len(state(here, run).revisions) == 1


def test_a_step_that_no_tray_from_there_on_is_at_may_go() -> None:
    here, run = on_its_way()

    revise_route(here, run, lambda product: remove_operation(product, "clean"), "2")

    assert "clean" not in keys(run_product(here, run))


def test_a_wrong_route_stores_nothing() -> None:
    here, run = on_its_way()

    with pytest.raises(BookError):
        revise_route(here, run, lambda product: product["operations"][0].update(station="nowhere"), "1")

    assert len(here.log.events()) == 2


def test_a_closed_run_keeps_its_route() -> None:
    here, run = on_its_way()
    record_events(here, [new_event(here, "run finished", {}, run=run)])

    with pytest.raises(Refused, match="run closed"):
        revise_route(here, run, lambda product: move_earlier(product, "sand"), "1")


def test_the_first_tray_that_nobody_began_is_offered() -> None:
    here, run = on_its_way()

    assert first_untouched(state(here, run)) == "2"
