"""The five symbols of a process chart, and which of them an operation of a route carries.

Source: ASME Standard 101, Operation and Flow Process Charts (1947), as told in R. Muther, Systematic Layout Planning.
"""

from collections.abc import Mapping
from types import MappingProxyType

from runboard.shop.book import Book, Operation

SYMBOLS: Mapping[str, str] = MappingProxyType(
    {"operation": "○", "transport": "⇨", "inspection": "□", "delay": "D", "storage": "▽"}
)
_LOOKS = ("inspect", "check", "measure")


def symbols(book: Book, operation: Operation, before: Operation | None = None) -> tuple[str, str]:
    """(what stands before the operation's name, what after it): carried from another room, then done or inspected; then
    a delay where its pieces wait."""
    carried = before is not None and _room(book, before) != _room(book, operation)
    word = operation.name.casefold()
    done = SYMBOLS["inspection" if word.startswith(_LOOKS) else "operation"]
    return (SYMBOLS["transport"] if carried else "") + done, SYMBOLS["delay"] if operation.wait else ""


def _room(book: Book, operation: Operation) -> str:
    station = book.station(operation.station)
    return station.room if station is not None else ""
