"""Pictures as the book and the log name them: by what is in them."""

import re
from collections.abc import Iterator, Mapping
from typing import Any

# The SHA-256 of the file and its ending.
PICTURE_NAME = r"^[0-9a-f]{64}\.(?:jpg|png)$"
_NAME = re.compile(PICTURE_NAME[:-1] + r"\Z")


def is_picture_name(text: str) -> bool:
    """Whether ``text`` is the name of a picture in the data folder."""
    return _NAME.match(text) is not None


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
