"""Files that were looked at before a run, as far as a time that was taken from one may be old."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from runboard.shop.machines import Reckoned


@dataclass(frozen=True)
class LookedAt:
    """The files that were looked at for products: by product and name the digest of the newest, and the day."""

    newest: Mapping[str, Mapping[str, tuple[str, str]]] = field(default_factory=dict)

    def changed(self, product: str, reckoned: Reckoned) -> str | None:
        """The day on which another file of that name was looked at for the product after the time was taken; None where none was."""
        digest, day = self.newest.get(product, {}).get(reckoned.name, (reckoned.digest, ""))
        return None if digest == reckoned.digest else day
