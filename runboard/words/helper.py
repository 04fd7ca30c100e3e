"""How a helper is spoken to: in the phone's language, in the shop's time and units, about the shop's own things by their
translations where the route has some."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo
from typing import Any

from runboard.run.care.cautions import Shown
from runboard.run.fold.route import Step
from runboard.shop.book import Check, Operation
from runboard.shop.product import Translation
from runboard.shop.units import Unit, format_length
from runboard.words.sentences import moment_in_words, sentence

NAMES: Mapping[str, str] = {"en": "English", "de": "Deutsch", "es": "Español", "fr": "Français"}
_A_DAY = timedelta(days=1)
_NONE = Translation()


@dataclass(frozen=True)
class Speech:
    """Called with a message of the helper's catalogue and its facts, it says the sentence. ``now`` is when it is said."""

    locale: str
    zone: tzinfo
    units: Unit
    now: datetime

    def __call__(self, message: str, **facts: Any) -> str:
        return sentence(f"helper-{message}", facts, zone=self.zone, locale=self.locale)

    def care(self, key: str, **facts: Any) -> str:
        """A sentence of the cautions' catalogue."""
        return sentence(f"care-{key}", facts, zone=self.zone, locale=self.locale)

    def refused(self, code: str, facts: Mapping[str, Any]) -> str:
        """Why something was not taken, and what to do."""
        alike = "unknown" if code.endswith(" unknown") and code != "card unknown" else code.replace(" ", "-")
        return self(f"refused-{alike}", **facts) or self("refused-other")

    def moment(self, moment: datetime) -> str:
        """'10:42' today, else 'Sun 8:00'."""
        local = moment.astimezone(self.zone)
        today = local.date() == self.now.astimezone(self.zone).date()
        return f"{local:%H:%M}" if today else moment_in_words(moment, self.zone, self.locale)

    def span(self, span: timedelta) -> str:
        """'40 min', '1 h 30 min', '12 h', '14 days'."""
        if span >= 2 * _A_DAY and not span % _A_DAY:
            return self("span-days", days=span // _A_DAY)
        hours, minutes = divmod(round(span / timedelta(minutes=1)), 60)
        kind = "both" if hours and minutes else "hours" if hours else "minutes"
        return self(f"span-{kind}", hours=hours, minutes=minutes)

    def name(self, step: Step) -> str:
        """'Sand 120', with the operation's name in the language where somebody translated it."""
        name = self._own(step.operation).name or step.operation.name
        return f"{name} {step.pass_.name}" if ":" in step.key else name

    def texts(self, operation: Operation, field: str, originals: tuple[str, ...]) -> list[str]:
        """The texts of an operation's ``instructions``, ``checklist`` or ``checks``, translated where they are."""
        said: tuple[str, ...] = getattr(self._own(operation), field)
        return [said[at] if at < len(said) and said[at] else text for at, text in enumerate(originals)]

    def caution(self, operation: Operation, shown: Shown) -> str:
        """A caution's sentence: the catalogue's, or the shop's own words."""
        if shown.key:
            return self.care(shown.key)
        words = self.texts(operation, "cautions", operation.cautions)
        own = words[operation.cautions.index(shown.text)] if shown.text in operation.cautions else shown.text
        return own[:1].upper() + own[1:] + ("" if own.endswith((".", "!", "?")) else ".")

    def limits(self, check: Check) -> str:
        """'60 mm, from 59.8 mm to 60.3 mm'; '' for a check by eye."""
        if check.nominal is None:
            return ""
        if check.plus is None and check.minus is None:
            return format_length(check.nominal, self.units)
        least, most = check.nominal - (check.minus or 0), check.nominal + (check.plus or 0)
        lengths = {"nominal": check.nominal, "least": least, "most": most}
        return self("first-piece-limits", **{key: format_length(mm, self.units) for key, mm in lengths.items()})

    def _own(self, operation: Operation) -> Translation:
        return operation.translations.get(self.locale, _NONE)
