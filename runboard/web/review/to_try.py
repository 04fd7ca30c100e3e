"""An answer of a friend as a change to try on what was measured: the change where it says enough, else its form, filled in as
far as it does."""

from datetime import timedelta
from urllib.parse import urlencode

from runboard.floor.changing.answers import KeptAnswer
from runboard.plan.change import LEAST_PER_CENT, Change, OneVisit, Swapped, Times
from runboard.review.essentials import Essentials

_ALL = 100


def change_of(essentials: Essentials, answer: KeptAnswer) -> Change | None:
    """The change that an answer means; None where it does not say enough. What saves so many minutes a piece is tried as that
    much less of hands' time; what is eliminated, as the least of it that can be tried."""
    run, per_cent = essentials.past.run, _per_cent_left(essentials, answer)
    if per_cent is not None:
        return Times(run.id, answer.operation, "hand", per_cent)
    if answer.saves_minutes is None and answer.do == "rearrange":
        return Swapped(run.id, _first_of_two(essentials, answer))
    if answer.saves_minutes is None and answer.do == "combine":
        return OneVisit(run.id, _first_of_two(essentials, answer))
    return None


def form_of(run: str, answer: KeptAnswer) -> str:
    """The address of the form in which the rest is said."""
    query = urlencode({"what": "times", "operation": answer.operation, "kind": "hand"})
    return f"/review/runs/{run}/changes?{query}#own"


def _first_of_two(essentials: Essentials, answer: KeptAnswer) -> str:
    """The operation and the one after it; the last goes with the one before it."""
    keys = [operation.key for operation in essentials.past.run.route.product.operations]
    return keys[-2] if len(keys) > 1 and answer.operation == keys[-1] else answer.operation


def _per_cent_left(essentials: Essentials, answer: KeptAnswer) -> int | None:
    """What is left of the hands' time, in per cent; None where nobody said how much is saved, or it was not measured."""
    if answer.do == "eliminate" and answer.saves_minutes is None:
        return LEAST_PER_CENT
    happened = essentials.happened
    taken = next((bar.hands_taken for bar in happened.bars if bar.operation == answer.operation), None)
    if answer.saves_minutes is None or not taken or not happened.good:
        return None
    saved = timedelta(minutes=answer.saves_minutes) * happened.good / taken
    return min(_ALL, max(LEAST_PER_CENT, round(_ALL * (1 - saved))))
