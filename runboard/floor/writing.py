"""The one way to write: a transaction on the log with the fold warm, its due moments stored with it, and who is told."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime

from runboard.floor.warm import catch_up_inside, reload
from runboard.floor.workshop import LogWrite, Workshop
from runboard.run.dues import dues


@contextmanager
def writing(workshop: Workshop) -> Iterator[tuple[LogWrite, datetime]]:
    """(transaction, now) for a block that keeps what it appends in the ledger.

    At its end the due moments are stored in the same transaction and whoever listens is told. If the block or the
    commit fails, nothing is stored, and the fold is read again from what is.
    """
    with workshop.lock:
        try:
            with workshop.log.write() as write:
                catch_up_inside(workshop, write)
                yield write, workshop.clock.now()
                _store_dues(workshop, write)
        except BaseException:
            reload(workshop)
            raise
        workshop.version = workshop.log.version()
        seq = workshop.ledger.last_seq
    workshop.tell.changed(seq)


def _store_dues(workshop: Workshop, write: LogWrite) -> None:
    """Bring the stored due moments to what the state says."""
    wanted = dues(workshop.ledger.state, workshop.book)
    held = write.dues_held()
    put = [due for key, due in wanted.items() if held.get(key) != due.due_at]
    drop = [key for key in held if key not in wanted]
    if put or drop:
        write.set_dues(put, drop)
