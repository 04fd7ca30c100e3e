"""The process chart of what was done: the route's symbols (ASME Standard 101, 1947) with times, walks and waiting.

The book knows walks in minutes, not in metres: that is the distance that the chart has.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import timedelta

from runboard.review.happened.day import Day
from runboard.review.happened.lost import steps_of
from runboard.review.happened.nouns import DayPart, ProcessLine
from runboard.review.hours import HANDS, total
from runboard.review.past import Past
from runboard.review.time_study import Element
from runboard.run.fold.route import Step
from runboard.run.rules.resting import done_at
from runboard.shop.route_words import SYMBOLS, symbols

ZERO = timedelta(0)
_NAMES = {symbol: name for name, symbol in SYMBOLS.items()}


def process_of(past: Past, day: Day) -> tuple[ProcessLine, ...]:
    """The lines of the chart in the order of the route; of steps that nobody has come to times are not known."""
    return tuple(_Chart(past, day).lines())


@dataclass
class _Walks:
    number: int = 0
    time: timedelta = ZERO


class _Chart:
    def __init__(self, past: Past, day: Day) -> None:
        self._past = past
        self._elements: dict[str, list[Element]] = {}
        for one in past.elements:
            self._elements.setdefault(one.step, []).append(one)
        self._walks = _walks_to(day.parts)
        self._waited = _waited(past, day)

    def lines(self) -> Iterator[ProcessLine]:
        before: Step | None = None
        for step in steps_of(self._past.run):
            at_first, after = symbols(self._past.book, step.operation, before.operation if before else None)
            yield from self._step(step, [_NAMES[symbol] for symbol in at_first])
            if after and step.last_pass:
                yield self._delay(step)
            before = step
        good = sum(tray.good for tray in self._past.run.trays.values())
        if good:
            yield ProcessLine("storage", "", "", "", None, pieces=good)

    def _step(self, step: Step, names: list[str]) -> Iterator[ProcessLine]:
        walks = self._walks.get(step.key, _Walks())
        pieces = self._pieces(step)
        for name in names:
            line = ProcessLine(name, step.key, step.name, step.operation.station, None, pieces=pieces)
            if name == "transport":
                yield _with(line, walks.time if walks.number else None, walks)
                walks = _Walks()
            else:
                yield _with(line, self._time(step.key), walks, self._waited.get(step.key))

    def _delay(self, step: Step) -> ProcessLine:
        rests = list(self._rested(step.key))
        mean = sum(rests, ZERO) / len(rests) if rests else None
        return ProcessLine("delay", step.key, step.name, "", mean, pieces=self._pieces(step))

    def _rested(self, key: str) -> Iterator[timedelta]:
        """How long each tray rested after a step, from when its last piece was done."""
        run, book = self._past.run, self._past.book
        for tray in run.trays.values():
            rest = tray.rests.get(key)
            route = run.route_at(rest.revision or tray.revision) if rest else run.route
            step = route.step(key)
            if rest is not None and step is not None:
                ended = rest.ended_at or (rest.ready_at if rest.ready_at <= self._past.until else None)
                if ended is not None:
                    yield max(ZERO, ended - done_at(book, route, step, rest))

    def _time(self, step: str) -> timedelta | None:
        some = [one for one in self._elements.get(step, ()) if one.kind in (*HANDS, "machine")]
        known = [one for one in some if one.length is not None]
        return total(known) if known else None

    def _pieces(self, step: Step) -> int:
        trays = self._past.run.trays.values()
        return sum(good + bad for tray in trays for good, bad in tray.counts.get(step.key, {}).values())


def _with(line: ProcessLine, time: timedelta | None, walks: _Walks, waited: timedelta | None = None) -> ProcessLine:
    return ProcessLine(line.symbol, line.step, line.step_name, line.station, time, walks.time, walks.number, waited,
                       line.pieces)  # fmt: skip


def _walks_to(parts: Iterable[DayPart]) -> Mapping[str, _Walks]:
    """The walks that led to each of the run's own steps: a walk leads to what that person was at next."""
    found: dict[str, _Walks] = {}
    left: dict[str, list[DayPart]] = {}
    for part in parts:
        if part.row != "person":
            continue
        if part.doing == "walking":
            left.setdefault(part.key, []).append(part)
        elif part.doing in ("work", "watching") and part.key in left:
            for walk in left.pop(part.key):
                if not part.run and part.load:
                    walks = found.setdefault(part.step, _Walks())
                    walks.number, walks.time = walks.number + 1, walks.time + walk.length
    return found


def _waited(past: Past, day: Day) -> Mapping[str, timedelta]:
    """What trays waited before each step on average, over those that came to it."""
    sums: dict[str, timedelta] = {}
    trays: dict[str, set[str]] = {}
    for wait in day.waits:
        sums[wait.step] = sums.get(wait.step, ZERO) + (wait.ended_at - wait.began_at)
    for tray in past.run.trays.values():
        for step in {*tray.counts, *tray.at}:
            trays.setdefault(step, set()).add(tray.id)
    return {step: length / max(1, len(trays.get(step, ()))) for step, length in sums.items()}
