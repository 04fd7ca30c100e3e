"""A review to send to a friend: what is in it, in words, from a run's essentials.

At each operation stand its figures, what is known of how it is done today beside the questions of critical examination
(purpose, place, sequence, person, means, each with its 'why'), and the four things that may become of it. The questions
are those of the International Labour Office, *Introduction to Work Study*, 4th edition, edited by G. Kanawaty, 1992;
eliminate, combine, rearrange, simplify are those of work simplification as A. H. Mogensen taught it after F. B. Gilbreth.
Both are cited from memory.
"""

import re
import unicodedata
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import timedelta

from runboard.cards.unnamed import AS_IT_IS, Unnamed, unnamed
from runboard.charts.bars import Beside, bars_beside
from runboard.review.answers import WAYS
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import Lost, OperationBar
from runboard.review.measured.study import ElementStudy
from runboard.run.log.event import write_moment
from runboard.shop.book import Person
from runboard.shop.product import Operation
from runboard.words.facts import dated, fine_span, list_in_words, span_in_words, unbroken, zone_of
from runboard.words.review import furthest_named
from runboard.words.sentences import say, sentence

QUESTIONS = ("purpose", "place", "sequence", "person", "means")
_MOST_TOLD = 8
_MOST_OPEN = 3
_SLUG = 60
_A_MINUTE = timedelta(minutes=1)
# What a page of it says that is the same in every one.
WORDS = (
    "intro", "how-to", "bars", "guess", "measured", "bar-unknown", "operations", "element", "n", "lost", "told", "questions", "now",
    "what-else", "your-answer", "why", "saves", "saves-unit", "from", "save", "saved", "send-back", "as-text",
    "as-text-hint", "no-script", "send", "saves-wrong", "optional", "source", "manual", "why-hint", "median", "not-saved",
)  # fmt: skip


@dataclass(frozen=True)
class Asked:
    """A question at an operation, what is known of it ``now`` ('' for nothing), and the question behind it."""

    question: str
    now: str
    why: str


@dataclass(frozen=True)
class OperationAsked:
    """One operation: ``figures`` are (label, value), ``elements`` (name, guess, median, how often measured). ``short`` is what
    it took, ``mark`` that it hurts here, '' where it does not; on a screen it ``is_open`` at first."""

    key: str
    number: int
    name: str
    about: str
    figures: tuple[tuple[str, str], ...]
    elements: tuple[tuple[str, str, str, str], ...]
    lost: tuple[str, ...]
    told: tuple[str, ...]
    asked: tuple[Asked, ...]
    short: str = ""
    mark: str = ""
    is_open: bool = False


@dataclass(frozen=True)
class FriendsFile:
    """All of it. ``slug`` is what the file is called by; ``run`` and ``opened`` are what the answers say which run they are for; ``ways`` (code, name, hint);
    ``bars`` is a drawing, an SVG element."""

    run: str
    opened: str
    title: str
    about: str
    hidden: str
    lines: tuple[str, ...]
    bars: str
    operations: tuple[OperationAsked, ...]
    ways: tuple[tuple[str, str, str], ...]
    words: Mapping[str, str]

    @property
    def slug(self) -> str:
        """The title in letters that every disk takes; the run's key where it has none of them."""
        plain = unicodedata.normalize("NFKD", self.title.casefold()).encode("ascii", "ignore").decode()
        return re.sub("[^a-z0-9]+", "-", plain)[:_SLUG].strip("-") or self.run


Lines = Callable[[Essentials], Sequence[str]]


def friends_file(
    essentials: Essentials, lines: Lines, *, names: bool = False, people: Sequence[Person] = ()
) -> FriendsFile:
    """The file of a run. ``lines`` says the first screen of its review; with ``names`` people and order lines are named.
    ``people`` are those of the book as it is now."""
    found, said = (essentials, AS_IT_IS) if names else unnamed(essentials, people)
    past, happened = found.past, found.happened
    zone = zone_of(past.book.time_zone)
    asking = _Asking(found, said)
    return FriendsFile(
        run=past.run.id,
        opened=write_moment(past.run.opened_at),
        title=past.run.name,
        about=sentence(
            "friend-about",
            {
                "from": dated(past.run.opened_at, zone),
                "to": dated(happened.finished or past.until, zone),
                "people": said(asking.people(one.key for one in essentials.past.book.people)) or 0,
            },
        ),
        hidden=sentence("friend-names-are-in" if names else "friend-names-are-out"),
        lines=tuple(unbroken(_begun(said(line))) for line in lines(found)),
        bars=bars_beside(
            "operations",
            sentence("friend-bars-title"),
            [_bar(said(bar.name), bar) for bar in happened.bars],
            "–",
        ),
        operations=tuple(asking.operations()),
        ways=tuple((way, say("friend-way", way), say("friend-hint", way)) for way in WAYS),
        words={word.replace("-", "_"): say("friend", word) for word in WORDS},
    )


