"""What was lost where and why, what came through each step at the first go, and whether it went with a cutter's age.

First-pass yield: the share of what came to a step that left it good without being done again. Rolled throughput yield is
their product over the route (M. Harry; see ``plan/good_rate``).
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.plan.good_rate import rolled_throughput_yield
from runboard.review.happened.nouns import Lost, SinceChange, StepYield
from runboard.review.happened.worked import Work, Worked
from runboard.review.past import Past
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import Load, RunState, Tray

HOUR = timedelta(hours=1)


def lost_in(run: RunState) -> tuple[Lost, ...]:
    """Scrap by step, reason, wood and board, most first."""
    found: dict[tuple[str, str, str, str], int] = {}
    names: dict[str, str] = {}
    for tray in run.trays.values():
        for step, reasons in tray.scrap.items():
            names.setdefault(step, run.route_of(tray).step_name(step))
            for reason in reasons:
                key = (step, str(reason["why"]), tray.wood or run.wood, tray.board)
                found[key] = found.get(key, 0) + reason["pieces"]
    lost = [
        Lost(step, names[step], why, wood, board, pieces)
        for (step, why, wood, board), pieces in found.items()
        if pieces
    ]
    return tuple(sorted(lost, key=lambda one: (-one.pieces, one.step, one.reason, one.wood, one.board)))


# yields


@dataclass(frozen=True)
class _Back:
    """Pieces that went back in the route, by the route of their tray: through ``steps`` once more, for ``cause``'s sake."""

    steps: tuple[str, ...]
    cause: str
    pieces: int
    to: str


def yields_of(past: Past) -> tuple[StepYield, ...]:
    """What came through each step of the routes that has counts, in their order."""
    run, back = past.run, list(_moved_back(past))
    counted = _counted(run)
    return tuple(_yield(run, step, counted[step.key], back) for step in steps_of(run) if step.key in counted)


def rolled(yields: Iterable[StepYield]) -> float | None:
    """The share that would pass every step at the first go; None where nothing was counted."""
    rates = [one.first_pass for one in yields if one.first_pass is not None]
    return rolled_throughput_yield(rates) if rates else None


def first_pass_of(past: Past) -> float | None:
    """Of the pieces that are through, good or scrap, the share that is good and was never done again; None without any."""
    run = past.run
    good = sum(tray.good for tray in run.trays.values())
    through = good + sum(tray.scrapped for tray in run.trays.values())
    again = sum(move.pieces - _pending(run, move) for move in _moved_back(past))
    return max(0, good - again) / through if through else None


def steps_of(run: RunState) -> list[Step]:
    """The steps of all the run's routes, in the order of the newest; those that it has lost where they stood."""
    found: dict[str, tuple[int, int, Step]] = {}
    for number, revision in enumerate(run.revisions):
        for step in revision.route.steps:
            found[step.key] = (step.index, -number, step)
    return [step for _, _, step in sorted(found.values(), key=lambda one: one[:2])]


def _counted(run: RunState) -> Mapping[str, tuple[int, int]]:
    found: dict[str, tuple[int, int]] = {}
    for tray in run.trays.values():
        for step, loads in tray.counts.items():
            good, scrap = found.get(step, (0, 0))
            found[step] = (
                good + sum(count[0] for count in loads.values()),
                scrap + sum(count[1] for count in loads.values()),
            )
    return {step: counts for step, counts in found.items() if any(counts)}


def _moved_back(past: Past) -> Iterator[_Back]:
    run = past.run
    for event in past.events:
        tray = run.trays.get(event.tray) if event.kind == "pieces moved" and event.run == run.id else None
        if tray is not None:
            yield from _back(run.route_of(tray), tray, str(event.get("to")), event.operation, event.body or {})


def _back(route: Route, tray: Tray, to: str, operation: str, body: Mapping[str, object]) -> Iterator[_Back]:
    target, source = route.step(str(body["to_operation"])), route.step(operation)
    from_ = len(route.steps) if not operation else (source.index if source else -1)
    if target is not None and target.index < from_:
        steps = tuple(step.key for step in route.steps[target.index : from_])
        pieces = body["pieces"]
        cause = str(body.get("cause_operation") or target.key)
        yield _Back(steps, cause, pieces if isinstance(pieces, int) else 0, to if to != tray.id else "")


def _yield(run: RunState, step: Step, counts: tuple[int, int], back: Iterable[_Back]) -> StepYield:
    good, scrap = counts
    again = pending = blamed = 0
    for move in back:
        if step.key in move.steps:
            again += move.pieces
            pending += _pending(run, move, step)
        blamed += move.pieces if move.cause == step.key else 0
    into = max(0, good + scrap - again + pending)
    return StepYield(step.key, step.name, into, max(0, into - scrap - blamed), max(0, into - scrap - pending))


def _pending(run: RunState, move: _Back, step: Step | None = None) -> int:
    """The pieces of a move that have still to come through the step (through any) once more: seen where they went into a tray of
    their own."""
    tray = run.trays.get(move.to)
    if tray is None or not tray.of:
        return 0
    route = run.route_of(tray)
    last = step.index if step is not None else len(route.steps)
    there = (count for at, count in tray.at.items() if (known := route.step(at)) is not None and known.index <= last)
    return min(move.pieces, sum(there))


# by the age of a cutter


def since_changes(work: Work) -> tuple[SinceChange, ...]:
    """For each station of which a change of cutter, wood, jig or focus was said: what it made and lost between changes."""
    changes: dict[str, list[tuple[datetime, str]]] = {}
    for event in work.past.events:
        if event.kind == "setup changed":
            changes.setdefault(event.station, []).append((event.moment, str(event.get("what"))))
    found: list[SinceChange] = []
    for station, some in sorted(changes.items()):
        marks = [(work.opens, ""), *some]
        loads = [load for load in work.at_station.get(station, ()) if load.run.id == work.past.run.id]
        ends = [moment for moment, _ in marks[1:]] + [work.closes]
        for (began, what), ended in zip(marks, ends, strict=True):
            here = [load for load in loads if began <= load.began_at < ended]
            if here:
                found.append(_since(work, station, what, began, here))
    return tuple(found)


def _since(work: Work, station: str, what: str, began: datetime, loads: Iterable[Worked]) -> SinceChange:
    ran, hours = timedelta(0), list[tuple[int, int]]()
    for load in loads:
        for stretch in work.of_load.get(load.number, ()):
            ran += stretch.ended_at - stretch.began_at if stretch.kind == "machine" else timedelta(0)
        made, lost = _made(load.run, load.load)
        at = max(0, -(-ran // HOUR) - 1)
        hours += [(0, 0)] * (at + 1 - len(hours))
        hours[at] = (hours[at][0] + made, hours[at][1] + lost)
    return SinceChange(station, what, began, ran, tuple(hours))


def _made(run: RunState, load: Load) -> tuple[int, int]:
    """The pieces counted of a load, and those of them that were scrap."""
    counts = [
        run.trays[tray].counts.get(load.step, {}).get(load.id, (0, 0)) for tray in load.pieces if tray in run.trays
    ]
    return sum(good + bad for good, bad in counts), sum(bad for _, bad in counts)
