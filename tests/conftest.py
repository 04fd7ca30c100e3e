"""What every folder of tests shares."""

import sys
from collections import Counter
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

import pytest

import tests.made_once  # noqa: F401 - importing it is enough

START = datetime(2026, 3, 7, 9, 0, tzinfo=UTC)


class HandClock:
    """A clock that stands still until a test moves it."""

    def __init__(self, start: datetime = START) -> None:
        self.moment = start

    def now(self) -> datetime:
        return self.moment

    def forward(self, **span: float) -> datetime:
        """Move on by so many ``minutes``, ``hours``, …; answers the new moment."""
        self.moment += timedelta(**span)
        return self.moment


@pytest.fixture(autouse=True)
def cold() -> Iterator[None]:
    """Each test begins with the dispatch rule not compiled and not known to be kept, whatever a server of an earlier test
    warmed."""
    rule = sys.modules.get("runboard.plan.schedule.rule.rule")
    if rule is not None:
        rule._WARM.clear()
        rule._KEPT.clear()
    yield


@pytest.fixture
def clock() -> HandClock:
    return HandClock()


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Tests in a browser come last: Playwright leaves its event loop going in this thread, where no other can run then. Of
    those the files with most tests come first, so that two workers end at about the same time."""
    tests_of = Counter(one.path for one in items)

    def place(one: pytest.Item) -> tuple[int, ...]:
        return (1, -tests_of[one.path]) if "browser" in one.path.parts else (0,)

    items.sort(key=place)
