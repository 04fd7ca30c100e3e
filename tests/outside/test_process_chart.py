"""The symbols of a process chart that a route carries."""

from runboard.shop.book_json import book_from_json
from runboard.shop.route_words import SYMBOLS, symbols
from tests.outside.said import published
from tests.scenario import shop

ASME = (
    "ASME Standard 101 (1947) as printed in R. Muther, Systematic Layout Planning, and at "
    "http://classof1.com/homework_answers/operations_management/process_chart/"
)


@published(
    ASME,
    {
        "operation": "U+25CB",
        "transport": "U+21E8",
        "inspection": "U+25A1",
        "delay": "U+0044",
        "storage": "U+25BD",
    },
)
def test_the_five_symbols_are_the_standards(name: str) -> str:
    assert len(SYMBOLS) == 5
    return f"U+{ord(SYMBOLS[name]):04X}"


def test_a_route_carries_them_where_pieces_are_worked_carried_and_wait() -> None:
    book = book_from_json(shop())
    operations = book.products[0].operations
    shown = {
        one.key: symbols(book, one, before) for one, before in zip(operations, (None, *operations[:-1]), strict=True)
    }

    assert shown == {
        "cut": ("○", ""),
        "clean": ("○", ""),
        "sand": ("○", ""),
        "engrave": ("⇨○", ""),
        "oil": ("⇨○", "D"),
        "hooks": ("○", ""),
    }
