"""The packing slip of an order line: what lies in the parcel and for whom. No price, no signature but who packed it."""

from runboard.cards.model import Cell, Foot, PackingSlip
from runboard.run.fold.state import OrderLine, RunState
from runboard.run.rules.allotted import lines_of
from runboard.shop.book import Book
from runboard.words.speech import Speech


def lines_to_pack(run: RunState, picked: tuple[str, ...] = ()) -> list[OrderLine]:
    """The order lines that get a slip: those that are picked, else all that nobody has collected yet; what is ready first."""
    found = lines_of(run)
    if picked:
        return [line.order for line in found if line.order.line in picked]
    return [line.order for line in found if "collected" not in line.ticks]


def packing_slip(book: Book, run: RunState, order: OrderLine, speech: Speech) -> PackingSlip:
    """One order line's slip. Without a name it is called by its text, else by its line."""
    line = speech("slip-order", line=order.line)
    return PackingSlip(
        shop=book.name,
        whom=order.whom or order.text or line,
        title=speech("slip"),
        what=f"{speech('pieces', pieces=order.pieces)}, {run.product_name}",
        text=order.text,
        cells=(
            Cell(speech("slip-date"), speech.today()),
            Cell(speech("slip-packed-by")),
        ),
        foot=Foot("", "", f"{book.name} · {run.id} · {line}"),
    )
