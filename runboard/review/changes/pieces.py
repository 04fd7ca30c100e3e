"""The pieces that came to each operation of a run, and how many more would have come good with a change."""

from collections.abc import Mapping

from runboard.plan.change import Change, Instead, singles
from runboard.run.fold.state import RunState

# For each operation the pieces that came to it, and those that it lost.
Counts = Mapping[str, tuple[int, int]]


def counts_of(run: RunState) -> Counts:
    """For each operation the pieces that came to it in a run, and those that it lost."""
    operation_of = {step.key: step.operation.key for revision in run.revisions for step in revision.route.steps}
    came: dict[tuple[str, str], int] = {}
    lost: dict[str, int] = {}
    for tray in run.trays.values():
        for step, loads in tray.counts.items():
            operation = operation_of.get(step, step)
            came[operation, step] = came.get((operation, step), 0) + sum(good + bad for good, bad in loads.values())
            lost[operation] = lost.get(operation, 0) + sum(bad for _, bad in loads.values())
    return {
        operation: (max(pieces for (other, _), pieces in came.items() if other == operation), bad)
        for operation, bad in lost.items()
    }


def pieces_saved(change: Change, counts: Counts) -> float:
    """How many pieces more would have come good where a change says what its good rate is: of those that came there."""
    rates = {one.operation: one.good_rate for one in singles(change) if isinstance(one, Instead)}
    return sum(counts[key][1] - counts[key][0] * (1 - rate) for key, rate in rates.items() if rate and key in counts)
