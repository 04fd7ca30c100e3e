"""A title, a button and an alert take two lines at most on a phone of 360 px, with names and numbers of the usual length.

Which messages are titles and buttons is read from where they are drawn: headings and buttons of templates and of the page's
script, and the families of names that the server words (``go``, ``title``, an alert's kind). Widths are those that cards are set with.
"""

import re
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import product
from pathlib import Path
from typing import NamedTuple

import pytest
from fluent.syntax import FluentParser, visitor
from fluent.syntax import ast as ftl

from runboard.cards.measure import lines
from runboard.run.calls.dues import KINDS as DUE_KINDS
from runboard.words.sentences import catalogue, message_name

ROOT = Path(__file__).parents[2]
STATIC, TEMPLATES = ROOT / "static", ROOT / "templates"
TOKENS = (STATIC / "tokens.css").read_text("utf-8")
NOW_CSS = (STATIC / "now" / "now.css").read_text("utf-8")

# The card's face is wider than a phone's own: Roboto and its like take this share of it.
SCREEN = 0.85
PHONE, PADDING, GAP = 360, 16, 12
COLUMN = PHONE - 2 * PADDING
IN_A_BUTTON = 2 * PADDING + 4  # its padding and its edge
MOST_LINES = 2


class Role(NamedTuple):
    """What a text is on the screen: its size in px, and how wide it may be."""

    name: str
    px: float
    room: float


def token(name: str) -> float:
    """A size of tokens.css in px."""
    number, unit = re.search(rf"--{name}:\s*([\d.]+)(px|rem)", TOKENS).groups()  # type: ignore[union-attr]
    return float(number) * (16 if unit == "rem" else 1)


CLOSE = 100  # the button beside the title of a sheet
TITLE = Role("title", token("step"), COLUMN)
NOW = Role("what to do now", token("do"), COLUMN)
SHEET = Role("title of a sheet", token("name"), COLUMN - CLOSE)
ALERT = Role("alert", token(re.search(r"\.alert-title \{ font-size: var\(--(\w+)\)", NOW_CSS)[1]), COLUMN - 2 * GAP - 6)  # type: ignore[index]
BIG = Role("big button", token("button"), COLUMN - IN_A_BUTTON)
BUTTON = Role("button", token("label"), COLUMN - IN_A_BUTTON)
HALF = Role("half a button", token("label"), (COLUMN - GAP) / 2 - IN_A_BUTTON)
HINT, MOST_OF_A_HINT = Role("hint", token("small"), COLUMN), 3

# By their names: what the server words without a template.
FAMILIES = {
    r"(?!did-|card-|refused-|kind-|past-|why-|plan-|review-)(?:.*-)?go(?:-.*)?": BIG,
    r"move-.*|first-(?!since|after|piece-).*": NOW,
    r"helper-(?:.*-)?title": SHEET,
    "|".join(message_name("alert", kind) for kind in DUE_KINDS): ALERT,
}
# Caught by where they are drawn or by their name, and no title or button all the same.
NEITHER = {
    "first-since": "a quiet line", "first-after": "a quiet line", "first-nothing-more": "a paragraph", "first-nothing-known": "a paragraph",
    "first-no-shop": "a paragraph", "first-no-run": "a paragraph", "first-piece-open": "a quiet line", "first-piece-limits": "a quiet line",
    "first-piece-outside": "a quiet line", "first-piece-stopped": "a paragraph", "settle-where": "a paragraph", "settle-about": "a paragraph",
    "settle-more": "a quiet line", "settle-press": "a paragraph", "wrong-no-load": "a paragraph",
}  # fmt: skip
# Markup around words of a text, which takes no room.
AROUND = dict.fromkeys(("b", "end_b", "code", "end_code", "end_link", "end_span", "link"), "")
# Facts as long as they usually are. Others are a word.
FACTS: Mapping[str, str | int] = {
    "person": "Robin", "name": "Robin", "who": "Robin", "station": "CNC", "stations": "CNC and Laser", "step": "Sand 120", "next": "Fit hooks",
    "what": "trays 7 to 9", "load": "Sand 120, trays 7 to 9", "trays": "trays 7 to 9", "tray": "7", "to": "9", "at": "15:17", "until": "18:00",
    "product": "Key rails", "run": "Key rails", "run_name": "Key rails", "supply": "brass hooks", "job": "Sweep the floor", "number": "112",
    "span": "2 h 30", "title": "Sand 120", "wanted": "phone", "text": "Hill 12", "place": "Rack 2", "left": 3, "date": "Sun 29 Nov",
}  # fmt: skip


# Where they are drawn

_STRING = re.compile(r'"([a-z][\w-]*)"')
_FILLED = re.compile(r"`([a-z][\w-]*-)\$\{[^}]*\}`")
_IN_SCRIPT = {"button": BUTTON, "goButton": BIG, "sheetHead": SHEET}
_UNSEEN = re.compile(r'<span class="unseen">.*?</span>', re.DOTALL)
_DRAWN = re.compile(r"<(button|a|h1)\b([^>]*)>(.*?)</\1>", re.DOTALL)
_PAIR = re.compile(r'<div class="pair">.*?</div>', re.DOTALL)


def drawn() -> Iterator[tuple[str, Role]]:
    """Each message that is drawn as a title or a button, by templates and scripts."""
    for path in sorted(STATIC.rglob("*.js")):
        if "vendor" not in path.parts:
            yield from in_script(path.read_text("utf-8"))
    for path in sorted(TEMPLATES.rglob("*.html")):
        yield from in_markup(_UNSEEN.sub("", path.read_text("utf-8")))


