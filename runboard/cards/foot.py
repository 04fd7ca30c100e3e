"""The foot of every card, its links, and the page's own words."""

from collections.abc import Mapping

from runboard.cards.model import Foot
from runboard.run.fold.state import RunState
from runboard.shop.book import Book
from runboard.words.card import Speech

WORDS = (
    "good",
    "scrap",
    "initials",
    "time",
    "notes",
    "measured",
    "continued",
    "trays",
    "orders",
    "supplies",
    "steps",
    "start-list",
    "places",
    "do-not-move",
    "card",
)


def page_words(speech: Speech) -> Mapping[str, str]:
    """The words that stand on a page whatever is on its cards."""
    return {word: speech(f"card-{word}") for word in WORDS}


def foot_of(book: Book, run: RunState, speech: Speech, revision: int, number: int) -> Foot:
    """What to do with a bad piece, at fire or injury, and which print this is."""
    lead = next((one.name for one in book.people if one.access == "lead" and not one.removed), "")
    return Foot(
        bad=speech("card-bad-piece", lead=lead or speech("card-the-lead")),
        danger=speech("care-emergency", number=book.emergency),
        print=speech("card-print", run=run.id, revision=revision, number=number, at=speech.printed()),
    )
