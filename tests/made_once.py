"""What all apps of one process have alike, made once: how addresses are built from each route, and the compiled templates.

Tests put an app together a thousand times, and most of that was this: importing it is enough. Nor need a press of theirs be
on the disk before it is answered: ``waits_for_no_disk`` is for their conftests.
"""

from types import CodeType
from typing import Any, ClassVar

import pytest
from flask import Flask
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket
from werkzeug.routing import Rule

from runboard.store import connect


class Templates(BytecodeCache):
    """The code of each template that was compiled, as long as its text stays the same."""

    def __init__(self) -> None:
        self.codes: dict[tuple[str, str], CodeType] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        bucket.code = self.codes.get((bucket.key, bucket.checksum))

    def dump_bytecode(self, bucket: Bucket) -> None:
        assert bucket.code is not None
        self.codes[bucket.key, bucket.checksum] = bucket.code


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

AS_SERVED = connect._PRAGMAS


@pytest.fixture(autouse=True)
def waits_for_no_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    """No power fails here. That a served shop waits for its disk is asked in the store's tests."""
    monkeypatch.setattr(connect, "_PRAGMAS", AS_SERVED.replace("= FULL", "= OFF"))
