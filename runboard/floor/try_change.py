"""Trying a change before it is made, and keeping it for the Review: nothing of the run is touched."""

import uuid
from collections.abc import Mapping
from dataclasses import dataclass

from runboard.floor.signals import Settings
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.plan.estimates import estimates_from, spread_in
from runboard.plan.schedule.changed import Change, changed_problem
from runboard.plan.schedule.compared import Compared, compared
from runboard.plan.schedule.from_state import problem_for
from runboard.run.refusal import Refused

MOST_KEPT = 100


@dataclass(frozen=True)
class Kept:
    """A change to try, in the words in which it was answered."""

    id: str
    at: str
    person: str
    change: str
    answer: str


def try_change(workshop: Workshop, run: str, change: Change) -> Compared:
    """The run as things are now, beside the run with the change. Refused where the change makes no sense."""
    found = find_run(workshop, run)
    if found.state != "open":
        raise Refused("run closed", run=run, state=found.state)
    with workshop.lock:
        catch_up(workshop)
        state, book = workshop.ledger.state, workshop.book
        estimates = estimates_from(state, book, workshop.kept.setdefault("measured", {}))
    now = workshop.clock.now()
    before = problem_for(state, book, now, estimates)
    after = changed_problem(state, book, now, estimates, change)
    return compared(before, after, run, spread_in(state, estimates), None)


def kept_changes(settings: Settings, run: str) -> list[Kept]:
    """The changes to try of a run, in the order in which they were kept."""
    return [Kept(**one) for one in settings.get(_key(run)).get("changes", [])]


def keep_change(workshop: Workshop, settings: Settings, run: str, said: Mapping[str, str], person: str) -> Kept:
    """Keep a change to try; ``said`` has ``change`` and ``answer`` in words. The same change is kept once, with its newest
    answer. Refused 'try kept many'."""
    find_run(workshop, run)
    with workshop.lock:
        others = [one for one in kept_changes(settings, run) if one.change != said["change"]]
        if len(others) >= MOST_KEPT:
            raise Refused("try kept many", most=MOST_KEPT)
        at = workshop.clock.now().isoformat()
        made = Kept(uuid.uuid4().hex[:12], at, person, said["change"], said["answer"])
        _put(settings, run, [*others, made])
    return made


def drop_change(workshop: Workshop, settings: Settings, run: str, change: str) -> None:
    """Take a change off the list; one that is gone already is no error."""
    with workshop.lock:
        _put(settings, run, [one for one in kept_changes(settings, run) if one.id != change])


def _put(settings: Settings, run: str, kept: list[Kept]) -> None:
    settings.put(_key(run), {"changes": [vars(one) for one in kept]})


def _key(run: str) -> str:
    return f"changes to try/{run}"
