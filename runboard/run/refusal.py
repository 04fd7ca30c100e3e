"""What the core says when something cannot be: a code and its facts. The catalogue makes the sentence."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


class Refused(Exception):
    """A press that cannot be taken. ``code`` names the sentence in the catalogue, ``facts`` fill it."""

    def __init__(self, code: str, **facts: Any) -> None:
        super().__init__(code)
        self.code = code
        self.facts = facts


@dataclass(frozen=True)
class Known:
    """What was answered to an event that arrived before: ``accepted`` or ``refused`` with its code and facts."""

    answer: str
    code: str = ""
    facts: Mapping[str, Any] = field(default_factory=dict)
