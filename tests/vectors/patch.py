"""JSON Merge Patch (RFC 7396): what is different between two records, and one record made of another."""

from typing import Any


def difference(before: Any, after: Any) -> Any:
    """The merge patch that makes ``after`` of ``before``. Neither may hold nulls."""
    if not isinstance(before, dict) or not isinstance(after, dict):
        return after
    changed = {
        key: difference(before[key], value) if key in before else value
        for key, value in after.items()
        if key not in before or before[key] != value
    }
    return {**changed, **{key: None for key in before if key not in after}}


def patched(before: Any, patch: Any) -> Any:
    """``before`` with a merge patch applied."""
    if not isinstance(patch, dict):
        return patch
    found = dict(before) if isinstance(before, dict) else {}
    for key, value in patch.items():
        if value is None:
            found.pop(key, None)
        else:
            found[key] = patched(found.get(key), value)
    return found
