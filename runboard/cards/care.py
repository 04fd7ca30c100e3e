"""The cautions of an operation as a card says them, in its language."""

from collections.abc import Sequence

from runboard.cards.model import Care
from runboard.run.care.cautions import cautions_for, start_points
from runboard.shop.book import Book, Operation
from runboard.shop.care import finish_of
from runboard.shop.product import Translation
from runboard.words.card import Speech

UNTRANSLATED = Translation()
RESTING = ("solvent-air", "no-smoking", "air-the-room", "dry-not-cured")


def translation_of(operation: Operation, language: str) -> Translation:
    """The operation's own texts in a language; empty where nobody wrote them."""
    return operation.translations.get(language, UNTRANSLATED)


def name_of(operation: Operation, language: str) -> str:
    """The operation's name in a language."""
    return translation_of(operation, language).name or operation.name


def translated(texts: Sequence[str], others: Sequence[str]) -> tuple[str, ...]:
    """Texts with those of another language in their place, where they are written."""
    return tuple((others[at] if at < len(others) else "") or text for at, text in enumerate(texts))


def care_of(book: Book, operation: Operation, speech: Speech, after_finish: bool = False) -> tuple[Care, ...]:
    """The cautions of an operation, those of the catalogue in the card's language."""
    others = translation_of(operation, speech.language).cautions
    own = dict(zip(operation.cautions, translated(operation.cautions, others), strict=True))
    return tuple(
        Care(speech(f"care-{one.key}") if one.key else own.get(one.text, one.text), one.signs)
        for one in cautions_for(book, operation, after_finish)
    )


def resting_care(book: Book, operation: Operation, speech: Speech) -> tuple[Care, ...]:
    """The cautions that still hold beside a tray while what was brought on it dries."""
    shown = cautions_for(book, operation)
    return tuple(Care(speech(f"care-{one.key}"), one.signs) for one in shown if one.key in RESTING)


def start_list(book: Book, operation: Operation, speech: Speech) -> tuple[str, ...]:
    """What is looked at before the machine starts: the catalogue's points, then the operation's own."""
    own = translated(operation.checklist, translation_of(operation, speech.language).checklist)
    return (*(speech(f"care-{key}") for key in start_points(book, operation)), *own)


def comes_after_finish(book: Book, operations: Sequence[Operation], operation: Operation) -> bool:
    """Whether an operation makes dust of wood that an earlier one of the route brought a finish on."""
    station = book.station(operation.station)
    if station is None or not station.dusty:
        return False
    before = operations[: operations.index(operation)]
    return any(finish_of(book, one) is not None for one in before)
