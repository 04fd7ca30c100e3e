"""What a page says stands in the catalogue: templates hold markup, and name their texts (by the filter ``words``) with the facts of each."""

import re
from collections.abc import Iterator
from functools import cache
from html.parser import HTMLParser
from pathlib import Path

import pytest
from fluent.syntax import FluentParser, visitor
from fluent.syntax import ast as ftl
from jinja2 import Environment, nodes

ROOT = Path(__file__).parents[2]
TEMPLATES = sorted((ROOT / "templates").rglob("*.html"))
WORDS = sorted((ROOT / "static" / "words").glob("en.pages.*.ftl"))
JINJA = Environment(autoescape=True)

# What stands for itself, or for no person to read.
NOT_WORDS = {
    "runboard": "the product's own name",
    "runboard · runboard": "the title of a page that says none",
    "selected": "an attribute, which a macro of plan/try.html writes",
    'aria-invalid="true" aria-describedby="-error -hint"': "attributes, which a macro of forms/fields.html writes",
    "wide": "a class, in the block of that name",
}
# What a browser types or shows as it is: a command, a file's name.
AS_IT_IS = ("script", "style", "code")
# A text that a person reads in an attribute.
READ = ("title", "placeholder", "aria-label", "alt", "data-label", "label")
# Facts that every text has: the markup around some of its words (web/door/pages).
AROUND = {"b", "end_b", "code", "end_code", "end_link", "end_span"}
_LETTERS = re.compile(r"[^\W\d_]{2}")
_SENTENCE = re.compile(r"[^\W\d_]{2}[,.:;]? [^\W\d_]{2}|^[A-Z][a-z]")
_HOLE = re.compile("\ue000(\\d+)\ue001")


class _Page(HTMLParser):
    """The texts of a page that people read, with holes where the template puts something in."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self._as_it_is = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._as_it_is += tag in AS_IT_IS
        self.texts += [value for name, value in attrs if name in READ and value]

    def handle_endtag(self, tag: str) -> None:
        self._as_it_is -= tag in AS_IT_IS

    def handle_data(self, data: str) -> None:
        if not self._as_it_is:
            self.texts.append(data)


def texts_outside(source: str) -> set[str]:
    """What people read in a template that no message says: texts of its markup, and words in what it puts in there."""
    markup, holes = "", []
    inside = ""
    for _, kind, value in JINJA.lex(source):
        if kind in ("variable_begin", "block_begin", "comment_begin"):
            inside, expression = kind, ""
        elif kind in ("variable_end", "block_end", "comment_end"):
            if inside == "variable_begin":
                markup += f"\ue000{len(holes)}\ue001"
                holes.append(expression)
            inside = ""
        elif inside:
            expression += value
        else:
            markup += value
    page = _Page()
    page.feed(markup)
    page.close()
    plain = {re.sub(r"\s+", " ", _HOLE.sub("", text)).strip(" ·\n") for text in page.texts}
    put_in = {said for text in page.texts for at in _HOLE.findall(text) for said in constants(holes[int(at)])}
    in_lists = {const.value for const in JINJA.parse(source).find_all(nodes.Const) if isinstance(const.value, str)}
    compared = {const.value for call in calls_of_codes(source) for const in call.find_all(nodes.Const)}
    sentences = {text for text in in_lists - compared if _SENTENCE.search(text) and not text.startswith("<")}
    return {text for text in plain | put_in if _LETTERS.search(text)} | sentences


def constants(expression: str) -> Iterator[str]:
    """The texts that an expression may come to."""
    output = JINJA.parse("{{" + expression + "}}").body[0]
    assert isinstance(output, nodes.Output)
    yield from _results(output.nodes[0])


def _results(node: nodes.Node) -> Iterator[str]:
    match node:
        case nodes.Const(value=str() as text):
            yield text
        case nodes.CondExpr():
            yield from (text for branch in (node.expr1, node.expr2) if branch for text in _results(branch))
        case nodes.Or() | nodes.And() | nodes.Concat() | nodes.Add():
            yield from (text for part in node.iter_child_nodes() for text in _results(part))
        case nodes.Filter(name="words"):
            return
        case nodes.Filter() | nodes.Getitem() if node.node is not None:
            yield from _results(node.node)
        case nodes.Dict():
            yield from (text for pair in node.items for text in _results(pair.value))
        case _:
            return


def calls_of_codes(source: str) -> list[nodes.Node]:
    """Where a stored word is looked at, or the code of a sentence is said."""
    template = JINJA.parse(source)
    said = [call for call in template.find_all(nodes.Call) if getattr(call.node, "name", "") in ("say", "tell")]
    return [*said, *template.find_all(nodes.Compare)]


class _Variables(visitor.Visitor):
    def __init__(self) -> None:
        self.found: set[str] = set()

    def visit_VariableReference(self, node: ftl.VariableReference) -> None:  # noqa: N802 - the library's name
        self.found.add(node.id.name)


@cache
def messages() -> dict[str, set[str]]:
    """The facts that each text of a page names."""
    found = {}
    for path in WORDS:
        for entry in FluentParser().parse(path.read_text("utf-8")).body:
            assert not isinstance(entry, ftl.Junk), entry.content
            if isinstance(entry, ftl.Message):
                variables = _Variables()
                variables.visit(entry)
                found[entry.id.name] = variables.found
    return found


def named(source: str) -> Iterator[tuple[str, set[str]]]:
    """Each text that a template names, and the facts that it gives."""
    for call in JINJA.parse(source).find_all(nodes.Filter):
        if call.name == "words" and call.node is not None:
            for name in _results(call.node):
                yield name, {fact.key for fact in call.kwargs}


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_no_template_says_anything_itself(path: Path) -> None:
    assert texts_outside(path.read_text("utf-8")) - set(NOT_WORDS) == set()


def test_what_a_template_says_itself_is_seen() -> None:
    source = """{% for key, name in [("a", "Now")] %}<p class="soft" title="A title">{{ n }} pieces <b>now</b></p>{% endfor %}
        <code>a command</code><p>{{ "lead" if access == "is lead" else "door-who"|words }}</p>"""

    assert texts_outside(source) == {"Now", "A title", "pieces", "now", "lead"}


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_every_text_that_a_template_names_is_there_with_its_facts(path: Path) -> None:
    for name, facts in named(path.read_text("utf-8")):
        assert messages()[name] - AROUND == facts - AROUND, name


def test_every_text_of_a_page_is_on_one() -> None:
    on_pages = {name for path in TEMPLATES for name, _ in named(path.read_text("utf-8"))}

    assert set(messages()) == on_pages


class _Texts(visitor.Visitor):
    def __init__(self) -> None:
        self.found = ""

    def visit_TextElement(self, node: ftl.TextElement) -> None:  # noqa: N802 - the library's name
        self.found += node.value


@pytest.mark.parametrize("path", WORDS, ids=lambda path: path.stem)
def test_no_text_of_a_page_holds_markup(path: Path) -> None:
    texts = _Texts()
    texts.visit(FluentParser().parse(path.read_text("utf-8")))

    assert set(texts.found) & set('<>&"') == set()
