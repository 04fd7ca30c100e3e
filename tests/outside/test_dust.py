"""The limits for wood dust that the Review shows, against their publishers' pages; mg a cubic metre, 8 h."""

from runboard.review.dust_limits import DUST_LIMITS, DustLimit
from runboard.words.sentences import say
from tests.outside.said import published

# A mixture is taken as hardwood. Older pages say 5 for hardwood too: outdated.
HSE = "https://www.hse.gov.uk/coshh/industry/woodworking.htm"
# The NIOSH recommendation, ACGIH (2007), and OSHA's limits for particulates not otherwise regulated; the lower OSHA
# limits of 1989 were vacated.
OSHA = "https://www.osha.gov/SLTC/wooddust/evaluation.html"
BY_HSE = {("HSE", "hardwood, and any mixture with it"): (3, HSE), ("HSE", "softwood"): (5, HSE)}
BY_OSHA = {
    ("NIOSH", "all wood"): (1, OSHA),
    ("ACGIH", "most woods"): (1, OSHA),
    ("ACGIH", "western red cedar"): (0.5, OSHA),
    ("OSHA", "dust not regulated otherwise, total"): (15, OSHA),
    ("OSHA", "dust not regulated otherwise, respirable"): (5, OSHA),
}


def shown() -> dict[tuple[str, str], tuple[float, str]]:
    return {(_whose(one), say("dust-limit", one.dust)): (one.mg_m3, one.source) for one in DUST_LIMITS}


def _whose(limit: DustLimit) -> str:
    return say("dust-limit-of", limit.of).replace(",", " ").split()[0]


@published(HSE, BY_HSE)
def test_the_limits_of_hse(who: str, dust: str) -> tuple[float, str]:
    return shown()[who, dust]


@published(OSHA, BY_OSHA)
def test_the_limits_on_oshas_page(who: str, dust: str) -> tuple[float, str]:
    return shown()[who, dust]


def test_no_other_limit_is_shown() -> None:
    assert shown().keys() == BY_HSE.keys() | BY_OSHA.keys()
