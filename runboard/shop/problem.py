"""What is wrong in something that a person wrote: a code, its facts, and the sentence that says where and what."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

# One sentence a code, in one place. ``{...}`` are the facts.
SENTENCES: Mapping[str, str] = {
    # the form of a record: the JSON Schema says the same
    "not an object": "{what} must be an object in braces, not {found}.",
    "missing field": "the field '{field}' is missing.",
    "unknown field": "there is no field '{field}' here.{hint} Fields are: {fields}.",
    "unknown fields": "{found} more fields here are none that are known.",
    "too many problems": "there is more that is wrong. Mend this first.",
    "wrong type": "'{field}' must be {wanted}, not {found}.",
    "not a choice": "'{field}' cannot be {found}. Choose one of: {choices}.",
    "too small": "'{field}' must be at least {least}, not {found}.",
    "too large": "'{field}' must be at most {most}, not {found}.",
    "text empty": "'{field}' must not be empty.",
    "text too long": "'{field}' may have {most} characters, not {found}.",
    "not a key": "'{field}' cannot be {found}: a key is letters, digits, points and dashes, without spaces, 40 at most.",
    "list too short": "'{field}' needs at least {least}.",
    "list too long": "'{field}' may list {most}, not {found}.",
    "not one line": "'{field}' must be one line, without line breaks or signs that nobody sees.",
    "too long": "there are {found:,} {field}, and {most:,} at most can be kept.",
    "listed twice": "'{field}' lists {found} twice.",
    "not a time of day": "'{field}' must be a time of day such as 18:30, not {found}.",
    "jig without pieces": "a load that is a {size} needs 'pieces': how many pieces it takes.",
    "tolerance without nominal": "'{field}' needs a 'nominal' beside it: the measure that it is a tolerance of.",
    # what no schema can say
    "not text": "'{field}' holds characters that cannot be stored.",
    "key used twice": "the key '{key}' is used twice in {field}. Give one of them another key.",
    "unknown reference": "there is no {noun} '{key}'. {these}",
    "unknown time zone": "there is no time zone '{key}'. Write it as in 'Europe/Berlin' or 'America/New_York'.",
    "not a currency": "'{field}' cannot be {found}. Write the three letters of a currency, such as EUR or USD.",
    "not a locale": "'{field}' cannot be {found}. Write a language and a country, such as de-DE or en-US.",
    "window backwards": "the hours from {opens} to {closes} end before they begin. For hours over midnight write two: "
    "{opens} to 24:00, and 00:00 to {closes} on the next day.",
    "walk within a room": "a walk needs two different rooms, not '{key}' twice.",
    "walk said twice": "the walk between '{one}' and '{other}' is written twice.",
    "attendance too small": "'{attendance}' is not enough at {station}: a {kind} asks for at least '{least}'.",
    "cutter beside heat": "'{station}' cuts, and nobody may work at a cutter while a {kind} runs. Take it off 'watch_from'.",
    "watched too seldom": "whoever watches {station} is asked at least every {most}, so not only every {found}.",
    "latest before least": "'latest_minutes' ({latest}) must not be less than 'least_minutes' ({least}).",
    "more than there are": "{count} of '{key}' are asked for, but the shop has {capacity}.",
    "places overlap": "the places overlap: each takes {place}, and the next begins after {pitch}. Write {place} or more.",
    "other version": "this file says runboard_book {found}; this program reads 1.",
    # lengths and spans of time
    "length unreadable": "'{text}' is no length. Write it as in 5 1/2 in, 0.125 in or 12.5 mm.",
    "length ambiguous": "'{text}' may mean two lengths. Write a decimal point, and no comma between thousands.",
    "length unit": "'{unit}' is no unit of length. Units are: mm, cm, m, in, ft.",
    "time unreadable": "'{text}' is no span of time. Write it as in 40, 90 s, 1h30 or 2 h.",
    "time too long": "'{text}' is too long: 100000 minutes at most.",
    # JSON from outside
    "json no text": "{what} is no UTF-8 text.",
    "json broken": "{what} is no JSON. Line {line}, column {column}.",
    "json too deep": "{what} is more than {most} levels deep, which nothing here is.",
    "json too much": "{what} holds more than {most:,} values, which is more than can be taken at once.",
    "json number": "{what} holds {found}, which is no number that can be kept.",
    "json half character": "{what} holds half of a character, which cannot be stored.",
    # a route in a few words
    "route empty": "write the steps with a comma between them, such as: cut 40, sand 25, oil, overnight.",
    "route without stations": "the shop has no station yet. Add one first, then write the route.",
    "route step without word": "step {number}, '{text}', says no work. Write a word before the time, such as: sand {text}.",
    "route wait first": "step {number}, '{text}', is a wait, and a wait follows a step. Write what is done before it.",
    "route time unreadable": "step {number}, '{text}': the time cannot be read. Write it as in 40, 90 s, 1h30 or 2 h.",
    "route step too long": "step {number} is too long: {most} letters at most. Write a comma between the steps.",
    "route too long": "a route has at most {most} steps, not {found}.",
}


def sentence(code: str, facts: Mapping[str, Any]) -> str:
    """The plain sentence of a code, without its place and with a small first letter."""
    return SENTENCES[code].format(**facts)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


class Unreadable(ValueError):
    """A text that is no length, no span of time or no route, a value that is none for its field. ``code`` names the sentence,
    ``facts`` fill it."""

    def __init__(self, code: str, **facts: Any) -> None:
        super().__init__(code)
        self.code, self.facts = code, facts

    def __str__(self) -> str:
        return _capital(sentence(self.code, self.facts))


@dataclass(frozen=True)
class RecordProblem:
    """One thing that is wrong in a record.

    ``path`` says where for a program (``products[0].operations[2].station``), ``place`` for a person ("product
    'rail', operation 'sand'"); it is empty at the top.
    """

    path: str
    place: str
    code: str
    facts: Mapping[str, Any] = field(default_factory=dict)

    @property
    def sentence(self) -> str:
        """Where and what, as a person can act on it."""
        said = sentence(self.code, self.facts)
        if not self.place:
            return _capital(said)
        bare_path = "[" in self.place.partition(",")[0]
        return f"{self.place if bare_path else _capital(self.place)}: {said}"


class BookError(ValueError):
    """A book, or a part of one, that cannot be read. ``problems`` holds everything found wrong, in reading order."""

    code = "book wrong"

    def __init__(self, problems: Sequence[RecordProblem]) -> None:
        super().__init__("\n".join(problem.sentence for problem in problems))
        self.problems = tuple(problems)

    @property
    def facts(self) -> dict[str, Any]:
        return {"problems": [problem.sentence for problem in self.problems]}
