"""The catalogue has a sentence for every code, and each sentence has the facts that it names."""

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path
from typing import get_args

import pytest
from fluent.syntax import FluentParser, visitor
from fluent.syntax import ast as ftl

from runboard.cards.papers import PAPERS
from runboard.cli import COMMANDS
from runboard.plan.next_move import LOADS_THAT_WAIT
from runboard.review.dust_limits import DUST_LIMITS
from runboard.run.calls.dues import KINDS as DUE_KINDS
from runboard.run.care.care import DUST, RAGS, SMOULDER
from runboard.run.care.cautions import CATALOGUE, REMINDERS
from runboard.run.fold.record import book_record
from runboard.run.log.kinds import KINDS
from runboard.shop.book import Book
from runboard.shop.product import Attendance, WaitWhy
from runboard.web.network.pairing import DEVICE_KINDS
from runboard.web.now.care import PARTS
from runboard.words.sentences import message_name

ROOT = Path(__file__).parents[2]
STATIC = ROOT / "static"
WORDS = {path.name.removesuffix(".ftl"): path for path in (ROOT / "static" / "words").glob("en.*ftl")}

# What the page adds to the facts of each family, beside those that come with the code.
MOVE_FACTS = {"at", "person", "step", "what", "station", "room", "minutes", "job", "run"}
ALERT_FACTS = {"station", "tray", "step", "next", "person", "room", "supply", "why"}
# A refusal that was kept with an entry to settle is said again with the facts it had.
SAID_AGAIN = "entry.code"


@dataclass
class Code:
    """A code in the source: where, and with which facts. ``facts`` is None where they are not written there."""

    text: str
    where: str
    facts: set[str] | None = field(default_factory=set)


class _Variables(visitor.Visitor):
    def __init__(self) -> None:
        self.found: set[str] = set()

    def visit_VariableReference(self, node: ftl.VariableReference) -> None:  # noqa: N802 - the library's name
        self.found.add(node.id.name)


@cache
def messages(part: str) -> dict[str, set[str]]:
    """The variables of each message of one file, by its name."""
    found = {}
    for entry in FluentParser().parse(WORDS[part].read_text("utf-8")).body:
        assert not isinstance(entry, ftl.Junk), entry.content
        if isinstance(entry, ftl.Message):
            assert entry.id.name not in found, f"{entry.id.name} is there twice"
            variables = _Variables()
            variables.visit(entry)
            found[entry.id.name] = variables.found
    return found


@cache
def catalogue() -> dict[str, set[str]]:
    return {name: facts for part in WORDS for name, facts in messages(part).items()}


def slug(code: str) -> str:
    return message_name("", code).removeprefix("-")


def message(family: str, code: str) -> str:
    return f"{family}-{code.replace(' ', '-')}"


def calls(name: str, *folders: str) -> Iterator[tuple[ast.Call, str]]:
    """Every call of ``name`` in these packages, and where it stands."""
    for folder in folders:
        room = ROOT / "runboard" / folder
        for path in sorted(room.rglob("*.py")) if room.is_dir() else [room.with_suffix(".py")]:
            for node in ast.walk(ast.parse(path.read_text("utf-8"))):
                if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == name:
                    yield node, f"{folder}/{path.name}:{node.lineno}"


def text_of(node: ast.expr) -> str:
    return str(node.value) if isinstance(node, ast.Constant) else ast.unparse(node)


def refusals() -> list[Code]:
    found = []
    for call, where in calls("Refused", "shop", "run", "plan", "review", "floor", "store", "alerts", "web"):
        named = [one.arg for one in call.keywords]
        found.append(Code(text_of(call.args[0]), where, None if None in named else {str(one) for one in named}))
    return found


def dict_codes(path: str) -> list[Code]:
    """Every ``{"code": …, "facts": …}`` that is written in a module."""
    found = []
    for node in ast.walk(ast.parse((ROOT / path).read_text("utf-8"))):
        if isinstance(node, ast.Dict) and [one.value for one in node.keys if isinstance(one, ast.Constant)][:1] == [
            "code"
        ]:
            facts = node.values[1]
            known = {text_of(one) for one in facts.keys if one} if isinstance(facts, ast.Dict) else None
            spread = isinstance(facts, ast.Dict) and None in facts.keys
            found.append(Code(text_of(node.values[0]), f"{path}:{node.lineno}", None if spread else known))
    return found


