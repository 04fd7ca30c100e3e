"""What is looked at before a run starts, in the order in which it is said."""

from collections.abc import Iterator
from datetime import timedelta

from runboard.plan.before.finding import BeforeRun, Finding, Look
from runboard.plan.engraving import looked as engraving
from runboard.plan.feeds import looked as feeds
from runboard.plan.fits import looked as fits
from runboard.plan.jig import looked as jig
from runboard.plan.money import looked as money
from runboard.plan.program import looked as program
from runboard.plan.stock import looked as stock
from runboard.plan.supplies import looked as supplies
from runboard.run.rules.materials import FORBIDDEN, LOOK, UNKNOWN, judged
from runboard.run.rules.resting import shorter_than_label
from runboard.shop.product import ZERO

HOUR = timedelta(hours=1)


def stations(asked: BeforeRun) -> Iterator[Finding]:
    """Stations of its route that cannot be used now."""
    used = {step.operation.station for step in asked.run.route.steps}
    out = [key for key in sorted(used) if (known := asked.state.stations.get(key)) is not None and known.out]
    for key in out:
        found = asked.book.station(key)
        yield Finding(f"station {key}", "look", "station-out", {"station": found.name if found else key}, "/trays")
    if not out:
        yield Finding("stations", "green", "stations-free")


def wood(asked: BeforeRun) -> Iterator[Finding]:
    """Whether its wood may come under what heats."""
    heats = [step for step in asked.run.route.steps if (at := asked.book.station(step.operation.station)) and at.heats]
    if not heats:
        return
    verdict = judged(asked.run.wood, tuple(asked.book.forbidden))
    facts = {"wood": asked.run.wood, "by": verdict.by, "step": heats[0].operation.name}
    if verdict.says == FORBIDDEN:
        yield Finding("wood", "stop", "wood-forbidden", facts, f"/plan/runs/{asked.run.id}")
    elif verdict.says == UNKNOWN:
        yield Finding("wood", "look", "wood-unknown", facts)
    elif verdict.says == LOOK:
        yield Finding("wood", "look", "wood-data-sheet", facts)
    else:
        yield Finding("wood", "green", "wood-fine", facts)


def shown_how(asked: BeforeRun) -> Iterator[Finding]:
    """Skills that nobody in the shop has."""
    has = {skill for person in asked.book.people if not person.removed for skill in person.skills}
    for step in asked.run.route.steps:
        skill = step.operation.skill
        if skill and skill not in has:
            yield Finding(f"skill {skill}", "stop", "skill-nobody", {"skill": skill, "step": step.name}, "/shop")


def labels(asked: BeforeRun) -> Iterator[Finding]:
    """Waits of its route that are shorter than a finish's label says."""
    route = asked.run.route
    for step in route.steps:
        label = shorter_than_label(asked.book, route, step)
        if label is not None:
            own = step.operation.wait.least if step.operation.wait else ZERO
            facts = {"step": step.operation.name, "own": own / HOUR, "label": label / HOUR}
            yield Finding(f"wait {step.key}", "look", "wait-short", facts, f"/plan/runs/{asked.run.id}/route")


# What could hurt somebody or spoil pieces comes before what only has to be bought.
LOOKS: tuple[Look, ...] = (
    stations,
    wood,
    shown_how,
    labels,
    feeds.findings,
    fits.findings,
    jig.findings,
    program.findings,
    engraving.findings,
    stock.findings,
    supplies.findings,
    money.findings,
)
