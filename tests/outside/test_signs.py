"""The safety signs against ISO 7010 (numbers, titles, shapes) and ISO 3864 (colours, proportions).

Numbers and titles: the list of ISO 7010 signs as reprinted at howlingpixel.com/i-en/ISO_7010; where marked so, the
German list of the same standard in ASR A1.3, annex 1 (vorschriften.bgn-branchenwissen.de), and hug-technik.com for the
mandatory signs; the rest from memory. Colours: 'ISO 3864' on Wikipedia, the RAL approximations of ISO 3864-4; the
standard itself defines regions of chromaticity. Proportions of the prohibition sign (bar at 45 degrees): ISO 3864-1.
"""

import re
from math import dist
from pathlib import Path
from xml.etree import ElementTree

import pytest

from runboard.run.care.cautions import CATALOGUE, SIGNS
from tests.outside.said import calculated, from_memory, published
from tests.outside.test_contrast import contrast

FOLDER = Path(__file__).parents[2] / "static" / "signs"
NUMBERS = sorted(path.stem for path in FOLDER.glob("*.svg"))
XML = "{http://www.w3.org/2000/svg}"

# As the RAL approximations of ISO 3864-4 are printed.
YELLOW, RED, BLUE, GREEN = "#F9A800", "#9B2423", "#005387", "#237F52"
BLACK, WHITE = "#2B2B2C", "#ECECE7"
# What each letter's signs are made of.
COLOURS = {"M": {BLUE, WHITE}, "P": {RED, WHITE, BLACK}, "W": {YELLOW, BLACK}, "E": {GREEN, WHITE}, "F": {RED, WHITE}}

# Titles as the standard has them.
READ = {
    "F001": "Fire extinguisher",
    "E003": "First aid",
    "P002": "No smoking",
    "P003": "No open flame; fire, open ignition source and smoking prohibited",
    "M001": "General mandatory action sign",
    "M002": "Refer to instruction manual/booklet",
    "M003": "Wear ear protection",
    "M004": "Wear eye protection",
    "M009": "Wear protective gloves",
    "M016": "Wear a mask",
    "M017": "Wear respiratory protection",
    "W001": "General warning sign",
    "W004": "Warning; Laser beam",
    "W012": "Warning; Electricity",
}
IN_GERMAN = {
    "P028": "Do not wear gloves",  # Benutzen von Handschuhen verboten
    "M021": "Disconnect before carrying out maintenance or repair",  # Vor Wartung oder Reparatur freischalten
    "W017": "Warning; Hot surface",  # Warnung vor heißer Oberfläche
}
REMEMBERED = {
    "W021": "Warning; Flammable material",
    "W022": "Warning; Sharp element",
    "W024": "Warning; Crushing of hands",  # storeforsigns.com
    "W026": "Warning; Battery charging",
    "E020": "Emergency stop button",
}
ALSO_REMEMBERED = {"W024": "Warning; Crushing of hands"}  # where the catalogue has it


def drawing(number: str) -> ElementTree.Element:
    return ElementTree.fromstring((FOLDER / f"{number}.svg").read_text("utf-8"))


def colours(number: str) -> set[str]:
    return set(re.findall(r"#[0-9A-Fa-f]{6}\b", (FOLDER / f"{number}.svg").read_text("utf-8")))


@published("ISO 7010, list of signs as reprinted at howlingpixel.com/i-en/ISO_7010", READ)
def test_a_sign_has_the_title_under_which_the_standard_registers_it(number: str) -> str:
    return SIGNS[number]


@published("ASR A1.3, annex 1 (vorschriften.bgn-branchenwissen.de), in German; hug-technik.com", IN_GERMAN)
def test_a_sign_has_the_title_of_the_german_list(number: str) -> str:
    return SIGNS[number]


@from_memory("ISO 7010", REMEMBERED | {number: said for number, said in ALSO_REMEMBERED.items() if number in SIGNS})
def test_a_sign_has_the_title_that_is_remembered(number: str) -> str:
    return SIGNS[number]


def test_no_sign_is_without_a_checked_title() -> None:
    assert set(SIGNS) - set(READ) - set(IN_GERMAN) - set(REMEMBERED) - set(ALSO_REMEMBERED) == set()


@published(
    "'ISO 3864' on Wikipedia, https://en.wikipedia.org/wiki/ISO_3864: ISO 3864-4 by RAL",
    {
        ("W", "ground"): YELLOW,
        ("M", "ground"): BLUE,
        ("E", "ground"): GREEN,
        ("F", "ground"): RED,
        ("P", "ring"): RED,
        ("W", "edge"): BLACK,
        ("M", "symbol"): WHITE,
    },
)
def test_the_signs_of_a_class_are_drawn_in_its_colour(letter: str, part: str) -> str:
    used = set()
    for number in (one for one in NUMBERS if one[0] == letter):
        first, last = drawing(number)[0], drawing(number)[-1]
        others = colours(number) - {first.get("fill")}
        used.add(
            {
                "ground": first.get("fill"),
                "edge": first.get("stroke"),
                "ring": last.get("stroke"),
                "symbol": "".join(others),
            }[part]
        )
    (found,) = used
    return str(found)


