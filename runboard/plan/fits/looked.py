"""What is found of screws when a run is looked through before it starts."""

from collections.abc import Iterator
from typing import Any
from urllib.parse import urlencode

from runboard.plan.before.finding import BeforeRun, Finding
from runboard.plan.fits.driving import Driven, asked_of, drive
from runboard.plan.fits.screws import sizes_of
from runboard.shop.fasteners import Fastening
from runboard.shop.product import Operation


def findings(asked: BeforeRun) -> Iterator[Finding]:
    """One for each screw that an operation of the run drives: 'stop' where its point comes through or it is too short, 'look' where it leaves less than
    the margin, where little of it holds, or where its sizes are not known, else green with pilot and depth stop. Lengths in mm."""
    for operation in asked.run.route.product.operations:
        for number, fastening in enumerate(operation.fastenings, 1):
            yield _found(asked, operation, fastening, number)


def _found(asked: BeforeRun, operation: Operation, fastening: Fastening, number: int) -> Finding:
    product = asked.run.route.product
    check = f"screw {operation.key}.{number}"
    link = f"/before/screw?{urlencode({'product': product.key, 'step': operation.key})}"
    screw = next((each for each in asked.book.screws if each.key == fastening.screw), None)
    if screw is None:
        return Finding(check, "look", "screw-gone", {"step": operation.name, "screw": fastening.screw}, link)
    facts = {"step": operation.name, "screw": screw.name}
    sizes = sizes_of(screw)
    if sizes is None:
        return Finding(check, "look", "screw-size", facts, f"/shop/screws/{screw.key}")
    found = drive(sizes, asked_of(fastening, asked.run.wood or product.wood), asked.book.units)
    return _judged(check, link, facts | _facts(found, fastening), found)


def _judged(check: str, link: str, facts: dict[str, Any], found: Driven) -> Finding:
    if not found.fits:
        return Finding(check, "stop", f"screw-{found.outcome}", facts, link)
    if found.outcome == "near":
        return Finding(check, "look", "screw-near", facts, link)
    if found.holds_little:
        return Finding(check, "look", "screw-little", facts, link)
    return Finding(check, "green", "screw-inside", facts, link)


def _facts(found: Driven, fastening: Fastening) -> dict[str, Any]:
    return {
        "left": found.left,
        "by": -found.left,
        "margin": fastening.margin,
        "safe": found.safe,
        "held": found.held,
        "pilot": found.drill,
        "stop": found.stop,
    }
