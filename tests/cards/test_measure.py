"""Lines are broken by our own measure, so it has to agree with the font and to lose nothing."""

import subprocess
import unicodedata

import pytest
from fontTools.ttLib import TTFont
from hypothesis import example, given
from hypothesis import strategies as st

from runboard.cards.measure import flow, lines, plain, width

FACES = [("Book", False), ("Bold", True)]
TEXTS = st.text(st.characters(min_codepoint=0x20, max_codepoint=0x52F), max_size=400)


def font(style: str) -> TTFont:
    found = subprocess.run(
        ["fc-match", "-f", "%{file}", f"DejaVu Sans:style={style}"], capture_output=True, text=True, check=True
    )
    return TTFont(found.stdout)


@pytest.mark.parametrize(("style", "bold"), FACES)
def test_widths_are_those_of_the_font_and_a_little_more(style: str, bold: bool) -> None:
    found = font(style)
    glyphs, advances = found.getBestCmap(), found["hmtx"]

    for text in ("Entry key rails", "Straße, 12 ½ mm", "Щит для ключей", "Κλειδοθήκη εισόδου", "60 mm +0.3 −0.2"):
        real = sum(advances[glyphs[ord(one)]][0] for one in text) / 2048 * 10 * 25.4 / 72
        assert real < width(text, 10, bold) < real * 1.03


@given(TEXTS, st.sampled_from([18.0, 44.0, 86.0]), st.booleans())
@example("0000000\N{COMBINING LATIN SMALL LETTER A}", 18.0, False)
def test_no_line_is_wider_than_its_room(text: str, room: float, bold: bool) -> None:
    for line in lines(text, room, 10, bold):
        letters = [one for one in line if not unicodedata.combining(one)]
        assert width(line, 10, bold) <= room + 0.01 or len(letters) <= 1


@given(TEXTS, st.sampled_from([18.0, 86.0]))
def test_nothing_of_a_text_is_lost(text: str, room: float) -> None:
    assert "".join("".join(lines(text, room, 9)).split()) == "".join(plain(text).split())


def test_a_long_word_is_broken_and_a_hyphen_is_a_place_to_break() -> None:
    assert lines("a very-long-word here", 20, 10) == ("a very-", "long-word", "here")
    assert lines("W" * 12, 20, 10) == ("WWWWW", "WWWWW", "WW")


def test_bold_and_plain_stand_in_one_line() -> None:
    assert flow((("Focus", True), ("7 mm", False)), 80, 8) == ((("Focus", True), (" 7\u00a0mm", False)),)


def test_what_draws_nothing_or_turns_text_around_is_left_out() -> None:
    assert plain("a\u202eb\u00adc\td\x00") == "abc d"


@pytest.mark.parametrize("room", range(12, 60, 3))
def test_no_line_begins_with_a_dot_between_two_parts(room: int) -> None:
    found = lines("Sand 120 · 5 pieces, ash · not before Tue 03:47", room, 10)

    assert [line for line in found if line.startswith("·")] == []


def test_a_mark_never_stands_alone_on_a_line() -> None:
    assert lines("aucune pointe derrière ?", 34, 9)[-1] == "derrière\u00a0?"
    assert plain("62 % at 5 °") == "62\u00a0% at 5\u00a0°"


@pytest.mark.parametrize(
    "text",
    ["a cutter of 6 mm", "let dry for 12 h", "it is in clamps for 1 h 30", "goes on from Thu 17:00", "nach 14 Tagen"],
)
def test_a_unit_stays_at_its_number_and_a_time_at_its_day(text: str) -> None:
    last = text.rsplit(" ", 2 if "h 30" in text else 1)[0].rsplit(" ", 1)[1]
    kept = text[text.rindex(last) :].replace(" ", "\u00a0")

    for room in range(20, 60, 3):
        assert any(kept in line for line in lines(text, room, 9)), lines(text, room, 9)
