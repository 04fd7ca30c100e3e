"""What is found of a run's programs when it is looked through: no time reckoned, one that was changed since, one that goes too far."""

from collections.abc import Iterable, Iterator, Mapping

from runboard.plan.before.finding import BeforeRun, Finding, Level
from runboard.plan.before.looked_at import LookedAt
from runboard.run.fold.route import Route, Step
from runboard.shop.machines import Motion, Reckoned
from runboard.shop.product import Operation, Product

# What a setup sheet calls its program, in small letters.
_PROGRAM = "program"
_SAME = 1e-3  # mm


def findings(asked: BeforeRun) -> Iterator[Finding]:
    """Of each step at a machine that has a program, by its setup sheet or by the time that was taken."""
    unseen: set[tuple[str, str]] = set()
    for step in asked.run.route.steps:
        station = asked.book.station(step.operation.station)
        if station is None or not station.machine:
            continue
        link = f"/before/program?product={asked.run.product}&step={step.key}"
        if step.pass_.reckoned is None:
            one = step.operation.key, program_named(step.operation)
            if one[1] and one not in unseen and not station.heats:  # a laser's drawing is looked at as an engraving
                unseen.add(one)
                yield _unseen(asked, step, one[1], link)
            continue
        for is_right, code, facts in _of_step(step.pass_.reckoned, station.motion, asked.run.product, asked.looked):
            level: Level = "green" if is_right else "look"
            yield Finding(f"program {step.key}", level, code, {"step": step.name, **facts}, "" if is_right else link)


def _unseen(asked: BeforeRun, step: Step, program: str, link: str) -> Finding:
    """A program that nobody looked at here: of one that ran, its time is known all the same."""
    known = asked.estimates.of(asked.run, step, "machine")
    facts = {"step": step.operation.name, "program": program, "times": known.times}
    if known.source == "guess":
        return Finding(f"program {step.key}", "look", "program-no-time", facts, link)
    return Finding(f"program {step.key}", "green", "program-measured", facts)


def _of_step(
    reckoned: Reckoned, motion: Motion, product: str, looked: LookedAt
) -> Iterable[tuple[bool, str, Mapping[str, str | float]]]:
    """(whether it is right, code, facts): the first thing that is wrong, else that it is right; nothing of another file's time."""
    if reckoned.what != "program":
        return []
    file = {"program": reckoned.name}
    day = looked.changed(product, reckoned)
    if day is not None:
        return [(False, "program-changed", {**file, "day": day})]
    for axis, reach, travel in _reaches(reckoned, motion):
        if reach > travel + _SAME:
            return [(False, "program-too-far", {**file, "axis": axis, "reach": reach, "travel": travel})]
    return [(True, "program-fine", file)]


def program_named(operation: Operation) -> str:
    """The program that an operation's setup sheet names; '' for none."""
    return next((text for label, text in operation.setup_sheet if label.strip().lower() == _PROGRAM), "")


def _reaches(reckoned: Reckoned, motion: Motion) -> Iterator[tuple[str, float, float]]:
    for axis in "xyz":
        reach, travel = getattr(reckoned, f"reach_{axis}"), getattr(motion, f"travel_{axis}")
        if reach is not None and travel is not None:
            yield axis.upper(), reach, travel


def changed_steps(product: Product, looked: LookedAt) -> Iterator[tuple[Step, Reckoned, str]]:
    """The steps of a product whose file was changed since its time was taken, with the day on which that was seen."""
    for step in Route(product).steps:
        reckoned = step.pass_.reckoned
        day = looked.changed(product.key, reckoned) if reckoned else None
        if reckoned is not None and day is not None:
            yield step, reckoned, day
