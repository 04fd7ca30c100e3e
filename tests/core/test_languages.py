"""What a helper reads and what stands on cards is in every language, with the same facts; and each sentence is in use."""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from fluent.syntax import FluentParser, visitor
from fluent.syntax import ast as ftl

from runboard.floor.pressing.access import GUEST, may_make
from runboard.run.care.cautions import CATALOGUE
from runboard.run.log.kinds import KINDS
from runboard.words.sentences import LANGUAGES, catalogue, sentence

ROOT = Path(__file__).parents[2]
WORDS = ROOT / "static" / "words"
FAMILIES = ("care", "cards", "helper")
OTHERS = [one for one in LANGUAGES if one != "en"]
# Refusals of kinds of events that no guest may make.
_LEADS_ONLY = {
    "run known", "board unknown", "nothing to settle", "moves only back", "nothing to move", "same tray", "would strand", "would repeat",
    "product wrong", "route empty", "tray known", "kind unknown",
}  # fmt: skip
# Where a guest's press is looked at, from its form to its effects.
_ON_THE_WAY = (
    "floor/pressing/access.py", "floor/letting_in/guest_rights.py", "floor/letting_in/guests.py", "floor/pressing/rates.py", "floor/pressing/taps.py", "run/log/form.py", "run/fold/decide.py", "run/rules/rules.py",
    "run/fold/table.py", "run/fold/effects.py", "run/fold/pieces.py", "run/fold/names.py", "run/fold/draft.py", "run/fold/fold.py", "run/fold/hands.py",
    "run/fold/people.py", "run/fold/shop_events.py", "run/fold/run_events.py", "run/log/corrections.py", "run/fold/moves_of_pieces.py",
)  # fmt: skip


class _Parts(visitor.Visitor):
    """The variables of a message, and the variants that it chooses between."""

    def __init__(self) -> None:
        self.variables: set[str] = set()

    def visit_VariableReference(self, node: ftl.VariableReference) -> None:  # noqa: N802 - the library's name
        self.variables.add(node.id.name)


@cache
def messages(language: str, family: str) -> dict[str, set[str]]:
    """The variables of each message of a family in a language."""
    found: dict[str, set[str]] = {}
    for entry in FluentParser().parse((WORDS / f"{language}.{family}.ftl").read_text("utf-8")).body:
        assert not isinstance(entry, ftl.Junk), entry.content
        if isinstance(entry, ftl.Message):
            assert entry.id.name not in found, f"{entry.id.name} is there twice"
            parts = _Parts()
            parts.visit(entry)
            found[entry.id.name] = parts.variables
    return found


@pytest.mark.parametrize("family", FAMILIES)
@pytest.mark.parametrize("language", OTHERS)
def test_every_message_is_in_every_language_and_no_more(language: str, family: str) -> None:
    assert set(messages(language, family)) == set(messages("en", family))


@pytest.mark.parametrize("family", FAMILIES)
@pytest.mark.parametrize("language", OTHERS)
def test_every_message_says_the_same_facts(language: str, family: str) -> None:
    assert messages(language, family) == messages("en", family)


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_message_can_be_said_with_its_facts(language: str) -> None:
    for family in FAMILIES:
        for name, variables in messages(language, family).items():
            for fact in (1, 5, "x"):
                pattern = catalogue(language).get_message(name).value
                assert pattern is not None
                said, wrong = catalogue(language).format_pattern(pattern, dict.fromkeys(variables, fact))
                assert said.strip() and wrong == [], name


def test_the_languages_differ() -> None:
    """A catalogue that was copied and not translated is none."""
    for family in FAMILIES:
        names = list(messages("en", family))
        for one in OTHERS:
            same = [name for name in names if sentence(name, locale=one) == sentence(name)]
            assert len(same) < len(names) / 6, (family, one, same)


def test_what_a_language_lacks_is_said_in_english() -> None:
    assert sentence("refused-device-nameless", locale="de") == sentence("refused-device-nameless")
    assert sentence("nobody-wrote-this", locale="de") == ""
    assert sentence("helper-good", locale="de") == "Gut"


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_caution_is_said_in_every_language(language: str) -> None:
    assert {f"care-{key}" for key in CATALOGUE} <= set(messages(language, "care"))


# What a guest's press may be refused for


def refusals() -> Iterator[tuple[str, str, set[str]]]:
    """(code, where, facts) of every refusal on a guest's way."""
    for name in _ON_THE_WAY:
        for node in ast.walk(ast.parse((ROOT / "runboard" / name).read_text("utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.args:
                first = node.args[0]
                said = node.func.id in ("Refused", "NotForGuest") and isinstance(first, ast.Constant)
                if said and isinstance(first, ast.Constant):
                    yield str(first.value), f"{name}:{node.lineno}", {str(one.arg) for one in node.keywords}


@pytest.mark.parametrize(("code", "facts"), [(code, facts) for code, _, facts in refusals()])
def test_every_refusal_that_a_guest_can_meet_has_a_sentence(code: str, facts: set[str]) -> None:
    alike = "unknown" if code.endswith(" unknown") and code != "card unknown" else code.replace(" ", "-")
    name = f"helper-refused-{alike}"

    assert code in _LEADS_ONLY or name in messages("en", "helper")
    assert messages("en", "helper").get(name, set()) <= facts


def test_a_guest_makes_none_of_what_is_only_the_leads_to_be_refused() -> None:
    """The list of what is left out above holds while a guest may not make these kinds."""
    changing = {"run opened", "board lost", "board added", "entry settled", "pieces moved", "route revised"}

    assert changing <= set(KINDS) and not any(may_make(GUEST, kind) for kind in changing)


# What the page says


def said_by_the_server() -> set[str]:
    """Every message of the helper's page that the server names, whole or as a beginning with the rest filled in."""
    server, pages = ROOT / "runboard", ROOT / "templates" / "helper"
    paths = [*(server / "web" / "helper").glob("*.py"), server / "words" / "speech.py", *pages.glob("*.html")]
    source = "\n".join(path.read_text("utf-8") for path in paths)
    named = {f"helper-{one}" for one in re.findall(r"""["']([a-z][a-z-]*[a-z])["']""", source)}
    begun = tuple(f"helper-{one}" for one in re.findall(r"""f["']([a-z-]+-)\{""", source))
    return {name for name in messages("en", "helper") if name in named or name.startswith(begun)}


def test_every_sentence_of_the_helpers_page_is_in_use() -> None:
    assert set(messages("en", "helper")) - said_by_the_server() == set()


def words_of_the_page() -> set[str]:
    """The words that the page's script takes from the state."""
    source = "\n".join(path.read_text("utf-8") for path in (ROOT / "static" / "helper").glob("*.js"))
    return set(re.findall(r"words\.([a-z]+)\b", source)) | set(re.findall(r"""words\["([a-z-]+)"\]""", source))


def test_the_page_asks_only_for_words_that_it_gets() -> None:
    source = (ROOT / "runboard" / "web" / "helper" / "record.py").read_text("utf-8")
    names = ("_FIXED", "_FILLED")
    given: set[str] = set()
    for node in ast.parse(source).body:
        if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name) and node.targets[0].id in names:
            given |= set(ast.literal_eval(node.value))

    assert words_of_the_page() <= given
    assert given <= words_of_the_page()
