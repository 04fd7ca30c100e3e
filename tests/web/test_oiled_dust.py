"""The caution about dust of oiled wood: Now, the card and the helper's page say it beside the same steps."""

from dataclasses import replace

import pytest

from runboard.cards.of_a_run import jig_label, traveller
from runboard.floor.letting_in.helper import TrayWork
from runboard.run.fold.record import step_record
from runboard.run.fold.state import ShopState
from runboard.shop.book import STATION_KINDS, Book
from runboard.shop.product import Operation, Pass
from runboard.web.helper.record import helper_record
from tests.cards.making import link, rails_book, run_of, speech

DUST = "Dust of oiled wood can heat by itself"
# What a machine does that is of no known kind, nobody said.
MAKES_DUST = {"cnc", "hand cutter", "sander", "other machine"}


def said_by(kind: str, name: str = "Again", after_oil: bool = True) -> dict[str, bool]:
    """Who warns of oily dust beside an operation at that kind of station."""
    return _said(_ends_at(kind, name, after_oil=after_oil))


def _ends_at(kind: str, name: str = "Again", *, after_oil: bool = True) -> Book:
    """The small shop, whose route ends with an operation at that kind of station."""
    book = rails_book()
    product = book.products[0]
    asked = Operation("again", name, "machine", (Pass("all", "all"),), setup_sheet=(("grit", "240"),))
    oil = next(at for at, one in enumerate(product.operations) if one.key == "oil")
    kept = product.operations[: oil + 1] if after_oil else product.operations[:oil]
    product = replace(product, operations=(*kept, asked))
    machine = replace(book.stations[0], key="machine", name="Machine", kind=kind)
    return replace(book, stations=(*book.stations, machine), products=(product,))


def _said(book: Book) -> dict[str, bool]:
    run = run_of(book.products[0])
    tray, step = run.trays["1"], run.route.steps[-1]
    card = traveller(book, run, tray, link, speech(book)).works[-1]
    talk = replace(speech(book), family="helper")
    page = helper_record(talk, ShopState(), book, TrayWork(run, tray, step), "mia", lambda _: None)
    texts = {
        "card": [one.text for one in card.care],
        "jig": [one.text for one in jig_label(book, run, step.operation, speech(book)).care],
        "helper": [one["text"] for one in page["step"]["cautions"]],
    }
    now = {one["key"] for one in step_record(book, run.route, step).get("care", ())}
    return {"now": "oiled-dust" in now, **{who: any(DUST in text for text in said) for who, said in texts.items()}}


@pytest.mark.parametrize("kind", sorted(STATION_KINDS))
def test_all_warn_of_oily_dust_where_a_station_makes_dust_of_wood_that_had_a_finish(kind: str) -> None:
    assert set(said_by(kind).values()) == {kind in MAKES_DUST}
    assert set(said_by(kind, after_oil=False).values()) == {False}


@pytest.mark.parametrize("name", ["Sand by hand", "De-nib", "Zwischenschliff", "Lijar a mano", "Ponçage", "Égrener"])
def test_all_warn_of_oily_dust_where_it_is_sanded_by_hand(name: str) -> None:
    assert set(said_by("bench", name).values()) == {True}
    assert set(said_by("bench", name, after_oil=False).values()) == {False}


def test_after_sanding_oiled_wood_the_helper_is_told_to_empty_the_bag() -> None:
    book = _ends_at("sander")
    run = run_of(book.products[0])
    talk = replace(speech(book), family="helper")

    page = helper_record(talk, ShopState(), book, TrayWork(run, run.trays["1"]), "mia", lambda _: None)

    assert [one["text"] for one in page["notices"]][1:] == [talk.care("dust-bag")]