@pytest.mark.parametrize("code", [one for one in refusals() if one.text != SAID_AGAIN], ids=lambda one: one.where)
def test_every_refusal_has_a_sentence_with_its_facts(code: Code) -> None:
    name = message("refused", code.text)

    assert name in catalogue()
    if code.facts is not None:
        assert catalogue()[name] <= code.facts


def mistakes() -> list[Code]:
    """What a command cannot do, what is wrong with the network, and why an authority is lost."""
    mistaken = [
        Code(text_of(call.args[0]), where, {str(one.arg) for one in call.keywords})
        for call, where in calls("Mistaken", "commands")
    ]
    lost = [
        Code(text_of(call.args[0]), where, {str(one.arg) for one in call.keywords})
        for call, where in calls("AuthorityLost", "lan")
    ]
    return [
        *(replace(one, text=f"mistaken-{one.text}") for one in mistaken),
        *(replace(one, text=f"lan-{one.text}") for one in (*lost, *troubles())),
    ]


def troubles() -> list[Code]:
    found = []
    for call, where in calls("Trouble", "lan", "commands"):
        facts = call.args[1] if len(call.args) > 1 else ast.Dict([], [])
        if isinstance(call.args[0], ast.Constant) and isinstance(facts, ast.Dict):
            found.append(Code(call.args[0].value, where, {text_of(one) for one in facts.keys if one}))
    return found


@pytest.mark.parametrize("code", mistakes(), ids=lambda one: one.where)
def test_what_a_command_cannot_do_and_what_is_wrong_with_the_network_has_a_sentence_with_its_facts(code: Code) -> None:
    name = slug(code.text)

    assert name in catalogue()
    assert catalogue()[name] <= (code.facts or set())


def printed() -> list[tuple[str, str, set[str] | None]]:
    """Where a command says a sentence by its family and code: the sentence's name, and the facts where they stand there."""
    found = []
    for call, where in (*calls("say", "commands"), *calls("say", "cli")):
        family, code, facts = *call.args[:2], call.args[2] if len(call.args) > 2 else ast.Dict([], [])
        if isinstance(family, ast.Constant) and isinstance(code, ast.Constant):
            is_written = isinstance(facts, ast.Dict) and None not in facts.keys
            given = {text_of(one) for one in facts.keys if one} if is_written else None
            found.append((message_name(family.value, code.value), where, given))
    return found


@pytest.mark.parametrize(("name", "where", "facts"), printed(), ids=[where for _, where, _ in printed()])
def test_what_a_command_prints_is_there_with_its_facts(name: str, where: str, facts: set[str] | None) -> None:
    assert name in catalogue()
    if facts is not None:
        assert catalogue()[name] <= facts


# What cli.py, lan/ and commands/ say by a code that is made elsewhere
SAID_BY_COMMANDS = {
    *(f"command-{name}" for name in ("runboard", *COMMANDS)),
    *(f"lan-{code}" for code in ("file-damaged", "file-other-key", "file-gone", "file-no-authority")),
    *(f"lan-{code}" for code in ("at", "at-https", "trust", "either", "profile", "profile-about")),
    *(f"dust-limit-of-{slug(limit.of)}" for limit in DUST_LIMITS),
    *(f"dust-limit-{slug(limit.dust)}" for limit in DUST_LIMITS),
    "restore-kept", "restore-in-place",
}  # fmt: skip


@pytest.mark.parametrize("name", sorted(SAID_BY_COMMANDS))
def test_every_code_of_commands_network_and_limits_can_be_said(name: str) -> None:
    assert name in catalogue()


def test_every_sentence_of_commands_and_network_is_said() -> None:
    said = {*SAID_BY_COMMANDS, *(slug(one.text) for one in mistakes()), *(name for name, _, _ in printed())}
    at_terminal = ("command-", "option-", "mistaken-", "told-", "lan-", "dust-limit-")
    elsewhere = {"mistaken-no-plan-fits"}  # and within another

    assert {name for name in catalogue() if name.startswith(at_terminal)} - said - elsewhere == set()


