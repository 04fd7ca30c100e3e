"""What is found of supplies and cutters when a run is looked through before it starts."""

from collections.abc import Iterator

from runboard.plan.before.finding import BeforeRun, Finding
from runboard.plan.supplies.shopping import Row, Shopping, shopping
from runboard.plan.supplies.wear import Wear

PAGE = "/plan/shopping"


def findings(asked: BeforeRun) -> Iterator[Finding]:
    """One green line of all that suffices; one look of all that nobody counted, each that runs out in the middle, and each cutter that is worn
    before the run's end."""
    list_ = shopping(asked.book, asked.state)
    yield from found_of(list_, asked.run.id)


def found_of(list_: Shopping, run: str) -> Iterator[Finding]:
    """The same of a shopping list, for one of its runs."""
    mine = [(row, share) for row in list_.rows if (share := row.share(run)) is not None]
    enough = [row.here.name for row, share in mine if row.here.there is not None and not share.short_at]
    if enough:
        yield Finding("supplies", "green", "supplies there", {"supplies": enough}, PAGE)
    uncounted = [row.here.name for row, _ in mine if row.here.there is None]
    if uncounted:
        yield Finding("supplies-uncounted", "look", "supplies uncounted", {"supplies": uncounted}, PAGE)
    for row, share in mine:
        if row.here.there is not None and share.short_at:
            yield _short(row, run)
    cuts = list_.cut_by(run)
    for wear in list_.wear:
        if wear.is_unknown and wear.cutter.key in cuts and wear.cutter.supply is None:
            facts = {"cutter": wear.cutter.name, "used": wear.used, "life": wear.cutter.life, "in": wear.cutter.life_in}
            yield Finding(f"cutter {wear.cutter.key}", "look", "cutter unknown", facts, PAGE)
        yield from _worn(wear, run)


def _short(row: Row, run: str) -> Finding:
    share = row.share(run)
    assert share is not None  # noqa: S101 - only asked where there is one
    facts = {
        "supply": row.here.name,
        "unit": row.here.unit,
        "there": row.here.there,
        "needed": share.needed,
        "all": row.needed,
        "taken": share.taken,
        "before": list(share.before) or "none",
        "missing": share.missing,
        "covered": list(share.covered),
        "tray": share.short_at,
        "step": share.step,
    }
    return Finding(f"supply {row.here.word}", "look", "supply short", facts, PAGE)


def _worn(wear: Wear, run: str) -> Iterator[Finding]:
    for ahead in wear.to_mind(run):
        facts = {"cutter": wear.cutter.name, "trays": list(ahead.trays), "left": wear.left}
        yield Finding(f"cutter {wear.cutter.key}", "look", "cutter worn", {**facts, "in": wear.cutter.life_in}, PAGE)
