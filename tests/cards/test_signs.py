"""Cautions in rows on a card."""

from runboard.cards.model import Care
from runboard.cards.rows_of_steps import sign_rows


def test_a_row_of_words_without_signs_begins_without_a_dot() -> None:
    cautions = [Care("exhaust, air on"), Care("bed clear")]

    (found,) = sign_rows(cautions, 86, set())

    assert [item["words"] for item in found.facts["signed"]] == ["exhaust, air on", "· bed clear"]
