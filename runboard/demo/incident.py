"""What comes in between in the demo's story: a collet is worn, hooks run out, a number is not confirmed."""

from collections.abc import Callable
from dataclasses import dataclass

from runboard.demo.phone import Draft
from runboard.run.fold.state import ShopState

Enough = Callable[[ShopState], bool]


@dataclass
class Incident:
    """Something that happens once, as soon as ``when`` holds: somebody presses ``drafts``."""

    when: Enough
    drafts: Callable[[ShopState], list[Draft]]
