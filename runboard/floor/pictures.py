"""Pictures: one taken with a phone is kept, and a file of the book or of a run brings its own along."""

import base64
import binascii
import hashlib
from collections.abc import Mapping
from typing import Any, Protocol

from runboard.floor.photograph import prepare
from runboard.run.refusal import Refused
from runboard.shop.pictures import is_picture_name, pictures_named

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


def without_pictures(shelf: Shelf, record: Mapping[str, Any]) -> Record:
    """The record without them, after they are kept. Refused 'picture wrong', and then none of them is."""
    held = record.get("pictures", {})
    if not isinstance(held, Mapping):
        raise Refused("picture wrong", name="pictures")
    for name, content in [(name, _decoded(name, text)) for name, text in held.items()]:
        shelf.keep(content, name.rpartition(".")[2])
    return {field: value for field, value in record.items() if field != "pictures"}


def _decoded(name: object, text: object) -> bytes:
    """A picture out of a file: what its name says of it has to be true."""
    if isinstance(name, str) and is_picture_name(name) and isinstance(text, str):
        digest, _, ending = name.partition(".")
        try:
            content = base64.b64decode(text, validate=True)
        except (binascii.Error, ValueError):
            content = b""
        if content.startswith(_BEGINS[ending]) and hashlib.sha256(content).hexdigest() == digest:
            return content
    raise Refused("picture wrong", name=str(name)[:80])
