"""The five lines of a review, and what a review calls its things: said alike on its first screen, by the command and in a
friend's file."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from runboard.plan.change import Capacity, Change, TraySize
from runboard.review.essentials import Essentials, helps_finish, helps_hands
from runboard.review.happened.nouns import Lost, OperationBar
from runboard.review.held.nouns import Held, What
from runboard.review.past import Past
from runboard.words.facts import list_in_words, span_in_words
from runboard.words.ideas import habit_in_words
from runboard.words.review_held import coming_seconds, held_days
from runboard.words.sentences import message_name, sentence
from runboard.words.trying import words_of_change

# The lines, in their order.
CODES = ("pieces", "furthest", "lost", "held", "try")
# Nearer to its guess than this an operation is as it was guessed.
AS_GUESSED = 0.1
# A run of which less was measured says so first.
LITTLE_MEASURED = 0.6
_A_MINUTE = timedelta(minutes=1)
_HALVES_BELOW = timedelta(minutes=20)
_HOURS_BELOW = timedelta(hours=18)


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
        operation=within(found.name),
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
        reason=_reason(first[0].reason),
        step=first[0].step_name,
        board=boards.pop() if len(boards) == 1 and "" not in boards else "none",
        count=some,
        number=_count(some),
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
        capacity=_count(_capacity(past, key)) if kind == "service" else "",
        one="yes" if kind == "service" and _capacity(past, key) == 1 else "no",
        when=held_days(past.book.time_zone, [each for each in held.stretches if each.what == what], held.sessions),
        cost=cost_in_words(held.cost),
    )


def cost_in_words(cost: timedelta) -> str:
    """'a day: 21 h'; '2 h 50' where that says it."""
    if cost < _HOURS_BELOW:
        return span_in_words(cost)
    return _say("cost-days", about=about(cost), cost=span_in_words(cost))


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


# what things are called


@dataclass(frozen=True)
class Named:
    """What people, stations and steps of a run are called. Who is in no book has the name they gave, else 'helper'."""

    past: Past

    def who(self, row: str, key: str) -> str:
        """A person's or a station's name; that of all trays."""
        return self.person(key) if row == "person" else self.station(key) if row == "station" else _say("trays")

    def person(self, key: str) -> str:
        known, guest = self.past.book.person(key), self.past.state.people.get(key)
        return known.name if known else (guest.name if guest else "") or _say("helper")

    def station(self, key: str) -> str:
        found = self.past.book.station(key)
        return found.name if found else key

    def step(self, key: str) -> str:
        return self.past.run.route.step_name(key) if key else ""


def lost_in_words(lost: Lost) -> str:
    """'chipped at Clean up'; 'at Clean up, nobody noted why'."""
    return _say("lost-at", reason=_reason(lost.reason), step=lost.step_name)


def _reason(reason: str) -> str:
    """A reason for scrap within a sentence: those that a phone offers as one says them, another's as it was typed."""
    return sentence(message_name("review-reason", reason)) or within(reason) or "none"


def what_in_words(past: Past, what: What) -> str:
    """What may hold a run, as one says it: 'the CNC', 'Robin', 'drying after Oil', 'the hours'."""
    kind, key = what
    book = past.book
    named: dict[str, str] = {
        "hands": (person.name if (person := book.person(key)) else ""),
        "station": (station.name if (station := book.station(key)) else ""),
        "service": next((within(service.name) for service in book.services if service.key == key), ""),
        "room": next((within(room.name) for room in book.rooms if room.key == key), ""),
        "wait": past.run.route.step_name(key) if key else "",
    }
    step = past.run.route.step(key) if kind == "wait" else None
    why = step.operation.wait.why if step and step.operation.wait else "other"
    return _say(f"what-{kind}", name=named.get(kind) or key, why=why)


def idea_in_words(past: Past, change: Change) -> str:
    """A change as it is told across the shop: 'three more drying rack places'."""
    if isinstance(change, Capacity):
        name, before = next(
            ((service.name, service.capacity) for service in past.book.services if service.key == change.service),
            (change.service, 0),
        )
        more = change.capacity - before
        if more > 0:
            return _say("more-of", number=more, count=_count(more), service=within(name), capacity=change.capacity)
    if isinstance(change, TraySize):
        return _say("idea-trays", pieces=change.pieces)
    return habit_in_words(past.book, past.run, change) or within(words_of_change(past.book, past.run, change))


def within(name: str) -> str:
    """A name as it stands within a sentence: 'Fit hooks' as 'fit hooks', 'CNC' as it is."""
    return name[:1].lower() + name[1:] if name[1:2].islower() or name[1:2] == " " else name


def piece_time(span: timedelta) -> str:
    """The time of one piece: '45 s', '9½ min', '24 min', '1 h 10'."""
    if not _A_MINUTE <= span < _HALVES_BELOW:
        return span_in_words(span)
    halves = round(span / timedelta(seconds=30))
    half = "½" if halves % 2 else ""
    return _say("piece-time", minutes=f"{halves // 2}{half}")


def about(span: timedelta) -> str:
    """A span that is said as one does: '40 min', '7 h', 'a day', 'two days'."""
    span = abs(span)
    if span >= _HOURS_BELOW:
        return _say("about-days", count=round(span / timedelta(days=1)), days=_count(round(span / timedelta(days=1))))
    for least, step in ((timedelta(hours=4), timedelta(hours=1)), (timedelta(hours=1), timedelta(minutes=5))):
        if span >= least:
            return span_in_words(round(span / step) * step)
    return span_in_words(span)


def _capacity(past: Past, key: str) -> int:
    return next((service.capacity for service in past.book.services if service.key == key), 0)


def _count(number: int) -> str:
    return _say("count", number=number)


def _say(name: str, /, **facts: Any) -> str:
    return sentence(f"review-{name}", facts)
