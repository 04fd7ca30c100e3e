"""What all apps of one process have alike, made once: how addresses are built from each route, and the compiled templates.

Tests put an app together a thousand times, and most of that was this: importing it is enough. Nor need a press of theirs be
on the disk before it is answered: ``waits_for_no_disk`` is for their conftests.
"""

from collections.abc import Callable
from types import CodeType
from typing import Any

import pytest
from flask import Flask
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket
from werkzeug.routing import Rule

from runboard.store import connect

Builder = Callable[..., tuple[str, str]]


class Templates(BytecodeCache):
    """The code of each template that was compiled, as long as its text stays the same."""

    def __init__(self) -> None:
        self.codes: dict[tuple[str, str], CodeType] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        bucket.code = self.codes.get((bucket.key, bucket.checksum))

    def dump_bytecode(self, bucket: Bucket) -> None:
        assert bucket.code is not None
        self.codes[bucket.key, bucket.checksum] = bucket.code


_compile_builder = Rule._compile_builder
_builders: dict[Any, Builder] = {}


def _builder(rule: Rule, append_unknown: bool = True) -> Builder:
    """The function that builds a route's address: it is bound to its rule afterwards, and so the same for each."""
    key = (tuple(rule._trace), append_unknown, tuple(sorted((rule.defaults or {}).items())))
    if key not in _builders:
        _builders[key] = _compile_builder(rule, append_unknown)
    return _builders[key]


Rule._compile_builder = _builder  # type: ignore[method-assign]
Flask.jinja_options = {"bytecode_cache": Templates()}

AS_SERVED = connect._PRAGMAS


@pytest.fixture(autouse=True)
def waits_for_no_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    """No power fails here. That a served shop waits for its disk is asked in the store's tests."""
    monkeypatch.setattr(connect, "_PRAGMAS", AS_SERVED.replace("= FULL", "= OFF"))
