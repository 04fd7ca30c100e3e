"""The limits for wood dust that the Review shows, against their publishers' pages; mg a cubic metre, 8 h."""

from runboard.review.dust_limits import DUST_LIMITS

# https://www.hse.gov.uk/coshh/industry/woodworking.htm: hardwood 3, softwood 5, a mixture is taken as hardwood.
# Older pages say 5 for hardwood too: outdated.
HSE = {"hardwood, and any mixture with it": 3, "softwood": 5}
# https://www.osha.gov/SLTC/wooddust/evaluation.html: the NIOSH recommendation, ACGIH (2007), and OSHA's limits for
# particulates not otherwise regulated; the lower OSHA limits of 1989 were vacated.
NIOSH = {"all wood": 1}
ACGIH = {"most woods": 1, "western red cedar": 0.5}
OSHA = {"dust not regulated otherwise, total": 15, "dust not regulated otherwise, respirable": 5}


def test_the_limits_shown_are_the_published_ones() -> None:
    shown: dict[str, dict[str, float]] = {}
    for one in DUST_LIMITS:
        shown.setdefault(one.of.replace(",", " ").split()[0], {})[one.dust] = one.mg_m3

    assert shown == {"HSE": HSE, "NIOSH": NIOSH, "ACGIH": ACGIH, "OSHA": OSHA}


def test_each_limit_names_the_page_it_was_read_at() -> None:
    pages = {one.of.replace(",", " ").split()[0]: one.source for one in DUST_LIMITS}

    assert pages["HSE"] == "https://www.hse.gov.uk/coshh/industry/woodworking.htm"
    assert {pages["NIOSH"], pages["ACGIH"], pages["OSHA"]} == {"https://www.osha.gov/SLTC/wooddust/evaluation.html"}
