"""What people's own presses do: they come, go, are called away, take up a small job, decline a move."""

from collections.abc import Callable, Mapping
from datetime import datetime, timedelta

from runboard.run.change import replace
from runboard.run.fold.draft import Draft, put
from runboard.run.fold.hands import free_hands
from runboard.run.fold.state import EMPTY, Span
from runboard.run.log.event import Event, parse_moment
from runboard.run.refusal import Refused


def _moment(event: Event, field: str) -> datetime | None:
    text = event.get(field)
    return parse_moment(text) if text else None


def came(draft: Draft, event: Event) -> None:
    person = draft.person(event.person)
    until = _moment(event, "until") or person.until
    room = event.get("room") or person.room
    came_at, name = person.came_at or event.moment, event.get("name") or person.name
    draft.put_person(replace(person, came_at=came_at, until=until, room=room, away=False, name=name))


def went(draft: Draft, event: Event) -> None:
    free_hands(draft, event.person, event.moment, measured=False)
    person = draft.person(event.person)
    draft.put_person(
        replace(person, came_at=None, until=None, room="", away=False, declined=EMPTY, went_at=event.moment)
    )


def called_away(draft: Draft, event: Event) -> None:
    free_hands(draft, event.person, event.moment, measured=False)
    draft.put_person(replace(draft.person(event.person), away=True))


def came_back(draft: Draft, event: Event) -> None:
    draft.put_person(replace(draft.person(event.person), away=False))


def changed_room(draft: Draft, event: Event) -> None:
    draft.put_person(replace(draft.person(event.person), room=event.get("room")))


def said_time(draft: Draft, event: Event) -> None:
    person = draft.person(event.person)
    came_at = person.came_at or event.moment
    draft.put_person(replace(person, came_at=came_at, until=_moment(event, "until")))


def started_job(draft: Draft, event: Event) -> None:
    free_hands(draft, event.person, event.moment, measured=False)
    person = draft.person(event.person)
    draft.put_person(replace(person, hands=("", event.get("job")), hands_since=event.moment, away=False))


def did_job(draft: Draft, event: Event) -> None:
    person = draft.person(event.person)
    if person.hands == ("", event.get("job")):
        draft.put_person(replace(person, hands=None, hands_since=None))
    draft.changes["jobs_done"] = put(draft.shop("jobs_done"), event.get("job"), event.moment)


def declined(draft: Draft, event: Event) -> None:
    person = draft.person(event.person)
    until = event.get("until") or ""
    draft.put_person(replace(person, declined=put(person.declined, event.get("move"), until)))


def shown(draft: Draft, event: Event) -> None:
    person = draft.person(event.get("person"))
    if event.station not in person.shown:
        draft.put_person(replace(person, shown=(*person.shown, event.station)))


def answered_span(draft: Draft, event: Event) -> None:
    """A span over twice its estimate: all of it, about so many minutes, or unknown and so never learned from."""
    load = draft.load(event.run, event.load)
    if load is None:
        raise Refused("load unknown", load=event.load)
    spans = tuple(_answered(span, event) if span.event == event.get("span") else span for span in load.spans)
    draft.put_load(replace(load, spans=spans))


def _answered(span: Span, event: Event) -> Span:
    answer = event.get("answer")
    if answer == "unknown":
        return replace(span, measured=False)
    if answer == "about" and event.get("minutes") is not None:
        return replace(span, ended_at=span.began_at + timedelta(minutes=event.get("minutes")), measured=False)
    return replace(span, measured=span.ended_at is not None)


HANDLERS: Mapping[str, Callable[[Draft, Event], None]] = {
    "person came": came,
    "person went": went,
    "person called away": called_away,
    "person came back": came_back,
    "room changed": changed_room,
    "time said": said_time,
    "job started": started_job,
    "job done": did_job,
    "move declined": declined,
    "shown how": shown,
    "span answered": answered_span,
}
