"""The packing slip of an order line: what lies in the parcel and for whom. No price, no signature but who packed it."""

from runboard.cards.model import Cell, Foot, PackingSlip
from runboard.run.fold.state import RunState
from runboard.run.rules.allotted import LineNow, lines_of
from runboard.shop.book import Book
from runboard.words.facts import due_in_words
from runboard.words.speech import Speech


def lines_to_pack(run: RunState, picked: tuple[str, ...] = (), *, every: bool = False) -> list[LineNow]:
    """The order lines that get a slip: those that are picked, else those of which something can be handed over, or ``every``
    one that nobody has collected yet; what is ready first."""
    found = lines_of(run)
    if picked:
        return [line for line in found if line.order.line in picked]
    return [line for line in found if line.is_for_now or (every and not line.is_over)]


def packing_slip(book: Book, run: RunState, line: LineNow, speech: Speech) -> PackingSlip:
    """One order line's slip. Without a name it is called by its text, else by its line."""
    order = line.order
    called = speech("slip-order", line=order.line)
    due = (Cell(speech("slip-due"), due_in_words(order.due, speech.zone, speech.locale)),) if order.due else ()
    return PackingSlip(
        shop=book.name,
        whom=order.whom or order.text or called,
        title=speech("slip"),
        what=f"{_parcel(line, speech)}, {run.product_name}",
        text=order.text,
        cells=(*due, Cell(speech("slip-packed-on")), Cell(speech("slip-packed-by"))),
        foot=Foot("", "", f"{book.name} · {run.id} · {called}"),
    )


def _parcel(line: LineNow, speech: Speech) -> str:
    """'9 pieces'; '1 of 2, 1 to follow' where the others are not ready. What was fetched before is not in it again."""
    pieces, ready = line.order.pieces, min(line.ready, line.order.pieces)
    parcel = ready - line.done("collected") if line.is_for_now else ready
    if parcel in (0, pieces):
        return speech("pieces", pieces=pieces)
    return speech("slip-part", parcel=parcel, pieces=pieces, left=pieces - ready)
