"""What is found of the jigs of a run before it starts."""

from collections.abc import Iterator

from runboard.plan.before.finding import BeforeRun, Finding
from runboard.plan.jig.question import corner_of, plate_of
from runboard.run.fold.route import Step
from runboard.shop.book import Book
from runboard.shop.machines import Jig


def findings(asked: BeforeRun) -> Iterator[Finding]:
    """Of each step whose pieces lie in a jig: whether it is written down, has as many places as a load has pieces, fits on the
    bed, and can be put back where it was."""
    for step in asked.run.route.steps:
        station = asked.book.station(step.operation.station)
        jig = next((one for one in asked.book.jigs if one.key == step.operation.jig), None)
        if jig is not None:
            yield _of_jig(asked.book, step, jig)
        elif step.pass_.size == "jig" and station is not None and station.kind == "laser":
            facts = {"step": step.name}
            link = f"/before/jig?product={asked.run.product}&step={step.key}"
            yield Finding(f"jig {step.key}", "look", "jig none", facts, link)


def _of_jig(book: Book, step: Step, jig: Jig) -> Finding:
    """The worst that is found."""
    plate, corner, places = plate_of(jig), corner_of(jig), jig.columns * jig.rows
    station = book.station(jig.station)
    facts = {"step": step.name, "jig": jig.name, "places": places, "station": station.name if station else jig.station}
    check, link = f"jig {step.key}", f"/shop/jigs/{jig.key}"
    motion = station.motion if station else None
    x, y = corner or (0.0, 0.0)
    if motion and motion.travel_x and motion.travel_y and (
        x + plate.wide > motion.travel_x + 1e-6 or y + plate.high > motion.travel_y + 1e-6
    ):  # fmt: skip
        return Finding(check, "stop", "jig too large", facts, link)
    if jig.station != step.operation.station:
        return Finding(check, "look", "jig elsewhere", facts, link)
    if step.pass_.size == "jig" and step.pass_.pieces not in (None, places):
        return Finding(check, "look", "jig places", {**facts, "pieces": step.pass_.pieces}, link)
    if corner is None:
        return Finding(check, "look", "jig corner", facts, link)
    return Finding(check, "green", "jig right", {**facts, "x": f"{x:g}", "y": f"{y:g}"}, link)
