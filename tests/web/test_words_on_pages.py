"""A text of the catalogue on a page: its facts are escaped, and what is markup is let through."""

from markupsafe import Markup

from runboard.web.door.pages import words

SCRIPT = "<script>alert(1)</script>"


def test_a_fact_is_escaped_and_the_text_is_not() -> None:
    assert words("plan-remove", product=SCRIPT) == "Remove &lt;script&gt;alert(1)&lt;/script&gt;"
    assert words("plan-try-hint") == Markup(words("plan-try-hint"))
    assert "machine's" in words("plan-run-sheet-hint")


def test_a_fact_that_is_markup_stays_it() -> None:
    assert words("plan-remove", product=Markup("<b>Rail</b>")) == "Remove <b>Rail</b>"


def test_a_text_that_reads_like_markup_said_before_is_escaped() -> None:
    words("plan-remove", product=Markup(SCRIPT))

    assert words("plan-remove", product=SCRIPT) == "Remove &lt;script&gt;alert(1)&lt;/script&gt;"


def test_an_address_becomes_a_link_that_it_cannot_leave() -> None:
    said = words("plan-nothing-left", link='/plan"><script>')

    assert said == 'Nothing left to plan. <a href="/plan&#34;&gt;&lt;script&gt;">Back to the plan</a>'


def test_a_number_chooses_the_plural_and_has_no_mark_between_thousands() -> None:
    assert words("plan-pieces", pieces=1) == "1 piece"
    assert words("plan-pieces", pieces=12345) == "12345 pieces"


def test_a_fact_that_is_missing_takes_its_words_with_it() -> None:
    assert words("trays-counted", good=4, scrap=0) == "4 good"
    assert words("trays-counted", good=4, scrap=2) == "4 good, 2 scrap"
