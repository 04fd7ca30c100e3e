"""The fake log keeps the contract of the real one."""

import pytest

from tests.floor.fakes import FakeLog
from tests.store.log_contract import LogContract


class TestFakeLog(LogContract):
    @pytest.fixture
    def log(self) -> FakeLog:
        return FakeLog()
