"""A station's own factor: by how much its runs take longer than is reckoned for their programs, learned from those that were measured.

Each load whose machine time was measured, and whose step had its time reckoned from a program, gives a ratio. How far ratios lie apart
is told by their logarithms, since half and double are equally far off. The loads of one program are one group: what the method leaves
out of it, it leaves out each time. Each group's mean is weighed by how much it varies, between programs and from load to load, and no
factor at all (1) counts as one more group of what a guess is worth (credibility: Bühlmann & Gisler, A Course in Credibility Theory,
3), so that one program moves the factor most of the way and not all of it. For spreads like these the mean of logarithms and the
logarithm of the mean are the same within half a per cent.
"""

import math
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import timedelta

from runboard.plan.estimates import GUESS_SPREAD, MACHINE
from runboard.plan.observed import is_likely, observations
from runboard.run.fold.state import RunState

# By how much programs differ in what is left out of them: the standard deviation of the logarithm. Common practice, no source.
BETWEEN_PROGRAMS = 0.10


@dataclass(frozen=True)
class Factor:
    """What reckoned seconds are multiplied by. ``spread`` is how far off one more program may be (standard deviation of the
    logarithm), ``times`` how many loads taught it, of ``programs`` different ones."""

    value: float = 1.0
    spread: float = GUESS_SPREAD
    times: int = 0
    programs: int = 0


def factor_of(runs: Iterable[RunState], station: str) -> Factor:
    """The factor of a station, from every run; 1 where nothing was measured."""
    groups: dict[str, list[float]] = defaultdict(list)
    for run in runs:
        for digest, ratio in _ratios(run, station):
            groups[digest].append(math.log(ratio))
    return learned(groups.values())


def learned(groups: Iterable[Iterable[float]]) -> Factor:
    """The factor of logarithms of ratios, those of each program a group."""
    counted = [(len(logs), math.fsum(logs) / len(logs)) for group in groups if (logs := list(group))]
    loads = MACHINE.session**2 + MACHINE.load**2
    weights = [1 / (BETWEEN_PROGRAMS**2 + loads / count) for count, _ in counted]
    precision = GUESS_SPREAD**-2 + math.fsum(weights)
    mean = math.fsum(weight * log for weight, (_, log) in zip(weights, counted, strict=True)) / precision
    spread = math.hypot(precision**-0.5, BETWEEN_PROGRAMS) if counted else GUESS_SPREAD
    return Factor(math.exp(mean), spread, sum(count for count, _ in counted), len(counted))


def _ratios(run: RunState, station: str) -> Iterable[tuple[str, float]]:
    """(the program's digest, measured over reckoned) of each load that teaches: as an estimate is taught, and by nothing else."""
    if not _is_reckoned(run, station):  # most runs are not, and looking at each load takes longer
        return
    for one in observations(run):
        reckoned = one.step.pass_.reckoned
        if one.kind != "machine" or one.length is None or one.why or one.step.operation.station != station:
            continue
        if reckoned is None or reckoned.what != "program" or not reckoned.seconds:
            continue
        if is_likely(timedelta(seconds=reckoned.seconds), one.length):
            yield reckoned.digest, one.length.total_seconds() / reckoned.seconds


def _is_reckoned(run: RunState, station: str) -> bool:
    """Whether any step of a run at the station had its time from a file."""
    steps = (step for revision in run.revisions for step in revision.route.steps)
    return any(step.pass_.reckoned is not None and step.operation.station == station for step in steps)
