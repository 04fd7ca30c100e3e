"""What a finish asks for, as its label says."""

from dataclasses import dataclass
from datetime import timedelta


@dataclass(frozen=True)
class Finish:
    """A finish as its label and data sheet say, typed in by the shop. ``sheet_date`` is the sheet's; without it the
    figures are common practice only, and the label has to be read.

    ``recoat``, ``handle`` and ``cure`` count from the end of the coat. ``self_heats``: its rags can start a fire by
    themselves. ``solvent``: while it is in the air, for ``airing``, nothing in that room may spark or heat.
    """

    key: str
    name: str
    recoat: timedelta | None = None
    handle: timedelta | None = None
    cure: timedelta | None = None
    self_heats: bool = True
    solvent: bool = False
    airing: timedelta | None = None
    ventilation: str = ""
    sheet_date: str = ""


# What nobody wrote down: the careful reading of it, until somebody says otherwise.
UNKNOWN_FINISH = Finish("", "", solvent=True)
