"""Pieces from boards, in words: what to take and buy, what comes from one, why no more, and what remains doubtful."""

from collections.abc import Iterator
from typing import Any

from runboard.plan.stock.need import BOARD_FOOT
from runboard.plan.stock.question import OWN, Board, StockAnswer, StockQuestion
from runboard.plan.stock.suit import Unsuited
from runboard.shop.book import Book
from runboard.shop.stocked import Piece, Stock
from runboard.shop.units import Unit
from runboard.words.before.said import Said, Table
from runboard.words.facts import length_in_words, list_in_words, money_in_words, number_in_words
from runboard.words.sentences import say

# An outline that fills less of its box than this leaves room that boxes cannot use.
_LITTLE = 0.7
_LESS_IS_SAID = 0.1  # mm that are planed off


def said(book: Book, question: StockQuestion, answer: StockAnswer) -> Said:
    """The answer in words."""
    return Said(
        head=_head(answer, book),
        lines=tuple(_lines(answer, book)),
        doubts=tuple(_doubts(question, answer)),
        cautions=() if answer.piece.gap else (_word("no gap"),),
        tables=tuple(_tables(answer, book)),
        record=_record(answer),
    )


def board_name(stock: Stock, units: Unit) -> str:
    """What a board is called: by its size, where that was typed in."""
    return _word("own", size=_sides(units, stock.length, stock.width)) if stock.key == OWN else stock.name


def piece_said(piece: Piece, units: Unit) -> str:
    """'A piece is 300 mm × 90 mm × 20 mm, with a gap of 4 mm.'"""
    return _word("piece", **_piece(piece, units))


def made_of(book: Book, piece: Piece) -> str:
    """'Made of 300 mm × 90 mm × 20 mm, with a gap of 4 mm, from Ash board.'"""
    names = [stock.name for stock in book.stocks if stock.key in piece.stocks]
    return _word("made of", boards=list_in_words(names) or "any", **_piece(piece, book.units))


def _piece(piece: Piece, units: Unit) -> dict[str, str]:
    sides = [piece.length, piece.width, *([piece.thickness] if piece.thickness else [])]
    free = {"margin": piece.margin, "tabs": piece.tabs}
    said = {name: length_in_words(mm, units) if mm else "none" for name, mm in free.items()}
    return {"size": _sides(units, *sides), "gap": length_in_words(piece.gap, units), **said}


def _word(code: str, /, **facts: Any) -> str:
    return say("before-stock", code, facts)


def _sides(units: Unit, *sides: float) -> str:
    return " × ".join(length_in_words(side, units) for side in sides)


def _counted(count: int, stock: Stock, book: Book) -> str:
    return _word("boards", count=count, board=board_name(stock, book.units))


def _head(answer: StockAnswer, book: Book) -> str:
    facts = {
        "pieces": answer.pieces,
        "boards": [_counted(board.use, board.stock, book) for board in answer.used],
        "buy": list_in_words(_counted(board.buy, board.stock, book) for board in answer.used if board.buy) or "none",
        "short": answer.need.short,
    }
    if not answer.boards:
        return _word("no stock", **facts)
    return _word("head short" if answer.need.short else "head", **facts)


def _lines(answer: StockAnswer, book: Book) -> Iterator[str]:
    need, units = answer.need, book.units
    if not answer.used:  # so that no drawing says it
        yield piece_said(answer.piece, units)
    for board in answer.used:
        holds = _word("holds", each=board.each, board=board_name(board.stock, units))
        yield f"{holds} {_proof(board)}"
        yield from _thickness(board, answer, units)
    if need.spare:
        yield _word("spare", spare=need.spare)
    if answer.used:
        yield _yield(answer)
        yield _grain(answer)
        yield from _sums(answer, book)
    if len(answer.boards) > 1:
        yield _word(f"aim {answer.aim}", money="yes" if answer.by_price else "no")
    if answer.fill is not None and answer.fill < _LITTLE:
        yield _word("fill", percent=round(answer.fill * 100))


def _yield(answer: StockAnswer) -> str:
    """Room that more pieces would fill is no waste."""
    need, piece = answer.need, answer.piece
    percent = round(need.yield_share * 100)
    room = round(need.spare * piece.length * piece.width / need.area * 100)
    return _word("yield room" if room else "yield", percent=percent, room=room, rest=max(0, 100 - percent - room))


def _proof(board: Board) -> str:
    if board.proof:
        return _word(f"proof-{board.proof}", each=board.each)
    return _word("proof open", each=board.each, bound=board.bound)


