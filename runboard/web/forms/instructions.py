"""What a helper is told: steps with pictures, and an operation's own texts in other languages, line by line."""

import re
from collections.abc import Mapping
from typing import Any

from werkzeug.datastructures import MultiDict

from runboard.web.forms.field import Field, Section
from runboard.web.forms.form import Texts

Record = dict[str, Any]

LANGUAGES = (("de", "German"), ("es", "Spanish"), ("fr", "French"))
# An operation's lists of lines that a translation may say again.
_LISTS = (
    ("instructions", "Instructions"),
    ("checklist", "Start list"),
    ("cautions", "Cautions"),
    ("checks", "First-piece checks"),
)
_ROW = re.compile(r"instructions\.(\d{1,4})\.")


def instructions_section() -> Section:
    """Short steps, each with a picture if there is one."""
    step = (
        Field("text", "What to do", "long", hint="One short sentence. Several lines become several steps."),
        Field("picture", "Picture", "picture", empty=None),
    )
    return Section(
        "Instructions",
        (Field("instructions", "", "rows", rows=step, one="step", hint="For somebody who never saw the job."),),
        folded=True,
    )


def translation_sections(operation: Record) -> list[Section]:
    """A folded section a language. What the operation says stands beside each field, line by line."""
    return [
        Section(f"In {name}", tuple(_fields(key, operation)), folded=True, note=_note(operation, key))
        for key, name in LANGUAGES
    ]


def _fields(language: str, operation: Record) -> list[Field]:
    named = Field(f"translations.{language}.name", "Name", hint=f"Here: {operation['name']}")
    return [named] + [
        Field(f"translations.{language}.{name}", label, "lines", hint=_LINES, beside=originals(operation, name))
        for name, label in _LISTS
        if originals(operation, name) or _said(operation, language).get(name)
    ]


_LINES = "A line for each line above. One left empty stays as it is."


def _note(operation: Record, language: str) -> str:
    said = _said(operation, language)
    apart = [label for name, label in _LISTS if len(said.get(name, ())) > len(originals(operation, name))]
    return (
        f"More lines here than the operation has: {', '.join(apart)}. Look whether they still match." if apart else ""
    )


def _said(operation: Record, language: str) -> Mapping[str, Any]:
    said: Mapping[str, Any] = operation.get("translations", {}).get(language, {})
    return said


def originals(operation: Record, name: str) -> tuple[str, ...]:
    """The lines of an operation's list, as it says them itself."""
    return tuple(one["text"] if isinstance(one, Mapping) else one for one in operation.get(name, ()))


def translations_said(said: Record) -> Record:
    """The translations of the record that a form says, without languages in which nothing is said."""
    found = {}
    for language, texts in said.items():
        if any(texts.values()):
            found[language] = {"name": "", **{name: [] for name, _ in _LISTS}, **texts}
    return found


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
