"""How far each cutter is worn: what it did since it was changed, what it will do, and before which tray it is changed."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby, pairwise

from runboard.plan.supplies.ahead import RunAhead, TrayAhead
from runboard.run.fold.state import ShopState
from runboard.run.supplies.said import CutterChange
from runboard.run.supplies.spent import Spent
from runboard.shop.book import Book
from runboard.shop.machines import Cutter

_NOTHING = (0.0, 0.0)
_A_HAIR = 1e-6
_BY_HABIT = 3


@dataclass(frozen=True)
class ChangeAhead:
    """In this run the cutter is worn before these trays."""

    run: str
    name: str
    trays: tuple[str, ...]


@dataclass(frozen=True)
class Wear:
    """One cutter; all figures are pieces or minutes, as its life is counted (``in_minutes``). ``used`` is since ``changed_at``,
    since the log begins where nobody changed it; ``needed`` what the runs will ask of it, which takes ``changes`` new ones.
    ``lasted`` is what it did from each change to the next; ``stations`` are the keys of those where it cuts. It ``is_unknown`` how
    far one is worn that did more than it lasts for and was never changed: somebody changed it, and did not say so."""

    cutter: Cutter
    stations: tuple[str, ...]
    changed_at: datetime | None
    used: float
    needed: float
    changes: int
    ahead: tuple[ChangeAhead, ...]
    lasted: tuple[float, ...]
    times: int
    is_unknown: bool = False

    @property
    def left(self) -> float | None:
        """How much of its life is left; None where nobody wrote down how long it lasts."""
        return None if self.cutter.life is None else max(0.0, self.cutter.life - self.used)

    def to_mind(self, run: str | None = None) -> list[ChangeAhead]:
        """The runs, or the run, in which somebody has to think of changing it. A disc that is taken from a packet more than so
        many times a run is changed by habit: of it the packet says whether it suffices."""
        mine = [ahead for ahead in self.ahead if run in (None, ahead.run)]
        return [ahead for ahead in mine if self.cutter.supply is None or len(ahead.trays) <= _BY_HABIT]

    @property
    def is_worn(self) -> bool:
        """Whether it has done what it lasts for."""
        return self.cutter.life is not None and self.used >= self.cutter.life - _A_HAIR and not self.is_unknown


def wears(book: Book, state: ShopState, spent: Spent, runs: Sequence[RunAhead]) -> list[Wear]:
    """Every cutter of the book that some step uses, or used."""
    places = _places(book, state)
    return [
        _wear(cutter, tuple(places.get(cutter.key, ())), state, spent, runs, places)
        for cutter in book.cutters
        if cutter.key in places or cutter.key in spent.worn
    ]


def _places(book: Book, state: ShopState) -> dict[str, list[str]]:
    """The stations at which each cutter cuts, as products and runs say."""
    products = [*book.products, *(run.route.product for run in state.runs.values())]
    found: dict[str, list[str]] = {}
    for product in products:
        for operation in product.operations:
            if operation.cutter and operation.station not in found.setdefault(operation.cutter, []):
                found[operation.cutter].append(operation.station)
    return found


def _wear(
    cutter: Cutter,
    stations: tuple[str, ...],
    state: ShopState,
    spent: Spent,
    runs: Sequence[RunAhead],
    places: dict[str, list[str]],
) -> Wear:
    changes = [change for change in _all_changes(state) if _is_of(change, cutter.key, places)]
    unit = 1 if cutter.life_in == "minutes" else 0
    marks = [change.worn.get(cutter.key, _NOTHING)[unit] for change in changes]
    now = spent.worn.get(cutter.key, _NOTHING)[unit]
    used = round(max(0.0, now - (marks[-1] if marks else 0.0)), 6)
    needed = round(sum(_cut(tray, cutter.key, unit) for run in runs for tray in run.trays), 6)
    lasted = tuple(round(after - before, 6) for before, after in pairwise(marks))
    is_unknown = not changes and cutter.life is not None and used > cutter.life + _A_HAIR
    ahead = () if is_unknown else tuple(_ahead(cutter, used, unit, runs))
    return Wear(
        cutter,
        stations,
        changes[-1].at if changes else None,
        used,
        needed,
        0 if is_unknown else _new_ones(cutter, used, unit, runs, ahead),
        ahead,
        tuple(length for length in lasted if length > 0),
        len(changes),
        is_unknown,
    )


def _all_changes(state: ShopState) -> list[CutterChange]:
    return sorted((one for some in state.cutters.values() for one in some), key=lambda one: (one.at, one.event))


def _is_of(change: CutterChange, cutter: str, places: dict[str, list[str]]) -> bool:
    """Whether a change was of this cutter. Where nobody said of which, it was of the only one that cuts at that station: where
    several take turns, one that is put in may be an old one."""
    if change.cutter:
        return change.cutter == cutter
    return [key for key, stations in places.items() if change.station in stations] == [cutter]


def _cut(tray: TrayAhead, cutter: str, unit: int) -> float:
    return tray.cuts.get(cutter, _NOTHING)[unit]


def _new_ones(cutter: Cutter, used: float, unit: int, runs: Sequence[RunAhead], ahead: Sequence[ChangeAhead]) -> int:
    """How many new ones it takes: one before each of those trays, more for what asks more than a whole life, and one where it is
    worn already and nothing is to be cut."""
    if cutter.life is None:
        return 0
    life = cutter.life
    cuts = [cut for run in runs for _, cut in _goes(run, cutter.key, unit)]
    more = sum(max(0, math.ceil(cut / life - _A_HAIR) - 1) for cut in cuts)
    return sum(len(one.trays) for one in ahead) + more or int(used >= life - _A_HAIR)


def _goes(run: RunAhead, cutter: str, unit: int) -> Iterator[tuple[str, float]]:
    """(first tray, how much is cut) of what is cut in one go: a board's trays together, else a tray."""
    for _, trays in groupby(run.trays, lambda tray: tray.board if cutter in tray.on_board else f"tray {tray.tray}"):
        together = [*trays]
        cut = sum(_cut(tray, cutter, unit) for tray in together)
        if cut:
            yield together[0].tray, cut


def _ahead(cutter: Cutter, used: float, unit: int, runs: Sequence[RunAhead]) -> Iterator[ChangeAhead]:
    """The trays before which it is worn, run by run. What asks more than a whole life is begun with a new one."""
    if cutter.life is None:
        return
    for run in runs:
        trays = []
        for tray, cut in _goes(run, cutter.key, unit):
            if used and used + cut > cutter.life + _A_HAIR:
                trays.append(tray)
                used = 0.0
            used += cut
        if trays:
            yield ChangeAhead(run.run, run.name, tuple(trays))
