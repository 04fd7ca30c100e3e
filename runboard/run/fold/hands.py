"""Hands and stations: who is at which load, since when; a person and a station are in one place at a time."""

from collections.abc import Callable
from datetime import datetime

from runboard.run.change import replace
from runboard.run.fold.draft import Draft
from runboard.run.fold.state import Load, PersonState, Span
from runboard.run.log.event import Event
from runboard.run.refusal import Refused


def begin_span(load: Load, kind: str, person: str, moment: datetime, event: str, measured: bool) -> Load:
    """``load`` with a span that begins now."""
    return replace(load, spans=(*load.spans, Span(kind, person, moment, None, measured, event)))


def end_spans(
    load: Load, moment: datetime, measured: bool = True, which: Callable[[Span], bool] = lambda span: True
) -> Load:
    """``load`` with its open spans ended at ``moment``; ``measured`` is false where that end was not pressed."""
    if all(span.ended_at is not None or not which(span) for span in load.spans):
        return load
    spans = tuple(
        replace(span, ended_at=moment, measured=span.measured and measured)
        if span.ended_at is None and which(span)
        else span
        for span in load.spans
    )
    return replace(load, spans=spans)


def take_hands(draft: Draft, load: Load, event: Event, kind: str) -> Load:
    """The person's hands are at ``load`` now and nowhere else; a second person joins."""
    moment, key = event.moment, event.person
    free_hands(draft, key, moment, measured=False)
    load = draft.load(load.run, load.id) or load
    if not key:
        return load
    person = draft.person(key)
    station = draft.book.station(load.station)
    room = station.room if station else person.room
    draft.put_person(
        replace(person, hands=(load.run, load.id), hands_since=moment, away=False, room=room, seen_at=moment)
    )
    load = begin_span(load, kind, key, moment, event.id, event.basis == "tapped")
    return replace(load, people=(*(person for person in load.people if person != key), key))


def free_hands(draft: Draft, person_key: str, moment: datetime, measured: bool) -> None:
    """Whatever the person's hands were at, they leave it; its span ends. A load keeps its station."""
    person = draft.person(person_key)
    if person.hands is None:
        return
    run, key = person.hands
    load = draft.load(run, key) if run else None
    if load is not None:
        load = end_spans(load, moment, measured, lambda span: span.person == person_key and span.kind != "machine")
        draft.put_load(replace(load, people=tuple(person for person in load.people if person != person_key)))
    draft.put_person(replace(person, hands=None, hands_since=None))


def stand_by(draft: Draft, person_key: str, load: Load) -> None:
    """The person was last seen where ``load`` is."""
    station = draft.book.station(load.station)
    if person_key and station is not None:
        draft.put_person(replace(draft.person(person_key), room=station.room, away=False))


def unhand(draft: Draft, person_key: str, load: Load) -> None:
    """The person's hands leave ``load`` if they are at it."""
    person: PersonState = draft.person(person_key)
    if person.hands == (load.run, load.id):
        draft.put_person(replace(person, hands=None, hands_since=None))


def busy(draft: Draft, held_by: tuple[str, str]) -> Refused:
    """The refusal that names what is on the station: the ``(run, load)`` that holds it."""
    load = draft.load(*held_by)
    step = draft.run(load.run).step_of(load) if load else None
    return Refused(
        "station busy",
        station=draft.station_name(load.station) if load else "",
        step=step.name if step else (load.step if load else ""),
        trays=list(load.pieces) if load else [],
        state=load.state if load else "",
        run=held_by[0],
        load=held_by[1],
    )


def leave_station(draft: Draft, load: Load) -> None:
    """The station that ``load`` held is free."""
    station = draft.station(load.station)
    if station.load == (load.run, load.id):
        draft.put_station(replace(station, load=None))
