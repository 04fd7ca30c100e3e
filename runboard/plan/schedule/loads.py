"""The loads that are still to be begun at a step: how the pieces that are there, or will be, make boards, jigs, trays, passes."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from runboard.run.names import next_load
from runboard.run.route import Step
from runboard.run.state import RunState


@dataclass(frozen=True)
class Batch:
    """One load that is not begun, under the name that a phone would give it, with the pieces of each tray."""

    load: str
    pieces: Mapping[str, int]


def batches(run: RunState, step: Step) -> list[Batch]:
    """Every load still to be begun at ``step``, in the order of the trays."""
    left = {key: count for key in run.trays if (count := wanted(run, key, step))}
    return [Batch(load, pieces) for load, pieces in _shared(run, step, left)]


def wanted(run: RunState, tray_key: str, step: Step) -> int:
    """The pieces of a tray that have still to begin ``step``: those there and free, and those on their way to it."""
    tray = run.trays[tray_key]
    route = run.route_of(tray)
    if route.step(step.key) is None:
        return 0
    coming = sum(count for key, count in tray.at.items() if (at := route.step(key)) and at.index <= step.index)
    return max(0, coming - tray.busy.get(step.key, 0))


def _shared(run: RunState, step: Step, left: dict[str, int]) -> Iterator[tuple[str, dict[str, int]]]:
    pass_ = step.pass_
    if pass_.size == "board":
        for board, fed in run.boards.items():
            part = {tray: left[tray] for tray in fed if tray in left}
            if part and board.split("/", 1)[0] == step.key and board not in run.loads:
                for tray in part:
                    left.pop(tray)
                yield board, part
    if pass_.size == "run" and not _is_by_hand(step):
        for part in _filled(left, pass_.pieces):
            yield next_load(run, step, tuple(part)), part
        return
    for tray, count in left.items():
        most = pass_.pieces if pass_.pieces and pass_.size in ("jig", "board", "run") else count
        base = next_load(run, step, (tray,))
        for number, at in enumerate(range(0, count, most)):
            yield (base if not number else f"{base}+{number}"), {tray: min(most, count - at)}


def _is_by_hand(step: Step) -> bool:
    """Hand work over several trays is planned tray by tray: its setup comes once all the same, and a plan that keeps them
    together is one of the plans."""
    pass_ = step.pass_
    return not (pass_.loading or pass_.machine or pass_.unloading)


def _filled(left: Mapping[str, int], most: int | None) -> Iterator[dict[str, int]]:
    """Whole trays in order, as many as one load takes; one that is larger than a load comes in parts."""
    batch: dict[str, int] = {}
    for tray, count in left.items():
        if batch and most and sum(batch.values()) + count > most:
            yield batch
            batch = {}
        while most and count > most:
            yield {tray: most}
            count -= most
        if count:
            batch[tray] = count
    if batch:
        yield batch
