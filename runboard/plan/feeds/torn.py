"""What tore out in runs, with which cutter, turns and feed: from the reasons of scrap that people said."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from runboard.plan.feeds.feeding import is_same
from runboard.plan.fits.woods import same_wood
from runboard.run.fold.state import RunState
from runboard.shop.finish import plain_words
from runboard.shop.machines import GoodFeed
from runboard.shop.product import Operation

# How people say it; the first is what a phone offers.
_WORDS = (" tear out ", " tearout ", " tore ", " torn ", " ausriss ", " ausgerissen ", " ausgerissene ")


@dataclass(frozen=True)
class Torn:
    """``pieces`` that tore out at a step of a run, and how it cut."""

    run: str
    run_name: str
    step: str
    step_name: str
    pieces: int
    values: GoodFeed


def is_torn(why: str) -> bool:
    """Whether a reason of scrap says that the wood tore out."""
    return any(word in f" {plain_words(why)} " for word in _WORDS)


def torn_in(runs: Iterable[RunState]) -> Iterator[Torn]:
    """What tore out at steps of which cutter, turns and feed are written down, run by run: pieces of one step and wood together."""
    for run in runs:
        found: dict[tuple[str, str, int], int] = {}
        for tray in run.trays.values():
            for step, reasons in tray.scrap.items():
                pieces = sum(int(reason["pieces"]) for reason in reasons if is_torn(str(reason["why"])))
                key = (step, tray.wood or wood_of(run), tray.revision)
                found[key] = found.get(key, 0) + pieces
        yield from (torn for key, pieces in found.items() if pieces and (torn := _torn(run, *key, pieces)))


def _torn(run: RunState, step: str, wood: str, revision: int, pieces: int) -> Torn | None:
    known = run.route_at(revision).step(step)
    values = values_of(known.operation, wood) if known else None
    return Torn(run.id, run.name, step, known.name, pieces, values) if known and values else None


def values_of(operation: Operation, wood: str) -> GoodFeed | None:
    """How an operation cuts, where all of it is written down."""
    if operation.cutter is None or operation.rpm is None or operation.feed is None:
        return None
    return GoodFeed("", operation.cutter, operation.rpm, operation.feed, wood, operation.station)


def torn_like(torn: Iterable[Torn], values: GoodFeed) -> Torn | None:
    """The most that tore out with these values in this wood, in one run."""
    like = [
        one
        for one in torn
        if one.values.cutter == values.cutter
        and same_wood(one.values.wood, values.wood)
        and is_same(one.values, values.rpm, values.feed)
    ]
    return max(like, key=lambda one: one.pieces, default=None)


def wood_of(run: RunState) -> str:
    """The wood of a run, as it was opened or as its product has it."""
    return run.wood or run.route.product.wood
