"""Which time elements of a run matter: those far off their guess, or that moved most of the run's minutes."""

from datetime import timedelta

from runboard.review.measured.study import ElementStudy, TimeStudy
from runboard.shop.product import ZERO

MOST = 3
# Nearer to its guess than this no element matters by itself, however many there were.
FAR_OFF = 0.2
_LEAST = 0.1  # of all that moved


def what_matters(study: TimeStudy, named: str = "") -> list[ElementStudy]:
    """At most three that were measured: those of the operation that is ``named`` furthest from its guess, then the others, each
    time the one that moved the run most first."""
    whole = sum((moved(each) for each in study.elements), ZERO)
    asked = [
        each
        for each in study.elements
        if each.n and whole and moved(each) >= _LEAST * whole
        if each.operation == named or _off(each) > FAR_OFF or moved(each) > whole / 2
    ]
    return sorted(asked, key=lambda each: (each.operation == named, moved(each)), reverse=True)[:MOST]


def moved(study: ElementStudy) -> timedelta:
    """How far all of an element in the run lay off its guess, up or down, as far as it is known."""
    return ZERO if study.taken_total is None else abs(study.taken_total - study.guessed_of_taken)


def _off(study: ElementStudy) -> float:
    return abs(study.median / study.guess - 1) if study.guess and study.median is not None else 0.0
