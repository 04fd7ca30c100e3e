"""Questions before a run, asked by somebody who looks: what is quick is answered at once, what takes long in a child process.

An answer is kept for a while under what was asked, so that whoever looks again, loads a drawing or keeps a part of it has the same
one. Files that are looked at lie in the data folder by their digest, and go when nobody has asked for them for days.
"""

import hashlib
import json
import threading
from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, Protocol

from runboard.floor.long_work import LongWork
from runboard.floor.looking.at_hand import book_now, shop_now
from runboard.floor.workshop import Workshop
from runboard.plan.before.asking import question_from, question_to_json
from runboard.plan.before.kind import File, Keep, Kind, Record
from runboard.plan.before.kinds import KINDS
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json, book_to_json

WHAT = "before"
MOST_KEPT = 8
# Bytes: a program of a million lines has some thirty million; a drawing is read as a tree, which takes many times its size.
A_PROGRAM, A_DRAWING = 60_000_000, 20_000_000
_DRAWINGS = (".svg", ".dxf", ".json")


class FilesLookedAt(Protocol):
    """Where files that were looked at lie, by the digest of what is in them. ``named`` are those that stay."""

    def keep(self, content: bytes, named: Collection[str]) -> str: ...
    def path(self, digest: str) -> Path | None: ...


@dataclass(frozen=True)
class FileAsked:
    """A file by its digest, and what it was called."""

    digest: str
    name: str


@dataclass(frozen=True)
class Answered:
    """What was asked of which book, and the answer."""

    kind: Kind
    book: Book
    question: Any
    answer: Any
    file: FileAsked | None = None

    def keeps(self) -> list[Keep]:
        """What of it may be kept."""
        return list(self.kind.keeps(self.book, self.question, self.answer))


@dataclass(frozen=True)
class Coming:
    """Work on an answer goes on: ``done`` of ``total``."""

    task: str
    done: int = 0
    total: int = 0


@dataclass(frozen=True)
class _Kept:
    book: Book
    task: str = ""
    answered: Answered | None = None


