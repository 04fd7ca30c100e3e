"""What is kept of a refused press: as much as tells what it was, and no more, whatever a sender puts in it."""

from collections.abc import Mapping
from typing import Any

from runboard.run.fold.record import dump

MOST_SIGNS = 4000
LONGEST_TEXT = 300
_MOST_FACTS = 20
_ENVELOPE = ("id", "kind", "at", "run", "load", "tray", "operation", "station", "person", "device", "seen", "basis")


def cut_record(record: Mapping[str, Any]) -> dict[str, Any]:
    """The record, in at most so many signs of JSON; of a longer one its envelope and how long it was, as ``cut``."""
    length = len(dump(record))
    if length <= MOST_SIGNS:
        return dict(record)
    envelope = {name: record[name] for name in _ENVELOPE if isinstance(record.get(name), (str, int))}
    return {name: _cut(value, 80) for name, value in envelope.items()} | {"cut": length}


def cut_facts(facts: Mapping[str, Any]) -> dict[str, Any]:
    """A refusal's facts, each short enough for a sentence: the same are kept and told."""
    return {name: _cut(value, LONGEST_TEXT) for name, value in list(facts.items())[:_MOST_FACTS]}


def _cut(value: Any, most: int, depth: int = 3) -> Any:
    if isinstance(value, str):
        return value if len(value) <= most else value[: most - 1] + "…"
    if isinstance(value, (list, Mapping)) and not depth:
        return None
    if isinstance(value, list):
        return [_cut(part, most, depth - 1) for part in value[:_MOST_FACTS]]
    if isinstance(value, Mapping):
        return {str(key)[:most]: _cut(part, most, depth - 1) for key, part in list(value.items())[:_MOST_FACTS]}
    return value
