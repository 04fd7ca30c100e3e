"""Changes to try: kept for the Review in the words in which they were answered, and carried by a run's file.

They stand beside the log, not in it: nothing happened in the shop, and a change may be taken off the list again.
"""

import uuid
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from runboard.floor.warm import find_run
from runboard.floor.workshop import KeptSettings, Workshop
from runboard.plan.change import Change, change_from_record, change_record
from runboard.run.log.event import parse_moment
from runboard.run.refusal import Refused

MOST_KEPT = 100
MOST_LETTERS = 5_000
MOST_COST = 10_000_000
_FIELD = "changes_to_try"
_TEXTS = frozenset(("id", "at", "person", "change", "answer"))


@dataclass(frozen=True)
class KeptChange:
    """A change to try, in the words in which it was answered, and as a record, by which it is tried again on what was
    measured: None for one that was kept as words alone. ``cost`` is in the shop's money, None where nobody said."""

    id: str
    at: str
    person: str
    change: str
    answer: str
    record: Mapping[str, Any] | None = None
    cost: float | None = None

    @property
    def again(self) -> Change | None:
        """The change itself; None too where this version of the program reads it no more."""
        try:
            return None if self.record is None else change_from_record(self.record)
        except Refused:
            return None

    @property
    def written(self) -> dict[str, Any]:
        """As it is kept and carried."""
        return {name: value for name, value in vars(self).items() if value is not None}


def kept_changes(settings: KeptSettings, run: str) -> list[KeptChange]:
    """The changes to try of a run, in the order in which they were kept."""
    return [KeptChange(**change) for change in settings.get(_key(run)).get("changes", [])]


def keep_change(
    workshop: Workshop,
    settings: KeptSettings,
    run: str,
    said: Mapping[str, str],
    person: str,
    change: Change | None = None,
    cost: float | None = None,
) -> KeptChange:
    """Keep a ``change`` to try; ``said`` has ``change`` and ``answer`` in words. The same change is kept once, with its newest
    answer and cost. Refused 'try kept many', 'cost wrong', and 'change wrong' for one that is out of bounds."""
    record = None if change is None else change_record(change)
    if record is not None:
        change_from_record(record)
    if cost is not None and not 0 <= cost <= MOST_COST:
        raise Refused("cost wrong", most=MOST_COST)
    find_run(workshop, run)
    with workshop.lock:
        others = [known for known in kept_changes(settings, run) if known.change != said["change"]]
        if len(others) >= MOST_KEPT:
            raise Refused("try kept many", most=MOST_KEPT)
        at = workshop.clock.now().isoformat()
        made = KeptChange(uuid.uuid4().hex[:12], at, person, said["change"], said["answer"], record, cost)
        _put(settings, run, [*others, made])
    return made


def drop_change(workshop: Workshop, settings: KeptSettings, run: str, change: str) -> None:
    """Take a change off the list; one that is gone already is no error."""
    with workshop.lock:
        _put(settings, run, [known for known in kept_changes(settings, run) if known.id != change])


# in a run's file


def with_changes(settings: KeptSettings, record: Mapping[str, Any]) -> dict[str, Any]:
    """The record of a run with its changes to try; that of a book as it is."""
    kept = kept_changes(settings, str(record.get("run", ""))) if "runboard_run" in record else []
    return {**record, _FIELD: [change.written for change in kept]} if kept else dict(record)


def changes_in(record: Mapping[str, Any]) -> list[KeptChange]:
    """The changes to try of a run's file. Refused 'file change wrong' with its number."""
    found = record.get(_FIELD, [])
    if not isinstance(found, list) or len(found) > MOST_KEPT:
        raise Refused("file change wrong", number=0)
    return list(_read(found))


def _read(some: list[Any]) -> Iterator[KeptChange]:
    for number, change in enumerate(some, 1):
        if not isinstance(change, dict) or set(change) - {"record", "cost"} != _TEXTS or not _is_change(change):
            raise Refused("file change wrong", number=number)
        yield KeptChange(**change)


def _is_change(change: Mapping[str, Any]) -> bool:
    """Whether its texts are none too long, what names it is there, and its record is one."""
    texts = [change[name] for name in _TEXTS]
    if not all(isinstance(text, str) and len(text) <= MOST_LETTERS for text in texts):
        return False
    try:
        parse_moment(change["at"])
        if "record" in change:
            change_from_record(change["record"])
        if "cost" in change and not (type(change["cost"]) in (int, float) and 0 <= change["cost"] <= MOST_COST):
            return False
    except (ValueError, Refused):
        return False
    return bool(change["id"] and change["change"])


def take_changes(workshop: Workshop, settings: KeptSettings, run: str, some: list[KeptChange]) -> None:
    """Add those of a file that are not on the run's list yet; where the same was kept here, it stays as it is."""
    with workshop.lock:
        here = kept_changes(settings, run)
        known = {change.change for change in here} | {change.id for change in here}
        fresh = [change for change in some if change.change not in known and change.id not in known]
        if fresh:
            _put(settings, run, [*here, *fresh][:MOST_KEPT])


def _put(settings: KeptSettings, run: str, kept: list[KeptChange]) -> None:
    settings.put(_key(run), {"changes": [change.written for change in kept]})


def _key(run: str) -> str:
    return f"changes to try/{run}"
