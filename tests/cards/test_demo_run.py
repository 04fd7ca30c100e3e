"""The demo's run of twelve trays: one card a tray and a sheet a station, in four languages and on four papers."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from pypdf import PdfReader

from runboard.cards.face import Face
from runboard.cards.layout import faces, sheets
from runboard.cards.model import Card, CardOrder, StationSheet, Traveller
from runboard.cards.papers import PAPERS
from runboard.demo.make import make_demo
from runboard.floor.letting_in.print_cards import full_trays
from runboard.floor.letting_in.travellers import read_keys
from runboard.floor.warm import catch_up
from runboard.opening import open_workshop
from runboard.web.trays.card_orders import Sources, Wanted, card_order
from tests.cards.making import LANGUAGES
from tests.cards.printing import printed

TRAYS = 12
_ORDERS: dict[tuple[str, str, bool], CardOrder] = {}


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    data = tmp_path_factory.mktemp("demo") / "data"
    data.mkdir()
    make_demo(data)
    return data


def order(shop: Path, paper: str, language: str, full: bool = False) -> CardOrder:
    """What is printed where nothing else is asked for; of the trays as if nothing were done yet, which is most."""
    if (paper, language, full) not in _ORDERS:
        store, workshop = open_workshop(shop)
        with workshop.lock:
            catch_up(workshop)
            run = workshop.ledger.state.runs["r5"]
        sources = Sources("http://192.168.178.120:8210/", read_keys(store.settings), lambda name: None)
        wanted = Wanted(full_trays(run), paper=paper, language=language, full=full)
        _ORDERS[paper, language, full] = card_order(workshop, run, wanted, {}, sources)
        store.close()
    return _ORDERS[paper, language, full]


def sides(order: CardOrder, kind: type[Card]) -> Iterator[tuple[Face, ...]]:
    """The sides of each card of a kind."""
    yield from (faces(card, PAPERS[order.paper], order.words) for card in order.cards if isinstance(card, kind))


def travellers(order: CardOrder) -> list[Traveller]:
    return [card for card in order.cards if isinstance(card, Traveller)]


@pytest.mark.parametrize("paper", list(PAPERS))
@pytest.mark.parametrize("language", LANGUAGES)
def test_twelve_trays_take_24_sides_and_8_station_sheets_at_most(shop: Path, paper: str, language: str) -> None:
    asked = order(shop, paper, language)

    trays, stations = list(sides(asked, Traveller)), list(sides(asked, StationSheet))

    assert len(trays) == TRAYS
    assert sum(map(len, trays)) <= 24
    assert all(len(one) <= 2 for one in (*trays, *stations))
    assert len(stations) <= 8


@pytest.mark.parametrize("paper", list(PAPERS))
@pytest.mark.parametrize("language", LANGUAGES)
def test_no_tray_of_it_has_to_leave_its_cautions_to_the_stations_sheet(shop: Path, paper: str, language: str) -> None:
    asked = order(shop, paper, language)
    wanted = [{sign.text for work in card.works if not work.done for sign in work.signs} for card in travellers(asked)]

    for words, found in zip(wanted, sides(asked, Traveller), strict=True):
        rows = [row for face in found for row in face.rows if row.kind in ("signs", "unsigned")]
        said = {str(item["words"]).removeprefix("· ") for row in rows for item in row.facts["signed"]}

        assert words <= said


def test_full_cards_are_as_many_as_they_were(shop: Path) -> None:
    assert sum(map(len, sides(order(shop, "a6", "en", full=True), Traveller))) > 40


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_type_in_the_pdf_is_smaller_than_8_and_a_half_points(shop: Path, language: str, tmp_path: Path) -> None:
    asked = order(shop, "a6", language)
    sizes: dict[float, str] = {}

    def seen(text: str, cm: list[float], _tm: object, _font: object, size: float) -> None:
        if text.strip():
            sizes.setdefault(round(size * cm[0], 1), text.strip()[:20])

    for page in PdfReader(printed(asked, tmp_path)).pages:
        page.extract_text(visitor_text=seen)

    assert min(sizes) >= 8.5, sizes
    assert max(sizes) == 66


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_number_to_call_stands_on_one_line_with_its_word(shop: Path, language: str) -> None:
    for sheet in sheets(order(shop, "a6", language)):
        for face in sheet.faces:
            (line,) = [line for line in face.foot.danger if "112" in line]
            assert "\u00a0112" in line
