"""Corrections are events that name the one they undo or amend. Nothing is edited."""

from collections.abc import Iterable, Mapping

from runboard.run.log.event import Event, amended


def press_ids(named: str) -> tuple[str, ...]:
    """The ids that one press may have: ``X``, ``X.2``, ``X.3`` and on."""
    return (named, *(f"{named}.{number}" for number in range(2, 10)))


def press_of(event_id: str) -> str:
    """The press that an event belongs to: ``X`` for ``X``, ``X.2``, ``X.3``."""
    return event_id.split(".", 1)[0]


def named_by(event: Event, arrived: Mapping[str, Event]) -> list[Event]:
    """What arrived of the press that a correction names, or of the one to which the event that it names belongs."""
    return [arrived[key] for key in press_ids(press_of(str(event.get("event")))) if key in arrived]


def voided(events: Mapping[str, Event]) -> set[str]:
    """The ids of events that never happened. An undo that is itself undone later undoes nothing."""
    undos = sorted(
        (event for event in events.values() if event.kind == "event undone"),
        key=lambda event: event.order,
        reverse=True,
    )
    void: set[str] = set()
    for undo in undos:
        if undo.id not in void:
            void.update(key for key in press_ids(undo.get("event")) if key in events)
    return void


def amendments(events: Mapping[str, Event], void: set[str]) -> dict[str, list[Event]]:
    """For each amended event its amendments, in order."""
    found: dict[str, list[Event]] = {}
    valid = (event for event in events.values() if event.kind == "event amended" and event.id not in void)
    for event in sorted(valid, key=lambda event: event.order):
        found.setdefault(event.get("event"), []).append(event)
    return found


def effective(events: Iterable[Event]) -> list[Event]:
    """The events that hold: none undone, the amended as amended."""
    by_id = {event.id: event for event in events}
    void = voided(by_id)
    changes = amendments(by_id, void)
    held = []
    for event in by_id.values():
        if event.id not in void:
            for change in changes.get(event.id, ()):
                event = amended(event, change)
            held.append(event)
    return held
