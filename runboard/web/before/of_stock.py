"""Boards with their pieces, drawn."""

from markupsafe import Markup

from runboard.charts.layout import Drawn, layout
from runboard.plan.stock.question import Board, StockAnswer, StockQuestion
from runboard.shop.book import Book
from runboard.words.before.measures import length_about
from runboard.words.before.stock import board_name, piece_said
from runboard.words.facts import length_in_words
from runboard.words.sentences import say

_CAPTION = Markup("<figcaption>{}</figcaption>")


def draw_stock(book: Book, question: StockQuestion, answer: StockAnswer) -> tuple[Markup, ...]:
    """Each layout that is used, once; over the first, which piece was reckoned."""
    drawings = [_drawn(book, answer, board, number) for number, board in enumerate(answer.used, 1)]
    return tuple(
        [_CAPTION.format(piece_said(answer.piece, book.units)) + drawings[0], *drawings[1:]] if drawings else ()
    )


def _drawn(book: Book, answer: StockAnswer, board: Board, number: int) -> Markup:
    stock, piece = board.stock, answer.piece
    facts = {
        "board": board_name(stock, book.units),
        "count": board.use,
        "each": board.each,
        "long": length_about(stock.length, book.units),
        "wide": length_about(stock.width, book.units),
        "piece_long": length_in_words(piece.length, book.units),
        "piece_wide": length_in_words(piece.width, book.units),
        "turned": sum(place.turned for place in board.places),
    }
    drawn = Drawn(
        stock.length,
        stock.width,
        [(place.x, place.y, place.length, place.width) for place in board.places],
        say("before-stock", "drawn", facts),
        str(facts["long"]),
        str(facts["wide"]),
        say("before-stock", "grain word") if stock.grain == "length" else "",
    )
    return layout(
        f"stock-{number}", say("before-stock", "drawn label", facts), drawn, say("before-stock", "drawn about", facts)
    )
