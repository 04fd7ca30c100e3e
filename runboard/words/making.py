"""What adopting a change makes of the shop, from what to what and from when on; and why there is nothing to adopt."""

from collections.abc import Iterable, Iterator
from datetime import timedelta
from typing import Any

from runboard.plan.change import Change, services_in, singles
from runboard.review.changes.adopting import Adopting
from runboard.review.changes.now import Moved
from runboard.shop.book import Book
from runboard.words.facts import date_in_words, fine_span, list_in_words, number_in_words, zone_of
from runboard.words.sentences import say, sentence


def moved_in_words(some: Iterable[Moved]) -> Iterator[str]:
    """'Drying rack places: from 5 to 6', one for each thing."""
    for one in some:
        facts = {"what": one.what, "name": one.name, "kind": one.kind or "none"}
        facts["measured"] = _measured(one)
        yield sentence("review-moved", {**facts, "before": _value(one, one.before), "after": _value(one, one.after)})


def _value(one: Moved, value: Any) -> str:
    if value in (None, ""):
        return "none"
    if isinstance(value, timedelta):
        return fine_span(value)
    if one.what == "rate":
        return number_in_words(round(100 * value, 1))
    return str(value)


def _measured(one: Moved) -> str:
    """What a time was in the run, where plans believe something else."""
    measured = fine_span(one.measured)
    return "none" if one.measured is None or measured == _value(one, one.before) else measured


def making_in_words(adopting: Adopting) -> list[str]:
    """What adopting a change makes another, and from when on."""
    moved = () if adopting.made is None else adopting.made.moved
    return [*moved_in_words(moved), *_from_when(adopting)]


def _from_when(adopting: Adopting) -> Iterator[str]:
    """From when on it holds, and what that means for a run that is open."""
    made = adopting.made
    if made is None or made.did == "noted":
        yield say("review-from", "noted")
        return
    if adopting.is_open:
        yield say("review-from", "now", _runs(adopting.is_open))
    else:
        yield say("review-from", "next")
    if adopting.keeps:
        times = any(moved.what == "time" for moved in made.moved)
        yield say("review-from", "keeps", {**_runs(adopting.keeps), "times": "yes" if times else "no"})


def _runs(names: tuple[str, ...]) -> dict[str, Any]:
    return {"count": len(names), "runs": list_in_words(names)}


def done_in_words(book: Book, change: Change, adopting: Adopting) -> str:
    """Why there is nothing to adopt; '' where there is."""
    if not adopting.is_done:
        return ""
    since = adopting.line or adopting.since
    day = "none" if since is None else date_in_words(since.at.astimezone(zone_of(book.time_zone)), with_year=True)
    if adopting.line is not None and adopting.line.did == "noted":
        return say("review-done", "noted", {"day": day})
    services = [one for one in book.services if one.key in services_in(change)]
    if len(services) == len(singles(change)):
        has = list_in_words(say("review-done", "count", {"name": one.name, "now": one.capacity}) for one in services)
        return say("review-done", "shared", {"has": has, "day": day})
    return say("review-done", "route", {"day": day})
