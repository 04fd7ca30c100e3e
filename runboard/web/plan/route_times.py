"""The times of a run's route as they are reckoned with, and where each comes from."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta

from runboard.floor.looking.look_back import estimates_now
from runboard.floor.workshop import Workshop
from runboard.plan.estimates import Estimates, Known
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState
from runboard.words.sentences import sentence

KINDS = ("setup", "loading", "machine", "unloading", "hand")


@dataclass(frozen=True)
class Time:
    """One time element: of which step, how long, and 'a guess' or 'measured 9 times'."""

    step: str
    what: str
    length: timedelta
    source: str
    is_measured: bool


def route_times(workshop: Workshop, run: RunState) -> list[Time]:
    """Every time element of the run's route that takes time, in order."""
    estimates = estimates_now(workshop)
    return [one for step in run.route.steps for one in _times(estimates, run, step)]


def _times(estimates: Estimates, run: RunState, step: Step) -> Iterator[Time]:
    for kind in KINDS:
        known = estimates.of(run, step, kind)
        if known.length:
            yield Time(step.name, _what(step, kind), known.length, _source(known), known.source == "measured")


def _what(step: Step, kind: str) -> str:
    size = "piece" if kind == "hand" else step.pass_.size
    return sentence("plan-element", {"kind": kind, "size": size})


def _source(known: Known) -> str:
    return sentence("plan-source", {"times": known.times})
