"""A change that was adopted, with what it promised and what became of it: the noun; ``changes`` folds the events."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

# Minutes: of a hundred goes five are below the first, fifty below the second, ninety-five below the third.
Range = tuple[float, float, float]


@dataclass(frozen=True)
class AdoptedChange:
    """A change adopted after ``run`` for the next runs of ``product``. ``change`` is its record. It promised to be done
    ``earlier`` and to save so much of ``hands`` a run. ``did`` says what was altered: the route, the book, or nothing
    ('noted'), and ``revision`` is the book's from then on. ``verdict`` is '' until it was judged, after the run
    ``judged_after``; ``saved`` is what was found then, None where too little was known."""

    id: str
    run: str
    product: str
    change: Mapping[str, Any]
    earlier: Range
    hands: Range
    did: str
    person: str
    at: datetime
    revision: int = 0
    cost: float | None = None
    because: str = ""
    verdict: str = ""
    saved: Range | None = None
    judged_at: datetime | None = None
    judged_after: str = ""
