"""What a press of a button at a station did, as a sentence: for who tries it, and for open pages."""

from typing import Any, Protocol

from runboard.shop.book import Book
from runboard.words.sentences import say


class Did(Protocol):
    """What is asked of a press: see ``Pressed`` of the floor."""

    @property
    def station(self) -> str: ...
    @property
    def did(self) -> str: ...
    @property
    def person(self) -> str: ...
    @property
    def code(self) -> str: ...
    @property
    def facts(self) -> Any: ...


def button_words(book: Book, pressed: Did) -> str:
    """'Sander: done, for Robin', or why it did nothing."""
    if pressed.code:
        return say("refused", pressed.code, pressed.facts)
    station, person = book.station(pressed.station), book.person(pressed.person)
    facts = {
        "station": station.name if station else pressed.station,
        "person": person.name if person else pressed.person,
    }
    return say("button", pressed.did, facts)