@pytest.mark.parametrize("code", dict_codes("runboard/plan/why.py"), ids=lambda one: one.where)
def test_why_a_plan_begins_something_has_a_sentence(code: Code) -> None:
    assert message("why", code.text) in catalogue()


def moves() -> set[str]:
    written = {text_of(call.args[1]) for call, _ in calls("Move", "plan")}
    return written - {"code"} | {code for code, _, _ in LOADS_THAT_WAIT.values()} | {"go on", "start"}


@pytest.mark.parametrize("code", sorted(moves()))
def test_every_move_has_a_sentence_with_its_facts(code: str) -> None:
    assert catalogue()[message("move", code)] <= MOVE_FACTS


def reasons() -> list[Code]:
    plan = [*dict_codes("runboard/plan/next_move.py"), *dict_codes("runboard/plan/taking_over.py")]
    written = [one for one in plan if one.text != "because"]
    waiting = [because for _, because, _ in LOADS_THAT_WAIT.values()]
    return written + [Code(text, text, {"station"}) for text in (*waiting, "put aside")]


@pytest.mark.parametrize("code", reasons(), ids=lambda one: one.where)
def test_every_reason_has_a_sentence_with_its_facts(code: Code) -> None:
    name = message("because", code.text)

    assert name in catalogue()
    if code.facts is not None:
        assert catalogue()[name] <= code.facts


# An alert that asks again is said by the kind that it asks about; a reminder of care by what it is about.
ALERTS = [kind for kind in DUE_KINDS if kind != "ask again" and kind not in REMINDERS]


@pytest.mark.parametrize("kind", [*ALERTS, "watch missed", "hurt"])
def test_every_alert_has_a_sentence_with_its_facts(kind: str) -> None:
    assert catalogue()[message("alert", kind)] <= ALERT_FACTS


def test_every_reminder_of_care_has_a_sentence_without_facts_on_the_page_and_outside() -> None:
    assert set(REMINDERS) == {*(kind for kind in DUE_KINDS if kind.startswith("care ")), "care lock-up"}
    for texts in REMINDERS.values():
        for key in texts.values():
            assert catalogue()[f"care-{key}"] == set()
    assert book_record(Book())["reminder_texts"] == REMINDERS


@pytest.mark.parametrize("thing", [RAGS, DUST, SMOULDER])
@pytest.mark.parametrize("kind", ["care end", "care morning", "care lock-up"])
def test_whatever_may_heat_by_itself_has_its_text_at_the_end_next_morning_and_at_lock_up(kind: str, thing: str) -> None:
    assert CATALOGUE[REMINDERS[kind][thing]].signs == ("W021",)


def test_no_reminder_has_two_texts() -> None:
    reminds = [reminder for caution in CATALOGUE.values() for reminder in caution.reminds]

    assert len(reminds) == len(set(reminds))


@pytest.mark.parametrize("why", KINDS["lead called"].required["why"]["enum"])
def test_every_call_can_be_said(why: str) -> None:
    assert catalogue()[message("call-why", why)] == set()


@pytest.mark.parametrize("code", dict_codes("runboard/run/fold/shop_events.py"), ids=lambda one: one.where)
def test_every_question_has_a_sentence(code: Code) -> None:
    assert message("asks", code.text) in catalogue()


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_event_can_be_said(kind: str) -> None:
    assert catalogue()[message("kind", kind)] == set()


@pytest.mark.parametrize("why", get_args(WaitWhy))
@pytest.mark.parametrize("family", ["wait", "tray-resting", "early", "early-open"])
def test_every_wait_can_be_said(why: str, family: str) -> None:
    assert message(family, why) in catalogue()