@dataclass
class Answers:
    """``work`` runs what takes long, ``files`` keeps what was dropped."""

    workshop: Workshop
    work: LongWork
    files: FilesLookedAt
    _lock: threading.Lock = field(default_factory=threading.Lock)
    _kept: dict[str, _Kept] = field(default_factory=dict)

    def take(self, name: str, content: bytes) -> FileAsked:
        """Keep a file to be asked about. Refused 'looked-at file empty' and 'looked-at file too large'."""
        most = most_of(name)
        if not content:
            raise Refused("looked-at file empty", name=name)
        if len(content) > most:
            raise Refused("looked-at file too large", name=name, most=most // 1_000_000)
        return FileAsked(self.files.keep(content, set(_digests(book_to_json(book_now(self.workshop))))), name)

    def ask(self, kind: Kind, question: Any, file: FileAsked | None = None) -> Answered | Coming:
        """The answer, or how far it is. Refused as the kind refuses, 'no file chosen' and 'looked-at file gone' without its file, 'question
        busy' where too much is being worked out, 'question failed'."""
        book, state = shop_now(self.workshop)
        question = kind.learned(book, state, question)
        key = _key(kind, question, file)
        with self._lock:
            kept = self._kept.get(key)
            if kept is not None and kept.book.revision != book.revision:
                kept = None
                self._forget(key)
            if kept is None and kind.is_long and not (file is None and kind.is_quick(book, question)):
                kept = self._begun(key, kind, question, file, book)
        if kept is None:
            found = work_out(kind.name, book, question, *self._file(kind, file), _nobody)
            kept = self._keep(key, _Kept(book, answered=Answered(kind, book, question, found, file)))
        return kept.answered or self._as_it_stands(key, kept, kind, question, file)

    def end(self, kind: Kind, question: Any, file: FileAsked | None = None) -> None:
        """Somebody does not want the answer any more."""
        question = kind.learned(*shop_now(self.workshop), question)
        with self._lock:
            self._forget(_key(kind, question, file))

    def still_so(self, answered: Answered, book: Book) -> None:
        """The book was saved with a part of this answer: it is shown as it was, and not worked out again."""
        kept = _Kept(book, answered=replace(answered, book=book))
        self._keep(_key(answered.kind, answered.question, answered.file), kept)

    def _file(self, kind: Kind, file: FileAsked | None) -> tuple[str, str]:
        """Where it lies and what it was called."""
        if file is None:
            if kind.needs_file:
                raise Refused("no file chosen")
            return "", ""
        path = self.files.path(file.digest)
        if path is None:
            raise Refused("looked-at file gone", name=file.name)
        return str(path), file.name

    def _begun(self, key: str, kind: Kind, question: Any, file: FileAsked | None, book: Book) -> _Kept:
        where = self._file(kind, file)
        record, asked = book_to_json(book), question_to_json(question)
        task = self.work.start(WHAT, key, work_out_there, kind.name, record, book.revision, asked, *where)
        if task is None:
            raise Refused("question busy")
        self._kept[key] = _Kept(book, task.id)
        for old in [old for old in self._kept if old != key][: max(0, len(self._kept) - MOST_KEPT)]:
            self._forget(old)
        return self._kept[key]

    def _as_it_stands(
        self, key: str, kept: _Kept, kind: Kind, question: Any, file: FileAsked | None
    ) -> Answered | Coming:
        task = self.work.look(kept.task)
        if task is not None and not task.is_over:
            return Coming(task.id, task.done, task.total)
        if task is None or task.result is None or isinstance(task.result, Refused):
            with self._lock:
                self._forget(key)  # whoever asks again has it tried again
            raise task.result if task is not None and task.result is not None else Refused("question failed")
        answered = Answered(kind, kept.book, question, task.result, file)
        self._keep(key, _Kept(kept.book, kept.task, answered))
        return answered

    def _keep(self, key: str, kept: _Kept) -> _Kept:
        with self._lock:
            self._kept[key] = kept
            for old in [old for old in self._kept if old != key][: max(0, len(self._kept) - MOST_KEPT)]:
                self._forget(old)
        return kept

    def _forget(self, key: str) -> None:
        kept = self._kept.pop(key, None)
        if kept is not None and kept.task:
            self.work.end(kept.task)


def work_out_there(
    name: str, record: Record, revision: int, question: Record, path: str, called: str, told: Callable[..., None]
) -> Any:
    """In the child: the answer, or why there is none."""
    book = replace(book_from_json(record), revision=revision)
    try:
        return work_out(name, book, question_from(KINDS[name], question, book), path, called, told)
    except Refused as refused:
        return refused


def work_out(name: str, book: Book, question: Any, path: str, called: str, told: Callable[[int, int], None]) -> Any:
    """The answer of a kind to a question about the file at ``path``, '' for none. Refused as the kind refuses."""
    file = File(called, Path(path).read_bytes()) if path else None
    return KINDS[name].answer(book, question, file, told)


def most_of(name: str) -> int:
    """How many bytes a file of this name may have."""
    return A_DRAWING if name.lower().endswith(_DRAWINGS) else A_PROGRAM


def _key(kind: Kind, question: Any, file: FileAsked | None) -> str:
    asked = json.dumps([kind.name, question_to_json(question), file and [file.digest, file.name]], sort_keys=True)
    return hashlib.sha256(asked.encode()).hexdigest()


def _digests(record: Any) -> Iterator[str]:
    """The digests of files that the book names, however deep within."""
    if isinstance(record, dict):
        if isinstance(record.get("digest"), str):
            yield record["digest"]
        record = list(record.values())
    if isinstance(record, list):
        for value in record:
            yield from _digests(value)


def _nobody(done: int, total: int) -> None:
    """Who is answered at once is not told how far it is."""
