"""Values from outside, and the product asked for each: what a source says is kept apart from memory and from arithmetic.

A check is a function that asks the product one thing; the values that it should answer stand in the decorator, with their
source. A value is counted only by being asserted, and once for each question: ``python -m tests.outside`` prints the counts.

- ``published``: the value was read in the source that is named, or in a second source that quotes it;
- ``from_memory``: a source is named, and nobody has read the value there for this test;
- ``calculated``: worked out here from the inputs of a source. It checks arithmetic only.
"""

import importlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

PUBLISHED, FROM_MEMORY, CALCULATED = "published", "from memory", "calculated"


@dataclass(frozen=True)
class Said:
    """One value: what was ``asked`` of the product by a ``question``, and what a source says that it is."""

    standing: str
    source: str
    question: str
    asked: str
    value: str


SAID: dict[tuple[str, str], Said] = {}
Ask = Callable[..., Any]


def published(source: str, values: Mapping[Any, Any], within: float | None = None) -> Callable[[Ask], Ask]:
    """A test for each of ``values`` (what is asked: what the source prints), equal or ``within`` so much of it."""
    return _said(PUBLISHED, source, values, within)


def from_memory(source: str, values: Mapping[Any, Any], within: float | None = None) -> Callable[[Ask], Ask]:
    """As ``published``, where the value is remembered."""
    return _said(FROM_MEMORY, source, values, within)


def calculated(source: str, values: Mapping[Any, Any], within: float | None = None) -> Callable[[Ask], Ask]:
    """As ``published``, where the source has only the inputs."""
    return _said(CALCULATED, source, values, within)


def _said(standing: str, source: str, values: Mapping[Any, Any], within: float | None) -> Callable[[Ask], Ask]:
    def decorate(ask: Ask) -> Ask:
        question = f"{ask.__module__.rpartition('.')[2]}::{ask.__name__}"
        for asked, value in values.items():
            assert (question, repr(asked)) not in SAID, "asked twice"
            SAID[question, repr(asked)] = Said(standing, source, question, repr(asked), repr(value))

        @pytest.mark.parametrize(("asked", "value"), values.items(), ids=[str(asked)[:40] for asked in values])
        def test(asked: Any, value: Any) -> None:
            answer = ask(*asked) if isinstance(asked, tuple) else ask(asked)
            assert answer == (value if within is None else pytest.approx(value, abs=within))

        test.__name__ = test.__qualname__ = ask.__name__
        test.__module__, test.__doc__ = ask.__module__, ask.__doc__
        return test

    return decorate


def all_said() -> list[Said]:
    """Every value that this folder asserts."""
    for path in sorted(Path(__file__).parent.glob("test_*.py")):
        importlib.import_module(f"tests.outside.{path.stem}")
    return list(SAID.values())


def counts(said: list[Said]) -> dict[str, int]:
    """How many are of each standing."""
    return {
        standing: sum(one.standing == standing for one in said) for standing in (PUBLISHED, FROM_MEMORY, CALCULATED)
    }
