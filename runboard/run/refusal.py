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


class NotStored(Exception):
    """What was to be written could not be, and nothing of it was: the phone keeps its press and sends it again.

    ``why`` is 'full', 'read only', 'failing' (the disk) or 'busy' (another program holds the database).
    """

    def __init__(self, why: str) -> None:
        super().__init__(why)
        self.why = why


@dataclass(frozen=True)
class AnsweredBefore:
    """What was answered to an event that arrived before: ``accepted`` or ``refused`` with its code and facts."""

    answer: str
    code: str = ""
    facts: Mapping[str, Any] = field(default_factory=dict)
