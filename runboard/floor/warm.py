"""The fold kept warm: what other processes wrote is read, and a write that failed is forgotten."""

from runboard.floor.workshop import Log, LogWrite, Workshop
from runboard.run.fold.ledger import Ledger
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.book import Book


def catch_up(workshop: Workshop) -> None:
    """Bring the warm state up to what is stored, if anybody wrote meanwhile."""
    with workshop.lock:
        version = workshop.log.version()
        if version != workshop.version or workshop.book.revision == 0:
            _read_book(workshop)
            _read_events(workshop, workshop.log)
            workshop.version = version


def catch_up_inside(workshop: Workshop, write: LogWrite) -> None:
    """The same inside a transaction."""
    if workshop.book.revision != workshop.books.revision():
        _read_book(workshop)
    _read_events(workshop, write)


def reload(workshop: Workshop) -> None:
    """Forget the warm state and read it again."""
    with workshop.lock:
        workshop.ledger = Ledger(workshop.book)
        workshop.version = -1
        catch_up(workshop)


def find_run(workshop: Workshop, run: str) -> RunState:
    """The run's state as it is now. Refused 'run unknown'."""
    catch_up(workshop)
    found = workshop.ledger.state.runs.get(run)
    if found is None:
        raise Refused("run unknown", run=run)
    return found


def _read_book(workshop: Workshop) -> None:
    if workshop.books.revision() != workshop.book.revision:
        book: Book = workshop.books.latest()
        workshop.book = book
        workshop.ledger.take_book(book)


def _read_events(workshop: Workshop, log: Log | LogWrite) -> None:
    ledger = workshop.ledger
    fresh = log.events(ledger.last_seq)
    if not fresh:
        return
    if len(fresh) > 20:
        ledger.load(fresh)
        return
    for event in fresh:
        ledger.keep(ledger.try_event(event), event.seq)
