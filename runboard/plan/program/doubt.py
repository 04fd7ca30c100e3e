"""What in a program is named rather than guessed."""

from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True)
class Doubt:
    """Something in a program that is named rather than guessed. ``code`` names its sentence (``program-doubt-<code>``);
    ``changes_time`` where the time would be another if it meant something."""

    line: int
    code: str
    facts: dict[str, Any] = field(default_factory=dict)
    changes_time: bool = False
