"""A run of a made-up shop as a review looks back at it."""

from runboard.plan.estimates import Estimates, estimates_from
from runboard.review.past import Past, beside, days_of, within
from tests.simulated.history import History


def past_of(history: History, run: str = "r1") -> Past:
    """One run, looked back at once its history is over; nothing is believed before the first."""
    state, now = history.state, history.now
    found = state.runs[run]
    days = days_of(found, history.book, now)
    events = list(within(history.events, days))
    earlier = {key: other for key, other in state.runs.items() if other.opened_at < found.opened_at}
    return Past(
        history.book,
        beside(state, found, days),
        found,
        events,
        {event.id: event for event in events},
        now,
        estimates_of(history, len(earlier)),
        estimates_of(history, len(state.runs)),
    )


def estimates_of(history: History, runs: int) -> Estimates:
    """The times as they are learned after the first so many runs."""
    state = history.state
    first = dict(list(state.runs.items())[:runs])
    return estimates_from(history.state_with(first), history.book)