# What the server says by a code that it makes
CODES_MADE = {
    *(f"cautions-at-{slug(kind)}" for one in CATALOGUE.values() for kind in one.stations),
    *(f"cautions-when-{slug(one.when)}" for one in CATALOGUE.values() if one.when),
    *(f"cautions-{what}-{slug(kind)}" for kind in PARTS for what in ("part", "about")),
    *(f"paper-size-{key}" for key in PAPERS),
    *(f"route-attendance-{key}" for key in get_args(Attendance)),
    *(f"device-{slug(kind)}" for _, kind in (*DEVICE_KINDS, ("", "phone"))),
    *(f"{name}-{how}" for name in ("share", "chance") for how in ("some", "all", "nearly", "hardly")),
    *(f"day-{day}" for day in ("yesterday", "today", "tomorrow")),
    *(f"http-{why}" for why in (400, 403, 404, 405, 408, 409, 413, 415, 500, 503, "host", "lead")),
}


@pytest.mark.parametrize("name", sorted(CODES_MADE))
def test_every_code_that_the_server_makes_can_be_said(name: str) -> None:
    assert name in catalogue()


# What the page says by name


_SAYS = re.compile(r"""\bsay\("([a-z0-9-]+)"(, \{|\)|,)""")


def said_in(path: Path) -> Iterator[tuple[str, set[str] | None]]:
    """Each sentence that a module names, with the facts that it gives; None where they are not written there."""
    source = path.read_text("utf-8")
    for found in _SAYS.finditer(source):
        facts = {")": set(), ",": None}.get(found[2]) if found[2] in ")," else facts_in(source[found.end() :])
        yield found[1], facts


def facts_in(source: str) -> set[str] | None:
    """The keys of an object written in JavaScript, from behind its opening brace."""
    depth, parts = 0, [""]
    for sign in source:
        if sign in "})]" and depth == 0:
            break
        depth += (sign in "{([") - (sign in "})]")
        if sign == "," and depth == 0:
            parts.append("")
        else:
            parts[-1] += sign
    keys = {part.split(":")[0].strip() for part in parts}
    return None if any(key.startswith("...") for key in keys) else keys - {""}


def at_once() -> set[Path]:
    """The modules of Now that are there at its first drawing."""
    found: set[Path] = set()
    leads_on = [STATIC / "now" / "now.js"]
    while leads_on:
        path = leads_on.pop()
        if path not in found and path.parent.name != "vendor":
            found.add(path)
            named = re.findall(r"""\bfrom "(\.[^"]+)""", path.read_text("utf-8"))
            leads_on += [(path.parent / one).resolve() for one in named]
    return found


def modules() -> list[Path]:
    rooms = ("door", "table", "views", "alerts", "sheets", "now", "trays", "wall")
    return sorted(path for room in rooms for path in (STATIC / room).glob("*.js"))


@pytest.mark.parametrize("path", modules(), ids=lambda path: path.stem)
def test_every_sentence_that_the_page_names_is_there_with_its_facts(path: Path) -> None:
    for name, facts in said_in(path):
        assert name in catalogue()
        if facts is not None:
            assert catalogue()[name] <= facts, name


@pytest.mark.parametrize("path", sorted(at_once()), ids=lambda path: path.stem)
def test_what_is_drawn_at_first_says_only_what_is_there_at_first(path: Path) -> None:
    assert {name for name, _ in said_in(path)} <= set(messages("en"))


def test_no_sentence_is_in_two_files() -> None:
    assert len(catalogue()) == sum(len(messages(part)) for part in WORDS)


def test_the_first_file_holds_only_what_is_said_at_first() -> None:
    source = "\n".join(path.read_text("utf-8") for path in at_once())
    named = set(re.findall(r"""["'`]([a-z]+(?:-[a-z0-9]+)*)["'`]""", source))
    families = ("move-", "because-", *re.findall(r"`([a-z]+(?:-[a-z]+)*-)\$\{", source))

    assert {name for name in messages("en") if name not in named and not name.startswith(families)} == set()


_LEAVES = re.compile(
    r"(may|can|could) (be )?(left|leave|go away)|unattended|walk away|free to (go|leave)|no need to watch", re.I
)


@pytest.mark.parametrize("path", sorted((ROOT / "static" / "words").glob("en.*ftl")), ids=lambda path: path.stem)
def test_no_text_says_that_a_running_machine_may_be_left(path: Path) -> None:
    assert [
        line for line in path.read_text("utf-8").splitlines() if not line.startswith("#") and _LEAVES.search(line)
    ] == []
