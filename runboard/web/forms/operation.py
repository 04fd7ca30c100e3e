"""The forms of a product and of one operation: everything that an operation can ask, and what a helper is told in other languages,
line by line."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any

from werkzeug.datastructures import MultiDict

from runboard.shop.product import LANGUAGES, Operation, Product, Translation
from runboard.shop.record import to_json
from runboard.web.forms.asked import Record, choice_word, fields_for, form_of
from runboard.web.forms.field import Field, Section
from runboard.web.forms.form import Texts
from runboard.words.sentences import say, sentence

_ROW = re.compile(r"instructions\.(\d{1,4})\.")
_LINES = "One line for each line above. An empty line stays as it is."


def product_form(book: Record) -> list[Section]:
    """A product without its route."""
    return form_of(Product, book)


def product_said(said: Record) -> Record:
    """The product's record that a form says: what it is made of where anybody says a size."""
    piece = said["piece"]
    if not any(piece[side] for side in ("length", "width", "thickness")):
        return {**said, "piece": None}
    return said


def operation_form(book: Record, operation: Record) -> list[Section]:
    """One operation as it is now, for the stations, services and finishes of this book's record."""
    sections = form_of(Operation, book)
    said = " ".join(_reckoned(operation["passes"]))
    if said:
        sections = [replace(part, fields=tuple(_from_file(field, said) for field in part.fields)) for part in sections]
    return [*sections, *_translations(book, operation)]


def _reckoned(passes: Sequence[Record]) -> Iterator[str]:
    """From which file the machine time of each pass is, where it is from one."""
    for pass_ in passes:
        reckoned = pass_.get("reckoned")
        if reckoned:
            facts = {"pass": "one" if len(passes) == 1 else pass_["name"], "file": reckoned["name"]}
            yield say("operation-reckoned", reckoned["what"], facts)


def _from_file(field: Field, said: str) -> Field:
    """A field of the form, with what is said beside the machine time, and that this is no guess."""
    if field.name == "guess":
        return replace(field, hint=sentence("operation-guess-reckoned"))
    if field.name != "passes":
        return field
    rows = (replace(part, hint=said) if part.name == "machine_minutes" else part for part in field.rows)
    return replace(field, rows=tuple(rows))


def operation_shown(operation: Record) -> Record:
    """What the form shows of an operation's record."""
    sheet = [{"label": label, "text": text} for label, text in operation.get("setup_sheet", ())]
    return {**operation, "setup_sheet": sheet}


def operation_said(said: Record) -> Record:
    """The operation's record that a form says; its keys are put in by whoever saves it."""
    wait = said["wait"]
    holds = {key: count for key, count in wait.get("holds", {}).items() if count is not None}
    return {
        **said,
        "wait": {**wait, "holds": holds} if wait["why"] else None,
        "setup_sheet": [[pair["label"], pair["text"]] for pair in said["setup_sheet"]],
        "passes": [{**pass_, "name": pass_["name"] or "1"} for pass_ in said["passes"]],
        "translations": _translations_said(said["translations"]),
    }


def _translations(book: Record, operation: Record) -> list[Section]:
    """A folded section a language. What the operation says stands beside each field, line by line."""
    return [_section(book, language, operation) for language in LANGUAGES]


def _section(book: Record, language: str, operation: Record) -> Section:
    within, fields, apart = f"translations.{language}.", [], []
    said: Mapping[str, Any] = operation.get("translations", {}).get(language, {})
    for field in fields_for(Translation, book, within=within):
        lines = _originals(operation, field.name.removeprefix(within))
        theirs = said.get(field.name.removeprefix(within), ())
        if field.kind != "lines":
            fields.append(replace(field, hint=f"Here: {operation['name']}"))
        elif lines or theirs:
            fields.append(replace(field, hint=_LINES, beside=lines))
            apart += [field.label] if len(theirs) > len(lines) else []
    note = f"More lines here than the operation has: {', '.join(apart)}. Check that they still match." if apart else ""
    return Section(f"In {choice_word(Operation, 'translations', language)}", tuple(fields), folded=True, note=note)


def _originals(operation: Record, name: str) -> tuple[str, ...]:
    """The lines of an operation's list, as it says them itself."""
    return tuple(line["text"] if isinstance(line, Mapping) else line for line in operation.get(name, ()))


def _translations_said(said: Record) -> Record:
    """The translations of the record that a form says, without languages in which nothing is said."""
    empty = to_json(Translation())
    return {language: {**empty, **texts} for language, texts in said.items() if any(texts.values())}


def spread_steps(texts: Texts) -> Texts:
    """A step of several lines as several steps; its picture stays with the first."""
    spread: Texts = MultiDict((name, text) for name, text in texts.items(multi=True) if not _ROW.match(name))
    at = 0
    for number in sorted({int(found[1]) for name in texts if (found := _ROW.match(name))}):
        row = f"instructions.{number}."
        lines = [line.strip() for line in texts.get(f"{row}text", "").splitlines() if line.strip()] or [""]
        for name, text in texts.items(multi=True):
            if name.startswith(row):
                spread.add(f"instructions.{at}.{name.removeprefix(row)}", text)
        spread[f"instructions.{at}.text"] = lines[0]
        for place, line in enumerate(lines[1:], at + 1):
            spread[f"instructions.{place}.text"] = line
        at += len(lines)
    return spread
