"""Everything that happened in a run, put together."""

from datetime import datetime

from runboard.review.happened.bars import bars_of, errors_of
from runboard.review.happened.day import day_of
from runboard.review.happened.lost import first_pass_of, lost_in, rolled, since_changes, yields_of
from runboard.review.happened.nouns import Happened
from runboard.review.happened.order_lines import order_lines_of
from runboard.review.happened.planned import Planned, planned_of
from runboard.review.happened.process import process_of
from runboard.review.hours import HANDS, total
from runboard.review.past import Past
from runboard.run.fold.state import RunState


def happened(past: Past, planned: Planned | None = None) -> Happened:
    """What happened in a run, as far as it is. Pure: the same past gives the same. ``planned`` is the plan at the opening,
    where somebody has made it already: of a large run it takes most of the time."""
    run, day = past.run, day_of(past)
    yields = yields_of(past)
    rows, promised = planned or planned_of(past)
    trays = run.trays.values()
    return Happened(
        wanted=sum(order.pieces for order in run.orders),
        started=sum(tray.started for tray in trays),
        good=sum(tray.good for tray in trays),
        scrap=sum(tray.scrapped for tray in trays),
        hands=total(one for one in past.elements if one.kind in HANDS),
        first_pass=first_pass_of(past),
        rolled=rolled(yields),
        bars=bars_of(past),
        day=day.parts,
        planned=rows,
        waiting=day.waiting,
        lost=lost_in(run),
        yields=yields,
        process=process_of(past, day),
        order_lines=order_lines_of(past),
        promised=promised,
        finished=finish_of(run),
        errors=errors_of(past),
        since_changes=since_changes(day.work),
    )


def finish_of(run: RunState) -> datetime | None:
    """When the last load was through; None where the run goes on with pieces in work, or was given up."""
    in_work = any(tray.in_process for tray in run.trays.values())
    if run.state == "abandoned" or (run.state == "open" and (in_work or not run.past)):
        return None
    ends = [load.done_at for load in run.past.values() if load.done_at is not None and load.state == "done"]
    return max(ends, default=run.closed_at)
