"""The reviews that people look at: what is quick is reckoned when somebody asks, what takes long in a child process.

What was reckoned of a run is kept as long as the run, its shop and the ideas are the same; of a run that goes on, a while. While
it is reckoned again, what was found before is shown.
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
from runboard.shop.book import Book

WHAT = "review"
# Of a book what no replay looks at.
_NOT_REPLAYED = ("revision", "name", "emergency", "hour_rate", "noise_limit_db", "noise_exchange_db")
_NO_BOOK = Book()
# A run that goes on is another one with each press: so long what held it is shown again.
LASTS = timedelta(minutes=2)
MOST_KEPT = 16


@dataclass(frozen=True)
class _Of:
    """What an answer is made of: the run, the shop it was made in but for what a replay does not look at, the ideas as they
    were kept, and what an hour is worth."""

    run: RunState
    book: Book
    ideas: tuple[Idea, ...]
    rate: float | None

    def moves_none_of(self, before: "_Of") -> bool:
        """Whether it is the same but for the ideas and what they cost."""
        is_run = self.run is before.run or self.run == before.run
        return is_run and self.book == before.book

    def is_as(self, before: "_Of") -> bool:
        return (self.book, self.ideas, self.rate) == (before.book, before.ideas, before.rate)


@dataclass(frozen=True)
class _Kept:
    """What was reckoned of a run as it was at ``at``; ``task`` is the child's, '' where nothing is to be worked out, or where it
    was ``found``. ``before`` is what came of the same run before, which is shown until this is there."""

    of: _Of
    at: datetime
    task: str = ""
    before: Weighed | None = None
    found: Weighed | None = None


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
        """A run's review; what takes long is None in it until it is there, or as it was before. Refused 'run unknown', 'try
        busy', 'review failed'."""
        quick = quick_at(self.workshop, run)
        of = _of(self.workshop, quick.past, ideas_of(self.settings, run))
        with self._lock:
            kept = self._kept.get(run)
            if kept is None or not self._holds(kept, quick.past, of):
                kept = self._begun(quick, of, kept)
        return self._with_what_is_there(quick, kept)

    def _holds(self, kept: _Kept, past: Past, of: _Of) -> bool:
        """Whether what takes long is still so, or is being worked out: what is begun anew at each press is never done."""
        task = self.work.look(kept.task) if kept.task else None
        if not of.is_as(kept.of) or (kept.task and task is None):
            return False
        is_coming = task is not None and not task.is_over
        return of.moves_none_of(kept.of) or (past.is_open and (is_coming or past.now - kept.at < LASTS))

    def _begun(self, quick: Essentials, of: _Of, old: _Kept | None) -> _Kept:
        run, now = quick.past.run, quick.past.now
        before = None if old is None else self._found(old)
        same = old is not None and of.moves_none_of(old.of) and (not quick.past.is_open or now - old.at < LASTS)
        asked = asked_of(quick, of.ideas, worth_of(self.workshop, quick), before if same else None)
        task = None if asked is None else self.work.start(WHAT, run.id, self.weigh, asked, is_at_hand())
        if asked is not None and task is None:
            if before is None:
                raise Refused("try busy")
            return _Kept(of, now, before=before)
        self._forget(run.id)
        kept = self._kept[run.id] = _Kept(of, now, task.id if task is not None else "", before)
        self._drop_the_oldest()
        return kept

    def _found(self, kept: _Kept) -> Weighed | None:
        """What came of a run as far as it was worked out."""
        task = self.work.look(kept.task)
        found: Weighed | None = None if task is None else task.result
        return found or kept.found or kept.before

    def _drop_the_oldest(self) -> None:
        """But none that somebody still waits for."""
        over = [run for run, kept in self._kept.items() if (task := self.work.look(kept.task)) is None or task.is_over]
        for run in over[: max(0, len(self._kept) - MOST_KEPT)]:
            self._forget(run)

    def _forget(self, run: str) -> None:
        before = self._kept.pop(run, None)
        if before is not None and before.task:
            self.work.end(before.task)

    def _with_what_is_there(self, quick: Essentials, kept: _Kept) -> Essentials:
        run, task = quick.past.run.id, self.work.look(kept.task)
        found = kept.found if task is None else task.result
        with self._lock:
            is_newest = self._kept.get(run) is kept
            if is_newest and kept.task and found is not None:  # the work does not remember it for ever
                self._kept[run] = replace(kept, task="", before=None, found=found)
            elif is_newest and kept.task and (task is None or task.is_over):
                self._kept.pop(run)  # the log says why; whoever asks again has it tried again
                raise Refused("review failed")
        if found is not None:
            return _whole(self.workshop, quick, found)
        if is_newest and not kept.task:
            return weighed(quick, None)
        return quick if kept.before is None else replace(_whole(self.workshop, quick, kept.before), is_weighed=False)


def _of(workshop: Workshop, past: Past, ideas: tuple[Idea, ...]) -> _Of:
    shop = replace(past.book, **{name: getattr(_NO_BOOK, name) for name in _NOT_REPLAYED})
    return _Of(past.run, shop, ideas, workshop.book.hour_rate)


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
