"""One pure fold over the shop: events by corrected moment make the state. It never refuses; what does not fit is
listed under 'to settle'."""

from collections.abc import Iterable

from runboard.run.care import care, sight
from runboard.run.change import replace
from runboard.run.fold import changes, people, run_events, said, shop_events
from runboard.run.fold.draft import Draft, put, without
from runboard.run.fold.settle import force
from runboard.run.fold.state import ShopState, Unsettled
from runboard.run.fold.table import kinds_of, transit
from runboard.run.log.corrections import effective, press_of
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from runboard.run.supplies import noting
from runboard.shop.book import Book

# 'Undo' of the last press is always in reach on a phone: it must not take back a whole run.
NOT_UNDONE_IN_PASSING = frozenset(
    (
        "run opened",
        "run finished",
        "run abandoned",
        "orders changed",
        "route revised",
        "change adopted",
        "change judged",
        "event undone",
        "event amended",
    )
)

HANDLERS = {
    **people.HANDLERS,
    **shop_events.HANDLERS,
    **run_events.HANDLERS,
    **changes.HANDLERS,
    **noting.HANDLERS,
}


def fold(book: Book, events: Iterable[Event]) -> ShopState:
    """The state that these events make, in whatever order they come."""
    state = ShopState()
    for event in sorted(effective(events), key=lambda event: event.order):
        state = apply(state, event, book)
    return state


def apply(state: ShopState, event: Event, book: Book) -> ShopState:
    """One event more. The event is the latest so far, by corrected moment."""
    draft = Draft(state, book)
    try:
        take(draft, event)
    except Refused as refusal:
        draft = Draft(state, book)
        _list_unsettled(draft, event, refusal)
        care.note_unfit(draft, event)
        said.note_unfit(draft, event)
    else:
        care.note(draft, event)
        said.forget(draft, event)
    sight.note(draft, event)
    _note_seen(draft, event)
    return draft.finish()


def take(draft: Draft, event: Event) -> None:
    """Let one event change the draft; refused where it does not fit."""
    if event.kind in kinds_of("load") or event.kind in kinds_of("tray"):
        transit(draft, event)
    elif event.kind == "entry settled":
        _settle(draft, event)
    else:
        handler = HANDLERS.get(event.kind)
        if handler is None:
            raise Refused("kind unknown", kind=event.kind)
        handler(draft, event)


def _settle(draft: Draft, event: Event) -> None:
    """What becomes of a press that did not fit: the shop's version stays, or the press is made to fit."""
    entry = draft.base.unsettled.get(event.get("event"))
    if entry is None:
        raise Refused("nothing to settle", event=event.get("event"))
    draft.changes["unsettled"] = without(draft.base.unsettled, entry.event)
    # A settlement that did not fit is let go: forced, one that names itself would never end.
    if event.get("keep") == "press" and entry.kind != event.kind:
        force(draft, entry, replace(entry.source, at=event.moment, offset_ms=0), take)
        said.forget(draft, entry.source)


def _list_unsettled(draft: Draft, event: Event, refusal: Refused) -> None:
    entry = Unsettled(
        event.id,
        event.kind,
        event.run,
        event.load or event.tray or event.station,
        event.person,
        event.moment,
        refusal.code,
        refusal.facts,
        replace(event, seq=0),  # the order of arrival is no part of the state
    )
    draft.changes["unsettled"] = put(draft.base.unsettled, event.id, entry)


def _note_seen(draft: Draft, event: Event) -> None:
    if event.person and event.basis != "paper":  # what a card says was not pressed, and is not undone in passing
        person = draft.person(event.person)
        last = "" if event.kind in NOT_UNDONE_IN_PASSING else press_of(event.id)
        draft.put_person(replace(person, seen_at=event.moment, last=last))
