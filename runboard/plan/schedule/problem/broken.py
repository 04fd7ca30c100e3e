"""One rule that a plan breaks."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Broken:
    """The code of the rule, the blocks that break it together, and the facts of it."""

    code: str
    blocks: tuple[int, ...]
    facts: Mapping[str, object] = field(default_factory=dict)
