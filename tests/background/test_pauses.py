"""While a house is open nothing holds up its threads for long; afterwards all is as it was."""

import gc
import sys
from pathlib import Path

import pytest

from runboard.app import build
from runboard.background.pauses import TURN_SECONDS
from runboard.house import Settings


def test_an_open_house_keeps_pauses_short_and_a_closed_one_leaves_nothing_behind(tmp_path: Path) -> None:
    usual = sys.getswitchinterval()
    house = build(Settings(tmp_path, plans=False))

    house.open()
    opened = sys.getswitchinterval(), gc.get_freeze_count()
    house.close()

    assert opened[0] == pytest.approx(TURN_SECONDS)
    assert opened[1] > 1000
    assert (sys.getswitchinterval(), gc.get_freeze_count()) == (pytest.approx(usual), 0)
