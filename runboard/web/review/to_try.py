"""An answer of a friend as a change to try on what was measured: the change where it says enough, else its form, filled in as
far as it does."""

from datetime import timedelta
from urllib.parse import urlencode

from runboard.floor.changing.answers import KeptAnswer
from runboard.plan.change import LEAST_PER_CENT, Change, OneVisit, Swapped, Times
from runboard.review.essentials import Essentials
from runboard.run.fold.state import RunState
from runboard.words.facts import number_in_words
from runboard.words.sentences import say

_ALL = 100


def change_of(essentials: Essentials, answer: KeptAnswer) -> Change | None:
    """The change that an answer means; None where it does not say enough. What saves so many minutes a piece is tried as that
    much less of the work by hand, or of all the times of an operation without any; what is eliminated, as the least of them
    that can be tried."""
    run, per_cent = essentials.past.run, _per_cent_left(essentials, answer)
    if per_cent is not None:
        return Times(run.id, answer.operation, _kind(run, answer), per_cent)
    if answer.saves_minutes is None and answer.do == "rearrange":
        return Swapped(run.id, _first_of_two(run, answer))
    if answer.saves_minutes is None and answer.do == "combine":
        return OneVisit(run.id, _first_of_two(run, answer))
    return None


def said_of(answer: KeptAnswer) -> str:
    """How it was said and by whom, which stays with the change that comes of it: 'Ana’s idea: 1 min less a piece. Why two cloths?'"""
    saves = "none" if answer.saves_minutes is None else number_in_words(answer.saves_minutes)
    facts = {"friend": answer.friend or "none", "do": answer.do, "minutes": saves, "why": answer.why or "none"}
    return say("review-change", "friend", facts)


def form_of(run: RunState, answer: KeptAnswer) -> str:
    """The address of the form in which the rest is said."""
    query = urlencode({"what": "times", "operation": answer.operation, "kind": _kind(run, answer)})
    return f"/review/runs/{run.id}/changes?{query}#own"


def _kind(run: RunState, answer: KeptAnswer) -> str:
    """The time element that is changed: hand where the operation has hand time, '' for each of them."""
    passes = [one.pass_ for one in run.route.steps if one.operation.key == answer.operation]
    return "hand" if any(one.hand for one in passes) else ""


def _first_of_two(run: RunState, answer: KeptAnswer) -> str:
    """The operation and the one after it; the last goes with the one before it."""
    keys = [operation.key for operation in run.route.product.operations]
    return keys[-2] if len(keys) > 1 and answer.operation == keys[-1] else answer.operation


def _per_cent_left(essentials: Essentials, answer: KeptAnswer) -> int | None:
    """What is left of that time, in per cent; None where nobody said how much is saved, or it was not measured."""
    if answer.do == "eliminate" and answer.saves_minutes is None:
        return LEAST_PER_CENT
    happened = essentials.happened
    bar = next((bar for bar in happened.bars if bar.operation == answer.operation), None)
    taken = bar and (bar.hands_taken if _kind(essentials.past.run, answer) else bar.taken)
    if answer.saves_minutes is None or not taken or not happened.good:
        return None
    saved = timedelta(minutes=answer.saves_minutes) * happened.good / taken
    return min(_ALL, max(LEAST_PER_CENT, round(_ALL * (1 - saved))))
