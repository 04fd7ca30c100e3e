"""What the cautions say against what others published about the same danger. Each check names its source."""

import json
from importlib.resources import files

import pytest

from runboard.run.cautions import CATALOGUE
from runboard.web.sentences import say

SOURCES = json.loads(files("runboard.run").joinpath("cautions.json").read_text(encoding="utf-8"))["sources"]


def test_rags_are_dried_flat_outdoors_or_put_under_water_in_a_closed_metal_can() -> None:
    # NFPA's tips as quoted by wwlp.com and wftv.com: never in a pile; take them outside and spread them to dry; into
    # a metal container filled with water and detergent, with a tight lid.
    text = say("care", "rags")

    assert "single layer outdoors" in text
    assert "into water in the lidded metal can" in text
    assert "Never a pile" in text


def test_rags_are_seen_to_at_the_end_of_the_coat_and_at_the_end_of_the_session() -> None:
    # 29 CFR 1910.125(e)(4): waste cans immediately after use. WAC 51-54A-3304 (IFC 3304): at the end of each shift.
    assert "1910.125(e)(4)" in CATALOGUE["rags-end"].source
    assert "end of each shift" in CATALOGUE["lockup-rags"].source
    assert say("care", "rags-end").startswith("The coat is done. Rags, pads, paper, brushes, now:")


def test_the_hazard_of_rags_has_no_hour_at_which_it_is_over() -> None:
    # Sources give from one hour to three days, and none is strong: so 'look again', and no time is ever named.
    assert not any(character.isdigit() for key in CATALOGUE if "rags" in key for character in say("care", key))


def test_dust_of_oiled_wood_is_emptied_outdoors() -> None:
    # City of Cleveland Heights, newsflash 705.
    assert "outdoors" in say("care", "oiled-dust")
    assert CATALOGUE["oiled-dust"].url == "https://www.clevelandheights.gov/m/newsflash/Home/Detail/705"


def test_a_laser_is_taken_for_class_4() -> None:
    # IEC 60825-1 as listed by AUVA: over 500 mW, diffuse reflections are dangerous, and it can start a fire.
    assert CATALOGUE["laser-beam"].basis == "standard"
    assert "IEC 60825-1" in CATALOGUE["laser-beam"].source


def test_gloves_stay_away_from_cutters_and_pushing_is_left_to_a_pad() -> None:
    # University of Alabama, general shop safety practices (gloves); 29 CFR 1910.213 (push sticks and blocks).
    assert "no gloves" in CATALOGUE["no-gloves"].source
    assert "1910.213" in CATALOGUE["hands-clear"].source


def test_no_machine_starts_by_itself_as_power_comes_back() -> None:
    # 29 CFR 1910.213, as taught at labtrain.noaa.gov: machines must not restart by themselves after a power failure.
    assert "no restart by itself" in CATALOGUE["power-back"].source
    assert "before it comes back" in say("care", "power-back")


@pytest.mark.parametrize("source", SOURCES.values(), ids=list(SOURCES))
def test_a_source_that_is_no_common_practice_is_named(source: dict[str, str]) -> None:
    assert (source["basis"] == "common practice, no source") == ("text" not in source)


def test_every_source_is_used() -> None:
    used = {one.source for one in CATALOGUE.values()}

    assert {source.get("text", source["basis"]) for source in SOURCES.values()} == used
