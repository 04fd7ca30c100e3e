"""A small storm in the test run; ``python -m tests.faults`` is the great one."""

from pathlib import Path

from tests.faults.report import report
from tests.faults.storm import Wanted, storm


def test_a_storm_loses_nothing_and_every_alarm_rings(tmp_path: Path) -> None:
    found = report(storm(Wanted(presses=160, kills=3, limit=90), tmp_path))

    print("\n".join(found.lines()))
    assert found.wrong == []
    assert found.alarms is not None
    assert found.alarms.had_to_ring > 0
