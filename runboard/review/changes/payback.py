"""After how many runs a change has paid, and how many runs of a product the shop makes a month."""

from collections.abc import Iterable
from datetime import datetime, timedelta

from runboard.plan.money.break_even import break_even
from runboard.run.fold.state import RunState

# A month as a twelfth of 365.25 days.
MONTH = timedelta(days=365.25 / 12)


def payback_of(cost: float | None, saved: timedelta, hour_rate: float | None) -> float | None:
    """The runs until what a run saves, at the worth of an hour, has made up the cost: cost / (hours × rate), the simple payback
    of any text on costing, without interest. None where the cost or the worth of an hour is not known, or nothing is saved."""
    if cost is None or hour_rate is None or saved <= timedelta(0):
        return None
    return break_even(cost, saved / timedelta(hours=1) * hour_rate)


def runs_a_month(runs: Iterable[RunState], product: str, now: datetime) -> float | None:
    """How many runs of a product the shop makes a month, from the opening of the first to now; None of fewer than two."""
    opened = [run.opened_at for run in runs if run.product == product and run.state != "abandoned"]
    if len(opened) < 2 or now <= min(opened):
        return None
    return len(opened) / max((now - min(opened)) / MONTH, 1.0)