def in_script(text: str) -> Iterator[tuple[str, Role]]:
    """`button(say("ui-undo"), …)`, and markup within: `<h1>${say("away-h1")}</h1>`."""
    for called in re.finditer(r"\b(button|goButton|sheetHead)\(", text):
        arguments = split(text, called.end())
        role = BIG if '"go"' in arguments[-1] else _IN_SCRIPT[called[1]]
        role = HALF if role is BUTTON and in_a_pair(text, called.start()) else role
        yield from ((key, role) for key in keys(arguments[0]))
    yield from in_markup(text)


def in_markup(text: str) -> Iterator[tuple[str, Role]]:
    for found in _DRAWN.finditer(text):
        tag, attributes, inner = found.groups()
        if tag == "a" and "button" not in attributes:
            continue
        half = in_a_pair(text, found.start())
        role = TITLE if tag == "h1" else BIG if "go" in re.split(r'[" ]', attributes) else HALF if half else BUTTON
        yield from ((key, role) for key in keys(inner))


def in_a_pair(text: str, at: int) -> bool:
    return any(found.start() < at < found.end() for found in _PAIR.finditer(text))


def split(text: str, start: int) -> list[str]:
    """The arguments of a call that opens before ``start``."""
    depth, last, found = 0, start, []
    for at in range(start, len(text)):
        letter = text[at]
        if letter == "," and not depth:
            found.append(text[last:at])
            last = at + 1
        depth += (letter in "([{") - (letter in ")]}")
        if depth < 0:
            return [*found, text[last:at]]
    return [*found, text[last:]]


@cache
def names() -> frozenset[str]:
    return catalogue("en").names


def keys(text: str) -> list[str]:
    """The messages that a piece of source names; of 'first-${state}' all of that beginning."""
    known = names()
    said = [key for key in _STRING.findall(text) for key in (key, f"helper-{key}") if key in known]
    return said + [key for start in _FILLED.findall(text) for key in sorted(known) if key.startswith(start)]


@cache
def roles() -> Mapping[str, frozenset[Role]]:
    """What each message is on the screen."""
    found: dict[str, set[Role]] = {}
    named = ((key, role) for key in names() for family, role in FAMILIES.items() if re.fullmatch(family, key))
    for key, role in [*drawn(), *named]:
        found.setdefault(key, set()).add(role)
    return {key: frozenset(each) for key, each in sorted(found.items()) if key not in NEITHER}


# How long they get


class _Asked(visitor.Visitor):
    """The facts of a message, and for those it chooses by, its choices."""

    def __init__(self) -> None:
        self.choices: dict[str, list[str | int]] = {}

    def visit_VariableReference(self, node: ftl.VariableReference) -> None:  # noqa: N802 - the library's name
        self.choices.setdefault(node.id.name, [])

    def visit_SelectExpression(self, node: ftl.SelectExpression) -> None:  # noqa: N802 - the library's name
        if isinstance(node.selector, ftl.VariableReference):
            asked = self.choices.setdefault(node.selector.id.name, [])
            asked += [choice(one.key) for one in node.variants]
        self.generic_visit(node)


def choice(key: ftl.Identifier | ftl.NumberLiteral) -> str | int:
    if isinstance(key, ftl.NumberLiteral):
        return int(key.value)
    return {"one": 1, "other": 12}.get(key.name, key.name)


@cache
def asked() -> Mapping[str, Mapping[str, list[str | int]]]:
    found = {}
    for path in STATIC.glob("words/en*.ftl"):
        for entry in FluentParser().parse(path.read_text("utf-8")).body:
            if isinstance(entry, ftl.Message):
                facts = _Asked()
                facts.visit(entry)
                found[entry.id.name] = facts.choices
    return found


def said(key: str) -> Iterator[str]:
    """A message in each of its forms."""
    choices = {name: each or [AROUND.get(name, FACTS.get(name, 12))] for name, each in asked()[key].items()}
    words = catalogue("en")
    for each in product(*choices.values()):
        facts = dict(zip(choices, each, strict=True))
        yield str(words.format_pattern(words.get_message(key).value, facts)[0])


def set_in(text: str, role: Role) -> tuple[str, ...]:
    return lines(text, role.room * 25.4 / 96, role.px * 0.75 * SCREEN, bold=role is not HINT)


def too_long(key: str) -> list[str]:
    return [
        f"{role.name}, {len(broken)} lines: {text}"
        for role in sorted(roles()[key])
        for text in dict.fromkeys(said(key))
        if len(broken := set_in(text, role)) > MOST_LINES
    ]


@pytest.mark.parametrize("key", roles())
def test_a_title_a_button_and_an_alert_take_two_lines_at_most(key: str) -> None:
    assert too_long(key) == []


@pytest.mark.parametrize(
    "key", sorted(key for key in names() if key.endswith("-hint") and not key.startswith("helper-"))
)
def test_a_hint_takes_three_lines_at_most(key: str) -> None:
    assert [text for text in said(key) if len(set_in(text, HINT)) > MOST_OF_A_HINT] == []


def test_titles_buttons_and_alerts_are_found_where_they_are_drawn() -> None:
    assert {
        "go-start",
        "go-list-then-run",
        "give-go",
        "away-h1",
        "trays-title",
        "helper-go-done",
        "alert-machine-end",
    } <= set(roles())
    assert HALF in roles()["settle-keep-press"] and SHEET in roles()["list-title"] and NOW in roles()["first-running"]


def test_what_is_neither_is_still_said() -> None:
    assert set(NEITHER) <= catalogue("en").names


def test_a_sentence_is_too_long_for_a_button() -> None:
    assert (
        len(set_in("The last end of its wait is near, so begin with this one before the others are cut", BIG))
        > MOST_LINES
    )
    assert len(set_in("Checked as before: CNC started", BIG)) <= MOST_LINES
