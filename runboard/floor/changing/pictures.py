"""Pictures: one taken with a phone is kept, and a file of the book or of a run brings its own along."""

import base64
import binascii
import hashlib
from collections.abc import Mapping
from typing import Any, Protocol

from runboard.floor.changing.photograph import prepare
from runboard.run.refusal import Refused
from runboard.shop.keys import pictures_named

Record = dict[str, Any]

_BEGINS = {"jpg": b"\xff\xd8\xff", "png": b"\x89PNG\r\n\x1a\n"}


class Shelf(Protocol):
    """Where pictures are kept, each under a name made from its content."""

    def keep(self, content: bytes, ending: str) -> str: ...
    def read(self, name: str) -> bytes | None: ...


def keep_picture(shelf: Shelf, content: bytes) -> str:
    """Keep a picture as it came from a phone, made upright and small; answers its name. Refused as in ``prepare``."""
    return shelf.keep(*prepare(content))


def with_pictures(shelf: Shelf, record: Mapping[str, Any]) -> Record:
    """The record of a book or a run with the pictures that it names: ``pictures`` holds each as base64 under its name."""
    found = {name: shelf.read(name) for name in sorted(set(pictures_named(record)))}
    held = {name: base64.b64encode(content).decode() for name, content in found.items() if content is not None}
    return {**record, "pictures": held} if held else dict(record)


def decoded(name: str, text: bytes) -> bytes:
    """A picture out of a file, from base64. Refused 'picture wrong' where it is not what its name says."""
    digest, _, ending = name.partition(".")
    try:
        content = base64.b64decode(text, validate=True)
    except (binascii.Error, ValueError):
        content = b""
    if not content.startswith(_BEGINS[ending]) or hashlib.sha256(content).hexdigest() != digest:
        raise Refused("picture wrong", name=name)
    return content
