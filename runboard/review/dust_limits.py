"""Published limits for wood dust in the air, as information: this shop's air is not measured."""

from dataclasses import dataclass

_HSE = "https://www.hse.gov.uk/coshh/industry/woodworking.htm"
_OSHA = "https://www.osha.gov/SLTC/wooddust/evaluation.html"


@dataclass(frozen=True)
class DustLimit:
    """A limit for a day of eight hours (TWA), in mg a cubic metre of air, and where it was read."""

    of: str
    dust: str
    mg_m3: float
    source: str


DUST_LIMITS = (
    DustLimit("HSE, United Kingdom", "hardwood, and any mixture with it", 3, _HSE),
    DustLimit("HSE, United Kingdom", "softwood", 5, _HSE),
    DustLimit("NIOSH, recommended", "all wood", 1, _OSHA),
    DustLimit("ACGIH (2007)", "most woods", 1, _OSHA),
    DustLimit("ACGIH (2007)", "western red cedar", 0.5, _OSHA),
    DustLimit("OSHA, United States", "dust not regulated otherwise, total", 15, _OSHA),
    DustLimit("OSHA, United States", "dust not regulated otherwise, respirable", 5, _OSHA),
)
