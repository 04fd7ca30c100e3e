"""What a review of a run is made of, read from the warm state: what is read goes on being written, and what is reckoned of it
holds up nobody."""

from dataclasses import replace

from runboard.floor.looking.at_hand import book_at, made_once
from runboard.floor.looking.look_back import estimates_now
from runboard.floor.warm import find_run
from runboard.floor.workshop import Workshop
from runboard.review.essentials import Essentials, essentials_of
from runboard.review.happened import planned
from runboard.review.happened.planned import Planned
from runboard.review.opening import opening_of
from runboard.review.past import Past, beside, days_of, within
from runboard.run.fold.ledger import CORRECTIONS
from runboard.run.fold.state import RunState
from runboard.run.log.corrections import press_ids, press_of
from runboard.run.log.event import Event
from runboard.shop.book import Book
from runboard.shop.hours import local_day


def essentials_at(workshop: Workshop, run: str) -> Essentials:
    """The review of a run as far as it is worked out. Refused 'run unknown', 'review failed'."""
    if workshop.reviews is None:
        return quick_at(workshop, run)
    found: Essentials = workshop.reviews.essentials(run)
    return found


def quick_at(workshop: Workshop, run: str) -> Essentials:
    """What is quick of a run's review, made once for as long as nobody presses or saves anything; of a run that is open once
    a minute. Refused 'run unknown'."""
    found, now = find_run(workshop, run), workshop.clock.now()
    stands = (workshop.ledger.last_seq, workshop.book.revision, now.replace(second=0, microsecond=0))

    def made() -> Essentials:
        past = past_of(workshop, run)
        return essentials_of(past, planned_of(workshop, past))

    return made_once(workshop, "review", run, stands if found.state == "open" else stands[:2], made)


def planned_of(workshop: Workshop, past: Past) -> Planned:
    """The plan of a run's opening: made once, since nothing that is pressed later changes it."""
    kept: dict[str, tuple[object, Planned]] = workshop.kept.setdefault("planned", {})
    of = (opening_of(past), past.book.revision)
    if past.run.id not in kept or kept[past.run.id][0] != of:
        kept[past.run.id] = (of, planned.planned_of(past))
    return kept[past.run.id][1]


def past_of(workshop: Workshop, run: str) -> Past:
    """Everything that a review of a run asks of the shop. Refused 'run unknown'."""
    now = workshop.clock.now()
    with workshop.lock:
        found, state, book = find_run(workshop, run), workshop.ledger.state, workshop.book
        days = days_of(found, book, now)
        events = list(within(workshop.ledger.held, days))
        named = [
            id_ for event in events if event.kind in CORRECTIONS for id_ in press_ids(press_of(str(event.get("event"))))
        ]
        known = workshop.ledger.arrived
        arrived = {id_: known[id_] for id_ in (*(event.id for event in events), *named) if id_ in known}
    book = _book_then(workshop, book, found, next((event for event in events if _opens(event, run)), None))
    estimates, opened = estimates_now(workshop), local_day(found.opened_at, book.time_zone)
    return Past(
        book, beside(state, found, days), found, events, arrived, now, estimates.before(found, opened), estimates
    )


def _opens(event: Event, run: str) -> bool:
    return event.kind == "run opened" and event.run == run


def _book_then(workshop: Workshop, book: Book, run: RunState, opened: Event | None) -> Book:
    """The book as it was when the run was opened: a run is looked back at in the shop that it was made in. The one of now
    where nobody knows, as for a run that came from another shop with a file."""
    revision = 0 if opened is None else opened.get("book_revision", 0)
    if not 0 < revision < book.revision:
        return book
    then = book_at(workshop, revision)
    is_its_own = all(then.station(operation.station) for operation in run.route.product.operations)
    return replace(then, earlier=book.earlier) if is_its_own else book
