"""What the cautions say against what others published about the same danger. Each check names its source.

A source in the catalogue is held to be true in form: a law has its section, and its address leads to that section.
"""

import re
from collections.abc import Iterable

import pytest

from runboard.review.exposure import noise_rule
from runboard.review.noise import NIOSH
from runboard.run.care.cautions import CATALOGUE, NO_SOURCE, Caution, cautions_for, start_points_of
from runboard.shop.book import Book, Room, Station
from runboard.shop.finish import Finish
from runboard.shop.product import Operation, Pass
from runboard.words.sentences import say
from tests.outside.said import published

BY_SOURCE: dict[str, Caution] = {one.source: one for one in CATALOGUE.values()}
OIL = Finish("oil", "Hard oil", self_heats=True)
LACQUER = Finish("lacquer", "Lacquer", self_heats=False, solvent=True)


def beside(kind: str, finish: str | None = None, noise_db: float | None = None, after_finish: bool = False) -> set[str]:
    """What the product shows beside one operation at a station of that kind, in the usual book."""
    station = Station("machine", "Machine", kind, "shop", noise_db=noise_db)
    book = Book(rooms=(Room("shop", "Shop"),), stations=(station,), finishes=(OIL, LACQUER))
    step = Operation("step", "Step", "machine", (Pass("all", "all"),), finish=finish)
    return {one.key for one in cautions_for(book, step, after_finish)}


def test_rags_are_dried_flat_outdoors_or_put_under_water_in_a_closed_metal_can() -> None:
    # NFPA's tips as quoted by wwlp.com and wftv.com: never in a pile; take them outside and spread them to dry; into
    # a metal container filled with water and detergent, with a tight lid.
    assert "rags" in beside("bench", "oil") and "rags" not in beside("bench", "lacquer")
    text = say("care", "rags").casefold()

    assert re.search(r"\bsingle layer\b.*\boutdoors\b", text)
    assert re.search(r"\bwater\b", text) and re.search(r"\bmetal can\b", text) and re.search(r"\blid", text)
    assert re.search(r"\bnever\b[^.]*\bpile\b", text)


def test_rags_are_seen_to_at_the_end_of_the_coat_and_at_the_end_of_the_session() -> None:
    # 29 CFR 1910.125(e)(4): waste cans immediately after use. WAC 51-54A-3304 (IFC 3304): at the end of each shift.
    assert CATALOGUE["rags-end"].shown == ("reminder at the end of the coat",)
    assert CATALOGUE["lockup-rags"].shown == ("closing checklist",)
    assert re.search(r"\bnow\b", say("care", "rags-end"))


def test_the_hazard_of_rags_has_no_hour_at_which_it_is_over() -> None:
    # Sources give from one hour to three days, and none is strong: so 'look again', and no time is ever named.
    assert not any(character.isdigit() for key in CATALOGUE if "rags" in key for character in say("care", key))


def test_covered_metal_cans_are_emptied_daily_as_the_rule_says() -> None:
    # OSHA's letter of 23 May 2000 on 29 CFR 1910.106(e)(9)(iii): combustible waste is disposed of daily.
    assert "1910.106(e)(9)" in CATALOGUE["lockup-rags"].source and "daily" in CATALOGUE["lockup-rags"].source


def test_the_tip_sheets_can_is_told_as_the_advice_of_that_sheet() -> None:
    # NFPA's tips as quoted by wftv.com: the dried rags, water and detergent, a metal container, a tight lid.
    assert all(
        word in CATALOGUE["rags"].source for word in ("its advice", "dried rags in water and detergent", "tight lid")
    )


def test_dust_is_never_blown() -> None:
    # whlgni.org.uk, wood dust: blowing down brings far more dust to breathe than an industrial vacuum cleaner.
    assert say("care", "blown-dust").startswith("No compressed air on dust")


def test_carbon_dioxide_is_for_electronics_and_water_or_foam_for_wood() -> None:
    # City of Wayzata, fire extinguishers: class A by water or foam, not by carbon dioxide; class C by carbon dioxide.
    text = say("care", "which-extinguisher")

    assert "carbon dioxide beside electronics and a laser, water or foam for solid wood" in text
    assert "manual and the local code" in text


