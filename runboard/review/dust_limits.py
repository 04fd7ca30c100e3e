"""Published limits for wood dust in the air, as information: this shop's air is not measured."""

from dataclasses import dataclass

_HSE = "https://www.hse.gov.uk/coshh/industry/woodworking.htm"
_OSHA = "https://www.osha.gov/SLTC/wooddust/evaluation.html"


@dataclass(frozen=True)
class DustLimit:
    """A limit for a day of eight hours (TWA), in mg a cubic metre of air, and where it was read. ``of`` and ``dust`` are codes
    of ``dust-limit-…``: whose it is, and of which dust."""

    of: str
    dust: str
    mg_m3: float
    source: str


DUST_LIMITS = (
    DustLimit("hse", "hardwood", 3, _HSE),
    DustLimit("hse", "softwood", 5, _HSE),
    DustLimit("niosh", "all", 1, _OSHA),
    DustLimit("acgih", "most", 1, _OSHA),
    DustLimit("acgih", "red cedar", 0.5, _OSHA),
    DustLimit("osha", "total", 15, _OSHA),
    DustLimit("osha", "respirable", 5, _OSHA),
)
