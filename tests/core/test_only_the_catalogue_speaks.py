"""What a person reads stands in the catalogue: no sentence, and no piece of one, is written in Python.

Looked at are texts of two or more words. A text that is the code of a message, of an event or of a due moment is one; what a
header, SQL, the log or a programmer's exception says is for no person of the shop.
"""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from runboard.run.calls.dues import KINDS as DUE_KINDS
from runboard.run.log.kinds import KINDS

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "runboard"
TOP = "runboard"  # what stands beside the rooms
ROOMS = (
    "words", "cards", "charts", "alerts", "plan", "review", "floor", "web", "commands", "lan", "background", "store", TOP,
)  # fmt: skip
_WORDS = re.compile(r"[A-Za-zÀ-ÿ’']{2,}[,.:;]? +[A-Za-zÀ-ÿ’']{2,}|[A-Za-z]{2,}[,.:;]? +\{\}|\{\}[,:;]? +[a-z]{2,}")
_OF_A_PROGRAM = re.compile(
    r"; charset=|^private, |^public, |; filename=|^const |^default-src|^event: |<svg "
    r"|^\s*(SELECT|INSERT INTO|UPDATE|DELETE FROM|CREATE|ALTER TABLE|PRAGMA|BEGIN|FROM|AND) "
)
# Of what is raised, what a person reads the texts of.
_FOR_PEOPLE = (
    "Refused", "BadForm", "CannotPrint", "Mistaken", "ArgumentTypeError", "AuthorityLost", "NotAPair", "CannotListen",
)  # fmt: skip

# Whole modules in which texts are no sentences of the shop's.
ELSEWHERE = {
    "web/forms": "the forms' fields, which the book declares",
    "plan/schedule/problem/check.py": "faults of a plan, which tests and benches read",
    "plan/schedule/rule/greedy.py": "names of priorities, which benches read",
    "floor/pressing/batch.py": "what a program that sends presses did wrong",
    "charts/svg.py": "the markup of a drawing",
    "charts/section.py": "the same",
    "floor/changing/run_file.py": "what is wrong in a file and where, beside shop/problem.py",
}
# Texts that are a code or a name where the catalogue has no message of that ending.
CODES = {
    "libpango-1.0-0 libpangoft2-1.0-0 fontconfig fonts-dejavu-core": "Debian's packages",
    "EEE d MMM": "a form of dates", "EEE d MMM y": "a form of dates",
    "  or {}: {}": "a line that the command sets in; its parts are sentences",
    "outside sent": "a setting's key", "push sent": "a setting's key", "push welcome": "a message's id", "push {}": "a thread's name",
    "outside {}": "a thread's name",
    "looking after alerts": "a thread's name",
    "My shop": "what a book without a name is called, as shop/book.py has it",
    "is not outside": "one module's word to another",
    "service taken": "a rule of run/rules", "one more": "a person's key in a tried change", "by turns": "how steps may follow",
    "one person more": "who is tried has no name yet; every chart of it is in the planner's child alone",
    "load done counted": "an entry of the history, with a sentence of the page", "shop vac": "what a service may be called",
    "from a sensor": "how a time is known, as the table that can be saved has it", "not measured": "the same",
    "from paper": "the same", "still going on": "the same", "not known": "the same",
    "the file": "what shop/problem.py calls it", "what was sent": "the same",
    "changes to try/{}": "a setting's key", "friend codes": "the same",
    "runboard answers": "how a friend's answers are written, as text", "{} {}\nrun: {} {}\nfrom: \n": "the same", "[{}] {}\ndo: \nwhy: \nsaves: \n": "the same", "set aside": "what became of an answer, as it is stored", "as it was": "how a row of a card was read",
    "export function put($modules, $later) {\n{}}\n": "how a composed script begins",
    '<span lang="{}">{}</span>': "the markup of a name in another language",
    "nothing here": "a place that no problem has", "Mac OS": "what a browser says of itself",
    "cut 40 board of 10, clean up 5, sand 25, engrave 20 a tray, oil, overnight, hooks 10": "an example of what is typed",
    "small jobs": "the book's own part, as pages list it",
    "runboard: {}": "who speaks, before what is wrong", "runboard {}": "a process's name", "not started": "a code of one module",
    "the nightly copy": "a thread's name",
    "Runboard of {}, {}": "a name in a certificate, the same for good", "Runboard at {}": "the same",
    "runboard on {}": "the name by which mDNS lists it",
    "the log is only ever appended to": "what a trigger says to whoever programs against it",
    "a revision of the book stays as it was saved": "the same",
    "device.id, device.name, access, paired_at, seen_at, revoked_at, run, tray": "columns of SQL",
    "id, kind, due_at, run, load, tray, step, station, person": "the same",
    "push.device, endpoint, p256dh, auth, made_at": "the same", "id, station, name, hash, made_at, does": "the same",
}  # fmt: skip


