"""Cards ordered: what somebody wants printed, made from the state and the book as they are now."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from runboard.cards.model import Card, CardOrder, Link, Shown, StationSheet, Traveller
from runboard.cards.of_a_run import jig_labels, page_words, run_sheet, shelf_labels, traveller
from runboard.cards.of_a_station import station_sheets
from runboard.cards.slips import lines_to_pack, packing_slip
from runboard.floor.letting_in.travellers import Keys, traveller_link
from runboard.floor.workshop import Workshop
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.words.facts import zone_of
from runboard.words.speech import Speech

SLIPS = "slips"
USUAL = ("travellers", "stations")
KINDS = (*USUAL, "jigs", "shelves", "sheet", SLIPS)


@dataclass(frozen=True)
class Wanted:
    """What is to be printed of a run: which kinds of card, for which trays, on what paper, in which language. ``lines`` are the
    order lines that get a packing slip; none: those of which something can be handed over, or ``every`` one that is not
    collected. ``full``: travellers with all that else stands on the stations' sheets."""

    trays: tuple[str, ...]
    kinds: tuple[str, ...] = USUAL
    paper: str = "a6"
    language: str = "en"
    lines: tuple[str, ...] = ()
    every: bool = False
    full: bool = False

    @property
    def are_all_slips(self) -> bool:
        """Whether nothing but packing slips is printed, as it may be once the run is over."""
        return self.kinds == (SLIPS,)


@dataclass(frozen=True)
class Sources:
    """What cards need besides: the server's plain ``address`` for codes, the ``keys`` of the travellers, and where a
    picture is found: its file or its address, or None where it is lost."""

    address: str
    keys: Keys
    picture: Callable[[str], str | None]


def card_order(
    workshop: Workshop, run: RunState, wanted: Wanted, prints: Mapping[str, int], sources: Sources
) -> CardOrder:
    """The order. ``prints`` says which print of its traveller each tray gets. Refused 'no cards' where it has none."""
    speech = _speech(workshop, wanted.language)
    cards = tuple(_cards(workshop, run, wanted, prints, sources, speech))
    if not cards:
        raise Refused("no cards")
    pictures = {name: sources.picture(name) for card in cards for name in _pictures(card)}
    found = {name: place for name, place in pictures.items() if place is not None}
    return CardOrder(
        cards=tuple(_without_lost_picture(card, found) for card in cards),
        paper=wanted.paper,
        words=dict(page_words(speech)),
        language=wanted.language,
        title=run.name,
        pictures=found,
    )


def _cards(
    workshop: Workshop, run: RunState, wanted: Wanted, prints: Mapping[str, int], sources: Sources, speech: Speech
) -> Iterator[Card]:
    book = workshop.book

    def link(run_key: str, tray: str) -> Link:
        found = traveller_link(sources.keys, run_key, tray)
        return Link(sources.address.rstrip("/") + found.path, found.code)

    if "sheet" in wanted.kinds:
        yield run_sheet(book, run, link, speech)
    if "travellers" in wanted.kinds:
        for tray in wanted.trays:
            yield traveller(book, run, run.trays[tray], link, speech, prints.get(tray, 0), wanted.full)
    if "stations" in wanted.kinds:
        yield from station_sheets(book, run, speech)
    if "jigs" in wanted.kinds:
        yield from jig_labels(book, run, speech)
    if "shelves" in wanted.kinds:
        yield from (label for label in shelf_labels(book, run, link, speech) if label.tray in wanted.trays)
    if SLIPS in wanted.kinds:
        yield from (
            packing_slip(book, run, line, speech) for line in lines_to_pack(run, wanted.lines, every=wanted.every)
        )


def _speech(workshop: Workshop, language: str) -> Speech:
    book = workshop.book
    return Speech("card", language, zone_of(book.time_zone), book.units, workshop.clock.now())


def _without_lost_picture(card: Card, found: Mapping[str, str]) -> Card:
    if isinstance(card, Traveller) and card.picture and card.picture not in found:
        return replace(card, picture=None)
    if isinstance(card, StationSheet):
        return replace(card, works=tuple(replace(work, how=_found(work.how, found)) for work in card.works))
    return card


def _found(how: tuple[Shown, ...], found: Mapping[str, str]) -> tuple[Shown, ...]:
    return tuple(shown if shown.picture in found else replace(shown, picture=None) for shown in how)


def _pictures(card: Card) -> tuple[str, ...]:
    """The names of the pictures on a card."""
    if isinstance(card, Traveller):
        return (card.picture,) if card.picture else ()
    return card.pictures if isinstance(card, StationSheet) else ()
