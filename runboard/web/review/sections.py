"""The one line that stands with each section of What happened, so that it need not be opened."""

from collections.abc import Callable, Sequence
from datetime import timedelta

from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import Happened, OrderLineDone
from runboard.web.review.days import Sitting
from runboard.words.facts import span_in_words, unbroken
from runboard.words.review_things import lost_in_words, within
from runboard.words.review_waits import why_waited
from runboard.words.sentences import say

NOUGHT = timedelta(0)


def answers_of(found: Essentials, sittings: Sequence[Sitting]) -> dict[str, str]:
    """By section: what it shows, in one line."""
    happened = found.happened
    said: dict[str, Callable[[], str]] = {
        "hands": lambda: _hands(happened),
        "days": lambda: say("review-answer", "days", {"count": len(sittings)}),
        "lost": lambda: _lost(found),
        "waiting": lambda: _waiting(found),
        "process": lambda: _process(happened),
        "orders": lambda: _orders(happened.order_lines),
    }
    return {section: unbroken(answer()) for section, answer in said.items()}


def _hands(happened: Happened) -> str:
    first = next(iter(happened.pareto), None)
    if first is None or first.hands_taken is None:
        return say("review-answer", "hands none")
    whole = span_in_words(happened.hands)
    return say(
        "review-answer", "hands", {"operation": first.name, "taken": span_in_words(first.hands_taken), "all": whole}
    )


def _lost(found: Essentials) -> str:
    happened = found.happened
    if not happened.scrap:
        return say("review-answer", "lost none")
    sums: dict[str, int] = {}
    for one in happened.lost:
        sums[lost_in_words(one)] = sums.get(lost_in_words(one), 0) + one.pieces
    why, most = max(sums.items(), key=lambda item: item[1], default=("none", 0))
    # Of an open run only what has come to a step is begun.
    begun = max((each.into for each in happened.yields), default=0) if found.past.is_open else happened.started
    of_it = "all" if most == happened.scrap else most
    return say("review-answer", "lost", {"lost": happened.scrap, "begun": begun, "why": why, "most": of_it})


def _waiting(found: Essentials) -> str:
    waiting = found.happened.waiting
    for row in ("tray", "person", "station"):
        sums: dict[tuple[str, str], timedelta] = {}
        for one in waiting:
            if one.row == row:
                sums[one.why, one.of] = sums.get((one.why, one.of), NOUGHT) + one.length
        if sums:
            (why, of), length = max(sums.items(), key=lambda item: item[1])
            facts = {"row": row, "all": span_in_words(sum(sums.values(), NOUGHT)), "most": span_in_words(length)}
            return say("review-answer", "waiting", {**facts, "why": within(why_waited(found.past, why, of))})
    return say("review-answer", "waiting none")


def _process(happened: Happened) -> str:
    waited = [line for line in happened.process if line.waited and line.waited >= timedelta(minutes=1)]
    longest = max(waited, key=lambda line: line.waited or NOUGHT, default=None)
    if longest is None:
        return say("review-answer", "process none", {"steps": len(happened.yields)})
    return say("review-answer", "process", {"step": longest.step_name, "waited": span_in_words(longest.waited)})


def _orders(lines: Sequence[OrderLineDone]) -> str:
    undone = sum(line.done is None for line in lines)
    late = sum(bool(line.late) for line in lines)
    facts = {"some": len(lines) - undone - late, "count": len(lines), "late": late, "undone": undone}
    return say("review-answer", "orders", facts)
