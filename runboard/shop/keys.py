"""How things are named for good: keys, the short words for rooms, stations, operations and passes; and pictures, by what is in
them."""

import re
import unicodedata
from collections.abc import Collection, Iterator, Mapping
from typing import Any

# No colon or slash: a step is written 'sand:120' and a load 'cut/2'.
KEY_PATTERN = r"^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$"
_KEY = re.compile(KEY_PATTERN[:-1] + r"\Z")
LONGEST = 40
# The SHA-256 of the file and its ending.
PICTURE_NAME = r"^[0-9a-f]{64}\.(?:jpg|png)$"
_PICTURE = re.compile(PICTURE_NAME[:-1] + r"\Z")


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


def is_picture_name(text: str) -> bool:
    """Whether ``text`` is the name of a picture in the data folder."""
    return _PICTURE.match(text) is not None


def pictures_named(record: Any) -> Iterator[str]:
    """The names of the pictures that a record names, however deep within; the same one as often as it stands there."""
    if isinstance(record, Mapping):
        for field, value in record.items():
            if field == "picture" and isinstance(value, str) and is_picture_name(value):
                yield value
            else:
                yield from pictures_named(value)
    elif isinstance(record, list | tuple):
        for value in record:
            yield from pictures_named(value)
