"""The figures of one plan that pages show, made once: finishes, hours, chances, what is late, what holds it, pace, chart.

Plain records all through, so that a child process can make them and send them back.
"""

import pickle
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from runboard.plan.pace import PersonMachine
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.worth import Late, late_orders
from runboard.plan.schedule.told.activity import Part, chart, parts
from runboard.plan.schedule.told.draws import Spread
from runboard.plan.schedule.told.effort import (
    PersonLoad,
    StationLoad,
    finish_of,
    hands_ticks,
    person_loads,
    station_loads,
)
from runboard.plan.schedule.told.forecast import Forecast, forecasts
from runboard.plan.schedule.told.holding import Holder, Name, holder
from runboard.plan.schedule.told.in_work import InWork, trays_in_work
from runboard.plan.schedule.told.pacing import RunPace, run_paces
from runboard.plan.schedule.told.person_machine import machines_served


@dataclass(frozen=True)
class Asked:
    """What the figures are made of, beside problem and plan. ``begun`` are the trays (run, tray) in work already, ``before``
    is what held the last plan; ``is_many`` has chances reckoned from as many goes as the compiled rule has time for."""

    spread: Spread
    begun: Collection[tuple[str, str]] = ()
    before: Name = ()
    is_many: bool = False


@dataclass(frozen=True)
class Share:
    """What is asked by one run, or by all there is: the tick of its finish, hands-on ticks, each person's load, its chances
    (None where nothing is left)."""

    finish: int = 0
    hands: int = 0
    loads: tuple[PersonLoad, ...] = ()
    outlook: Forecast | None = None


@dataclass(frozen=True)
class Figures:
    """``whole`` is of everything, ``runs`` of each run of which something is still to be done. ``charts`` are the sittings
    of the chart, each packed by itself (``part``): a long plan has fifty, and a page shows a few."""

    whole: Share = field(default_factory=Share)
    runs: Mapping[str, Share] = field(default_factory=dict)
    late: tuple[Late, ...] = ()
    holder: Holder | None = None
    stations: tuple[StationLoad, ...] = ()
    paces: tuple[RunPace, ...] = ()
    machines: Mapping[int, PersonMachine[Fraction]] = field(default_factory=dict)
    in_work: InWork | None = None
    charts: tuple[bytes, ...] = ()

    def part(self, at: int) -> Part:
        """One sitting of the chart."""
        found: Part = pickle.loads(self.charts[at])  # noqa: S301 - packed by ``figures_of``, and by nobody else
        return found


def figures_of(problem: Problem, plan: Plan, asked: Asked) -> Figures:
    """All the figures of a plan. Seconds of work where it is long: for a child process."""
    runs = list(dict.fromkeys(block.run for block in problem.blocks))
    told = forecasts(problem, plan, ("", *runs), spread=asked.spread) if runs else {}
    return Figures(
        _share(problem, plan, "", told),
        {run: _share(problem, plan, run, told) for run in runs},
        tuple(late_orders(problem, plan)),
        holder(problem, plan, "", asked.before),
        tuple(station_loads(problem, plan)),
        tuple(run_paces(problem, plan)),
        machines_served(problem),
        trays_in_work(problem, plan, asked.begun),
        tuple(_packed(problem, plan)),
    )


def _share(problem: Problem, plan: Plan, run: str, told: Mapping[str, Forecast]) -> Share:
    loads = tuple(person_loads(problem, plan, run))
    return Share(finish_of(problem, plan, run), hands_ticks(problem, plan, run), loads, told.get(run))


def _packed(problem: Problem, plan: Plan) -> Iterator[bytes]:
    return (pickle.dumps(one) for one in parts(chart(problem, plan)))
