"""Looking back over all runs: beside one another, and as tables of everything."""

from dataclasses import dataclass

from runboard.floor.looking.at_hand import names_now, shop_now
from runboard.floor.looking.look_back import estimates_now
from runboard.floor.looking.review import past_of, planned_of
from runboard.floor.workshop import Workshop
from runboard.review.over_runs import ElementOverRuns, ProductRuns, ReadRuns, by_product, elements_over, with_promises
from runboard.review.tables import Table, tables_of

# Of so many of a product's newest runs the promise is reckoned: a plan is made for each.
NEWEST = 12


@dataclass(frozen=True)
class OverRuns:
    """The newest finished runs of each product with what was promised of them, how many ``older`` ones there are, and every
    time element that can be shown over all runs."""

    products: tuple[ProductRuns, ...]
    older: dict[str, int]
    elements: tuple[ElementOverRuns, ...]


def over_runs_now(workshop: Workshop) -> OverRuns:
    """All runs looked back at by now."""
    _, state = shop_now(workshop)
    runs = list(state.runs.values())
    kept: ReadRuns = workshop.kept.setdefault("read", {})
    every = by_product(runs, kept)
    newest = (ProductRuns(one.product, one.name, one.runs[-NEWEST:]) for one in every)
    return OverRuns(
        tuple(_promised(workshop, one) for one in newest),
        {one.product: max(0, len(one.runs) - NEWEST) for one in every},
        tuple(elements_over(runs, estimates_now(workshop).times)),
    )


def _promised(workshop: Workshop, product: ProductRuns) -> ProductRuns:
    """With the plan of each opening, made once for as long as the run is the same."""
    kept = workshop.kept.setdefault("promised", {})
    for run in product.runs:
        if run.id not in kept or kept[run.id][0] != run:
            kept[run.id] = (run, planned_of(workshop, past_of(workshop, run.id))[1])
    return with_promises(product, {run.id: kept[run.id][1] for run in product.runs})


def tables_now(workshop: Workshop) -> list[Table]:
    """Everything that reviews rest on, of every run."""
    book, state = shop_now(workshop)
    pasts = (past_of(workshop, run) for run in list(state.runs))
    return tables_of(pasts, state.changes.values(), names_now(workshop), book.time_zone)
