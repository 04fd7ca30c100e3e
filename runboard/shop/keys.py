"""Keys: the permanent short words by which the book names its rooms, stations, operations and passes."""

import re
import unicodedata
from collections.abc import Collection

# No colon or slash: a step is written 'sand:120' and a load 'cut/2'.
KEY_PATTERN = r"^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$"
_KEY = re.compile(KEY_PATTERN[:-1] + r"\Z")
LONGEST = 40


def is_key(text: str) -> bool:
    """Whether ``text`` may be a key: 1 to 40 letters, digits, points, dashes and underscores."""
    return _KEY.match(text) is not None


def key_for(name: str, taken: Collection[str] = ()) -> str:
    """A key made from a name, unlike all in ``taken``: 'Clean up' becomes ``clean-up``, the second ``clean-up-2``."""
    plain = unicodedata.normalize("NFKD", name.replace("ß", "ss")).encode("ascii", "ignore").decode().lower()
    stem = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[: LONGEST - 4].strip("-") or "step"
    key, number = stem, 1
    while key in taken:
        number += 1
        key = f"{stem}-{number}"
    return key
