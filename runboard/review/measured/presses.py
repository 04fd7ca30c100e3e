"""Which presses would tell the most next time: of how much of the run nothing is known for want of each, by the guess."""

from collections.abc import Iterable
from datetime import timedelta

from runboard.plan.observed import GOING_ON, INTERRUPTED, LOADED_AGAIN, NO_END, NO_LENGTH, TAKEN_OFF
from runboard.review.measured.seen import ASSUMED, OUT_OF_RANGE, OVERLAPPING, PAPER, Seen
from runboard.review.measured.study import Press
from runboard.shop.product import ZERO

MOST = 3
# The press that would have told it, by why it is not known; where nothing was pressed, the press that begins it.
_TOLD_BY = {
    NO_END: "machine ended",
    OVERLAPPING: "load done",
    INTERRUPTED: "load put aside",
    OUT_OF_RANGE: "load put aside",
    LOADED_AGAIN: "load stopped",
}
_BEGUN_BY = {
    "loading": "load started",
    "hand": "load started",
    "machine": "machine started",
    "unloading": "unloading started",
}
# What nobody could have pressed better.
_NO_PRESS = frozenset((GOING_ON, TAKEN_OFF))


def presses_that_tell(unknown: Iterable[tuple[Seen, timedelta]]) -> tuple[Press, ...]:
    """The three that tell most, from what is not known with its guess."""
    found: dict[tuple[str, str, str], timedelta] = {}
    for seen, guess in unknown:
        press = _press(seen)
        if press and guess:
            key = (press, seen.step.key, seen.step.name)
            found[key] = found.get(key, ZERO) + guess
    ranked = sorted(found.items(), key=lambda one: (-one[1], one[0]))
    return tuple(Press(press, step, name, length) for (press, step, name), length in ranked[:MOST])


def _press(seen: Seen) -> str:
    if seen.why in _NO_PRESS:
        return ""
    if seen.why in (NO_LENGTH, ASSUMED, PAPER):
        return _BEGUN_BY.get(seen.kind, "")
    if seen.why == OUT_OF_RANGE and seen.kind == "machine":
        return "machine ended"
    return _TOLD_BY.get(seen.why, "")
