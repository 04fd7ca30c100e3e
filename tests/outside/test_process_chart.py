"""The symbols of a process chart: ASME Standard 101 (1947), as printed in R. Muther, Systematic Layout Planning, and in a
textbook answer (classof1.com, operations management, 'process chart')."""

from runboard.shop.book_json import book_from_json
from runboard.shop.process_chart import SYMBOLS, symbols
from tests.scenario import shop


def test_the_five_symbols_are_the_standard_s():
    points = {name: [f"U+{ord(sign):04X}" for sign in symbol] for name, symbol in SYMBOLS.items()}

    assert points == {
        "operation": ["U+25CB"],
        "transport": ["U+21E8"],
        "inspection": ["U+25A1"],
        "delay": ["U+0044"],
        "storage": ["U+25BD"],
    }


def test_a_route_carries_them_where_pieces_are_worked_carried_and_wait():
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
