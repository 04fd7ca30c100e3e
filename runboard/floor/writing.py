"""The one way to write: a transaction on the log with the fold warm, its due moments stored with it, and who is told."""

import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from datetime import datetime

from runboard.floor.warm import catch_up_inside, reload
from runboard.floor.workshop import LogWrite, Workshop
from runboard.run.calls.dues import dues
from runboard.run.refusal import NotStored

# For how many seconds a press asks for a database that somebody else writes to, before it is given up and its phone keeps
# it; for how many each time, and for how many it then lets others look at the shop.
PATIENT, WAIT, BETWEEN = 3.0, 0.05, 0.05


@contextmanager
def writing(workshop: Workshop) -> Iterator[tuple[LogWrite, datetime]]:
    """(transaction, now) for a block that keeps what it appends in the ledger.

    At its end the due moments are stored in the same transaction and whoever listens is told. If the block or the
    commit fails, nothing is stored, and the fold is read again from what is. Raises ``NotStored``.
    """
    with ExitStack() as held:
        transaction, write = _begin(workshop, held)
        try:
            with transaction:
                catch_up_inside(workshop, write)
                yield write, workshop.clock.now()
                _store_dues(workshop, write)
        except BaseException:
            reload(workshop)
            raise
        workshop.version = workshop.log.version()
        seq = workshop.ledger.last_seq
    workshop.tell.changed(seq)


def _begin(workshop: Workshop, held: ExitStack) -> tuple[ExitStack, LogWrite]:
    """A transaction under the lock, which goes to ``held``. Whoever waits for the database does so without the lock: who
    only looks at the shop need not wait for another program."""
    until = time.monotonic() + PATIENT
    while True:
        with ExitStack() as trying:
            trying.enter_context(workshop.lock)
            transaction = ExitStack()
            try:
                write = transaction.enter_context(workshop.log.write(WAIT))
            except NotStored as failed:
                if failed.why != "busy" or time.monotonic() >= until:
                    raise
            else:
                held.enter_context(trying.pop_all())
                return transaction, write
        time.sleep(BETWEEN)


def _store_dues(workshop: Workshop, write: LogWrite) -> None:
    """Bring the stored due moments to what the state says."""
    wanted = dues(workshop.ledger.state, workshop.book)
    held = write.dues_held()
    put = [due for key, due in wanted.items() if held.get(key) != due.due_at]
    drop = [key for key in held if key not in wanted]
    if put or drop:
        write.set_dues(put, drop)
