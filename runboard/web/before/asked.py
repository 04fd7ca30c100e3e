"""What was asked, in the address and in the form: a question as texts, the file beside it, and where an answer is looked at."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import urlencode

from flask import abort
from werkzeug.datastructures import FileStorage, MultiDict

from runboard.floor.changing.shop_book import record_at_work
from runboard.floor.looking.answers import Answers, FileAsked, most_of
from runboard.floor.looking.at_hand import book_now
from runboard.plan.before.asking import question_from, question_to_json
from runboard.plan.before.kind import Kind, Record
from runboard.plan.before.kinds import KINDS
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError
from runboard.shop.record import fields_of
from runboard.web.door.pages import refusal, workshop
from runboard.web.fittings import fittings
from runboard.web.forms.asked import form_of
from runboard.web.forms.field import Field, Section
from runboard.web.forms.form import Form, Texts, posted, shown

KEYS = ("product", "step", "station", "run", "jig")
# Names of inputs beside the question's fields.
ASKED, FILE, DIGEST, NAME, KEPT, SEEN = "asked", "file", "file.digest", "file.name", "kept", "seen"
_NONE_OF_THE_QUESTION = frozenset({ASKED, FILE, DIGEST, NAME, KEPT, SEEN, "keep"})


@dataclass
class Asked:
    """A kind of question with the form that asks it. ``question`` is None while something is wrong, ``is_asked`` says whether
    somebody wants the answer by now, ``is_sent`` whether the file came with it just now."""

    kind: Kind
    form: Form
    question: Any = None
    file: FileAsked | None = None
    is_asked: bool = False
    is_sent: bool = False
    texts: Texts = field(default_factory=MultiDict)

    @property
    def pairs(self) -> list[tuple[str, str]]:
        """Everything that was asked, as names and texts: for an address, or hidden in a form."""
        return [*self.form.texts.items(multi=True), *self.file_pairs, (ASKED, "yes")]

    @property
    def file_pairs(self) -> list[tuple[str, str]]:
        """The file as names and texts."""
        return [(DIGEST, self.file.digest), (NAME, self.file.name)] if self.file else []

    def address(self, place: str = "", **more: str) -> str:
        """Where the answer is looked at."""
        return f"/before/{self.kind.name}{place}?{urlencode([*self.pairs, *more.items()])}"

    @property
    def accept(self) -> str:
        """What a phone offers to choose from."""
        return ",".join(self.kind.endings)


def answers() -> Answers:
    """Who answers."""
    return fittings().answers


def known_kind(name: str) -> Kind:
    """The kind of that name; 404 where there is none."""
    return KINDS.get(name) or abort(404)


def asked_in(kind: Kind, texts: Texts, files: Mapping[str, FileStorage] | None = None) -> Asked:
    """What an address or a posted form asks. Where nothing is asked yet, the form begins with what the kind makes of the keys; a
    file that came along is asked about at once."""
    if ASKED not in texts:
        return _begun(kind, texts)
    form = _posted(kind, texts)
    found = Asked(kind, form, file=_file_in(texts), is_asked=True)
    _take_file(found, files or {})
    try:
        found.question = question_from(kind, form.record(), book_now(workshop()))
    except BookError as error:
        form.take(error.problems, "")
    return found


def _begun(kind: Kind, texts: Texts) -> Asked:
    keys = {name: texts[name] for name in KEYS if texts.get(name)}
    question = kind.begin(book_now(workshop()), keys)
    record = record_at_work(workshop())
    form = shown(_form(kind, record), question_to_json(question), record["units"])
    form.seen = record["revision"]
    file = _file_in(texts)
    return Asked(kind, form, question, file, is_asked=file is not None)


def _form(kind: Kind, record: Record) -> list[Section]:
    """The form of a question. Which step of a route is meant was chosen on the page that led here."""
    step = fields_of(kind.question).get("step")
    own = [Field("step", "", "kept")] if step is not None and step.kind == "text" else []
    return form_of(kind.question, record, own=own)


def _posted(kind: Kind, texts: Texts) -> Form:
    record = record_at_work(workshop())
    said: Texts = MultiDict((name, text) for name, text in texts.items(multi=True) if name not in _NONE_OF_THE_QUESTION)
    form = posted(_form(kind, record), said, record["units"])
    form.texts = MultiDict(_of_the_form(form))
    form.seen = record["revision"]
    return form


def _of_the_form(form: Form) -> Iterable[tuple[str, str]]:
    """What somebody typed into fields of the form, and nothing else that stands in an address."""
    names = tuple(each.name for each in form.fields)
    return (
        (name, text)
        for name, text in form.texts.items(multi=True)
        if name in names or name.startswith(tuple(f"{each}." for each in names))
    )


def _file_in(texts: Texts) -> FileAsked | None:
    digest = texts.get(DIGEST, "")
    return FileAsked(digest, texts.get(NAME, "")[:200]) if digest else None


def _take_file(found: Asked, files: Mapping[str, FileStorage]) -> None:
    """Keep the file that came with a form; why it was refused stands above the form."""
    file = files.get(FILE)
    if file is None or not file.filename:
        return
    try:
        found.file, found.is_sent = take_file(file), True
    except Refused as refused:
        found.form.problems.append(refusal(refused))


def take_file(file: FileStorage) -> FileAsked:
    """Keep a file that came. Refused 'looked-at file empty', 'looked-at file too large'."""
    name = (file.filename or "").replace("\\", "/").rpartition("/")[2][:200]
    try:
        return answers().take(name, file.stream.read(most_of(name) + 1))
    finally:
        file.close()
