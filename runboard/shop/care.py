"""What an operation asks for by way of care: its finish, and how often somebody must look at its machine."""

from datetime import timedelta

from runboard.shop.book import STATION_KINDS, Book, Operation
from runboard.shop.finish import UNKNOWN_FINISH, Finish


def finish_of(book: Book, operation: Operation) -> Finish | None:
    """The finish that an operation brings on; at a finishing station the careful reading of one that nobody wrote down.
    ``None`` where the operation brings on none."""
    known = book.finish(operation.finish)
    if known is not None:
        return known
    station = book.station(operation.station)
    at_finishing = station is not None and station.kind == "finishing"
    return UNKNOWN_FINISH if operation.finish or at_finishing else None


def watch_interval(book: Book, operation: Operation) -> timedelta | None:
    """How often somebody who watches a running load of this operation is asked; ``None`` where it needs no watching."""
    station = book.station(operation.station)
    if operation.attendance != "watched":
        return None
    usual = STATION_KINDS[station.kind].watch_every if station else None
    return operation.watch_every or (station.watch_every if station else None) or usual
