"""How many values of others are asserted, by standing, and that each names where it comes from."""

from tests.outside.said import PUBLISHED, all_said, counts


def test_at_least_150_published_values_are_asserted() -> None:
    found = counts(all_said())

    print(", ".join(f"{count} {standing}" for standing, count in found.items()))
    assert found[PUBLISHED] >= 150


def test_every_value_has_a_source() -> None:
    assert [one for one in all_said() if len(one.source) < 5] == []