@cache
def codes() -> frozenset[str]:
    """The ends of all names of messages that Python says, and the kinds of events and due moments."""
    said = [path for path in (ROOT / "static" / "words").glob("en.*ftl") if ".pages." not in path.name]
    text = "\n".join(path.read_text("utf-8") for path in said)
    names = re.findall(r"^([a-z0-9-]+) =", text, re.M)
    ends = {name.split("-", at)[-1] for name in names for at in range(1, name.count("-") + 1)}
    return frozenset({*ends, *(one.replace(" ", "-") for one in (*KINDS, *DUE_KINDS))})


def texts(path: Path) -> Iterator[tuple[int, str]]:
    """Each text of a module that is for a person, with its line; what is filled in is {}."""
    tree = ast.parse(path.read_text("utf-8"))
    over = {inner: outer for outer in ast.walk(tree) for inner in ast.iter_child_nodes(outer)}
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            text = "".join(str(one.value) if isinstance(one, ast.Constant) else "{}" for one in node.values)
        elif (
            isinstance(node, ast.Constant) and isinstance(node.value, str) and not isinstance(over[node], ast.JoinedStr)
        ):
            text = node.value
        else:
            continue
        if (
            not isinstance(over[node], ast.Expr)
            and not _is_a_code(over[node])
            and not any(map(_is_for_programmers, _above(node, over)))
        ):
            yield node.lineno, text


def _above(node: ast.AST, over: dict[ast.AST, ast.AST]) -> Iterator[ast.AST]:
    while node in over:
        node = over[node]
        yield node


def _is_a_code(over: ast.AST) -> bool:
    """Whether what stands in it is handed to the catalogue: the family and code of a sentence, or its name."""
    return isinstance(over, ast.Call) and ast.unparse(over.func).rpartition(".")[2] in ("say", "said", "sentence")


def _is_for_programmers(node: ast.AST) -> bool:
    if isinstance(node, ast.Raise):
        return isinstance(node.exc, ast.Call) and ast.unparse(node.exc.func) not in _FOR_PEOPLE
    if isinstance(node, ast.Call) and ast.unparse(node.func) == "Of":  # what a schema says of a field
        return True
    return isinstance(node, ast.Assert) or (isinstance(node, ast.Call) and ast.unparse(node.func).startswith("_log."))


def modules() -> list[Path]:
    found = (path for path in sorted(PACKAGE.rglob("*.py")) if room_of(path) in ROOMS)
    return [path for path in found if not path.relative_to(PACKAGE).as_posix().startswith(tuple(ELSEWHERE))]


def room_of(path: Path) -> str:
    return TOP if path.parent == PACKAGE else path.relative_to(PACKAGE).parts[0]


def slug(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")


@pytest.mark.parametrize("room", ROOMS)
def test_no_sentence_is_written_in_python(room: str) -> None:
    said = [
        f"{path.relative_to(ROOT)}:{line} {text!r}"
        for path in modules()
        if room_of(path) == room
        for line, text in texts(path)
        if _WORDS.search(text) and not _OF_A_PROGRAM.search(text) and text not in CODES and slug(text) not in codes()
    ]

    assert said == []


def test_what_is_let_off_is_there() -> None:
    there = {text for path in modules() for _, text in texts(path)}

    assert set(CODES) - there == set()
    assert all((PACKAGE / one).exists() for one in ELSEWHERE)


@pytest.mark.parametrize(
    ("source", "is_found"),
    [
        ("said = f'{count} come good'", True),
        ("said = 'Write something here.'", True),
        ("raise Refused('it does not fit')", True),
        ("raise Mistaken('it does not fit')", True),
        ("parser.add_argument('--data', help='a folder that is there')", True),
        ("'A docstring says what a caller gets.'", False),
        ("_log.error('it did not fit')", False),
        ("raise ValueError('it does not fit')", False),
        ("key = 'station'", False),
        ("length: Annotated[float, Of('From one end to the other.')]", False),
    ],
)
def test_a_sentence_is_told_from_what_is_none(source: str, is_found: bool, tmp_path: Path) -> None:
    path = tmp_path / "module.py"
    path.write_text(source)

    assert any(_WORDS.search(text) for _, text in texts(path)) == is_found
