"""A friend's answers to the review of a run, kept beside it until somebody tries them or sets them aside.

They are settings, as kept changes are, and no events: nothing happened in the shop, no phone folds them, and no state may
depend on what somebody elsewhere thinks. They are in every copy of the data folder. What is tried stands in the log then.
"""

import hashlib
import json
from collections.abc import Iterable
from dataclasses import dataclass, replace

from runboard.floor.warm import find_run
from runboard.floor.workshop import KeptSettings, Workshop
from runboard.review.answers import Answer, AnswerSheet
from runboard.run.fold.state import RunState
from runboard.run.log.event import write_moment
from runboard.run.refusal import Refused

MOST_KEPT = 500
NEW, TRIED, ASIDE = "new", "tried", "set aside"
STATES = (NEW, TRIED, ASIDE)


@dataclass(frozen=True)
class KeptAnswer:
    """An answer of a friend ('' where they gave no name), as it came ``at`` that moment, and what became of it: one of
    ``STATES``. ``id`` is made of what it says, so that the same comes once."""

    id: str
    at: str
    friend: str
    operation: str
    do: str
    why: str
    saves_minutes: float | None
    state: str = NEW


@dataclass(frozen=True)
class Taken:
    """How many answers of a sheet were new, and how many were here already."""

    new: int
    known: int


def kept_answers(settings: KeptSettings, run: str) -> list[KeptAnswer]:
    """The answers to a run's review, in the order in which they came."""
    return [KeptAnswer(**one) for one in settings.get(_key(run)).get("answers", [])]


def new_answers(settings: KeptSettings, run: str) -> int:
    """To how many of them nobody said anything yet."""
    return sum(one.state == NEW for one in kept_answers(settings, run))


def kept_answer(settings: KeptSettings, run: str, answer: str) -> KeptAnswer:
    """One of them. Refused 'answer unknown'."""
    found = next((one for one in kept_answers(settings, run) if one.id == answer), None)
    if found is None:
        raise Refused("answer unknown")
    return found


def opened_in_file(run: RunState) -> str:
    """How a file says when a run was opened."""
    return write_moment(run.opened_at)


def operations_of(run: RunState) -> dict[str, str]:
    """Key → name of every operation that any route of the run has or had, in the order of the newest."""
    found = {one.key: one.name for one in run.route.product.operations}
    for revision in run.revisions:
        for one in revision.route.product.operations:
            found.setdefault(one.key, one.name)
    return found


def take_answers(workshop: Workshop, settings: KeptSettings, run: str, sheet: AnswerSheet) -> Taken:
    """Keep what a sheet answers, all or nothing. What is here already stays as it is.

    Refused 'run unknown'; 'answers other run' (``there``: which it is, where this shop knows it) or 'answers elsewhere';
    'answers none', 'answers step gone', 'answers kept many'.
    """
    with workshop.lock:
        found = find_run(workshop, run)
        _check(workshop, found, sheet)
        here = kept_answers(settings, run)
        known = {one.id for one in here}
        at = write_moment(workshop.clock.now())
        made = {one.id: one for one in (_kept(sheet.friend, answer, at) for answer in sheet.answers)}
        fresh = [one for key, one in made.items() if key not in known]
        if len(here) + len(fresh) > MOST_KEPT:
            raise Refused("answers kept many", most=MOST_KEPT)
        if fresh:
            _put(settings, run, [*here, *fresh])
    return Taken(len(fresh), len(made) - len(fresh))


def set_answer(workshop: Workshop, settings: KeptSettings, run: str, answer: str, state: str) -> KeptAnswer:
    """Note what became of an answer: one of ``STATES``. Refused 'answer unknown'."""
    with workshop.lock:
        changed = replace(kept_answer(settings, run, answer), state=state)
        _put(settings, run, [changed if one.id == answer else one for one in kept_answers(settings, run)])
    return changed


def _check(workshop: Workshop, run: RunState, sheet: AnswerSheet) -> None:
    if (sheet.run, sheet.opened) != (run.id, opened_in_file(run)):
        other = workshop.ledger.state.runs.get(sheet.run)
        if other is not None and opened_in_file(other) == sheet.opened:
            raise Refused("answers other run", there=other.name)
        raise Refused("answers elsewhere")
    if not sheet.answers:
        raise Refused("answers none")
    known = operations_of(run)
    for one in sheet.answers:
        if one.operation not in known:
            raise Refused("answers step gone", operation=one.operation[:60])


def _kept(friend: str, said: Answer, at: str) -> KeptAnswer:
    text = json.dumps([friend, said.operation, said.do, said.why, said.saves_minutes])
    digest = hashlib.sha256(text.encode()).hexdigest()[:12]
    return KeptAnswer(digest, at, friend, said.operation, said.do, said.why, said.saves_minutes)


def _put(settings: KeptSettings, run: str, kept: Iterable[KeptAnswer]) -> None:
    settings.put(_key(run), {"answers": [vars(one) for one in kept]})


def _key(run: str) -> str:
    return f"answers/{run}"
