"""How a card speaks, and a helper is spoken to: in one language, in the shop's time and units, about the shop's own things
by their translations where the route has some."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo
from typing import Any

from runboard.run.care.cautions import ShownCaution, start_points
from runboard.run.fold.route import Step
from runboard.shop.book import Book
from runboard.shop.product import Check, Operation, Translation
from runboard.shop.units import Unit
from runboard.words.facts import date_in_words, dated, length_in_words, moment_in_words, span_in_words, unbroken
from runboard.words.sentences import ENGLISH, InEnglish, sentence

_NONE = Translation()


@dataclass(frozen=True)
class Speech:
    """Called with a message of its ``family`` and the facts, it says the sentence: a card's, or the helper's page's.
    ``now`` is when it is said."""

    family: str
    locale: str
    zone: tzinfo
    units: Unit
    now: datetime

    def __call__(self, message: str, /, **facts: Any) -> str:
        return self.say(f"{self.family}-{message}", **facts)

    def say(self, name: str, /, **facts: Any) -> str:
        """A sentence of the whole catalogue."""
        ready = {key: self.moment(fact) if isinstance(fact, datetime) else fact for key, fact in facts.items()}
        said = sentence(name, ready, locale=self.locale)
        return type(said)(unbroken(said))

    def care(self, key: str, /, **facts: Any) -> str:
        """A sentence of the cautions' catalogue."""
        return self.say(f"care-{key}", **facts)

    def refused(self, code: str, facts: Mapping[str, Any]) -> str:
        """Why something was not taken, and what to do."""
        alike = "unknown" if code.endswith(" unknown") and code != "card unknown" else code.replace(" ", "-")
        return self(f"refused-{alike}", **facts) or self("refused-other")

    # one fact

    def moment(self, moment: datetime) -> str:
        """'10:42' today on a screen, 'Sun 08:00' within six days, 'Sun 29 Nov, 08:00' beyond."""
        return moment_in_words(moment, self.zone, self.locale, now=self.now, stays=self.family == "card")

    def printed(self) -> str:
        """Now, with its year: what is on paper outlives it."""
        return dated(self.now, self.zone, self.locale)

    def today(self) -> str:
        """'Sun 29 Nov 2026'"""
        return date_in_words(self.now.astimezone(self.zone), self.locale, with_year=True)

    def day(self, at: datetime) -> str:
        """'Thu 3 Dec'"""
        return date_in_words(at.astimezone(self.zone), self.locale)

    def span(self, span: timedelta) -> str:
        """'40 min', '1 h 30', '12 h', '14 days'."""
        return span_in_words(span, self.locale)

    def length(self, mm: float) -> str:
        """A length in the shop's units."""
        return length_in_words(mm, self.units, self.locale)

    # the shop's own things

    def named(self, operation: Operation) -> str:
        """An operation's name, where somebody translated it in the language."""
        return self._own(operation).name or self._as_written(operation.name)

    def step(self, step: Step) -> str:
        """'Sand 120'"""
        name = self.named(step.operation)
        return type(name)(f"{name} {step.pass_.name}") if ":" in step.key else name

    def texts(self, operation: Operation, field: str) -> list[str]:
        """The texts of an operation's ``instructions``, ``checklist``, ``cautions`` or ``checks``, translated where they are;
        else as they are written, which ``lang_of`` tells."""
        written: Sequence[Any] = getattr(operation, field)
        said: Sequence[str] = getattr(self._own(operation), field)
        texts = [text if isinstance(text, str) else text.text for text in written]
        return [(said[at] if at < len(said) else "") or self._as_written(text) for at, text in enumerate(texts)]

    def caution(self, operation: Operation, shown: ShownCaution) -> str:
        """A caution's sentence: the catalogue's, or the shop's own words."""
        if shown.key:
            return self.care(shown.key)
        translated = dict(zip(operation.cautions, self.texts(operation, "cautions"), strict=True))
        own = translated.get(shown.text) or self._as_written(shown.text)
        return type(own)(own[:1].upper() + own[1:] + ("" if own.endswith((".", "!", "?")) else "."))

    def start_list(self, book: Book, operation: Operation) -> tuple[str, ...]:
        """What is looked at before the machine starts: the catalogue's points, then the operation's own."""
        return (*(self.care(key) for key in start_points(book, operation)), *self.texts(operation, "checklist"))

    def limits(self, check: Check) -> str:
        """'60 mm, from 59.8 mm to 60.3 mm'; '' for a check by eye."""
        if check.nominal is None:
            return ""
        if check.plus is None and check.minus is None:
            return self.length(check.nominal)
        least, most = check.nominal - (check.minus or 0), check.nominal + (check.plus or 0)
        lengths = {"nominal": check.nominal, "least": least, "most": most}
        return self("first-piece-limits", **{key: self.length(mm) for key, mm in lengths.items()})

    def setup(self, operation: Operation) -> tuple[tuple[str, str], ...]:
        """Its setup sheet, which nobody translates."""
        return tuple((self._as_written(label), self._as_written(text)) for label, text in operation.setup_sheet)

    def _as_written(self, text: str) -> str:
        return text if self.locale == ENGLISH else InEnglish(text)

    def _own(self, operation: Operation) -> Translation:
        return operation.translations.get(self.locale, _NONE)
