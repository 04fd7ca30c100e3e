"""What every page of a review looks at, and how its figures are written."""

from datetime import timedelta

from runboard.floor.looking import review as looking
from runboard.review.essentials import Essentials, essentials_of, weighed
from runboard.run.refusal import Refused
from runboard.web.door.pages import workshop
from runboard.words.facts import exact_span_in_words, span_in_words

# Refused for what takes long alone: it failed for good, or has to wait for other long work.
_FAILED = "review failed"
_OF_THE_REPLAY = (_FAILED, "try busy")
_FINE_BELOW = timedelta(minutes=20)
_FINE = timedelta(seconds=5)
_SECOND = timedelta(seconds=1)
_MINUTE = timedelta(minutes=1)


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


def fine_span(span: timedelta | None) -> str:
    """A time element, of which seconds matter: '2 min 40 s', '48 s', '38 min'; '–' where there is none."""
    if span is None or span >= _FINE_BELOW:
        return span_in_words(span)
    return exact_span_in_words(fine(span))


def fine(span: timedelta) -> timedelta:
    """The length that ``fine_span`` says: what is reckoned beside it is reckoned with no other."""
    step = _MINUTE if span >= _FINE_BELOW else _FINE if span >= _MINUTE else _SECOND
    return round(span / step) * step


def minutes_of(span: timedelta) -> float:
    """For a chart."""
    return span / timedelta(minutes=1)
