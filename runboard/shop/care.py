"""What an operation asks for by way of care: its finish, and how often somebody must look at its machine."""

from datetime import timedelta

from runboard.shop.book import STATION_KINDS, Book, Station
from runboard.shop.finish import UNKNOWN_FINISH, Finish, finish_by_words
from runboard.shop.product import Operation

SELDOM_HEAT, SELDOM = timedelta(minutes=5), timedelta(minutes=30)


def finish_of(book: Book, operation: Operation) -> Finish | None:
    """The finish that an operation brings on: as the shop wrote it down, else as its words say wherever hands could bring one
    on, else the careful reading of what nobody wrote down. ``None`` where the operation brings on none."""
    known = book.finish(operation.finish)
    if known is not None:
        return known
    station = book.station(operation.station)
    if station is not None and (station.cuts or station.heats or station.kind == "sander") and not operation.finish:
        return None
    said = finish_by_words(f"{operation.finish or ''} {operation.name}")
    at_finishing = station is not None and station.kind == "finishing"
    return said or (UNKNOWN_FINISH if operation.finish or at_finishing else None)


def finish_is_unclear(book: Book, operation: Operation) -> bool:
    """Whether somebody has to say which finish an operation brings on."""
    return finish_of(book, operation) is UNKNOWN_FINISH


def watch_interval(book: Book, operation: Operation) -> timedelta | None:
    """How often somebody who watches a running load of this operation is asked; ``None`` where it needs no watching. Never
    more seldom than ``seldom_at_most``, whatever was written down before there was a limit."""
    station = book.station(operation.station)
    if operation.attendance != "watched":
        return None
    most = seldom_at_most(station)
    said = operation.watch_every or (station.watch_every if station else None)
    return min(said or (STATION_KINDS[station.kind].watch_every if station else None) or most, most)


def seldom_at_most(station: Station | None) -> timedelta:
    """The longest time between two looks at a station that must be watched: what heats may be on fire in minutes, and
    so may one that nobody knows. Common practice, no source; the machine's manual wins where it asks for more."""
    return SELDOM_HEAT if station is None or station.heats else SELDOM
