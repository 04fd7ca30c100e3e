"""What adopting the ideas of a review would make of the shop as it is now, and what of them is done already."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from runboard.plan.change import Capacity, Change, singles
from runboard.plan.estimates import Estimates
from runboard.review.changes.believed import as_believed
from runboard.review.changes.ledger import ledger_of_changes
from runboard.review.changes.nouns import Adopted
from runboard.review.changes.now import Made, made_of
from runboard.review.changes.replayed import about_the_same
from runboard.review.past import Past
from runboard.run.fold.state import ShopState
from runboard.run.refusal import Refused
from runboard.shop.book import Book


@dataclass(frozen=True)
class Adopting:
    """What adopting a change would make: ``made``, or ``refused`` where it makes no sense any more. ``line`` is the ledger's where
    the same change holds already; ``since`` the newest one about the same thing. ``is_open`` are the names of the open runs
    that it reaches at once, ``keeps`` of those that keep the route that they have."""

    made: Made | None
    refused: Refused | None = None
    line: Adopted | None = None
    since: Adopted | None = None
    is_open: tuple[str, ...] = ()
    keeps: tuple[str, ...] = ()

    @property
    def is_done(self) -> bool:
        """Whether there is nothing left to adopt."""
        return self.line is not None or (self.made is not None and self.made.is_done)


def adopting_of(
    past: Past, book: Book, state: ShopState, changes: Iterable[Change], estimates: Estimates | None = None
) -> Mapping[Change, Adopting]:
    """Of each change that was tried on a run what adopting it would make of the shop now: its ``book`` and all that is open;
    with ``estimates``, its times as a plan believes them."""
    ledger = [line for line in ledger_of_changes(state) if line.verdict != "dropped"]
    open_ = [run for run in state.runs.values() if run.state == "open"]

    def of(change: Change) -> Adopting:
        mine = [one for one in ledger if one.change is not None and _concerns(one, change, past.run.product)]
        line = next((one for one in mine if one.change == change), None)
        since = next((one for one in mine if one.did != "noted"), None)
        try:
            made = made_of(change, past.book, past.run.route.product, book)
        except Refused as refused:
            return Adopting(None, refused, line, since)
        is_shared = any(moved.what == "capacity" for moved in made.moved)
        is_route = any(moved.what != "capacity" for moved in made.moved)
        if estimates is not None:
            made = replace(made, moved=as_believed(past.run, estimates, change, made.moved))
        return Adopting(
            made,
            line=line,
            since=since,
            is_open=tuple(run.name for run in open_) if is_shared else (),
            keeps=tuple(run.name for run in open_ if run.product == past.run.product) if is_route else (),
        )

    return {change: of(change) for change in changes}


def _concerns(one: Adopted, change: Change, product: str) -> bool:
    """Whether a line of the ledger is about what a change is about."""
    if one.change is None:
        return False
    is_shared = all(isinstance(single, Capacity) for single in singles(change))
    return (is_shared or one.product == product) and (one.change == change or about_the_same(one.change, change))