def _thickness(board: Board, answer: StockAnswer, units: Unit) -> Iterator[str]:
    off = board.stock.thickness - answer.piece.thickness
    if answer.has_thickness and off >= _LESS_IS_SAID:
        yield _word("planed", board=board_name(board.stock, units), off=length_in_words(off, units))


def _grain(answer: StockAnswer) -> str:
    places = [place for board in answer.used if board.stock.grain == "length" for place in board.places]
    turned = sum(place.turned for place in places)
    return _word("grain", turned=turned, places="some" if places else "none")


def _doubts(question: StockQuestion, answer: StockAnswer) -> Iterator[str]:
    if not answer.has_thickness:
        yield _word("no thickness")
    if any(not board.proof for board in answer.used) and not question.thorough:
        yield _word("not thorough")
    for unclear in answer.unclear:
        yield say("outline-unclear", unclear.code, {**unclear.facts, "line": unclear.line})


def _sums(answer: StockAnswer, book: Book) -> Iterator[str]:
    """Area, volume and board feet of the boards taken, what of it is left, and what they cost."""
    need, (side, unit) = answer.need, (304.8, "ft") if book.units == "in" else (1000.0, "m")
    left = _word(f"square-{unit}", amount=_fine(need.area * (1 - need.yield_share) / side**2))
    facts = {"area": _word(f"square-{unit}", amount=_fine(need.area / side**2)), "left": left}
    if answer.has_thickness or all(board.stock.thickness for board in answer.used):
        volume = _word(f"cubic-{unit}", amount=_fine(need.board_feet * BOARD_FOOT / side**3))
        yield _word("in all", volume=volume, feet=_fine(need.board_feet), **facts)
    else:
        yield _word("in all flat", **facts)
    if need.cost is not None and need.cost_each is not None:
        cost, each = money_in_words(need.cost, book.money), money_in_words(need.cost_each, book.money)
        buy = "none" if not need.cost_to_buy else money_in_words(need.cost_to_buy, book.money)
        yield _word("cost", cost=cost, each=each, buy=buy)


# tables


def _tables(answer: StockAnswer, book: Book) -> Iterator[Table]:
    if answer.boards:
        yield _boards(answer, book)
    if answer.unsuited:
        rows = tuple((board_name(one.stock, book.units), _why_not(one)) for one in answer.unsuited)
        yield Table(_word("unsuited"), (_word("board"), _word("why")), rows)


def _boards(answer: StockAnswer, book: Book) -> Table:
    heads = ("board", "each", "most", "share", "use", "have", "buy", "price")
    rows = tuple(
        (
            board_name(board.stock, book.units),
            str(board.each),
            str(board.bound),
            _word("percent", percent=round(board.yield_share * 100)),
            str(board.use),
            str(board.stock.have),
            str(board.buy),
            "–" if board.stock.price is None else money_in_words(board.stock.price, book.money),
        )
        for board in answer.boards
    )
    return Table(_word("all boards"), tuple(_word(head) for head in heads), rows, frozenset(range(1, len(heads))))


def _fine(amount: float) -> str:
    """To three figures, as fine as anybody buys wood by."""
    return number_in_words(float(f"{amount:.3g}"))


def _why_not(one: Unsuited) -> str:
    return _word(f"unsuited {one.why}", wood=one.stock.wood)


def _record(answer: StockAnswer) -> dict[str, Any]:
    need = answer.need
    return {
        "kind": "stock",
        "pieces": answer.pieces,
        "piece_mm": [answer.piece.length, answer.piece.width, answer.piece.thickness],
        "boards": [_board_record(board) for board in answer.boards],
        "unsuited": [{"stock": one.stock.key, "why": one.why} for one in answer.unsuited],
        "short": need.short,
        "spare": need.spare,
        "yield": round(need.yield_share, 4),
        "area_mm2": round(need.area, 1),
        "board_feet": round(need.board_feet, 4),
        "cost": need.cost,
        "cost_each": need.cost_each,
        "cost_to_buy": need.cost_to_buy,
        "aim": answer.aim,
        "bound": sum(board.use * board.bound for board in answer.used),
        "proved": all(board.proof for board in answer.used),
        "fill": answer.fill,
        "doubts": [{"line": one.line, "code": one.code} for one in answer.unclear],
    }


def _board_record(board: Board) -> dict[str, Any]:
    return {
        "stock": board.stock.key,
        "use": board.use,
        "buy": board.buy,
        "pieces_each": board.each,
        "bound": board.bound,
        "proved_by": board.proof,
        "layout_mm": [
            [round(each, 3) for each in (place.x, place.y, place.length, place.width)] for place in board.places
        ],
    }
