"""How fast it goes, in words: takt against pace, what a machine's hands would do for, trays in work."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from fractions import Fraction

from runboard.plan.pace import StationLine
from runboard.plan.schedule.problem.nouns import TICK
from runboard.plan.schedule.told.figures import Figures
from runboard.plan.schedule.told.pacing import InWork, Pace, RunPace
from runboard.words.facts import list_in_words, span_in_words
from runboard.words.plan import Names


@dataclass(frozen=True)
class PaceRow:
    """One station of a run and its work on a piece."""

    station: str
    each: str
    is_too_slow: bool


@dataclass(frozen=True)
class RunWords:
    """One run's pace in sentences, and each station's as a row."""

    name: str
    sentences: tuple[str, ...]
    rows: tuple[PaceRow, ...]
    balance: str


@dataclass(frozen=True)
class PaceWords:
    """All of it: by run, of machines, of trays. What is () is not shown."""

    runs: tuple[RunWords, ...] = ()
    machines: tuple[str, ...] = ()
    in_work: str = ""


def pace_words(found: Figures, names: Names) -> PaceWords:
    """The pace of a plan."""
    runs = tuple(_of_run(names, pace) for pace in found.paces)
    return PaceWords(runs, tuple(_machines(found, names)), _in_work(found.in_work, names))


def every(ticks: Fraction) -> str:
    """A span of hours in the shop, short ones finer than clocks say them: '45 s', '4.8 min', '12 min', '1 h 30', '60 h'.
    Never in days: these hours have nights between them."""
    span = timedelta(seconds=float(ticks * Fraction(TICK.total_seconds())))
    minutes = span / timedelta(minutes=1)
    if 1 <= minutes < 9.95:
        return f"{minutes:.1f}".removesuffix(".0") + " min"
    return f"{round(minutes / 60)} h" if minutes >= 10 * 60 else span_in_words(span)


def _of_run(names: Names, pace: RunPace) -> RunWords:
    found = names.runs.get(pace.run)
    rows = tuple(
        PaceRow(_station(names, station), every(station.each), pace.is_due and station.is_too_slow)
        for station in pace.by_station
    )
    line = StationLine([station.each for station in pace.by_station])
    balance = names.say("pace-balance", each=every(line.cycle), share=round(line.efficiency() * 100))
    return RunWords(found.name if found is not None else pace.run, tuple(_sentences(names, pace)), rows, balance)


def _sentences(names: Names, pace: RunPace) -> Iterator[str]:
    first, people = pace.by_station[0], pace.people
    kind = "undated" if not pace.is_due else "needed" if first.takt else "late"
    facts = {"station": _station(names, first), "each": every(first.each), "takt": every(first.takt)}
    yield names.say(f"pace-{kind}", **facts, at=names.tick(pace.until))
    if kind == "needed" and first.is_too_slow:
        yield names.say("pace-too-slow")
    watched = list_in_words(names.problem.stations[at].name for at in people.stations) or "none"
    yield names.say("pace-people", watched=watched, each=every(people.each), takt=every(people.takt))
    if kind == "needed" and people.is_too_slow:
        yield names.say("pace-not-enough")
    if kind == "needed" and pace.is_late_all_the_same and pace.there is not None:
        yield names.say("pace-later", at=names.tick(pace.there))
    yield names.say(f"pace-held-by-{'people' if pace.is_held_by_people else 'station'}", station=facts["station"])


def _station(names: Names, pace: Pace) -> str:
    return names.problem.stations[pace.stations[0]].name


def _machines(figures: Figures, names: Names) -> Iterator[str]:
    for at, served in figures.machines.items():
        facts = {"hands": every(served.concurrent), "machine": every(served.machine), "count": served.whole}
        yield names.say("pace-serves", station=names.problem.stations[at].name, **facts)


def _in_work(found: InWork | None, names: Names) -> str:
    if found is None:
        return ""
    facts = {"every": every(1 / found.rate), "through": every(found.time_through)}
    return names.say("pace-in-work", average=f"{float(found.average):.1f}".removesuffix(".0"), **facts)
