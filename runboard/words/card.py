"""How a card speaks: its language's sentences, the shop's time of day and units."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo
from typing import Any

from babel.dates import format_skeleton

from runboard.shop.units import Unit, format_length

_A_DAY = timedelta(days=1)
# A weekday alone is clear for less than a week; a card may lie longer.
_CLEAR_FOR = timedelta(days=6)


@dataclass(frozen=True)
class Speech:
    """``say(message, **facts)`` answers a sentence of the catalogue in ``language``. ``now`` is when the card is made."""

    say: Callable[..., str]
    language: str
    zone: tzinfo
    units: Unit
    now: datetime

    def __call__(self, message: str, **facts: Any) -> str:
        return self.say(message, **facts)

    def moment(self, at: datetime) -> str:
        """'Thu 08:00' within a week of now, else 'Thu 3 Dec 08:00'."""
        local = at.astimezone(self.zone)
        skeleton = "E" if abs(at - self.now) < _CLEAR_FOR else "MMMEd"
        return f"{format_skeleton(skeleton, local, locale=self.language)} {local:%H:%M}"

    def printed(self) -> str:
        """Now, with its year: what is on paper outlives it."""
        local = self.now.astimezone(self.zone)
        return f"{format_skeleton('yMMMd', local, locale=self.language)} {local:%H:%M}"

    def day(self, at: datetime) -> str:
        """'Thu, Dec 3': the day with its date."""
        return str(format_skeleton("MMMEd", at.astimezone(self.zone), locale=self.language))

    def span(self, span: timedelta) -> str:
        """'40 min', '1 h 30 min', '12 h', '14 days'."""
        if span >= 2 * _A_DAY and not span % _A_DAY:
            return self("card-days", days=span // _A_DAY)
        minutes = round(span / timedelta(minutes=1))
        hours, rest = divmod(minutes, 60)
        return " ".join(
            part for part in (f"{hours} h" if hours else "", f"{rest} min" if rest or not hours else "") if part
        )

    def length(self, mm: float) -> str:
        """A length in the shop's units."""
        return format_length(mm, self.units)
