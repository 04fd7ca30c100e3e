"""Orders of cards for tests: the small shop's run, and one with the longest texts that the forms take."""

from datetime import UTC, datetime, timedelta
from typing import Any

from runboard.cards.model import Card, CardOrder, Link
from runboard.cards.of_a_run import jig_labels, page_words, run_sheet, shelf_labels, traveller
from runboard.cards.of_a_station import station_sheets
from runboard.cards.slips import lines_to_pack, packing_slip
from runboard.run.fold.route import Route
from runboard.run.fold.state import OrderLine, Rest, Revision, RunState, Tray
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json
from runboard.shop.product import Product
from runboard.words.facts import zone_of
from runboard.words.sentences import catalogue
from runboard.words.speech import Speech
from tests import scenario

NOW = datetime(2026, 3, 4, 15, 0, tzinfo=UTC)
PAPERS = ("a6", "4x6", "a4", "letter")
LANGUAGES = ("en", "de", "es", "fr")


class Strict(Speech):
    """The catalogue's sentences; a message or a fact that is missing fails."""

    def say(self, name: str, /, **facts: Any) -> str:
        bundle = catalogue(self.locale)
        text, wrong = bundle.format_pattern(bundle.get_message(name).value, facts)
        assert not wrong, (name, wrong)
        return str(text)


def speech(book: Book, language: str = "en", now: datetime = NOW) -> Speech:
    """How a card speaks."""
    return Strict("card", language, zone_of(book.time_zone), book.units, now)


def link(run: str, tray: str) -> Link:
    return Link(f"http://192.168.178.120:8210/t/x4Kd9fQ2mL{run}{tray:0>4}", "K7QM-2XTD")


def rails_book(**more: Any) -> Book:
    """The small shop's book; ``more`` are changes to operations, by key."""
    record = scenario.shop() | {"finishes": [{"key": "oil", "name": "Oil"}]}
    for one in record["products"][0]["operations"]:
        one.update(more.get(one["key"], {}))
    return book_from_json(record)


def run_of(product: Product, trays: int = 3, pieces: int = 5, **more: Any) -> RunState:
    """An open run, nothing begun."""
    first = Route(product).steps[0].key
    made = {str(at): Tray(str(at), pieces, at={first: pieces}) for at in range(1, trays + 1)}
    asked = {
        "id": "r7",
        "name": "Key rails, run 7",
        "state": "open",
        "opened_at": NOW - timedelta(days=2),
        "product": product.key,
        "product_name": product.name,
        "revisions": (Revision(1, "1", Route(product)),),
        "orders": (OrderLine("1", 9, "Meyer", "12", NOW + timedelta(days=1, hours=1)), OrderLine("2", 4, "Ito", "7a")),
        "wood": product.wood,
        "trays": made,
    }
    return RunState(**{**asked, **more})


def order(book: Book, run: RunState, paper: str = "a6", language: str = "en", kinds: str = "travellers") -> CardOrder:
    """An order of a run's cards: ``travellers``, ``full`` ones, or ``everything``."""
    said = speech(book, language)
    cards: tuple[Card, ...] = tuple(
        traveller(book, run, tray, link, said, full=kinds == "full") for tray in run.trays.values()
    )
    if kinds == "everything":
        labels: tuple[Card, ...] = (*jig_labels(book, run, said), *shelf_labels(book, run, link, said))
        slips = (packing_slip(book, run, line, said) for line in lines_to_pack(run, every=True))
        full = (traveller(book, run, tray, link, said, full=True) for tray in run.trays.values())
        cards = (*cards, *full, *station_sheets(book, run, said), *labels, run_sheet(book, run, link, said), *slips)
    return CardOrder(cards, paper, page_words(said), language, run.name)


def resting(tray: Tray, step: str, began: datetime, least: timedelta, latest: timedelta | None = None) -> Tray:
    """A tray in the wait after a step."""
    rest = Rest("dry", began, began + least, began + latest if latest else None)
    return Tray(**{**vars(tray), "rests": {step: rest}})
