"""What every folder of tests shares."""

import sys
from collections import Counter
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from typing import Any, ClassVar

import pytest
from flask import Flask
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket
from werkzeug.routing import Rule

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


class Templates(BytecodeCache):
    """What templates were compiled to, for every app of this process: a page costs 3 ms then instead of up to 60."""

    def __init__(self) -> None:
        self._compiled: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        if bucket.key in self._compiled:
            bucket.bytecode_from_string(self._compiled[bucket.key])

    def dump_bytecode(self, bucket: Bucket) -> None:
        self._compiled[bucket.key] = bucket.bytecode_to_string()


class Address(Rule):
    """A rule whose builder of addresses, a function of the rule alone, is compiled once for every app of this process:
    three quarters of what it costs to put a house together."""

    _built: ClassVar[dict[tuple[Any, ...], Any]] = {}

    def _compile_builder(self, append_unknown: bool = True) -> Any:
        if self.defaults:
            return super()._compile_builder(append_unknown)
        made_from = (self.rule, tuple(self._trace), append_unknown)
        if made_from not in self._built:
            self._built[made_from] = super()._compile_builder(append_unknown)
        return self._built[made_from]


Flask.jinja_options = {"bytecode_cache": Templates()}
Flask.url_rule_class = Address


@pytest.fixture(autouse=True)
def cold() -> Iterator[None]:
    """Each test begins with the dispatch rule not compiled in this process, whatever a server of an earlier test warmed."""
    rule = sys.modules.get("runboard.plan.schedule.rule.rule")
    if rule is not None:
        rule._WARM.clear()
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
