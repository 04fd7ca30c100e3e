"""What a view and a template may be: a view asks the floor and chooses an answer, a template is given finished words."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest
from jinja2 import Environment, nodes

ROOT = Path(__file__).parents[2]
WEB = ROOT / "runboard" / "web"
TEMPLATES = ROOT / "templates"
MODULES = sorted(WEB.rglob("*.py"))
# The fold and its lock are the floor's; so is bringing it up to what is stored.
OF_THE_FLOOR = {"ledger", "lock", "catch_up"}
LONGEST_VIEW = 25
LONGEST_MODULE = 300

# What a template may call: the sentence of a code, a guest's in their language, and what is jinja's own.
CALLED = {"say", "tell", "url_for", "super", "caller"}
# A form shows what was typed, on how many lines, and what is wrong with it, a name at a time; a card's picture and signs are put into its page.
OF_A_FORM = {"form.text", "form.all", "form.error", "form.is_open", "form.row_numbers", "Call.count"}
OF_A_CARD = {"place.picture", "place.sign", "Getitem"}  # a macro for each kind of face and row
FILTERS = {
    "local", "span", "day", "due", "called", "words",  # ours: moments and a span where the shop is, an order line's name, a text of the catalogue
    "lang",  # a card's: the attribute of words that are in another language
    "capitalize", "default", "format", "int", "join", "length", "list", "map", "max", "min", "rejectattr", "safe", "selectattr", "truncate",
}  # fmt: skip


def test_no_view_knows_the_fold_or_its_lock() -> None:
    found = []

    for path in MODULES:
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            named = {ast.Name: "id", ast.Attribute: "attr", ast.alias: "name", ast.arg: "arg"}.get(type(node))
            if named and getattr(node, named) in OF_THE_FLOOR:
                found.append(f"{path.relative_to(WEB)}:{node.lineno} {getattr(node, named)}")  # type: ignore[attr-defined]

    assert found == []


def test_a_view_can_be_read_at_a_glance() -> None:
    found = []

    for path in MODULES:
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.FunctionDef) and _is_view(node):
                lines = (node.end_lineno or 0) - node.lineno + 1
                if lines > LONGEST_VIEW:
                    found.append(f"{path.relative_to(WEB)} {node.name}: {lines} lines")

    assert found == []


def test_no_module_of_the_web_is_long() -> None:
    lengths = {str(path.relative_to(WEB)): len(path.read_text("utf-8").splitlines()) for path in MODULES}

    assert {name: lines for name, lines in lengths.items() if lines > LONGEST_MODULE} == {}


@pytest.mark.parametrize("template", [str(path.relative_to(TEMPLATES)) for path in sorted(TEMPLATES.rglob("*.html"))])
def test_a_template_calls_nothing_that_reckons(template: str) -> None:
    tree = Environment(autoescape=True).parse((TEMPLATES / template).read_text("utf-8"))
    allowed = CALLED | OF_A_FORM | (OF_A_CARD if template.startswith("cards/") else set()) | _macros(tree)

    called = [one for one in _called(tree) if one not in allowed and not one.endswith(".items")]

    assert called == []
    assert {one.name for one in tree.find_all(nodes.Filter)} <= FILTERS
    assert {one.name for one in tree.find_all(nodes.Name)}.isdisjoint({"request", "session", "g", "config"})


def _is_view(node: ast.FunctionDef) -> bool:
    """Whether a request is answered by it."""
    return any(
        isinstance(one, ast.Call) and isinstance(one.func, ast.Attribute) and one.func.attr in ("get", "post", "delete")
        for one in node.decorator_list
    )


def _macros(tree: nodes.Template) -> set[str]:
    """What is defined here, or comes from another template."""
    found = {one.name for one in tree.find_all(nodes.Macro)}
    for one in tree.find_all(nodes.FromImport):
        found |= {name if isinstance(name, str) else name[1] for name in one.names}
    modules = {one.target for one in tree.find_all(nodes.Import)}
    return found | {one for one in _called(tree) if one.partition(".")[0] in modules}


def _called(tree: nodes.Template) -> Iterator[str]:
    for one in tree.find_all(nodes.Call):
        yield _named(one.node)


def _named(node: nodes.Node) -> str:
    if isinstance(node, nodes.Name):
        return node.name
    if isinstance(node, nodes.Getattr):
        return f"{_named(node.node)}.{node.attr}"
    return type(node).__name__
