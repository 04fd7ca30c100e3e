"""Looking back over all runs: beside one another, one time element of them all, and as tables of everything."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta

from runboard.floor.looking.at_hand import names_now, shop_now
from runboard.floor.looking.look_back import estimates_now
from runboard.floor.looking.review import past_of, planned_of
from runboard.floor.workshop import Workshop
from runboard.review.changes.ledger import ledger_of_changes
from runboard.review.changes.nouns import Adopted
from runboard.review.measured.over_runs import ChartedElement, EstimateWas, element_chart, history_of_estimate
from runboard.review.over_runs import (
    MeasuredElement,
    ProductRuns,
    ReadRuns,
    by_product,
    furthest_moved,
    measured_elements,
    moves_run,
    with_promises,
)
from runboard.review.tables import Table, tables_of
from runboard.shop.product import ZERO

# Of so many of a product's newest runs the promise is reckoned: a plan is made for each.
NEWEST = 12


@dataclass(frozen=True)
class ElementOverRuns:
    """One time element: its control chart, None of fewer than two times, and how its estimate went."""

    element: MeasuredElement
    chart: ChartedElement | None
    history: tuple[EstimateWas, ...]


@dataclass(frozen=True)
class OverRuns:
    """The newest finished runs of each product with what was promised of them, and how many ``older`` ones there are; the
    time elements that can be looked at, the one that is, and the one ``furthest`` from its guess, which ``moves`` its run by so
    much; the ``changes`` that were adopted, the oldest first."""

    products: tuple[ProductRuns, ...]
    older: Mapping[str, int]
    elements: tuple[MeasuredElement, ...]
    shown: ElementOverRuns | None
    furthest: MeasuredElement | None = None
    changes: tuple[Adopted, ...] = ()
    moves: timedelta = ZERO


def over_runs_now(workshop: Workshop, element: str = "") -> OverRuns:
    """All runs looked back at by now, and the element of that id; the one that moved furthest where none is meant."""
    book, state = shop_now(workshop)
    runs, estimates = list(state.runs.values()), estimates_now(workshop)
    kept: ReadRuns = workshop.kept.setdefault("read", {})
    every = by_product(runs, kept)
    newest = (ProductRuns(one.product, one.name, one.runs[-NEWEST:]) for one in every)
    elements = measured_elements(runs, estimates)
    furthest = furthest_moved(elements, estimates)
    meant = next((one for one in elements if one.id == element), furthest)
    shown = None
    if meant is not None:
        asked = (estimates, meant.run, meant.step, meant.kind)
        shown = ElementOverRuns(meant, element_chart(*asked), history_of_estimate(*asked, book.time_zone))
    return OverRuns(
        tuple(_promised(workshop, one) for one in newest),
        {one.product: max(0, len(one.runs) - NEWEST) for one in every},
        tuple(elements),
        shown,
        furthest,
        ledger_of_changes(state)[::-1],
        ZERO if furthest is None else moves_run(furthest, estimates),
    )


def _promised(workshop: Workshop, product: ProductRuns) -> ProductRuns:
    promised = {run.id: planned_of(workshop, past_of(workshop, run.id))[1] for run in product.runs}
    return with_promises(product, promised)


def tables_now(workshop: Workshop) -> list[Table]:
    """Everything that reviews rest on, of every run."""
    book, state = shop_now(workshop)
    pasts = (past_of(workshop, run) for run in list(state.runs))
    return tables_of(pasts, state.changes.values(), names_now(workshop), book.time_zone)
