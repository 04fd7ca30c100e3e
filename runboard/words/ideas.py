"""A change of a review as a habit: how it is told of the runs to come, whatever day it was tried on."""

from datetime import datetime, time, timedelta

from runboard.plan.change import Change, Helper, HoursAdded, OnePersonMore, Several, Times
from runboard.review.changes.seen import has_jig
from runboard.run.fold.state import RunState
from runboard.shop.book import Book
from runboard.words.facts import date_in_words, list_in_words, span_in_words
from runboard.words.sentences import sentence
from runboard.words.trying import operation_name, person_name, words_of_change

# So much is left of a time, in per cent, where it is said as a share that is taken off.
MUCH = {90: "tenth", 80: "fifth", 75: "quarter", 67: "third", 50: "half"}


def habit_in_words(book: Book, run: RunState, change: Change) -> str:
    """A change as what is done from now on, a day that is gone as the kind of day that it was; '' where a change is said as it is
    tried."""
    match change:
        case Times():
            much = MUCH.get(change.per_cent, "slower" if change.per_cent > 100 else "other")
            by, operation = abs(100 - change.per_cent), operation_name(run, change.operation)
            facts = {"operation": operation, "kind": change.kind or "all", "much": much, "by": by}
            return sentence("review-idea-times", {**facts, "jig": "yes" if _has_jig(run, change.operation) else "no"})
        case HoursAdded():
            day = datetime.combine(change.day, change.opens)
            closes = datetime.combine(change.day, change.closes) + timedelta(days=change.closes == time())
            person, span = person_name(book, change.person), span_in_words(closes - day)
            return sentence("review-idea-hours", {"person": person, "span": span, "day": date_in_words(change.day)})
        case Helper():
            span = span_in_words(timedelta(minutes=change.minutes))
            return sentence("review-idea-helper", {"operation": operation_name(run, change.operation), "span": span})
        case OnePersonMore():
            return sentence("review-idea-person", {"like": person_name(book, change.like)})
        case Several():
            return list_in_words(
                habit_in_words(book, run, one) or words_of_change(book, run, one) for one in change.changes
            )
    return ""


def _has_jig(run: RunState, key: str) -> bool:
    """Whether an operation of a run, or that of one of its steps, is done with a jig already."""
    operation = next((one for one in run.route.product.operations if one.key == key.partition(":")[0]), None)
    return operation is not None and has_jig(operation)
