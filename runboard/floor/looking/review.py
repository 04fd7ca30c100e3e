"""What a review of a run is made of, read from the warm state: what is read goes on being written, and what is reckoned of it
holds up nobody."""

from runboard.floor.looking.look_back import estimates_now
from runboard.floor.warm import find_run
from runboard.floor.workshop import Workshop
from runboard.review.past import Past, beside, days_of, within
from runboard.run.fold.ledger import CORRECTIONS
from runboard.shop.hours import local_day


def past_of(workshop: Workshop, run: str) -> Past:
    """Everything that a review of a run asks of the shop. Refused 'run unknown'."""
    now = workshop.clock.now()
    with workshop.lock:
        found, state, book = find_run(workshop, run), workshop.ledger.state, workshop.book
        days = days_of(found, book, now)
        events = list(within(workshop.ledger.held, days))
        named = [str(event.get("event")) for event in events if event.kind in CORRECTIONS]
        known = workshop.ledger.arrived
        arrived = {id_: known[id_] for id_ in (*(event.id for event in events), *named) if id_ in known}
    estimates, opened = estimates_now(workshop), local_day(found.opened_at, book.time_zone)
    return Past(
        book, beside(state, found, days), found, events, arrived, now, estimates.before(found.id, opened), estimates
    )
