"""What is set and is no part of the book, on disk: one JSON record for each key."""

import json
from collections.abc import Mapping
from typing import Any

from runboard.store.connect import Connections


class SettingsFile:
    """Settings by key. What was never set is an empty record."""

    def __init__(self, connections: Connections) -> None:
        self._connections = connections

    def get(self, key: str) -> dict[str, Any]:
        """The record of that key; the caller's own to change."""
        row = self._connections.read("SELECT record FROM setting WHERE key = ?", key).fetchone()
        return {} if row is None else dict(json.loads(row[0]))

    def put(self, key: str, record: Mapping[str, Any]) -> None:
        """Set the whole record of that key."""
        self._put(key, record, "UPDATE SET record = excluded.record")

    def put_first(self, key: str, record: Mapping[str, Any]) -> dict[str, Any]:
        """Set the record of that key where nothing was set yet; answers what is set now, whoever set it."""
        self._put(key, record, "NOTHING")
        return self.get(key)

    def _put(self, key: str, record: Mapping[str, Any], otherwise: str) -> None:
        sql = f"INSERT INTO setting (key, record) VALUES (?, ?) ON CONFLICT (key) DO {otherwise}"
        self._connections.change(sql, key, json.dumps(dict(record), ensure_ascii=False))
