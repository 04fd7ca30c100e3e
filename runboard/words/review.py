"""The five lines of a review: said alike on its first screen, by the command and in a friend's file."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from runboard.review.essentials import Essentials, helps_finish, helps_hands
from runboard.review.happened.nouns import Lost, OperationBar
from runboard.review.held.nouns import Held
from runboard.review.past import Past
from runboard.words.facts import list_in_words, span_in_words
from runboard.words.review_held import coming_seconds, held_days
from runboard.words.review_things import (
    about,
    capacity_of,
    cost_in_words,
    count_in_words,
    idea_in_words,
    piece_time,
    reason_in_words,
    what_in_words,
)
from runboard.words.sentences import sentence

# The lines, in their order.
CODES = ("pieces", "furthest", "lost", "held", "try")
# Nearer to its guess than this an operation is as it was guessed.
AS_GUESSED = 0.1
# A run of which less was measured says so first.
LITTLE_MEASURED = 0.6
_A_MINUTE = timedelta(minutes=1)


@dataclass(frozen=True)
class Line:
    """One of the five lines: which, and what it says. ``is_coming`` while it is worked out."""

    code: str
    sentence: str
    is_coming: bool = False

    @property
    def parts(self) -> tuple[str, str]:
        """What it is about, up to the colon, and the rest; ('', all) where it has no such beginning."""
        head, colon, rest = self.sentence.partition(": ")
        return (head + colon.strip(), rest) if colon and len(head) < 32 else ("", self.sentence)


def five_lines(essentials: Essentials) -> list[Line]:
    """What a review says first: pieces and hours, the furthest from the guess, what was lost, what held it, what to try."""
    is_coming = not essentials.is_weighed
    seconds = coming_seconds(essentials.past)
    said = {
        "pieces": _pieces(essentials),
        "furthest": _furthest(essentials),
        "lost": _lost(essentials),
        "held": _held(essentials.past, essentials.held),
        "try": _try(essentials),
    }
    for code in ("held", "try") if is_coming else ():
        was_there = essentials.tried is not None
        said[code] = _say("line-again", line=said[code]) if was_there else _say(f"line-{code}-coming", seconds=seconds)
    return [Line(code, said[code], is_coming and code in ("held", "try")) for code in CODES]


def line_said(essentials: Essentials, code: str) -> str:
    """What one of the five lines says."""
    return next(line.sentence for line in five_lines(essentials) if line.code == code)


def little_measured(essentials: Essentials) -> list[str]:
    """Where little was measured: that, and which presses would tell the most next time; else nothing."""
    study = essentials.study
    if study.share is None or study.share >= LITTLE_MEASURED:
        return []
    return [_say("little", percent=int(study.share * 100) or "none"), *presses_of(essentials)]


def presses_of(essentials: Essentials) -> list[str]:
    """Which presses would tell the most next time; nothing where all is known."""
    presses = [
        _say("press", press=_say(f"press-{press.press.replace(' ', '-')}") or press.press, step=press.step_name)
        for press in essentials.study.presses
    ]
    return [_say("presses", count=len(presses), presses=list_in_words(presses))] if presses else []


# the lines


def _pieces(essentials: Essentials) -> str:
    happened = essentials.happened
    # The hands of an open run are in pieces, too, that are not through yet.
    a_piece = None if essentials.past.is_open else happened.a_good_piece
    how = "more" if happened.good > happened.wanted else "fewer"
    if not essentials.past.is_open and max(happened.wanted, happened.good) < happened.started:
        how = "begun"
    return _say(
        "line-pieces",
        open="yes" if essentials.past.is_open else "no",
        good=happened.good,
        wanted=happened.wanted,
        begun=happened.started,
        how=how,
        hands=span_in_words(happened.hands) if happened.hands else "none",
        piece=piece_time(a_piece) if a_piece else "none",
    )


def furthest_named(essentials: Essentials) -> str:
    """The operation that the first screen names as the furthest from its guess, '' where it names none."""
    found = essentials.furthest
    return "" if found is None or _is_as_guessed(found) else found.operation


def _is_as_guessed(bar: OperationBar) -> bool:
    return bar.taken is not None and abs(bar.taken - bar.guess) < max(AS_GUESSED * bar.guess, _A_MINUTE)


def _furthest(essentials: Essentials) -> str:
    found = essentials.furthest
    if found is None or found.taken is None:
        return _say("line-furthest-unknown")
    if _is_as_guessed(found):
        every = all(bar.taken is not None for bar in essentials.happened.bars if bar.guess)
        return _say("line-furthest-none", every="yes" if every else "no")
    return _say(
        "line-furthest",
        operation=found.name,
        taken=span_in_words(found.taken),
        guess=span_in_words(found.guess),
    )


def _lost(essentials: Essentials) -> str:
    found = sorted(essentials.happened.lost, key=lambda lost: -lost.pieces)
    pieces = max(essentials.happened.scrap, sum(lost.pieces for lost in found))
    facts = {"open": "yes" if essentials.past.is_open else "no", "pieces": pieces}
    if not pieces:
        return _say("line-lost-none", **facts)
    first = _gathered(found)
    if first is None:
        return _say("line-lost-no-reason", **facts)
    some = sum(lost.pieces for lost in first)
    if some == 1 < pieces:
        return _say("line-lost-scattered", **facts)
    boards = {lost.board for lost in first}
    return _say(
        "line-lost",
        **facts,
        some="all" if some == pieces else some,
        reason=reason_in_words(first[0].reason),
        step=first[0].step_name,
        board=boards.pop() if len(boards) == 1 and "" not in boards else "none",
        count=some,
        number=count_in_words(some),
    )


def _gathered(found: Sequence[Lost]) -> list[Lost] | None:
    """The losses of the step and reason that cost the most."""
    kinds: dict[tuple[str, str], list[Lost]] = {}
    for lost in found:
        kinds.setdefault((lost.step, lost.reason), []).append(lost)
    return max(kinds.values(), key=lambda some: sum(lost.pieces for lost in some), default=None)


def _held(past: Past, held: Held | None) -> str:
    if held is None:
        return _say("line-held-unknown")
    what = held.most
    if what is None or not held.cost:
        return _say("line-held-none")
    kind, key = what
    return _say(
        "line-held",
        kind=kind,
        what=what_in_words(past, what),
        capacity=count_in_words(capacity_of(past, key)) if kind == "service" else "",
        one="yes" if kind == "service" and capacity_of(past, key) == 1 else "no",
        when=held_days(past.book.time_zone, [each for each in held.stretches if each.what == what], held.sessions),
        cost=cost_in_words(held.cost),
    )


def _try(essentials: Essentials) -> str:
    found = essentials.first_to_try
    if found is None:
        tried = essentials.tried or ()
        helping = [one for one in tried if one.helps]
        if helping and all(one.is_done for one in helping):
            return _say("line-try-done")
        return _say("line-try-none", tried=len(tried), some="yes" if any(one.helps for one in tried) else "no")
    earlier, hands, pieces = found.earlier.mid, found.hands.mid, found.pieces
    facts = {
        "change": idea_in_words(essentials.past, found.idea.change),
        "hands": about(hands),
        "more": "yes" if helps_hands(found) else "no",
        "pieces": pieces,
    }
    if helps_finish(found):
        return _say("line-try-earlier", **facts, earlier=about(earlier))
    return _say("line-try-hands", **facts)


def _say(name: str, /, **facts: Any) -> str:
    return sentence(f"review-{name}", facts)
