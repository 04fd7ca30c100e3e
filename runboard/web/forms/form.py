"""One form: its texts, kept as they were typed, and what is wrong with them."""

import dataclasses
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from werkzeug.datastructures import MultiDict

from runboard.shop.problem import RecordProblem, sentence
from runboard.shop.units import Unit
from runboard.web.forms.field import Field, Section, from_texts, to_texts
from runboard.words.sentences import sentence as catalogued

Texts = MultiDict[str, str]


@dataclass
class Form:
    """``texts`` are by the input's name: a field's, or ``passes.0.name`` in a row. ``errors`` are by the same names,
    ``problems`` are what concerns no field here. ``seen`` is the revision of the book that the person had before them."""

    sections: tuple[Section, ...]
    texts: Texts
    units: Unit = "mm"
    errors: dict[str, str] = dataclasses.field(default_factory=dict)
    problems: list[str] = dataclasses.field(default_factory=list)
    seen: int = 0

    @property
    def fields(self) -> Iterator[Field]:
        return (field for section in self.sections for field in section.fields)

    def text(self, name: str) -> str:
        return self.texts.get(name, "")

    def all(self, name: str) -> list[str]:
        return self.texts.getlist(name)

    def error(self, name: str) -> str:
        return self.errors.get(name, "")

    def is_open(self, section: Section) -> bool:
        """Whether a folded section has something wrong in it."""
        return any(
            name == field.name or name.startswith(f"{field.name}.") for field in section.fields for name in self.errors
        )

    def row_numbers(self, field: Field) -> list[int]:
        """The numbers of the rows that hold something, and one more that is empty."""
        numbers = _row_numbers(field, self.texts)
        return [*numbers, max(numbers, default=-1) + 1]

    @property
    def is_wrong(self) -> bool:
        return bool(self.errors or self.problems)

    def record(self) -> dict[str, Any]:
        """What the form says, as the part of a record that its fields name; a dotted name goes within."""
        found: dict[str, Any] = {}
        for field in self.fields:
            _put(found, field.name, self._value(field, field.name))
        return found

    def _value(self, field: Field, name: str) -> Any:
        if field.kind != "rows":
            return from_texts(field, self.all(name))
        numbers = _row_numbers(field, self.texts)
        return [{part.name: self._value(part, f"{name}.{at}.{part.name}") for part in field.rows} for at in numbers]

    def part_of(self, record: Mapping[str, Any]) -> list[Any]:
        """What a record says of what the form asks."""
        return [_get(record, field.name) for field in self.fields]

    def take(self, problems: Iterable[RecordProblem], prefix: str) -> None:
        """Put the validator's problems at their fields; those outside ``prefix`` stand above the form."""
        for problem in problems:
            inside = problem.path.startswith(f"{prefix}.") if prefix else True
            name = self._name_at(problem.path[len(prefix) :] if inside else "")
            if name:
                self.errors.setdefault(name, self._sentence(problem, name))
            else:
                self.problems.append(problem.sentence)

    def _name_at(self, path: str) -> str:
        """The name of the input that a path within the record means, '' where the form has none."""
        parts = re.sub(r"\[(\d+)\]", r".\1", path).strip(".").split(".")
        while parts and parts != [""]:
            name = ".".join(parts)
            if self._field_of(name):
                return name
            parts.pop()
        return ""

    def _field_of(self, name: str) -> Field | None:
        rows = ((f"{field.name}.*.{part.name}", part) for field in self.fields for part in field.rows)
        return dict(((field.name, field) for field in self.fields), **dict(rows)).get(re.sub(r"\.\d+\.", ".*.", name))

    def _sentence(self, problem: RecordProblem, name: str) -> str:
        field = self._field_of(name)
        if field is not None and field.wrong:
            return field.wrong
        facts = dict(problem.facts)
        if field is not None:
            facts["field"] = field.label
        if problem.code in ("text empty", "missing field"):
            return "Write something here."
        if problem.code == "wrong type" and facts.get("found") == '""':
            return f"Write {facts['wanted']}."
        if problem.code == "length unreadable" and not str(facts.get("text", "")).strip():
            return catalogued("forms-write-length", {"what": _one_word(facts.get("field", ""))})
        said = sentence(problem.code, facts)
        return said[:1].upper() + said[1:]


def _one_word(label: str) -> str:
    """'width'; 'none' where the label is no such word."""
    return label.lower() if label.isalpha() else "none"


def shown(sections: Sequence[Section], record: Mapping[str, Any], units: Unit = "mm") -> Form:
    """A form filled from a record."""
    texts: Texts = MultiDict()
    for section in sections:
        for field in section.fields:
            _fill(texts, field, field.name, _get(record, field.name), units)
    return Form(tuple(sections), texts, units)


def posted(sections: Sequence[Section], texts: Texts, units: Unit = "mm") -> Form:
    """A form as it came in: rows taken out or left empty are gone, and the others numbered anew.

    A text ``name.wrong`` says why what came for the field was refused.
    """
    form = Form(tuple(sections), _outside_rows(texts), units)
    for field in form.fields:
        if field.kind != "rows":
            _keep(form, field.name, field.name, texts)
            continue
        for new, old in enumerate(_row_numbers(field, texts)):
            for part in field.rows:
                _keep(form, f"{field.name}.{new}.{part.name}", f"{field.name}.{old}.{part.name}", texts)
    return form


def _outside_rows(texts: Texts) -> Texts:
    return MultiDict((name, text) for name, text in texts.items(multi=True) if not re.search(r"\.\d+\.", name))


def _keep(form: Form, name: str, came_as: str, texts: Texts) -> None:
    if came_as in texts:
        form.texts.setlist(name, texts.getlist(came_as))
    if f"{came_as}.wrong" in texts:
        form.errors[name] = texts[f"{came_as}.wrong"]


def _row_numbers(field: Field, texts: Texts) -> list[int]:
    found = {int(match[1]) for name in texts if (match := re.match(re.escape(field.name) + r"\.(\d{1,4})\.", name))}
    return [at for at in sorted(found) if _says_something(field, f"{field.name}.{at}", texts)]


def _says_something(field: Field, row: str, texts: Texts) -> bool:
    """A choice always has a value, and a key that is kept says nothing alone."""
    if f"{row}.gone" in texts:
        return False
    if any(f"{row}.{part.name}.wrong" in texts for part in field.rows):
        return True
    return any(
        text.strip()
        for part in field.rows
        if part.kind not in ("choice", "kept")
        for text in texts.getlist(f"{row}.{part.name}")
    )


def _fill(texts: Texts, field: Field, name: str, value: Any, units: Unit) -> None:
    if field.kind != "rows":
        texts.setlist(name, to_texts(field, value, units))
        return
    for at, row in enumerate(value or ()):
        for part in field.rows:
            _fill(texts, part, f"{name}.{at}.{part.name}", row.get(part.name), units)


def _get(record: Mapping[str, Any], name: str) -> Any:
    value: Any = record
    for part in name.split("."):
        value = value.get(part) if isinstance(value, Mapping) else None
    return value


def _put(record: dict[str, Any], name: str, value: Any) -> None:
    *within, last = name.split(".")
    for part in within:
        record = record.setdefault(part, {})
    record[last] = value
