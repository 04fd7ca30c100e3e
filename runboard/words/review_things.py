"""What a review calls its things: people and stations, what holds, changes, losses and spans of time, as they are said
within a sentence."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from runboard.plan.change import Capacity, Change, TraySize
from runboard.review.happened.nouns import Lost
from runboard.review.held.nouns import What
from runboard.review.past import Past
from runboard.words.facts import span_in_words
from runboard.words.ideas import habit_in_words
from runboard.words.sentences import message_name, sentence
from runboard.words.trying import words_of_change

_A_MINUTE = timedelta(minutes=1)
# A span of so long or longer is told in days.
DAYS_FROM = timedelta(hours=18)
_HALVES_BELOW = timedelta(minutes=20)


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
    """'chipped at Clean up'; 'at Clean up, no reason noted'."""
    return _say("lost-at", reason=reason_in_words(lost.reason), step=lost.step_name)


def reason_in_words(reason: str) -> str:
    """A reason for scrap within a sentence: those that a phone offers as one says them, another's as it was typed."""
    return sentence(message_name("review-reason", reason)) or within(reason) or "none"


def what_in_words(past: Past, what: What) -> str:
    """What may hold a run, as one says it: 'CNC', 'Robin’s time', 'drying after Oil'."""
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
            return _say(
                "more-of", number=more, count=count_in_words(more), service=within(name), capacity=change.capacity
            )
    if isinstance(change, TraySize):
        return _say("idea-trays", pieces=change.pieces)
    return habit_in_words(past.book, past.run, change) or within(words_of_change(past.book, past.run, change))


def within(name: str) -> str:
    """A name as it stands within a sentence: 'Fit hooks' as 'fit hooks', 'CNC' as it is."""
    return name[:1].lower() + name[1:] if name[1:2].islower() or name[1:2] == " " else name


def begun(said: str) -> str:
    """The same as it begins a sentence or a cell: 'the CNC' as 'The CNC'."""
    return said[:1].upper() + said[1:]


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
    if span >= DAYS_FROM:
        return _say(
            "about-days", count=round(span / timedelta(days=1)), days=count_in_words(round(span / timedelta(days=1)))
        )
    for least, step in ((timedelta(hours=4), timedelta(hours=1)), (timedelta(hours=1), timedelta(minutes=5))):
        if span >= least:
            return span_in_words(round(span / step) * step)
    return span_in_words(span)


def cost_in_words(cost: timedelta) -> str:
    """'a day: 21 h'; '2 h 50' where that says it."""
    if cost < DAYS_FROM:
        return span_in_words(cost)
    return _say("cost-days", about=about(cost), cost=span_in_words(cost))


def capacity_of(past: Past, key: str) -> int:
    return next((service.capacity for service in past.book.services if service.key == key), 0)


def count_in_words(number: int) -> str:
    return _say("count", number=number)


def _say(name: str, /, **facts: Any) -> str:
    return sentence(f"review-{name}", facts)