def test_there_is_a_drawing_for_each_number_and_a_number_for_each_drawing() -> None:
    assert sorted(SIGNS) == NUMBERS


@pytest.mark.parametrize("number", NUMBERS)
def test_a_sign_has_exactly_the_colours_of_its_class(number: str) -> None:
    assert colours(number) == COLOURS[number[0]]


@pytest.mark.parametrize("number", NUMBERS)
def test_a_sign_has_the_shape_of_its_class(number: str) -> None:
    first = drawing(number)[0]

    match number[0]:
        case "M":
            assert (first.tag, first.get("fill"), first.get("r")) == (f"{XML}circle", BLUE, "100")
        case "W":
            assert (first.get("fill"), first.get("stroke")) == (YELLOW, BLACK)
            (top, right, left) = _corners(str(first.get("d")))
            sides = [dist(top, right), dist(right, left), dist(left, top)]
            assert sides == pytest.approx([sides[0]] * 3, rel=0.01), "equilateral"
            assert top[1] < right[1] == left[1], "it stands on a side"
        case "E" | "F":
            ground = GREEN if number[0] == "E" else RED
            assert (first.get("d"), first.get("fill")) == ("M0 0h200v200H0z", ground)
        case "P":
            ring, bar = drawing(number)[-1], drawing(number)[-2]
            assert (ring.tag, ring.get("stroke"), ring.get("fill")) == (f"{XML}circle", RED, "none")
            assert bar.get("stroke") == RED
            across, down = _ends(str(bar.get("d")))
            assert across == down > 0  # from the upper left to the lower right, at 45 degrees


def _corners(path: str) -> list[tuple[float, float]]:
    """The three corners of ``M x y x y H x z``."""
    x1, y1, x2, y2, x3 = (float(one) for one in re.fullmatch(r"M(\S+) (\S+) (\S+) (\S+)H(\S+)z", path).groups())  # type: ignore[union-attr]
    return [(x1, y1), (x2, y2), (x3, y2)]


def _ends(line: str) -> tuple[float, float]:
    x1, y1, x2, y2 = (float(one) for one in re.findall(r"[\d.]+", line))
    return round(x2 - x1, 6), round(y2 - y1, 6)


@pytest.mark.parametrize("number", [one for one in NUMBERS if one[0] == "P"])
def test_the_bar_of_a_prohibition_lies_over_what_it_forbids(number: str) -> None:
    *_, bar, ring = list(drawing(number))

    assert (bar.get("stroke"), ring.get("stroke")) == (RED, RED)
    assert float(str(ring.get("stroke-width"))) / 200 == pytest.approx(0.1)
    assert float(str(bar.get("stroke-width"))) / 200 == pytest.approx(0.08)


@pytest.mark.parametrize("number", NUMBERS)
def test_a_sign_is_square_small_and_free_of_text_script_and_ids(number: str) -> None:
    text = (FOLDER / f"{number}.svg").read_text("utf-8")

    assert drawing(number).get("viewBox") == "0 0 200 200"
    assert len(text.encode()) <= 3072
    # Several may stand in one page as they are: an id would be there twice.
    assert not re.search(r"<(text|title|script|style|image|use)\b|\bid=|\bon\w+=|href", text)


@pytest.mark.parametrize(
    ("key", "number"),
    [
        ("dust-mask", "M016"),  # a mask, which is not M017, respiratory protection
        ("respirator", "M017"),
        ("no-gloves", "P028"),
        ("gloves", "M009"),
        ("disconnect", "M021"),
        ("hearing-protection", "M003"),
        ("eye-protection", "M004"),
        ("laser-beam", "W004"),
        ("solvent-air", "P003"),
        ("rags", "W021"),
    ],
)
def test_a_caution_carries_the_sign_that_means_it(key: str, number: str) -> None:
    assert number in CATALOGUE[key].signs


def test_numbers_that_are_easily_mixed_up_are_told_apart_by_letter_and_number() -> None:
    # P010 is 'do not touch', M010 protective clothing; M016 a mask, M017 respiratory protection. None stands for another.
    assert SIGNS["M016"] != SIGNS["M017"]
    assert {"P010", "M010"}.isdisjoint(SIGNS)
    assert (FOLDER / "M016.svg").read_bytes() != (FOLDER / "M017.svg").read_bytes()


# On the colours as they are drawn, ground and symbol; nobody published these.
@calculated(
    "WCAG 2.2, definition of contrast ratio", {"W001": 7.16, "M001": 6.85, "F001": 6.64, "E003": 4.19}, within=0.006
)
def test_the_contrast_of_a_sign_is_as_calculated(number: str) -> float:
    one, other = colours(number)
    return contrast(one, other)


@pytest.mark.parametrize("number", NUMBERS)
def test_a_symbol_on_its_ground_can_be_told_apart(number: str) -> None:
    # WCAG 2.2, 1.4.11: 3:1 for a picture. Of a prohibition the ring and the symbol each lie on the white.
    ground = WHITE if number[0] == "P" else str(drawing(number)[0].get("fill"))

    assert ground in colours(number)
    assert all(contrast(ground, one) >= 3 for one in colours(number) - {ground})
