"""What is found of feeds and speeds when a run is looked through before it starts."""

from collections.abc import Iterator, Mapping
from typing import Any
from urllib.parse import urlencode

from runboard.plan.before.finding import BeforeRun, Finding
from runboard.plan.feeds.arithmetic import chip_load
from runboard.plan.feeds.feeding import is_for, is_same, torn_values
from runboard.plan.feeds.torn import Torn, torn_in, torn_like, values_of, wood_of
from runboard.shop.machines import Cutter, GoodFeed
from runboard.shop.product import Operation


def findings(asked: BeforeRun) -> Iterator[Finding]:
    """One for each operation of the run whose cutter, turns and feed are written down: 'stop' where the spindle does not turn so fast,
    'look' where these values tore out before, else green. Lengths in mm."""
    torn = list(torn_in(asked.state.runs.values()))
    for operation in asked.run.route.product.operations:
        values = values_of(operation, wood_of(asked.run))
        if values is not None:
            yield _found(asked, operation, values, torn_like(torn, values))


def _found(asked: BeforeRun, operation: Operation, values: GoodFeed, torn: Torn | None) -> Finding:
    cutter = next((each for each in asked.book.cutters if each.key == values.cutter), None)
    station = asked.book.station(operation.station)
    most = station.motion.spindle_most if station else None
    kept = [each for each in asked.book.feeds if each.cutter == values.cutter]
    bad = next(iter(torn_values(kept, values.wood, values.rpm, values.feed)), None)
    good = any(
        not each.tore_out and is_for(each, values.wood) and is_same(each, values.rpm, values.feed) for each in kept
    )
    facts = _facts(operation, values, cutter)
    link = _link(asked, operation, values, torn)
    check = f"feed {operation.key}"
    if most is not None and values.rpm > most:
        facts |= {"most": most, "station": station.name if station else ""}
        return Finding(check, "stop", "feed-spindle", facts, link)
    if torn is not None:
        facts |= {"run": torn.run_name or torn.run, "pieces": torn.pieces, "at": torn.step_name}
        return Finding(check, "look", "feed-torn", facts, link)
    if bad is not None:
        return Finding(
            check, "look", "feed-tore", facts | {"note": bad.note, "torn": bad.torn, "torn_of": bad.torn_of}, link
        )
    return Finding(check, "green", "feed-good" if good else "feed-new", facts, link)


def _facts(operation: Operation, values: GoodFeed, cutter: Cutter | None) -> dict[str, Any]:
    flutes = cutter.flutes if cutter else None
    return {
        "step": operation.name,
        "cutter": cutter.name if cutter else values.cutter,
        "wood": values.wood,
        "rpm": values.rpm,
        "feed": values.feed,
        "chip": None if flutes is None else chip_load(values.feed, values.rpm, flutes),
    }


def _link(asked: BeforeRun, operation: Operation, values: GoodFeed, torn: Torn | None) -> str:
    product = asked.run.route.product
    known = asked.book.product(product.key) is not None
    said: Mapping[str, Any] = {
        "asked": "yes",
        "cutter": values.cutter,
        "rpm": f"{values.rpm:g}",
        "feed": f"{values.feed:g} mm",
        "wood": values.wood,
        "station": operation.station,
        **({"torn": torn.pieces, "torn_in": f"{torn.run_name or torn.run}, {torn.step_name}"} if torn else {}),
        **({"product": product.key, "step": operation.key} if known else {}),
    }
    return f"/before/feed?{urlencode(said)}"
