"""Everything that a review rests on as plain tables, for whoever reckons further in a spreadsheet or a database: runs, their
time elements, order lines, losses, changes and estimates. What each column says stands in this room's README.
"""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Literal, Protocol
from zoneinfo import ZoneInfo

from runboard.review.happened.lost import lost_in
from runboard.review.happened.order_lines import order_lines_of
from runboard.review.hours import HANDS
from runboard.review.over_runs import RunFigures, figures_of
from runboard.review.past import Past
from runboard.run.fold.adopted import AdoptedChange, Range
from runboard.run.fold.state import RunState

Cell = str | int | float | None
# What a column holds: a moment is the shop's own time with its offset, minutes are a number.
Kind = Literal["text", "moment", "whole", "minutes", "number"]

COLUMNS: Mapping[str, Mapping[str, Kind]] = {
    "runs": {
        "run": "text", "name": "text", "state": "text", "product": "text", "product_name": "text", "wood": "text",
        "opened": "moment", "closed": "moment", "finished": "moment", "wanted": "whole", "started": "whole",
        "good": "whole", "scrap": "whole", "hands_minutes": "minutes", "minutes_a_good_piece": "minutes",
        "loads": "whole", "loads_timed": "whole",
    },
    "elements": {
        "run": "text", "product": "text", "operation": "text", "step": "text", "step_name": "text", "load": "text",
        "station": "text", "trays": "text", "pieces": "whole", "element": "text", "person": "text", "hours_of": "text",
        "began": "moment", "ended": "moment", "minutes": "minutes", "known": "text",
    },
    "order_lines": {
        "run": "text", "line": "text", "for": "text", "text": "text", "pieces": "whole", "due": "moment",
        "done": "moment", "late_minutes": "minutes",
    },
    "losses": {
        "run": "text", "product": "text", "step": "text", "step_name": "text", "reason": "text", "wood": "text",
        "board": "text", "pieces": "whole",
    },
    "changes": {
        "change": "text", "run": "text", "product": "text", "adopted": "moment", "what": "text", "did": "text",
        "because": "text", "cost": "number", "earlier_low": "minutes", "earlier_mid": "minutes",
        "earlier_high": "minutes", "hands_low": "minutes", "hands_mid": "minutes", "hands_high": "minutes",
        "verdict": "text", "judged": "moment", "judged_after": "text", "saved_low": "minutes", "saved_mid": "minutes",
        "saved_high": "minutes",
    },
    "estimates": {
        "product": "text", "wood": "text", "step": "text", "step_name": "text", "element": "text",
        "written_minutes": "minutes", "minutes": "minutes", "source": "text", "times": "whole",
    },
}  # fmt: skip


@dataclass(frozen=True)
class Table:
    """``rows`` have a cell for each column of ``COLUMNS`` of that ``name``; None is what nobody knows, never nought."""

    name: str
    rows: Sequence[tuple[Cell, ...]]

    @property
    def columns(self) -> Mapping[str, Kind]:
        return COLUMNS[self.name]

    def records(self) -> Iterator[dict[str, Cell]]:
        """Each row by the names of its columns."""
        return (dict(zip(self.columns, row, strict=True)) for row in self.rows)


class Called(Protocol):
    """What people and stations are called, and who is a helper."""

    def person(self, key: str) -> str: ...
    def station(self, key: str) -> str: ...
    def is_helper(self, key: str) -> bool: ...


def tables_of(pasts: Iterable[Past], changes: Iterable[AdoptedChange], names: Called, zone: str) -> list[Table]:
    """Every table, in the order of ``COLUMNS``. ``pasts`` are the runs that are wanted, each once, the oldest first."""
    rows: dict[str, list[tuple[Cell, ...]]] = {name: [] for name in COLUMNS}
    local, newest = _Local(zone), dict[str, Past]()
    for past in pasts:
        rows["runs"].append(_run(past.run, figures_of(past.run), local))
        rows["elements"] += _elements(past, names, local)
        rows["order_lines"] += _order_lines(past, local)
        rows["losses"] += _losses(past.run)
        newest[past.run.product] = past
    rows["changes"] += (_change(change, local) for change in changes)
    for past in newest.values():
        rows["estimates"] += _estimates(past)
    return [Table(name, some) for name, some in rows.items()]


class _Local:
    def __init__(self, zone: str) -> None:
        self._zone = ZoneInfo(zone)

    def __call__(self, moment: datetime | None) -> str | None:
        return None if moment is None else moment.astimezone(self._zone).isoformat(sep=" ", timespec="seconds")


def _minutes(length: timedelta | None) -> float | None:
    return None if length is None else round(length.total_seconds() / 60, 3)


def _run(run: RunState, figures: RunFigures, local: _Local) -> tuple[Cell, ...]:
    return (
        run.id,
        run.name,
        run.state,
        run.product,
        run.product_name,
        run.wood,
        local(run.opened_at),
        local(run.closed_at),
        local(figures.finished),
        sum(order.pieces for order in run.orders),
        sum(tray.started for tray in run.trays.values()),
        figures.good,
        figures.scrap,
        _minutes(figures.hands) if figures.timed or figures.hands else None,
        _minutes(figures.a_good_piece),
        figures.loads,
        figures.timed,
    )


def _elements(past: Past, names: Called, local: _Local) -> Iterator[tuple[Cell, ...]]:
    operations = {step.key: step.operation.key for rev in past.run.revisions for step in rev.route.steps}
    for one in past.elements:
        yield (
            past.run.id,
            past.run.product,
            operations.get(one.step, ""),
            one.step,
            one.step_name,
            one.load,
            names.station(one.station),
            " ".join(one.trays),
            one.pieces,
            one.kind,
            names.person(one.person),
            ("helper" if names.is_helper(one.person) else "lead") if one.person else "",
            local(one.began_at),
            local(one.ended_at),
            _minutes(one.length),
            one.known,
        )


def _order_lines(past: Past, local: _Local) -> Iterator[tuple[Cell, ...]]:
    for one in order_lines_of(past):
        late = _minutes(one.late)
        yield past.run.id, one.line, one.whom, one.text, one.pieces, local(one.due), local(one.done), late


def _losses(run: RunState) -> Iterator[tuple[Cell, ...]]:
    for lost in lost_in(run):
        yield run.id, run.product, lost.step, lost.step_name, lost.reason, lost.wood, lost.board, lost.pieces


def _change(change: AdoptedChange, local: _Local) -> tuple[Cell, ...]:
    what = json.dumps(change.change, sort_keys=True, ensure_ascii=False)
    nothing: tuple[None, None, None] = (None, None, None)
    saved: Range | tuple[None, None, None] = change.saved or nothing
    return (
        change.id,
        change.run,
        change.product,
        local(change.at),
        what,
        change.did,
        change.because,
        change.cost,
        *change.earlier,
        *change.hands,
        change.verdict,
        local(change.judged_at),
        change.judged_after,
        *saved,
    )


def _estimates(past: Past) -> Iterator[tuple[Cell, ...]]:
    run = past.run
    for step in run.route.steps:
        for kind in (*HANDS, "machine"):
            written: timedelta = getattr(step.pass_, kind)
            if written:
                known = past.estimates.of(run, step, kind)
                length = _minutes(known.length)
                yield (
                    run.product, run.wood, step.key, step.name, kind, _minutes(written), length, known.source, known.times,
                )  # fmt: skip
