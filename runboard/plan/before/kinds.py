"""Every kind of question about a run before it starts, in the order in which a page lists them."""

from collections.abc import Mapping

from runboard.plan.before.kind import Kind
from runboard.plan.engraving.kind import KIND as ENGRAVING
from runboard.plan.feeds.kinds import FEED
from runboard.plan.fits.kinds import FIT, MOVEMENT, SCREW
from runboard.plan.jig.kind import KIND as JIG
from runboard.plan.money.price import KIND as PRICE
from runboard.plan.program.kind import KIND as PROGRAM
from runboard.plan.stock.cut_list import LENGTHS
from runboard.plan.stock.kind import STOCK

_KINDS: tuple[Kind, ...] = (
    PROGRAM,
    ENGRAVING,
    JIG,
    FEED,
    STOCK,
    SCREW,
    FIT,
    MOVEMENT,
    PRICE,
    LENGTHS,
)
KINDS: Mapping[str, Kind] = {kind.name: kind for kind in _KINDS}
