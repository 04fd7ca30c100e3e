"""What a drawing holds that is not understood."""

from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True)
class Unclear:
    """What a drawing holds that is not understood, or may mean something else: ``code`` names its sentence
    (``outline-unclear-<code>``), ``line`` is where in the file, 0 where that is not known."""

    code: str
    line: int = 0
    facts: dict[str, Any] = field(default_factory=dict)
