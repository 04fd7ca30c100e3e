"""A machine that runs under somebody's eyes: when it calls, and when it asks for a look."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.demo.phone import Draft, Shopfloor, draft
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load
from runboard.shop.care import watch_interval

# People look a little before they are asked to.
LOOK_BEFORE = timedelta(seconds=20)


@dataclass
class Watched:
    """The load that runs, when its machine really ends, and when it stops early if it does."""

    floor: Shopfloor
    run: str
    load: str
    ends_at: datetime
    stops_at: datetime | None = None

    @property
    def now(self) -> tuple[Load, Step]:
        """The load as it stands, and its step."""
        return load_at(self.floor, self.run, self.load)

    @property
    def calls(self) -> bool:
        """Whether it has ended or stopped."""
        return self.floor.now >= (self.stops_at or self.ends_at)

    def next_call(self) -> list[datetime]:
        """The moments still to come at which it wants somebody."""
        moments = (self.ends_at, self.stops_at, self._look_at())
        return [moment for moment in moments if moment is not None and moment > self.floor.now]

    def look(self) -> list[Draft]:
        """The press that says that somebody looked, if it is time to."""
        moment = self._look_at()
        if moment is None or moment > self.floor.now:
            return []
        load, _ = self.now
        return [draft("watch checked", {"at_check": load.checks}, about(load))]

    def _look_at(self) -> datetime | None:
        load, step = self.now
        every = watch_interval(self.floor.book, step.operation)
        if every is None or load.checked_at is None:
            return None
        return load.checked_at + every - min(LOOK_BEFORE, every / 3)


def load_at(floor: Shopfloor, run: str, load: str) -> tuple[Load, Step]:
    """A load that is begun, as it stands, and its step."""
    state = floor.state.runs[run]
    return state.loads[load], state.route.by_key[state.loads[load].step]


def about(load: Load) -> dict[str, str]:
    """The envelope's fields of a load."""
    return {"run": load.run, "load": load.id, "operation": load.step, "station": load.station}
