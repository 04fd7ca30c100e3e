"""A table for a spreadsheet keeps RFC 4180, and no cell of it is run as a formula."""

import csv
import io

import pytest

from runboard.review.table_text import csv_text


def test_lines_end_as_the_rfc_says_and_quotes_are_doubled() -> None:
    text = csv_text(("name", "note"), [('the "long" bench', "a, b"), ("two\nlines", "")])

    assert text == 'name,note\r\n"the ""long"" bench","a, b"\r\n"two\nlines",\r\n'


def test_what_is_written_is_read_back() -> None:
    rows = [["a,b", 'c"d', "é ½ 木", ""], ["1", "2", "3", "4"]]

    assert list(csv.reader(io.StringIO(csv_text(rows[0], rows[1:])))) == rows


@pytest.mark.parametrize("text", ["=1+1", "+1", "-2", "@SUM(A1)", "\t=1", "\r=1", "  =1"])
def test_a_text_that_a_spreadsheet_would_run_is_made_a_text(text: str) -> None:
    _head, row = list(csv.reader(io.StringIO(csv_text(("a",), [(text,)]), newline="")))

    assert row == [f"'{text}"]


def test_numbers_stay_numbers_and_nothing_stays_empty() -> None:
    assert csv_text(("a", "b", "c"), [(-2.5, None, 3)]) == "a,b,c\r\n-2.5,,3\r\n"
