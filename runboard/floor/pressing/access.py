"""Which kinds of events a device may make, by the table of kinds. A kind that is not in it is nobody's to press.

What each press of a guest may say is looked at in ``guest_rights.py``.
"""

from collections.abc import Iterator, Mapping

from runboard.run.log.corrections import named_by
from runboard.run.log.event import Event
from runboard.run.log.kinds import KINDS
from runboard.run.refusal import Refused

LEAD, CREW, GUEST = "lead", "crew", "guest"

# By the least access that a kind asks for, those that may make it; what the server records itself is nobody's.
_MAY: Mapping[str, tuple[str, ...]] = {"guest": (GUEST, CREW, LEAD), "crew": (CREW, LEAD), "lead": (LEAD,)}
# These change what another event did, so they need that event's right too.
_NAMING = ("event undone", "event amended", "entry settled")


def may_make(access: str, kind: str) -> bool:
    """Whether a device of that access may make an event of that kind."""
    known = KINDS.get(kind)
    return known is not None and access in _MAY.get(known.least, ())


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
        told = waiting.pop()
        yield told.kind
        if told.kind in _NAMING:
            named = named_by(told, arrived)
            waiting += [found for found in named if found.id not in known]
            known |= {found.id for found in named}