def test_dust_of_oiled_wood_is_emptied_outdoors() -> None:
    # City of Cleveland Heights, newsflash 705.
    assert "oiled-dust" in beside("sander", after_finish=True) and "oiled-dust" not in beside("sander")
    assert "outdoors" in say("care", "oiled-dust")


def test_a_laser_is_taken_for_class_4() -> None:
    # IEC 60825-1 as listed by AUVA: over 500 mW, diffuse reflections are dangerous, and it can start a fire.
    assert {"laser-beam", "fire"} <= beside("laser")


@pytest.mark.parametrize("kind", ["cnc", "hand cutter"])
def test_gloves_stay_away_from_cutters_even_where_a_finish_wants_them(kind: str) -> None:
    # University of Alabama, general shop safety practices.
    assert "no-gloves" in beside(kind, "oil") and "gloves" not in beside(kind, "oil")
    assert "gloves" in beside("bench", "oil")


def test_pushing_at_a_hand_fed_cutter_is_left_to_a_pad() -> None:
    # 29 CFR 1910.213: push sticks and blocks.
    assert "hands-clear" in beside("hand cutter")


def test_no_flame_near_solvent() -> None:
    # 29 CFR 1910.106(e)(6).
    assert "solvent-air" in beside("bench", "lacquer") and "solvent-air" not in beside("bench", "oil")


def test_only_machines_have_something_to_tick_before_they_start() -> None:
    # University of the Arts London, laser cutter rules: extinguisher, material, extraction before the cut.
    assert {"start-extinguisher", "start-material", "start-exhaust"} <= set(start_points_of("laser"))
    assert start_points_of("bench") == ()
    assert all(
        CATALOGUE[key].kind == "start" for kind in ("laser", "cnc", "hand cutter") for key in start_points_of(kind)
    )


def test_machines_are_off_before_power_comes_back() -> None:
    # 29 CFR 1910.213, as taught at labtrain.noaa.gov: machines must not restart by themselves after a power failure.
    assert "before the power comes back" in say("care", "power-back")


@published("NIOSH 98-126: recommended limit 85 dB(A) over 8 h, exchange rate 3 dB", {"limit": 85, "exchange": 3})
def test_the_usual_book_has_nioshs_rule(part: str) -> float:
    assert noise_rule(Book()) == NIOSH
    return {"limit": noise_rule(Book()).limit_db, "exchange": noise_rule(Book()).exchange_db}[part]


@published("NIOSH 98-126: exposures at or above 85 dB(A) are hazardous (cdc.gov, noise app)", {85: True})
def test_hearing_protection_comes_with_the_level(noise_db: float) -> bool:
    assert "hearing-protection" not in beside("bench", noise_db=noise_db - 0.1)
    return "hearing-protection" in beside("bench", noise_db=noise_db)


# What a source says of itself


def of(basis: str) -> Iterable[Caution]:
    return [one for one in BY_SOURCE.values() if one.basis == basis]


@pytest.mark.parametrize("one", of("law"), ids=lambda one: one.source[:30])
def test_a_law_is_named_by_its_section_and_its_address_leads_there(one: Caution) -> None:
    sections = re.findall(r"\b(?:29 CFR )?(\d{4}\.\d+|\d+-\d+[A-Z]?-\d+)", one.source)

    assert sections, f"which section? {one.source}"
    assert not one.url or any(section in one.url for section in sections)


@pytest.mark.parametrize("one", of("standard"), ids=lambda one: one.source[:30])
def test_a_standard_is_named_by_its_number(one: Caution) -> None:
    assert re.search(r"\b(IEC|ISO|EN|ANSI|NFPA)\b.*\d", one.source)


@pytest.mark.parametrize("one", of("published"), ids=lambda one: one.source[:30])
def test_what_is_published_can_be_opened_or_is_the_shops_own_paper(one: Caution) -> None:
    own_paper = re.search(r"\b(label|manual)\b", one.source)

    assert own_paper or one.url.startswith(("https://", "http://")) or "from memory" in one.source.casefold()


def test_what_has_no_source_names_none_and_says_so() -> None:
    for one in CATALOGUE.values():
        assert (one.basis == NO_SOURCE) == (one.source == NO_SOURCE)
        assert one.basis != NO_SOURCE or one.url == ""
