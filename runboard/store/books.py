"""The shop's book on disk: every save is a revision."""

import json
from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime
from functools import lru_cache
from typing import Any

from runboard.run.log.event import parse_moment, write_moment
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json, book_to_json
from runboard.shop.limits import check_limits
from runboard.store.connect import Connections


class BookFile:
    """The shop's book. Before the first save it is an empty one, revision 0."""

    def __init__(self, connections: Connections) -> None:
        self._connections = connections
        # A revision never changes, so a book once read is read for good; a few are kept, for the runs that began under
        # an older one.
        self._read = lru_cache(maxsize=8)(self._book)

    def revision(self) -> int:
        """The number of the latest revision, 0 before the first save."""
        row = self._connections.read("SELECT ifnull(max(revision), 0) FROM book").fetchone()
        return int(row[0])

    def latest(self) -> Book:
        """The book as last saved."""
        return self._read(self.revision())

    def record(self, revision: int | None = None) -> dict[str, Any]:
        """The JSON record of a revision, the latest if none is named; KeyError where there is no such revision."""
        wanted = self.revision() if revision is None else revision
        if wanted == 0:
            return book_to_json(Book())
        row = self._connections.read("SELECT record FROM book WHERE revision = ?", wanted).fetchone()
        if row is None:
            raise KeyError(wanted)
        record: dict[str, Any] = json.loads(row[0])
        return record

    def save(self, record: Mapping[str, Any], saved_at: datetime) -> Book:
        """The next revision. A record that the book's validator refuses raises ``BookError``, and nothing is stored."""
        book = book_from_json(record)
        check_limits(book)
        text = json.dumps(book_to_json(book), separators=(",", ":"), ensure_ascii=False)
        with self._connections.write() as connection:
            done = connection.execute(
                "INSERT INTO book (record, saved_at) VALUES (?, ?)", (text, write_moment(saved_at))
            )
            revision = done.lastrowid or 0
        return replace(book, revision=revision)

    def _book(self, revision: int) -> Book:
        book = replace(book_from_json(self.record(revision)), revision=revision)
        return replace(book, earlier=self._earlier(revision))

    def _earlier(self, revision: int) -> tuple[tuple[datetime, Book], ...]:
        """The older books by which care was judged otherwise. Only where stations or finishes changed is one read."""
        rows = self._connections.read(
            "SELECT revision, json_extract(record, '$.stations', '$.finishes'), saved_at FROM book"
            " WHERE revision <= ? ORDER BY revision",
            revision,
        )
        before: Book | None = None
        judged = ""
        for number, judges, saved_at in rows.fetchall():
            if before is None or judges != judged:
                book = replace(book_from_json(self.record(number)), revision=number)
                before = book if before is None else book.following(before, parse_moment(saved_at))
                judged = judges
        return () if before is None else before.earlier
