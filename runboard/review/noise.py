"""Noise of a day by the published formulas: how sound levels add, how long each may last, dose, and the day's level.

Sources: the formulas are 29 CFR 1910.95, Appendix A (OSHA), I(1) to II: T = 8 / 2^((L - 90) / 5) hours, D = 100 · Σ C/T
per cent, TWA = 16.61 · log10(D / 100) + 90; and NIOSH publication 98-126, 1.1: T = 480 / 2^((L - 85) / 3) minutes,
TWA = 10.0 · log10(D / 100) + 85. They are one formula with a limit and an exchange rate: 16.61 and 10.0 are 5 and 3 by
log10(2), rounded. Here the exact factor is used, so that a constant level of 8 h gives itself back.

Every level counts. Both rules leave out what is under 80 dB (29 CFR 1910.95(d)(2)(i)), so a dose here can only be more
than theirs.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import timedelta
from math import log2, log10

DAY = timedelta(hours=8)


@dataclass(frozen=True)
class NoiseRule:
    """``limit_db`` is the level in dB(A) that a day of eight hours may have, ``exchange_db`` by how many dB it rises as
    the hours halve."""

    limit_db: float = 85.0
    exchange_db: float = 3.0


OSHA, NIOSH = NoiseRule(90, 5), NoiseRule(85, 3)


def level_together(levels: Iterable[float]) -> float | None:
    """The level of sources that sound at the same time. They are not coherent, so their energies add:
    L = 10 · log10(Σ 10^(Li / 10)); two that are equally loud make 3 dB more. ``None`` without any."""
    energy = sum(10 ** (level / 10) for level in levels)
    return 10 * log10(energy) if energy else None


def allowed_hours(level: float, rule: NoiseRule) -> float:
    """T: the hours after which a constant level in dB(A) makes 100 %."""
    hours: float = DAY / timedelta(hours=1) / 2 ** ((level - rule.limit_db) / rule.exchange_db)
    return hours


def dose(stretches: Iterable[tuple[float, timedelta]], rule: NoiseRule) -> float:
    """D in per cent: 100 · Σ C/T of stretches of (level in dB(A), how long)."""
    return 100 * sum(length / timedelta(hours=1) / allowed_hours(level, rule) for level, length in stretches)


def level_of_day(percent: float, rule: NoiseRule) -> float | None:
    """The TWA in dB(A): the constant level of eight hours that makes the same dose. ``None`` for none."""
    return rule.limit_db + rule.exchange_db * log2(percent / 100) if percent > 0 else None