def _begun(line: str) -> str:
    """A line with its first letter large: 'the maker' may have come to stand there."""
    return line[:1].upper() + line[1:]


def _bar(name: str, bar: OperationBar) -> Beside:
    seconds = None if bar.taken is None else bar.taken.total_seconds()
    return Beside(name, bar.guess.total_seconds(), seconds, unbroken(span_in_words(bar.taken)))


class _Asking:
    """The operations of one run, asked about one after another."""

    def __init__(self, essentials: Essentials, said: Unnamed) -> None:
        self.found, self.said = essentials, said
        self.past, self.happened = essentials.past, essentials.happened
        self.product = essentials.past.run.route.product
        self.of_step = {step.key: step.operation.key for step in essentials.past.run.route.steps}
        self.bars = {bar.operation: bar for bar in essentials.happened.bars}
        self.furthest = furthest_named(essentials)
        self.lost: dict[str, int] = {}
        for one in self.happened.lost:
            key = self._operation(one.step)
            self.lost[key] = self.lost.get(key, 0) + one.pieces
        hurts = sorted(self.lost, key=lambda key: self.lost[key], reverse=True)
        self.opened = list(dict.fromkeys(filter(None, (self.furthest, *hurts))))[:_MOST_OPEN]

    def operations(self) -> Iterator[OperationAsked]:
        for number, operation in enumerate(self.product.operations, 1):
            yield OperationAsked(
                operation.key,
                number,
                self.said(operation.name),
                self.said(self._station(operation)),
                tuple(self._figures(operation.key)),
                tuple(map(self._element, self._studies(operation.key))),
                tuple(self._lost(one) for one in self.happened.lost if self._operation(one.step) == operation.key),
                tuple(self.said.typed(one.text) for one in operation.instructions[:_MOST_TOLD]),
                tuple(self._asked(number - 1, operation, topic) for topic in QUESTIONS),
                self._short(operation.key),
                self._mark(operation.key),
                operation.key in self.opened,
            )

    def _short(self, key: str) -> str:
        bar = self.bars.get(key)
        return unbroken(_beside(bar.taken, bar.guess)) if bar else ""

    def _mark(self, key: str) -> str:
        lost, is_furthest = self.lost.get(key, 0), key == self.furthest
        if not lost and not is_furthest:
            return ""
        return sentence("friend-hurts", {"most": 1 if is_furthest else 0, "lost": lost})

    def _operation(self, step: str) -> str:
        return self.of_step.get(step, step.partition(":")[0])

    # figures

    def _figures(self, key: str) -> Iterator[tuple[str, str]]:
        bar = self.bars.get(key)
        if bar is not None:
            yield from self._of_bar(bar)
        yields = [one for one in self.happened.yields if self._operation(one.step) == key and one.into]
        if yields:
            worst = min(yields, key=lambda one: one.first_good / one.into)
            yield _figure("first-good", sentence("friend-so-many-of", {"some": worst.first_good, "all": worst.into}))
        waited = [one.waited for one in self.happened.process if self._operation(one.step) == key and one.waited]
        if waited:
            yield _figure("waited", span_in_words(max(waited)))

    def _of_bar(self, bar: OperationBar) -> Iterator[tuple[str, str]]:
        yield _figure("taken", _beside(bar.taken, bar.guess))
        if (bar.hands_guess, bar.hands_taken) != (bar.guess, bar.taken):
            yield _figure("hands", _beside(bar.hands_taken, bar.hands_guess))
        if bar.hands_taken is not None and self.happened.good:
            yield _figure("a-piece", fine_span(bar.hands_taken / self.happened.good))

    def _studies(self, key: str) -> list[ElementStudy]:
        return [one for one in self.found.study.elements if one.operation == key]

    def _element(self, study: ElementStudy) -> tuple[str, str, str, str]:
        name = say("element", study.kind)
        if ":" in study.step:
            name = sentence("friend-element-of", {"step": self.said(study.step_name), "element": name})
        guess, median = unbroken(fine_span(study.guess)), unbroken(fine_span(study.median))
        return name, guess, median, sentence("friend-times", {"n": study.n})

    def _lost(self, lost: Lost) -> str:
        facts = {"pieces": lost.pieces, "reason": lost.reason, "wood": lost.wood, "board": lost.board}
        return self.said(sentence("friend-lost-so", {key: fact or 0 for key, fact in facts.items()}))

    # what is known beside each question

    def _asked(self, at: int, operation: Operation, topic: str) -> Asked:
        known = {"purpose": self._purpose, "place": self._place, "person": self._person, "means": self._means}
        now = self._sequence(at) if topic == "sequence" else known[topic](operation)
        return Asked(say("friend-asks", topic), unbroken(_begun(self.said(now))), say("friend-asks-why", topic))

    def _purpose(self, operation: Operation) -> str:
        checks = [check.text for check in operation.checks]
        return sentence("friend-checked", {"checks": list_in_words(checks)}) if checks else ""

    def _place(self, operation: Operation) -> str:
        lines = [one for one in self.happened.process if self._operation(one.step) == operation.key]
        walks, walking = sum(one.walks for one in lines), sum((one.walking for one in lines), timedelta(0))
        facts = {
            "where": self._station(operation),
            "walks": walks,
            "walking": span_in_words(walking) if walking >= _A_MINUTE else 0,
        }
        return sentence("friend-where", facts)

    def _station(self, operation: Operation) -> str:
        station = self.past.book.station(operation.station)
        room = next((one for one in self.past.book.rooms if station and one.key == station.room), None)
        name = station.name if station else operation.station
        return sentence("friend-station", {"station": name, "room": room.name}) if room else name

    def _sequence(self, at: int) -> str:
        steps = self.product.operations
        facts = {
            "before": steps[at - 1].name if at else 0,
            "after": steps[at + 1].name if at + 1 < len(steps) else 0,
        }
        wait = steps[at].wait
        said = sentence("friend-when", facts)
        return f"{said} {sentence(f'friend-then-{wait.why}', {'least': span_in_words(wait.least)})}" if wait else said

    def people(self, keys: Iterable[str]) -> str:
        """Who was in the shop: these of its book, and whoever else had hands in the run."""
        hands = [one.person for one in self.past.elements if one.person and one.length]
        return list_in_words(dict.fromkeys(map(self._name, (*keys, *hands))))

    def _person(self, operation: Operation) -> str:
        hands: dict[str, timedelta] = {}
        for one in self.past.elements:
            if self._operation(one.step) == operation.key and one.person and one.length:
                name = self._name(one.person)
                hands[name] = hands.get(name, timedelta(0)) + one.length
        named = sorted(hands, key=lambda name: hands[name], reverse=True)
        return list_in_words(named) if named else ""

    def _name(self, key: str) -> str:
        known, guest = self.past.book.person(key), self.past.state.people.get(key)
        return known.name if known else guest.name if guest and guest.name else sentence("friend-guest")

    def _means(self, operation: Operation) -> str:
        passes = {(one.size, one.pieces or 0) for one in operation.passes}
        said = [sentence(f"friend-size-{size}", {"pieces": pieces}) for size, pieces in sorted(passes)]
        if any(one.machine for one in operation.passes):
            said.append(sentence("friend-by-machine", {"attendance": operation.attendance}))
        return sentence("friend-how", {"how": list_in_words(said)})


def _figure(code: str, value: str) -> tuple[str, str]:
    return say("friend-figure", code), unbroken(value)


def _beside(taken: timedelta | None, guess: timedelta) -> str:
    if taken is None:
        return sentence("friend-not-measured-beside", {"guess": span_in_words(guess)})
    return sentence("friend-taken-for", {"taken": span_in_words(taken), "guess": span_in_words(guess)})
