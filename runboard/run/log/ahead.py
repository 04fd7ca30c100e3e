"""Events that are dated after now. None is taken; a log that has some all the same is put right by corrections.

Such a log is left by a server's clock that ran ahead for a while, or by a version that took what a phone said.
"""

from bisect import bisect_right
from collections.abc import Mapping, Sequence, Set
from datetime import datetime, timedelta
from typing import Any

from runboard.run.log.corrections import amendments, voided
from runboard.run.log.event import Event, parse_moment, write_moment
from runboard.run.refusal import Refused

MOST_AHEAD = timedelta(minutes=1)
_TICK = timedelta(milliseconds=1)


def check_not_ahead(event: Event, now: datetime) -> None:
    """Refused 'ahead' where an event, or the moment that an amendment gives to one, lies more than a minute after now."""
    says = event.get("at") if event.kind == "event amended" else None
    moment = parse_moment(says) if says is not None else event.moment
    if max(moment, event.moment) > now + MOST_AHEAD:
        raise Refused("ahead", at=max(moment, event.moment), now=now)


def ahead(held: Sequence[Event], now: datetime) -> Sequence[Event]:
    """Those of the events, in the fold's order, that lie more than a minute after now."""
    return held[bisect_right(held, now + MOST_AHEAD, key=lambda event: event.moment) :]


def last_known(held: Sequence[Event], now: datetime) -> datetime | None:
    """The moment of the last event of this minute or before; what is dated further ahead counts for nothing."""
    last = len(held) - len(ahead(held, now))
    return held[last - 1].moment if last else None


def after_all(held: Sequence[Event], now: datetime) -> datetime:
    """Now, or a millisecond after the last that is known: what the server makes comes after that."""
    last = last_known(held, now)
    return now if last is None else max(now, last + _TICK)


def corrections(arrived: Mapping[str, Event], held: Sequence[Event], now: datetime) -> list[tuple[str, dict[str, Any]]]:
    """The corrections (kind and body, in order) after which no event that holds lies ahead of now.

    An event that came ahead gets the moment of its arrival: after all that arrived before it. One that an amendment
    brought there goes back to its own.
    """
    changes = amendments(arrived, voided(arrived))
    late = [event.id for event in ahead(held, now)]
    # An amendment that is itself dated ahead would be read after any that is made now.
    wrong = {key: [event for event in changes.get(key, ()) if event.moment > now] for key in late}
    gone = {event.id for found in wrong.values() for event in found}
    places = _places(arrived, {event.id: event.moment for event in held}, set(late), now)
    made: list[tuple[str, dict[str, Any]]] = [("event undone", {"event": key}) for key in sorted(gone)]
    for key in late:
        if key not in gone:
            own = arrived[key].moment
            body = {name: value for event in wrong[key] for name, value in (event.get("body") or {}).items()}
            at = {"event": key, "at": write_moment(own if own <= now else places[key])}
            made.append(("event amended", {**at, "body": body} if body else at))
    return made


def _places(
    arrived: Mapping[str, Event], held: Mapping[str, datetime], late: Set[str], now: datetime
) -> dict[str, datetime]:
    """For each event that is ahead a moment: after all that arrived before it, and before the first where nothing did."""
    first = min((moment for key, moment in held.items() if key not in late), default=now)
    latest, places = min(first, now) - _TICK * (len(late) + 1), {}
    for key in sorted(arrived, key=lambda key: arrived[key].seq):
        if key in late:
            places[key] = latest = min(latest + _TICK, now)
        elif key in held:
            latest = max(latest, held[key])
    return places
