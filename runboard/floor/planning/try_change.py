"""Trying a change before it is made: nothing of the run is touched, and the plans are made and compared in a child process.

An answer is kept for a while under what was asked, so that whoever looks again, and whoever keeps it, has the same one.
"""

import threading
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from typing import Any

from runboard.floor.long_work import LongWork
from runboard.floor.looking.at_hand import shop_now
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.plan.change import Change
from runboard.plan.changed import changed_problem
from runboard.plan.changed_run import swappable, visitable
from runboard.plan.estimates import estimates_from, spread_in
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import Problem
from runboard.plan.schedule.rule.rule import is_at_hand
from runboard.plan.schedule.told.compared import Compared
from runboard.plan.schedule.told.forecast import spread_table
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.product import Operation

WHAT = "try"
# An answer is of the shop as it was: so long it is shown again though the log goes on.
LASTS = timedelta(minutes=2)
MOST_KEPT = 4


@dataclass(frozen=True)
class CanTry:
    """What a change can be tried on: ``run`` is the one that was asked for, else the first open one; ``pairs`` are its
    neighbours that can change places, ``visits`` those that can be one visit, ``skills`` all that somebody has or that its route asks for."""

    run: RunState | None
    open_runs: tuple[RunState, ...]
    book: Book
    skills: tuple[str, ...] = ()
    pairs: Sequence[tuple[Operation, Operation]] = ()
    visits: Sequence[tuple[Operation, Operation]] = ()


def what_can_be_tried(workshop: Workshop, asked: str) -> CanTry:
    """Refused 'try run over' where the run that was asked for is not open."""
    book, state = shop_now(workshop)
    open_runs = tuple(state.open_runs())
    run = next((open_run for open_run in open_runs if open_run.id == asked or not asked), None)
    if asked and run is None:
        raise Refused("try run over")
    if run is None:
        return CanTry(None, open_runs, book)
    wanted = (operation.skill for operation in run.route.product.operations if operation.skill)
    skills = {*wanted, *(skill for person in book.people for skill in person.skills)}
    return CanTry(run, open_runs, book, tuple(sorted(skills)), swappable(run), visitable(run, book))


@dataclass(frozen=True)
class _Asked:
    """A comparison that is made, or was: of which arrival of the log and revision of the book, and begun when."""

    task: str
    at: datetime
    of: tuple[int, int]
    now: Problem
    changed: Problem


@dataclass
class Trials:
    """``compare(now, changed, run, spread, is_many)`` runs in a child of ``work`` and answers ``Compared``, its problems left
    out: they are here."""

    workshop: Workshop
    work: LongWork
    compare: Callable[..., Any]
    _lock: threading.Lock = field(default_factory=threading.Lock)
    _asked: dict[tuple[str, Change], _Asked] = field(default_factory=dict)

    def answer(self, run: str, change: Change) -> Compared | None:
        """The run as things are beside the run with the change; None while they are compared. Refused 'run unknown', 'run
        closed', 'try busy' (too much is being worked out), 'try failed', and where the change makes no sense."""
        found = find_run(self.workshop, run)
        if found.state != "open":
            raise Refused("run closed", run=run, state=found.state)
        with self._lock:
            asked = self._kept(run, change) or self._begun(run, change)
        task = self.work.look(asked.task)
        if task is not None and not task.is_over:
            return None
        if task is None or task.result is None:
            with self._lock:
                self._asked.pop((run, change), None)
            raise Refused("try failed")
        return _whole(task.result, asked)

    def _kept(self, run: str, change: Change) -> _Asked | None:
        asked = self._asked.get((run, change))
        if asked is None:
            return None
        is_fresh = asked.of == self._stands() or self.workshop.clock.now() - asked.at < LASTS
        return asked if is_fresh and self.work.look(asked.task) is not None else None

    def _stands(self) -> tuple[int, int]:
        return self.workshop.ledger.last_seq, self.workshop.book.revision

    def _begun(self, run: str, change: Change) -> _Asked:
        with self.workshop.lock:
            catch_up(self.workshop)
            state, book, of = self.workshop.ledger.state, self.workshop.book, self._stands()
        estimates, at = estimates_from(state, book), self.workshop.clock.now()
        now, changed = problem_for(state, book, at, estimates), changed_problem(state, book, at, estimates, change)
        spread = spread_table(spread_in(state, estimates), now, changed)
        task = self.work.start(WHAT, run, self.compare, now, changed, run, spread, is_at_hand())
        if task is None:
            raise Refused("try busy")
        asked = self._asked[run, change] = _Asked(task.id, at, of, now, changed)
        self._forget((run, change))
        return asked

    def _forget(self, but: tuple[str, Change]) -> None:
        """What was asked longest ago goes, whether it is answered or not."""
        for key in [key for key in self._asked if key != but][: max(0, len(self._asked) - MOST_KEPT)]:
            self.work.end(self._asked.pop(key).task)


def _whole(found: Compared, asked: _Asked) -> Compared:
    before = None if found.before is None else replace(found.before, problem=asked.now)
    after = None if found.after is None else replace(found.after, problem=asked.changed)
    return replace(found, before=before, after=after)
