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
    for step in asked.run.route.steps:
        station = asked.book.station(step.operation.station)
        if station is None or not station.machine:
            continue
        found = list(_of_step(step, station.motion, asked.run.product, asked.looked))
        link = f"/before/program?product={asked.run.product}&step={step.key}"
        for is_right, code, facts in found:
            level: Level = "green" if is_right else "look"
            yield Finding(f"program {step.key}", level, code, {"step": step.name, **facts}, "" if is_right else link)


def _of_step(
    step: Step, motion: Motion, product: str, looked: LookedAt
) -> Iterable[tuple[bool, str, Mapping[str, str | float]]]:
    """(whether it is right, code, facts): the first thing that is wrong, else that it is right; nothing of a step without a
    program."""
    reckoned, named = step.pass_.reckoned, program_named(step.operation)
    if reckoned is None:
        return [(False, "program-no-time", {"program": named})] if named else []
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
