"""What every page of a review looks at, and how its figures are written."""

from datetime import timedelta

from runboard.floor.looking import review as looking
from runboard.review.essentials import Essentials, essentials_of, weighed
from runboard.run.refusal import Refused
from runboard.web.door.pages import workshop

# Refused for what takes long alone: it failed for good, or has to wait for other long work.
_FAILED = "review failed"
_OF_THE_REPLAY = (_FAILED, "try busy")


def review_of(key: str) -> Essentials:
    """The review of a run as far as it is worked out. What could not be is left out of it: the rest says what happened all the
    same. Refused 'run unknown'."""
    try:
        return looking.essentials_at(workshop(), key)
    except Refused as refused:
        if refused.code not in _OF_THE_REPLAY:
            raise
        quick = essentials_of(looking.past_of(workshop(), key))
        return weighed(quick, None) if refused.code == _FAILED else quick


def minutes_of(span: timedelta) -> float:
    """For a chart."""
    return span / timedelta(minutes=1)
