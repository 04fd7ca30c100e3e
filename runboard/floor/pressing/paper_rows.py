"""What was written on a tray's card, row by row, and the events that it means. Pure: the state comes in, nothing is kept."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from runboard.run.fold.names import next_load
from runboard.run.fold.pieces import counted
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState, Tray
from runboard.run.refusal import Refused

_MOMENT = timedelta(milliseconds=1)


@dataclass(frozen=True)
class CardRow:
    """One row of the card. ``scrap`` is None where nothing was written: then it is what the log has. ``at`` is None where
    no time can be read."""

    step: str
    good: int
    scrap: int | None = None
    why: str = ""
    person: str = ""
    at: datetime | None = None


@dataclass(frozen=True)
class Meant:
    """The event that a row means, but for its id: its kind, load, body and moment."""

    row: CardRow
    kind: str
    load: str
    body: Mapping[str, Any]
    at: datetime


class RowRefused(Exception):
    """What a row says cannot be; ``refused`` says why."""

    def __init__(self, step: str, refused: Refused) -> None:
        super().__init__(step)
        self.step = step
        self.refused = refused


def totals(tray: Tray, step: str) -> tuple[int, int]:
    """(good, scrap) of a tray at a step, over all its loads."""
    found = tray.counts.get(step, {}).values()
    return sum(good for good, _ in found), sum(scrap for _, scrap in found)


def meant(run: RunState, tray: Tray, rows: Sequence[CardRow], now: datetime) -> Iterator[Meant]:
    """The events, in the order of the route. Rows that say what was pressed already mean none. Raises ``RowRefused``."""
    by_step = {row.step: row for row in rows}
    known = [step for step in run.route_of(tray).steps if step.key in by_step]
    for step, at in zip(known, _moments(run, [by_step[step.key] for step in known], now), strict=True):
        found = _meant_by(run, tray, step, by_step[step.key], at)
        if found is not None:
            yield found


def _meant_by(run: RunState, tray: Tray, step: Step, row: CardRow, at: datetime) -> Meant | None:
    inside = next((batch for batch in run.loads.values() if batch.step == step.key and batch.pieces.get(tray.id)), None)
    load = inside.id if inside else _load_of(run, tray, step)
    body = _counts(tray, step, load, row)
    pressed = inside or run.past.get(load)
    if inside is None and (body["good"], _sum(body)) == counted(tray, step.key, load):
        nothing = not tray.counts.get(step.key, {}).get(load)
        if nothing or (pressed and pressed.state == "done"):
            return None
    if pressed is not None and pressed.done_at is not None:
        at = max(at, pressed.done_at + _MOMENT)  # a count replaces only what came before it
    if inside is not None and len(inside.pieces) > 1:
        return Meant(row, "pieces counted", load, body, at)
    return Meant(row, "load done", load, {"counts": {tray.id: body}}, at)


def _load_of(run: RunState, tray: Tray, step: Step) -> str:
    """The load under which pieces of the tray were counted there; else their board, else their own."""
    known = list(tray.counts.get(step.key, {}))
    if known:
        return known[-1]
    board = f"{step.key}/{tray.board}"
    return board if tray.id in run.boards.get(board, ()) else next_load(run, step, (tray.id,))


def _counts(tray: Tray, step: Step, load: str, row: CardRow) -> dict[str, Any]:
    """The row's totals as the absolute count of one load: what other loads counted is taken off."""
    good, scrap = totals(tray, step.key)
    own_good, own_scrap = counted(tray, step.key, load)
    here = row.good - (good - own_good)
    lost = (scrap if row.scrap is None else row.scrap) - (scrap - own_scrap)
    if here < 0 or lost < 0:
        raise RowRefused(step.key, Refused("counted in loads", step=step.name, good=good, scrap=scrap))
    reasons = [reason for reason in tray.scrap.get(step.key, ()) if reason["load"] == load]
    if lost != own_scrap:
        return {"good": here, "scrap": [{"pieces": lost, "why": row.why}] if lost else []}
    return {"good": here, "scrap": [{key: reason[key] for key in reason if key != "load"} for reason in reasons]}


def _sum(body: Mapping[str, Any]) -> int:
    return sum(reason["pieces"] for reason in body["scrap"])


def _moments(run: RunState, rows: Sequence[CardRow], now: datetime) -> list[datetime]:
    """When each row was finished. One without a time stands right after the row before it, else right before the next
    that has one, else now; two of the same minute follow each other."""
    found: list[datetime] = []
    last, before = run.opened_at, ""
    for at, row in enumerate(rows):
        if row.at is not None:
            _check_moment(run, row, row.at, last.replace(second=0, microsecond=0), before, now)
            moment, before = row.at, row.step
        elif before:
            moment = last
        else:
            moment = next((later.at - _MOMENT * len(rows) for later in rows[at:] if later.at is not None), now)
        last = max(moment, last + _MOMENT)
        found.append(last)
    return found


def _check_moment(run: RunState, row: CardRow, at: datetime, earliest: datetime, before: str, now: datetime) -> None:
    if at > now:
        raise RowRefused(row.step, Refused("moment to come", at=at))
    if at < earliest:
        name = run.route.step_name(before)
        refused = Refused("earlier than row", at=at, step=name) if before else Refused("before the run", at=at)
        raise RowRefused(row.step, refused)
