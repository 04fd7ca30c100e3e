"""JSON from outside: what would cost more than it says is turned away before anything is made of it."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.shop.json_text import read_json_text
from runboard.shop.problem import Unreadable

PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**53), 2**53) | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(st.characters(exclude_categories=["Cs"])),
    lambda inside: st.lists(inside) | st.dictionaries(st.text(st.characters(exclude_categories=["Cs"])), inside),
)  # fmt: skip


@given(PLAIN, st.booleans())
def test_plain_json_is_read_as_it_is(value: Any, is_ascii: bool) -> None:
    assert read_json_text(json.dumps(value, ensure_ascii=is_ascii).encode(), "it") == value


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("NaN", "json number"),
        ("-Infinity", "json number"),
        ("9" * 5000, "json number"),
        ("1." + "9" * 5000, "json number"),
        ("1e999", "json number"),
        (str(2**53 + 1), "json number"),
        ('"\\ud800"', "json half character"),
        ('"\\udc00\\ud800"', "json half character"),
        ('{"\\uDFFF": 1}', "json half character"),
        ("[" * 40 + "]" * 40, "json too deep"),
        ('{"a":' * 100_000, "json too deep"),
        ("[" + "[]," * 600_000 + "1]", "json too much"),
        ("[" + "1," * 600_000 + "1]", "json too much"),
        ('"' + '\\"' * 1_000_000, "json broken"),
        ('"' * 1_000_001, "json broken"),
        ("[" * 20, "json broken"),
        ("", "json broken"),
    ],
)
def test_what_is_no_plain_json_says_why(text: str, code: str) -> None:
    with pytest.raises(Unreadable) as refused:
        read_json_text(text.encode(), "the file")

    assert refused.value.code == code
    assert str(refused.value).startswith("The file ")


@pytest.mark.parametrize("text", ['"\\ud83d\\ude00"', '"\\\\ud800"', '"[[[[\\"{{{{"', '"' + "[" * 100 + '"'])
def test_what_only_looks_like_harm_is_read(text: str) -> None:
    assert read_json_text(text.encode(), "it") == json.loads(text)
