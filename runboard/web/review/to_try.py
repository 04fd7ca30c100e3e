"""An answer of a friend as a change to try: the form of the changes' page, filled in as far as the answer says."""

from datetime import timedelta
from urllib.parse import urlencode

from runboard.floor.changing.answers import KeptAnswer
from runboard.plan.change import LEAST_PER_CENT
from runboard.review.essentials import Essentials

_ALL = 100


def address_to_try(essentials: Essentials, answer: KeptAnswer) -> str:
    """The page on which it is tried, with what is known of it: the operation, and by how much."""
    query = urlencode(_filled_in(essentials, answer))
    return f"/review/runs/{essentials.past.run.id}/changes?{query}"


def _filled_in(essentials: Essentials, answer: KeptAnswer) -> dict[str, str]:
    if answer.do == "rearrange" and answer.saves_minutes is None:
        return {"what": "order", "first": answer.operation}
    if answer.do == "combine" and answer.saves_minutes is None:
        return {"what": "visit", "first": answer.operation}
    found = {"what": "times", "operation": answer.operation, "kind": "hand"}
    per_cent = per_cent_left(essentials, answer)
    return found if per_cent is None else {**found, "per_cent": str(per_cent)}


def per_cent_left(essentials: Essentials, answer: KeptAnswer) -> int | None:
    """What is left of the hands' time of a piece, in per cent; None where nobody said how much is saved, or it was not
    measured. What is eliminated is tried as the least that can be tried."""
    if answer.do == "eliminate" and answer.saves_minutes is None:
        return LEAST_PER_CENT
    happened = essentials.happened
    taken = next((bar.hands_taken for bar in happened.bars if bar.operation == answer.operation), None)
    if answer.saves_minutes is None or not taken or not happened.good:
        return None
    saved = timedelta(minutes=answer.saves_minutes) * happened.good / taken
    return min(_ALL, max(LEAST_PER_CENT, round(_ALL * (1 - saved))))
