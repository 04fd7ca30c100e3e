"""The fakes keep the contracts of what they stand for."""

from collections.abc import Callable

import pytest

from tests.background import work
from tests.background.kept_contract import GoOn, KeptContract
from tests.floor.fakes import FakeKept, FakeLog
from tests.store.log_contract import LogContract


class TestFakeLog(LogContract):
    @pytest.fixture
    def log(self) -> FakeLog:
        return FakeLog()


class TestFakeKept(KeptContract):
    @pytest.fixture
    def kept(self) -> FakeKept:
        return FakeKept(work.at)

    @pytest.fixture
    def go_on(self, kept: FakeKept) -> GoOn:
        def go_on(true: Callable[[], object]) -> None:
            kept.go_on()
            assert true()

        return go_on
