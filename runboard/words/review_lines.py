"""What ``runboard review`` prints for a person: the five lines, then what they rest on."""

from collections.abc import Iterator
from datetime import timedelta

from runboard.review.changes.nouns import NOUGHT, Span3
from runboard.review.essentials import Essentials
from runboard.words.facts import span_in_words
from runboard.words.review import five_lines, little_measured
from runboard.words.review_held import value_in_words
from runboard.words.review_things import about, idea_in_words, what_in_words
from runboard.words.sentences import say

# Of what an hour is worth, and of what could be tried, the first so many.
MOST = 6
_WHOLE_HOURS = 4


def review_lines(essentials: Essentials) -> Iterator[str]:
    """The lines, a paragraph for each question."""
    run = essentials.past.run
    yield f"{run.name} ({run.id})"
    yield from little_measured(essentials)
    yield from (line.sentence for line in five_lines(essentials))
    yield ""
    yield from _operations(essentials)
    yield from _paragraph("values", _values(essentials))
    yield from _paragraph("changes", _changes(essentials))


def _paragraph(head: str, some: Iterator[str]) -> Iterator[str]:
    found = list(some)[:MOST]
    if found:
        yield ""
        yield say("review-printed", head)
        yield from (f"- {line}" for line in found)


def _operations(essentials: Essentials) -> Iterator[str]:
    """Each operation with its guess and what it took, in columns."""
    head = tuple(say("review-printed", name) for name in ("operation", "guess", "took"))
    unknown = say("review-chart", "not measured")
    rows = [head]
    for bar in essentials.happened.bars:
        taken = unknown if bar.taken is None else span_in_words(bar.taken)
        rows.append((bar.name, span_in_words(bar.guess), taken))
    wide = [max(len(row[column]) for row in rows) for column in range(len(head))]
    for row in rows:
        yield "  ".join(
            (row[0].ljust(wide[0]), *(cell.rjust(width) for cell, width in zip(row[1:], wide[1:], strict=True)))
        )


def _values(essentials: Essentials) -> Iterator[str]:
    for value in essentials.held.values if essentials.held is not None else ():
        if value.earlier:
            named = what_in_words(essentials.past, value.what)
            facts = {"what": value_in_words(value, named), "earlier": about(value.earlier)}
            yield say("review-printed", "value", facts)


def _changes(essentials: Essentials) -> Iterator[str]:
    helping = [tried for tried in essentials.tried or () if tried.helps and not tried.is_done]
    for tried in sorted(helping, key=lambda one: (one.earlier.mid, one.hands.mid), reverse=True):
        facts = {
            "change": idea_in_words(essentials.past, tried.idea.change),
            **_range(tried.earlier),
            "hands": about(tried.hands.mid) if tried.hands.mid else "none",
        }
        yield say("review-printed", "change", facts)


def _range(earlier: Span3) -> dict[str, str]:
    """What is done sooner, and from what to what, in one measure: 'a day' is none for what goes from 20 h to 22 h."""
    low, mid, high = map(_measured, (earlier.low, earlier.mid, earlier.high))
    spread = "none" if low == high else "later" if earlier.low < NOUGHT else "sooner"
    return {"earlier": mid if earlier.mid else "none", "low": low, "high": high, "spread": spread}


def _measured(span: timedelta) -> str:
    hours = abs(span) / timedelta(hours=1)
    return span_in_words(timedelta(hours=round(hours))) if hours >= _WHOLE_HOURS else about(span)
