"""The nouns of what held a run."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.shop.hours import Span

# What may hold a run: ('hands', person), ('station', station), ('service', service), ('wait', step), ('room', room) for its air,
# ('walking', ''), ('hours', '') where nobody was there. The same in every run of a shop.
What = tuple[str, str]
AN_HOUR = timedelta(hours=1)
# After so long without anybody there another session begins.
A_BREAK = timedelta(hours=3)


@dataclass(frozen=True)
class HeldStretch:
    """From when to when one thing held the run, as it is replayed; ``there`` is when somebody was in the shop meanwhile,
    ``open`` how long."""

    what: What
    began_at: datetime
    ended_at: datetime
    open: timedelta
    there: tuple[Span, ...] = ()


@dataclass(frozen=True)
class HourValue:
    """How much earlier the run would have been done, in hours in which somebody is in the shop, for an hour less of a thing
    (hands, a machine, walking, each wait after a step), an hour more that somebody is there, or an hour that one more of a
    service is used. ``of`` is how much of it that was: where there is less than an hour in all, all of it. Nought off the
    constraint."""

    what: What
    earlier: timedelta
    of: timedelta = AN_HOUR


@dataclass(frozen=True)
class Because:
    """A load that what held the run most kept back, by the log: its step and trays, from when until when. ``by_step`` and
    ``by_trays`` are what the hands or the station were at meanwhile. Of a wait the load is that which dried, or cured."""

    step: str
    trays: tuple[str, ...]
    since: datetime
    until: datetime
    by_step: str = ""
    by_trays: tuple[str, ...] = ()


@dataclass(frozen=True)
class Held:
    """What held the run. ``most`` is what a fifth of relief moves the finish most by, ``cost`` how much earlier it would have
    been done had that never held anything up (None where nothing moves it). ``replayed`` is the finish of the replay as it
    was, ``finished`` what really was; ``because`` is what the log shows of ``most``."""

    most: What | None
    cost: timedelta | None
    stretches: tuple[HeldStretch, ...]
    values: tuple[HourValue, ...]
    replayed: datetime
    finished: datetime | None
    because: Because | None = None

    @property
    def most_open(self) -> timedelta:
        """For how long ``most`` held the run up while somebody was in the shop."""
        return sum((each.open for each in self.stretches if each.what == self.most), timedelta(0))

    @property
    def sessions(self) -> tuple[Span, ...]:
        """From when to when somebody was there, without so long a break that it is another evening: it may end past midnight."""
        found: list[Span] = []
        for opens, closes in sorted(span for each in self.stretches for span in each.there):
            if found and opens - found[-1][1] <= A_BREAK:
                found[-1] = (found[-1][0], max(found[-1][1], closes))
            else:
                found.append((opens, closes))
        return tuple(found)


def session_of(sessions: Iterable[Span], moment: datetime) -> datetime:
    """When the session began to which a moment belongs, soon after its end, too: its day is that of the moment. The moment itself
    where it is in none."""
    near = (opens for opens, closes in sessions if opens <= moment <= closes + A_BREAK)
    return max(near, default=moment)
