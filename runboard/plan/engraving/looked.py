"""What is found of the engravings of a run before it starts."""

from collections.abc import Iterator

from runboard.plan.before.finding import BeforeRun, Finding


def findings(asked: BeforeRun) -> Iterator[Finding]:
    """Of each step at a laser: whether its machine time is more than a guess."""
    for step in asked.run.route.steps:
        station = asked.book.station(step.operation.station)
        if station is None or station.kind != "laser":
            continue
        known = asked.estimates.of(asked.run, step, "machine")
        facts = {"step": step.name, "minutes": round(known.length.total_seconds() / 60, 1)}
        check, link = f"engraving {step.key}", f"/before/engraving?product={asked.run.product}&step={step.key}"
        if known.source == "guess":
            yield Finding(check, "look", "engraving guess", facts, link)
        else:
            yield Finding(check, "green", "engraving known", facts, link)
