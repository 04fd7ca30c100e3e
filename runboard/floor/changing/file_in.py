"""A file of a book or a run as it comes in: its pictures apart, one at a time, and the rest as one record.

Pictures are most of such a file, and one lies in memory at a time; what is left is text, and has a limit of its own.
"""

import re
from collections.abc import Callable, Iterator
from typing import Any, BinaryIO

from runboard.floor.changing.pictures import decoded
from runboard.run.refusal import Refused
from runboard.shop.json_text import read_json_text

MOST_BYTES = 100_000_000
MOST_TEXT_BYTES = 12_000_000
MOST_PICTURES = 2_000
_MOST_PICTURE = 20_000_000
_CHUNK = 1 << 20
_BEGIN = re.compile(rb'"([0-9a-f]{64}\.(?:jpg|png))"\s{0,9}:\s{0,9}"')
_LONGEST_BEGIN = 100

Record = dict[str, Any]
# Is given the content of each picture with its ending.
Take = Callable[[bytes, str], object]


def nothing(content: bytes, ending: str) -> None:
    """For a first look: what a picture is has been seen, and it is not kept."""


def read_file(stream: BinaryIO, take: Take = nothing) -> Record:
    """The record of a book or a run, its pictures taken out and given to ``take`` one by one, each what its name says.

    Raises ``Unreadable`` where it is no plain JSON. Refused 'file too long', 'file empty', 'picture wrong', 'file nothing'
    (neither a book nor a run).
    """
    names: set[str] = set()
    text = bytearray()
    for part in _parts(stream):
        if isinstance(part, tuple):
            name, content = part
            names.add(name)
            if len(names) > MOST_PICTURES:
                raise Refused("file too long", most=MOST_BYTES // 1_000_000)
            take(decoded(name, content), name.rpartition(".")[2])
        else:
            text += part
        if len(text) > MOST_TEXT_BYTES:
            raise Refused("file too long", most=MOST_TEXT_BYTES // 1_000_000)
    if not text.strip():
        raise Refused("file empty")
    record = read_json_text(bytes(text), "the file")
    if not isinstance(record, dict) or not {"runboard_book", "runboard_run"} & record.keys():
        raise Refused("file nothing")
    _check_names(record.get("pictures", {}), names)
    return {field: value for field, value in record.items() if field != "pictures"}


def _check_names(held: object, names: set[str]) -> None:
    """Every picture stands where pictures do, and what stands there are pictures."""
    if not isinstance(held, dict) or held.keys() != names or any(held.values()):
        raise Refused("picture wrong", name="pictures")


def _parts(stream: BinaryIO) -> Iterator[bytes | tuple[str, bytes]]:
    """The text in pieces, and between them each picture's name with its content in base64."""
    held = stream.read(_CHUNK)
    while held:
        begin = _BEGIN.search(held)
        if begin is None:
            more = stream.read(_CHUNK)
            cut = max(0, len(held) - _LONGEST_BEGIN) if more else len(held)
            yield held[:cut]
            held = held[cut:] + more
            continue
        name, start = begin[1].decode(), begin.end()
        yield held[:start]
        held = held[start:]
        while (end := held.find(b'"')) < 0:
            more = stream.read(_CHUNK)
            if not more or len(held) > _MOST_PICTURE:
                raise Refused("picture wrong", name=name)
            held += more
        yield name, held[:end]
        held = held[end:]
