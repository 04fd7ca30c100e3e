"""Prices beside what a search finds, in a few moments of small made-up shops: the whole audit is ``tests.bench prices``."""

from tests.bench.prices import audit, is_nothing


def test_what_is_said_to_change_nothing_loses_nothing() -> None:
    found = list(audit(1, 8, 0.3, loads=(8, 14), first=3))

    assert len(found) >= 4
    assert any(is_nothing(one.price) for one in found)
    assert [one for one in found if one.is_understated] == []
