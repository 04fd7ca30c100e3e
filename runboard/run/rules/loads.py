"""Which loads the pieces at a step make, and how many pieces go on one: on Now, in the plan, in a press and on a helper's page."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from runboard.run.fold.names import load_ids, step_of
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState


@dataclass(frozen=True)
class LoadToBe:
    """A load that is not begun, under the name that a phone gives it, with its step and the pieces of each tray."""

    load: str
    step: Step
    pieces: Mapping[str, int]


def loads_at(run: RunState, key: str, pieces: Mapping[str, int], *, hands_by_tray: bool = False) -> Iterator[LoadToBe]:
    """The loads that ``pieces`` of each tray make at the step ``key``, in the order of the trays: boards first. Trays whose
    revisions have another operation there don't go together.

    ``hands_by_tray`` takes hand work over several trays one tray at a time. Now proposes in one press all that is ready; a
    plan, which looks ahead, would make the first tray wait for the last.
    """
    for step, some in _alike(run, key, pieces):
        left = dict(some)
        yield from _boards(run, step, left)
        ids: dict[tuple[str, ...], Iterator[str]] = {}
        for part in shared_out(step, left, hands_by_tray=hands_by_tray):
            trays = tuple(part)
            yield LoadToBe(next(ids.setdefault(trays, load_ids(run, step, trays))), step, part)


def shared_out(step: Step, pieces: Mapping[str, int], *, hands_by_tray: bool = False) -> Iterator[dict[str, int]]:
    """Trays shared out to loads: whole trays in order while they fit, where one load takes several; else each tray for
    itself. A tray with more pieces than go on a load takes several."""
    together = takes_several(step, hands_by_tray=hands_by_tray)
    batch: dict[str, int] = {}
    for tray, count in pieces.items():
        if batch and not (together and step.is_one_load(sum(batch.values()) + count)):
            yield batch
            batch = {}
        while not step.is_one_load(count):
            yield {tray: step.on_a_load(count)}
            count -= step.on_a_load(count)
        if count:
            batch[tray] = count
    if batch:
        yield batch


def takes_several(step: Step, *, hands_by_tray: bool = False) -> bool:
    """Whether trays that are no board's go on one load together."""
    pass_ = step.pass_
    is_by_hand = not (pass_.loading or pass_.machine or pass_.unloading)
    return pass_.size == "run" and not (hands_by_tray and is_by_hand)


def is_by_tray(step: Step) -> bool:
    """Whether it is hand work that one press may begin for several trays and a plan takes one tray at a time."""
    return takes_several(step) and not takes_several(step, hands_by_tray=True)


def _alike(run: RunState, key: str, pieces: Mapping[str, int]) -> list[tuple[Step, dict[str, int]]]:
    """Trays together whose own routes have the same operation and pass at a step."""
    found: list[tuple[Step, dict[str, int]]] = []
    for tray, count in pieces.items():
        step = run.route_of(run.trays[tray]).step(key)
        if step is None:
            continue
        same = (
            some
            for there, some in found
            if there is step or (there.operation, there.pass_) == (step.operation, step.pass_)
        )
        group = next(same, None)
        if group is None:
            found.append((step, {tray: count}))
        else:
            group[tray] = count
    return found


def _boards(run: RunState, step: Step, left: dict[str, int]) -> Iterator[LoadToBe]:
    """The boards that are still to be cut; their trays are taken from what is ``left``."""
    if step.pass_.size != "board":
        return
    for board, fed in run.boards.items():
        part = {tray: left[tray] for tray in fed if tray in left}
        if part and step_of(board) == step.key and not _was_begun(run, step, board):
            for tray in part:
                left.pop(tray)
            yield LoadToBe(board, step, part)


def _was_begun(run: RunState, step: Step, board: str) -> bool:
    """Whether a board is at its machine or was counted in all its trays; one that was taken off is offered again."""
    counts = [board in run.trays[tray].counts.get(step.key, ()) for tray in run.boards[board] if tray in run.trays]
    return board in run.loads or all(counts)
