"""How much a screen shows of what grows with every press. The rest is kept, and stands in the log: this bounds what is told."""

from collections.abc import Mapping
from itertools import islice
from typing import Any

# More than anybody reads through; each that is settled or over makes room for the next.
MOST_SHOWN = 60
MOST_FIRST_PIECES = 300
LONGEST_NOTE = 300
LONGEST_BODY = 2000


def newest(some: Mapping[str, Any], most: int = MOST_SHOWN) -> Mapping[str, Any]:
    """The last that came, in their order; ``some`` itself where they are no more."""
    return some if len(some) <= most else dict(islice(some.items(), len(some) - most, None))
