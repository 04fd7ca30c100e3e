"""All runs at a glance: of each its good pieces and the hands of one, as its review has them."""

from dataclasses import dataclass
from datetime import timedelta

from runboard.floor.looking.at_hand import shop_now
from runboard.floor.workshop import Workshop
from runboard.review.over_runs import figures_of
from runboard.run.fold.state import RunState


@dataclass(frozen=True)
class Glance:
    """``a_piece`` is the hands-on time of a good piece; None where there is none, or nothing was pressed."""

    run: RunState
    wanted: int
    good: int
    a_piece: timedelta | None


def runs_at_a_glance(workshop: Workshop) -> list[Glance]:
    """Every run, the newest first. What was read of a run is kept as long as the run is the same."""
    kept: dict[str, Glance] = workshop.kept.setdefault("glances", {})
    runs = shop_now(workshop)[1].runs
    found = [
        known if (known := kept.get(run.id)) is not None and known.run is run else glance_at(run)
        for run in runs.values()
    ]
    workshop.kept["glances"] = {one.run.id: one for one in found}
    return found[::-1]


def glance_at(run: RunState) -> Glance:
    """One run."""
    figures = figures_of(run)
    return Glance(run, sum(order.pieces for order in run.orders), figures.good, figures.a_good_piece)
