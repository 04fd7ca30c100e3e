"""Which kinds of events a device may make: one table, pure. A kind that is not in it is nobody's to press.

The lead's devices make every event that a person makes. Crew works: what Now and Trays offer. What the run is (its
opening, its end, its orders, its route) and what one person gives or shows another is the lead's. A guest has one tray:
its steps, its pieces, its alerts; what each of their presses may say is looked at in ``guest_rights.py``.
"""

from collections.abc import Iterator, Mapping

from runboard.run.fold.fold import press_of
from runboard.run.log.event import Event
from runboard.run.refusal import Refused

LEAD, CREW, GUEST = "lead", "crew", "guest"

_LEAD = frozenset({LEAD})
_CREW = frozenset({LEAD, CREW})
_GUEST = frozenset({LEAD, CREW, GUEST})
# What the server and its sensors record themselves.
_NOBODY: frozenset[str] = frozenset()

MAY_MAKE: Mapping[str, frozenset[str]] = {
    "person came": _CREW,
    "person went": _CREW,
    "person called away": _CREW,
    "person came back": _CREW,
    "room changed": _CREW,
    "time said": _CREW,
    "job started": _CREW,
    "job done": _CREW,
    "move declined": _CREW,
    "span answered": _CREW,
    "station out of use": _CREW,
    "station back in use": _CREW,
    "setup changed": _CREW,
    "checklist ticked": _GUEST,
    "signal received": _NOBODY,
    "alert claimed": _GUEST,
    "alert answered": _GUEST,
    "watch checked": _GUEST,
    "watch taken": _GUEST,
    "reminder answered": _CREW,
    "server restarted": _NOBODY,
    "restart answered": _CREW,
    "run opened": _LEAD,
    "run finished": _LEAD,
    "run abandoned": _LEAD,
    "orders changed": _LEAD,
    "route revised": _LEAD,
    "board added": _LEAD,
    "board lost": _CREW,
    "supply out": _CREW,
    "supply in": _CREW,
    "first piece checked": _GUEST,
    "first piece decided": _CREW,
    "operation given": _LEAD,
    "look given": _LEAD,
    "note written": _GUEST,
    "lead called": _GUEST,
    "load started": _GUEST,
    "machine started": _GUEST,
    "machine ended": _GUEST,
    "unloading started": _GUEST,
    "load done": _GUEST,
    "load stopped": _GUEST,
    "stop settled": _CREW,
    "load put aside": _GUEST,
    "load taken off": _CREW,
    "pieces counted": _GUEST,
    "pieces moved": _CREW,
    "pieces held": _CREW,
    "pieces released": _CREW,
    "wait ended": _CREW,
    "wood noted": _CREW,
    "texts placed": _CREW,
    "card printed": _LEAD,
    "shown how": _LEAD,
    "event undone": _GUEST,
    "event amended": _CREW,
    "entry settled": _CREW,
}
# These change what another event did, so they need that event's right too.
_NAMING = ("event undone", "event amended", "entry settled")


def may_make(access: str, kind: str) -> bool:
    """Whether a device of that access may make an event of that kind."""
    return access in MAY_MAKE.get(kind, _NOBODY)


def check_access(access: str, event: Event, arrived: Mapping[str, Event]) -> None:
    """Refused 'access' where a device of that access may not make the event, or not the one that it corrects.

    ``arrived`` are the events that came before, by their ids.
    """
    for kind in _kinds_touched(event, arrived):
        if not may_make(access, kind):
            raise Refused("access", kind=kind, access=access)


def _kinds_touched(event: Event, arrived: Mapping[str, Event]) -> Iterator[str]:
    """The event's own kind, and those of the press that it corrects; a correction of a correction leads on."""
    waiting, known = [event], {event.id}
    while waiting:
        one = waiting.pop()
        yield one.kind
        if one.kind in _NAMING:
            press = press_of(str(one.get("event")))
            named = [arrived[key] for key in (press, *(f"{press}.{at}" for at in range(2, 10))) if key in arrived]
            waiting += [found for found in named if found.id not in known]
            known |= {found.id for found in named}
