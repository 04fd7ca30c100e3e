"""A card's address and code: the same at each printing, nobody's to guess, dead once revoked."""

from collections.abc import Mapping
from datetime import timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.floor.letting_in.devices import SIGNS
from runboard.floor.letting_in.travellers import (
    Keys,
    hours_of_access,
    read_keys,
    revoke_cards,
    set_hours,
    traveller_link,
    tray_of_code,
    tray_of_token,
)

TRAYS = [("r1", "1"), ("r1", "4"), ("r1", "4a"), ("r2", "4")]


class FakeSettings:
    """Settings in memory."""

    def __init__(self) -> None:
        self.records: dict[str, dict[str, Any]] = {}

    def get(self, key: str) -> dict[str, Any]:
        return dict(self.records.get(key, {}))

    def put(self, key: str, record: Mapping[str, Any]) -> None:
        self.records[key] = dict(record)

    def put_first(self, key: str, record: Mapping[str, Any]) -> dict[str, Any]:
        return dict(self.records.setdefault(key, dict(record)))


@pytest.fixture
def settings() -> FakeSettings:
    return FakeSettings()


def token_of(keys: Keys, run: str, tray: str) -> str:
    return traveller_link(keys, run, tray).path.removeprefix("/t/")


def test_a_card_printed_again_says_the_same(settings: FakeSettings) -> None:
    first = traveller_link(read_keys(settings), "r1", "4")

    assert traveller_link(read_keys(settings), "r1", "4") == first
    assert first.path.startswith("/t/") and len(first.path) == len("/t/") + 16  # 96 bits, six a sign
    assert len(first.code) == 9 and set(first.code.replace("-", "")) <= set(SIGNS)


def test_each_tray_has_its_own_and_each_shop_its_own(settings: FakeSettings) -> None:
    here, there = read_keys(settings), read_keys(FakeSettings())
    links = [traveller_link(keys, *one) for keys in (here, there) for one in TRAYS]

    assert len({one.path for one in links}) == len({one.code for one in links}) == 2 * len(TRAYS)


def test_a_token_and_a_code_lead_to_their_tray(settings: FakeSettings) -> None:
    keys = read_keys(settings)

    for one in TRAYS:
        assert tray_of_token(keys, TRAYS, token_of(keys, *one)) == one
        assert tray_of_code(keys, TRAYS, traveller_link(keys, *one).code) == one


def test_a_code_may_be_typed_carelessly(settings: FakeSettings) -> None:
    keys = read_keys(settings)
    code = traveller_link(keys, "r1", "4").code

    assert tray_of_code(keys, TRAYS, f" {code.lower().replace('-', ' . ')} ") == ("r1", "4")


@given(st.text())
def test_what_is_no_code_opens_nothing(typed: str) -> None:
    keys = Keys(b"k" * 32, {})

    assert tray_of_code(keys, TRAYS, typed) is None
    assert tray_of_token(keys, TRAYS, typed) is None


def test_a_revoked_card_opens_nothing_and_the_next_one_does(settings: FakeSettings) -> None:
    before = traveller_link(read_keys(settings), "r1", "4")
    other = token_of(read_keys(settings), "r2", "4")

    revoke_cards(settings, "r1", ["4"])

    keys = read_keys(settings)
    after = traveller_link(keys, "r1", "4")
    assert tray_of_token(keys, TRAYS, before.path.removeprefix("/t/")) is None
    assert tray_of_code(keys, TRAYS, before.code) is None
    assert after != before and tray_of_code(keys, TRAYS, after.code) == ("r1", "4")
    assert tray_of_token(keys, TRAYS, other) == ("r2", "4")


def test_nothing_secret_is_kept_for_a_tray(settings: FakeSettings) -> None:
    link = traveller_link(read_keys(settings), "r1", "4")
    revoke_cards(settings, "r1", ["4"])

    kept = str(settings.records)
    assert link.code not in kept and link.path.removeprefix("/t/") not in kept
    assert settings.records["travellers"]["series"] == {"r1": {"4": 1}}


def test_the_lead_sets_how_long_access_lasts(settings: FakeSettings) -> None:
    keys = read_keys(settings)
    assert hours_of_access(settings) == timedelta(hours=8)

    set_hours(settings, 2.5)

    assert hours_of_access(settings) == timedelta(hours=2.5)
    assert read_keys(settings) == keys


@pytest.mark.parametrize("hours", [0, -1, 24 * 15, float("nan"), float("inf")])
def test_hours_that_are_none_are_not_taken(settings: FakeSettings, hours: float) -> None:
    with pytest.raises(ValueError, match="hours"):
        set_hours(settings, hours)
