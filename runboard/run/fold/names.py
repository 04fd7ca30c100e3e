"""How loads are named, so that two phones name the same one, and which pieces a press means.

``cut/2`` is the second board, ``sand:120/4`` tray 4 at that pass, ``engrave/4.2`` its second load there, ``oil/1+2+3``
several trays at once.
"""

from collections.abc import Iterator, Mapping
from itertools import chain, count
from typing import Any

from runboard.run.fold.draft import Draft
from runboard.run.fold.pieces import CAN_BE_ASSUMED_DONE, counted, remaining
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState, Tray
from runboard.run.log.event import Event


def step_of(load: str) -> str:
    """The step that a load's id names."""
    return load.split("/", 1)[0]


def trays_of(load: str) -> list[str]:
    """The trays that a load's id names (a board's number is none)."""
    return load.split("/", 1)[-1].split(".", 1)[0].split("+")


def next_load(run: RunState, step: Step, trays: tuple[str, ...]) -> str:
    """The id of the next load of these trays at a step."""
    return next(load_ids(run, step, trays))


def load_ids(run: RunState, step: Step, trays: tuple[str, ...]) -> Iterator[str]:
    """The ids of the next loads of these trays at a step: the plain one, then with ``.2``, ``.3``, without those begun."""
    base = f"{step.key}/{'+'.join(trays)}"
    return (
        load for load in chain((base,), (f"{base}.{at}" for at in count(2))) if not _is_used(run, step, trays, load)
    )


def _is_used(run: RunState, step: Step, trays: tuple[str, ...], load: str) -> bool:
    if load in run.loads or load in run.boards or (load in run.past and run.past[load].state != "off"):
        return True
    return any(load in run.trays[tray].counts.get(step.key, {}) for tray in trays if tray in run.trays)


def counted_before(draft: Draft, run: str, load: str, step: str) -> dict[str, int]:
    """The pieces of a load that is not begun now and was counted before: a board in each of its trays, another in any.

    Its id then means those pieces, whose counts replace; what is left at the step becomes the next load.
    """
    trays, fed = draft.trays_of(run), draft.run(run).boards.get(load)
    is_changed = run in draft.trays
    at_step = (
        _counted_at(trays, step) if is_changed else draft.once(("counted", run, step), lambda: _counted_at(trays, step))
    )
    found: dict[str, int] = at_step.get(load, {})
    if not fed:
        return found
    there = [key for key in fed if key in trays]
    return {key: found[key] for key in there} if all(key in found for key in there) else {}


def _counted_at(trays: Mapping[str, Tray], step: str) -> dict[str, dict[str, int]]:
    """By load: what was counted of it in each tray at a step."""
    found: dict[str, dict[str, int]] = {}
    for tray in trays.values():
        for load in tray.counts.get(step, ()):
            found.setdefault(load, {})[tray.id] = sum(counted(tray, step, load))
    return found


def pieces_wanted(draft: Draft, event: Event, load: Load, step: Step) -> dict[str, int]:
    """Which pieces a press means: those it names, else those of the board, else what the tray has for this step."""
    run = draft.run(event.run)
    if event.kind == "pieces counted":
        tray = draft.tray(event.run, event.tray)
        said = event.get("good") + sum(reason["pieces"] for reason in event.get("scrap") or ())
        more = said - sum(counted(tray, step.key, load.id)) - remaining(load, tray)
        return {event.tray: tray.free(step.key) if more <= 0 else more}
    if event.get("pieces"):
        return {tray: pieces for tray, pieces in event.get("pieces").items() if pieces}
    counts: Mapping[str, Mapping[str, Any]] = event.get("counts") or {}
    if counts and "*" not in counts:
        return _not_yet_counted(draft, event.run, load, step, counts)
    if load.id in run.boards:
        return {tray: min(pieces, reach(draft, event.run, tray, step)) for tray, pieces in run.boards[load.id].items()}
    named = [tray for tray in trays_of(load.id) if draft.has_tray(event.run, tray)]
    if not named and event.tray:
        named = [event.tray]
    return {tray: _capped(step, draft.tray(event.run, tray), reach(draft, event.run, tray, step)) for tray in named}


def _not_yet_counted(
    draft: Draft, run: str, load: Load, step: Step, counts: Mapping[str, Mapping[str, Any]]
) -> dict[str, int]:
    """The pieces that absolute counts mean beyond those that were counted, or assumed, for this load before."""
    more = {tray: _said(said) - sum(counted(draft.tray(run, tray), step.key, load.id)) for tray, said in counts.items()}
    return {tray: pieces for tray, pieces in more.items() if pieces > 0}


def _said(said: Mapping[str, Any]) -> int:
    return int(said["good"]) + sum(int(reason["pieces"]) for reason in said.get("scrap") or ())


def _capped(step: Step, tray: Tray, there: int) -> int:
    return step.on_a_load(tray.free(step.key) or there)


def reach(draft: Draft, run: str, tray_key: str, step: Step) -> int:
    """How many pieces of a tray could be at ``step`` if what was not pressed before is taken as done."""
    tray = draft.tray(run, tray_key)
    route = draft.run(run).route_of(tray)
    there = sum(tray.free(step.key) for step in route.steps[: step.index + 1])
    for load in draft.open_loads(run):
        known = route.step(load.step)
        if load.state in CAN_BE_ASSUMED_DONE and known is not None and known.index < step.index:
            there += remaining(load, tray)
    return there
