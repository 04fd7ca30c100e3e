"""A run as it was opened: what a plan was made of then, and what a replay begins with."""

from collections.abc import Collection
from dataclasses import replace

from runboard.review.past import Past
from runboard.run.fold.fold import apply
from runboard.run.fold.state import ShopState
from runboard.run.log.event import Event

# What somebody said of the run later on and a replay knows from its beginning.
REVISED = frozenset(("route revised",))
# And what changed how much there was to make.
ENLARGED = frozenset(("board added",))


def opening_state(past: Past, later: Collection[str] = REVISED) -> ShopState:
    """The shop with this run alone as it was opened: nothing begun, nobody come, every station bare.

    ``later`` are the kinds of events of the run that are known beforehand: its later routes, unless it is said otherwise; for
    the plan as it was at the opening none. A shop without runs where the opening itself is not known.
    """
    opened = opening_of(past)
    if opened is None:
        return ShopState()
    state = apply(ShopState(), opened, past.book)
    for event in past.events:
        if event.run == past.run.id and event.kind in later:
            state = apply(state, event, past.book)
    # What is revised before anything is begun always fits; what does not was of a tray that the run never had.
    return replace(ShopState(), runs=state.runs)


def opening_of(past: Past) -> Event | None:
    """The event that opened the run, as it holds; as it arrived where that is all that is known."""
    return next((event for event in (*past.events, *past.arrived.values()) if _opens(past, event)), None)


def _opens(past: Past, event: Event) -> bool:
    return event.kind == "run opened" and event.run == past.run.id
