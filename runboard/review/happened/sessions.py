"""When each person was in the shop: from when they came until they went, or until the last sign of them."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import NamedTuple

from runboard.review.happened.worked import Work
from runboard.review.stays import Stay
from runboard.run.log.event import Event
from runboard.run.log.kinds import KINDS
from runboard.shop.hours import Span, local_day, without

# Who has given no sign for so long, and none that day, has gone: midnight alone sends nobody home.
GONE_AFTER = timedelta(hours=4)
_COMES = frozenset(("person came", "person came back", "time said", "room changed", "job started"))
_OF_LOADS = frozenset(kind for kind, known in KINDS.items() if known.subject == "load")
# What says anything of where somebody is: what is about people, stations, loads and trays, and that a run is finished.
_SIGNS = frozenset(
    ("run finished", *(kind for kind, known in KINDS.items() if known.subject in ("person", "station", "load", "tray")))
)
_BACK = frozenset(("person came", "person came back", "job started", "person went"))


@dataclass
class Session:
    """A stretch in which somebody was there. ``came`` and ``went`` say that they said so, ``rooms`` where they said that
    they were, ``away`` when they were called away, ``jobs`` the shop's own small jobs that their hands were at."""

    person: str
    began_at: datetime
    ended_at: datetime
    came: bool = False
    went: bool = False
    rooms: list[tuple[datetime, str]] = field(default_factory=list)
    away: list[tuple[datetime, datetime]] = field(default_factory=list)
    jobs: list[tuple[datetime, datetime, str]] = field(default_factory=list)

    @property
    def there(self) -> list[Span]:
        """The session without the times in which they were called away."""
        return without([(self.began_at, self.ended_at)], self.away)


class _Sign(NamedTuple):
    began_at: datetime
    ended_at: datetime
    event: Event | None = None

    @property
    def kind(self) -> str:
        return self.event.kind if self.event else ""

    @property
    def opens(self) -> bool:
        """Whether it shows that somebody is there who has not said so: hands, or a press about a load."""
        return self.event is None or self.kind in _COMES or self.kind in _OF_LOADS


def sessions_of(work: Work, watches: Iterable[Stay]) -> list[Session]:
    """Every session of the run's days, by person and beginning."""
    found: list[Session] = []
    for person, signs in sorted(_signs(work, watches).items()):
        found += _Sessions(work, person).of(sorted(signs, key=lambda sign: sign.began_at))
    return found


def _signs(work: Work, watches: Iterable[Stay]) -> Mapping[str, list[_Sign]]:
    found: dict[str, list[_Sign]] = {}
    for event in work.past.events:
        if event.person and event.basis != "paper" and event.kind in _SIGNS:
            moment = event.moment
            if moment >= work.opens:
                found.setdefault(event.person, []).append(_Sign(moment, moment, event))
    for stretch in work.stretches:
        if stretch.person and stretch.kind != "machine":
            found.setdefault(stretch.person, []).append(_Sign(stretch.began_at, stretch.ended_at))
    for stay in watches:
        found.setdefault(stay.person, []).append(_Sign(stay.began_at, stay.ended_at))
    return found


class _Sessions:
    """One person's signs, read in their order."""

    def __init__(self, work: Work, person: str) -> None:
        self._work, self._zone, self._person = work, work.past.book.time_zone, person
        self._found: list[Session] = []
        self._here: Session | None = None
        self._away: datetime | None = None
        self._job: tuple[datetime, str] | None = None

    def of(self, signs: Iterable[_Sign]) -> list[Session]:
        for sign in signs:
            if self._here is not None and not self._goes_on(sign.began_at):
                self._close()
            if self._here is None:
                if not sign.opens:
                    continue
                self._here = Session(self._person, sign.began_at, sign.ended_at, sign.kind == "person came")
            self._read(self._here, sign)
        self._end()
        return [session for session in self._found if session.began_at < session.ended_at]

    def _goes_on(self, moment: datetime) -> bool:
        last = self._here.ended_at if self._here else moment
        return moment - last <= GONE_AFTER or local_day(moment, self._zone) == local_day(last, self._zone)

    def _read(self, here: Session, sign: _Sign) -> None:
        here.ended_at = max(here.ended_at, sign.ended_at)
        event = sign.event
        if event is None or sign.kind in _BACK or sign.kind in _OF_LOADS:
            self._comes_back(here, sign.began_at)
        if event is None or sign.kind in ("job done", "job started", "person went", "person called away"):
            self._ends_job(here, sign.began_at)
        if event is None:
            return
        if event.get("room"):
            here.rooms.append((sign.began_at, str(event.get("room"))))
        if sign.kind == "person called away":
            self._away = sign.began_at
        elif sign.kind == "job started":
            self._job = (sign.began_at, str(event.get("job")))
        elif sign.kind == "person went":
            here.went = True
            self._close()

    def _comes_back(self, here: Session, moment: datetime) -> None:
        if self._away is not None:
            here.away.append((self._away, moment))
            self._away = None

    def _ends_job(self, here: Session, moment: datetime) -> None:
        if self._job is not None:
            here.jobs.append((self._job[0], moment, self._job[1]))
            self._job = None

    def _close(self) -> None:
        if self._here is not None:
            self._comes_back(self._here, self._here.ended_at)
            self._ends_job(self._here, self._here.ended_at)
            self._found.append(self._here)
        self._here = None

    def _end(self) -> None:
        """Who is still there, is until now; of days that are over nobody knows more than the last sign."""
        is_now = self._work.closes >= self._work.past.now
        if self._here is not None and is_now and self._goes_on(self._work.closes):
            self._here.ended_at = max(self._here.ended_at, self._work.closes)
        self._close()
