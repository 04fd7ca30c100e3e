"""What the pieces of runs have used so far: supplies by piece, cutters by piece and by minute.

Every counted piece counts, good or scrap; one that goes back and comes again uses again. An operation of several passes uses its
supplies evenly over them. How much each piece uses says the route that its load began by.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import timedelta

from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState
from runboard.run.supplies.said import Pieces, UseKey, word_of

_MOST_KEPT = 2000
_MINUTE = timedelta(minutes=1)
# The last asked about of each run: its record never changes, and one that is over is the same for good.
_known: dict[str, tuple[RunState, "Spent"]] = {}


@dataclass(frozen=True)
class Spent:
    """``uses`` are the pieces by supply (``word_of``) and by what each of them uses; ``worn`` is (pieces, minutes) by cutter."""

    uses: Mapping[str, Pieces]
    worn: Mapping[str, tuple[float, float]]


def spent_by(runs: Iterable[RunState]) -> Spent:
    """What all of these have used."""
    uses: dict[str, dict[UseKey, float]] = {}
    worn: dict[str, tuple[float, float]] = {}
    for run in runs:
        spent = spent_in(run)
        for word, pieces in spent.uses.items():
            _add(uses.setdefault(word, {}), pieces)
        for cutter, (pieces_cut, minutes) in spent.worn.items():
            before = worn.get(cutter, (0.0, 0.0))
            worn[cutter] = before[0] + pieces_cut, before[1] + minutes
    return Spent(uses, worn)


def _add(found: dict[UseKey, float], more: Pieces) -> None:
    for key, pieces in more.items():
        found[key] = found.get(key, 0.0) + pieces


def spent_in(run: RunState) -> Spent:
    """What one run has used so far."""
    known = _known.get(run.id)
    if known is not None and known[0] is run:
        return known[1]
    spent = _spent(run)
    if len(_known) >= _MOST_KEPT:
        _known.clear()
    _known[run.id] = run, spent
    return spent


def _spent(run: RunState) -> Spent:
    uses: dict[str, dict[UseKey, float]] = {}
    worn: dict[str, tuple[float, float]] = {}
    loads: dict[tuple[str, str], tuple[Step, float]] = {}
    for step, load, pieces in _counted(run):
        operation = step.operation
        share = pieces / len(operation.passes)
        for use in operation.uses:
            _add(uses.setdefault(word_of(use.supply), {}), {(run.product, operation.key, use.each): share})
        if operation.cutter:
            known = loads.get((step.key, load), (step, 0.0))
            loads[step.key, load] = known[0], known[1] + pieces
    for (_, key), (step, cut) in loads.items():
        cutter = step.operation.cutter or ""
        before = worn.get(cutter, (0.0, 0.0))
        minutes = minutes_of(step, run.past.get(key) or run.loads.get(key), cut)
        worn[cutter] = before[0] + cut / len(step.operation.passes), before[1] + minutes
    return Spent(uses, worn)


def _counted(run: RunState) -> Iterator[tuple[Step, str, int]]:
    """(step, load, pieces) of everything that was counted in a run."""
    for tray in run.trays.values():
        for key, counts in tray.counts.items():
            for load, (good, scrap) in counts.items():
                record = run.past.get(load) or run.loads.get(load)
                route = run.route_at(record.revision) if record and record.revision else run.route_of(tray)
                step = route.step(key)
                if step is not None and good + scrap:
                    yield step, load, good + scrap


def minutes_of(step: Step, load: Load | None, pieces: float) -> float:
    """How long a load's pieces were cut: as it was measured, else as the route says. At a machine its own time, by hand the
    hands'."""
    kind = "machine" if step.has_machine else "hand"
    spans = [span for span in load.spans if span.kind == kind and span.measured] if load is not None else []
    taken = sum((span.ended_at - span.began_at for span in spans if span.ended_at is not None), timedelta(0))
    return taken / _MINUTE if taken else pieces * minutes_each(step, pieces)


def minutes_each(step: Step, pieces: float) -> float:
    """Minutes of cutting that a piece takes as the route says, where so many go on a load that takes all of them."""
    if not step.has_machine:
        return step.pass_.hand / _MINUTE
    return step.pass_.machine / _MINUTE / (step.most_a_load or (1 if step.pass_.size == "piece" else pieces) or 1)
