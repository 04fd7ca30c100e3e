"""The reviews that people look at: what is quick is reckoned when somebody asks, what takes long in a child process.

What was reckoned of a run is kept as long as the run, the book and the ideas are the same; of a run that goes on, a while.
"""

import threading
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from typing import Any

from runboard.floor.changing.kept_changes import kept_changes
from runboard.floor.long_work import LongWork
from runboard.floor.looking.at_hand import shop_now
from runboard.floor.looking.review import quick_at
from runboard.floor.workshop import KeptSettings, Workshop
from runboard.plan.schedule.rule.rule import is_at_hand
from runboard.review.changes.adopting import adopting_of
from runboard.review.changes.nouns import Idea, Worth
from runboard.review.changes.payback import runs_a_month
from runboard.review.essentials import Essentials, weighed
from runboard.review.past import Past
from runboard.review.weighing import Weighed, asked_of, prepare, weigh
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused

WHAT = "review"
# A run that goes on is another one with each press: so long what held it is shown again.
LASTS = timedelta(minutes=2)
MOST_KEPT = 6


# What an idea was offered or kept with, and the revision of the book.
_Of = tuple[int, tuple[Idea, ...]]


@dataclass(frozen=True)
class _Kept:
    """What was reckoned of a run as it was at ``at``; ``task`` is the child's, '' where nothing is to be worked out. ``before``
    is what came of the same run before, where only the ideas are others now."""

    of: _Of
    at: datetime
    run: RunState
    task: str = ""
    before: Weighed | None = None

    def holds(self, past: Past, of: _Of) -> bool:
        """Whether what takes long is still so."""
        is_same = self.run is past.run or (past.is_open and past.now - self.at < LASTS)
        return is_same and self.of == of

    def serves(self, past: Past, book: int) -> bool:
        """Whether what was found serves other ideas, too."""
        is_same = self.run is past.run and (not past.is_open or past.now - self.at < LASTS)
        return is_same and self.of[0] == book


@dataclass
class Reviews:
    """``weigh(asked, is_many)`` runs in a child of ``work`` and answers ``Weighed``; ``settings`` have the ideas that were
    kept."""

    workshop: Workshop
    work: LongWork
    settings: KeptSettings
    weigh: Callable[..., Any]
    _lock: threading.Lock = field(default_factory=threading.Lock)
    _kept: dict[str, _Kept] = field(default_factory=dict)

    def essentials(self, run: str) -> Essentials:
        """A run's review; what takes long is None in it until it is there. Refused 'run unknown', 'review failed'."""
        quick = quick_at(self.workshop, run)
        past, of = quick.past, (self.workshop.book.revision, ideas_of(self.settings, run))
        with self._lock:
            kept = self._kept.get(run)
            if kept is None or not kept.holds(past, of) or self._is_lost(kept):
                kept = self._begun(quick, of)
        return self._with_what_is_there(quick, kept)

    def _is_lost(self, kept: _Kept) -> bool:
        """Whether nobody knows any more what became of it."""
        return bool(kept.task) and self.work.look(kept.task) is None

    def _begun(self, quick: Essentials, of: _Of) -> _Kept:
        before = self._found_before(quick.past, of[0])
        asked = asked_of(quick, of[1], worth_of(self.workshop, quick), before)
        task = None if asked is None else self.work.start(WHAT, quick.past.run.id, self.weigh, asked, is_at_hand())
        if asked is not None and task is None:
            raise Refused("try busy")
        run = quick.past.run
        self._forget(run.id)
        kept = self._kept[run.id] = _Kept(of, quick.past.now, run, task.id if task is not None else "", before)
        for other in list(self._kept)[: max(0, len(self._kept) - MOST_KEPT)]:
            self._forget(other)
        return kept

    def _found_before(self, past: Past, book: int) -> Weighed | None:
        """What came of a run as far as it was worked out before somebody kept an idea: that moves none of it."""
        before = self._kept.get(past.run.id)
        if before is None or not before.serves(past, book):
            return None
        task = self.work.look(before.task)
        found: Weighed | None = before.before if task is None or task.result is None else task.result
        return found

    def _forget(self, run: str) -> None:
        before = self._kept.pop(run, None)
        if before is not None and before.task:
            self.work.end(before.task)

    def _with_what_is_there(self, quick: Essentials, kept: _Kept) -> Essentials:
        if not kept.task:
            return weighed(quick, None)
        task = self.work.look(kept.task)
        if task is not None and not task.is_over:
            return replace(quick, held=kept.before.held if kept.before else None)
        if task is None or task.result is None:  # the log says why; whoever asks again has it tried again
            with self._lock:
                self._forget(quick.past.run.id)
            raise Refused("review failed")
        return _whole(self.workshop, quick, task.result)


def review_at_once(workshop: Workshop, settings: KeptSettings, run: str) -> Essentials:
    """The whole of a run's review, by whoever can wait for it. Refused 'run unknown'."""
    prepare()  # the plan of the opening, too, is made sooner by the compiled rule
    quick = quick_at(workshop, run)
    asked = asked_of(quick, ideas_of(settings, run), worth_of(workshop, quick))
    if asked is None:
        return weighed(quick, None)
    found = weigh(asked, is_many=True)
    return _whole(workshop, quick, found)


def _whole(workshop: Workshop, quick: Essentials, found: Weighed) -> Essentials:
    """With what took long, and what of it the shop has done since."""
    book, state = shop_now(workshop)
    adopting = adopting_of(quick.past, book, state, [tried.idea.change for tried in found.tried])
    tried = tuple(replace(one, is_done=adopting[one.idea.change].is_done) for one in found.tried)
    return weighed(quick, found.held, tried, found.together)


def ideas_of(settings: KeptSettings, run: str) -> tuple[Idea, ...]:
    """The changes to try that somebody kept for a run, but for those that are kept as words alone."""
    found = ((kept, kept.again) for kept in kept_changes(settings, run))
    return tuple(Idea(kept.id, change, cost=kept.cost) for kept, change in found if change is not None)


def worth_of(workshop: Workshop, quick: Essentials) -> Worth:
    """What a saving is worth in the shop as it is now."""
    book, state = shop_now(workshop)
    past = quick.past
    a_month = runs_a_month(state.runs.values(), past.run.product, past.now)
    return Worth(book.hour_rate, a_month, quick.happened.a_good_piece)
