"""One word for one thing in each language, and one way of speaking to people: `terms.toml` says which."""

import re
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from fluent.syntax import FluentParser, visitor
from fluent.syntax import ast as ftl

from runboard.demo import translations
from runboard.words.sentences import LANGUAGES

WORDS = Path(__file__).parents[2] / "static" / "words"
TERMS = tomllib.loads((Path(__file__).parent / "terms.toml").read_text("utf-8"))
# What is pressed, and what says in two words how it stands: these say in the infinitive what is done.
BUTTONS = re.compile(r"helper-(go-.*|.*-go|state-.*|leave|undo|back|hurt-.*|card-shop)|card-(handle|recoat|cure)")
# A sentence that begins with an infinitive, which speaks to nobody.
INFINITIVE = {
    "es": re.compile(r"(?:^|[.:;!?] )(\w+(?:ar|er|ir)(?:l[oae]s?|se)?)\b(?! (?:de|del)\b)"),
    "fr": re.compile(r"(?:^|[.:;!?] )((?:ne pas \w+|se \w+|\w+(?:er|ir|oir|dre|ttre|ire)))\b", re.IGNORECASE),
}
NO_VERB = {"premier", "entre", "atelier", "papier", "dernier"}


class _Texts(visitor.Visitor):
    """The text of a message, what it is filled with left out."""

    def __init__(self) -> None:
        self.parts: list[str] = []

    def visit_TextElement(self, node: ftl.TextElement) -> None:  # noqa: N802 - the library's name
        self.parts.append(node.value)


@cache
def texts(language: str) -> dict[str, str]:
    """What each message of a language says, with an ellipsis where a fact stands; the demo's step texts beside them."""
    found: dict[str, str] = {}
    for path in sorted(WORDS.glob(f"{language}.*ftl")):
        for entry in FluentParser().parse(path.read_text("utf-8")).body:
            if isinstance(entry, ftl.Message):
                seen = _Texts()
                seen.visit(entry)
                found[entry.id.name] = " … ".join(seen.parts)
    return found | dict(demo(language))


def demo(language: str) -> Iterator[tuple[str, str]]:
    for operation in ("CLEAN", "SAND", "OIL", "HOOKS"):
        said = getattr(translations, operation).get(language, {})
        for field, text in said.items():
            for at, each in enumerate([text] if isinstance(text, str) else text):
                yield f"demo {operation.lower()} {field} {at}", each


def pattern(words: list[str]) -> re.Pattern[str]:
    either = "|".join(re.escape(word).replace(r"\*", r"\w*") for word in words)
    return re.compile(rf"(?<![\w-])(?:{either})(?![\w-])", re.IGNORECASE)


def strays(language: str, said: dict[str, str]) -> list[str]:
    """'message: word (term)' of each word that is not said for a thing."""
    found = []
    for term, languages in TERMS.items():
        never = languages[language]["never"]
        looked = pattern(never) if never else None
        for name, text in said.items() if looked else ():
            found += [f"{name}: {word} ({term})" for word in looked.findall(text)]
    return found


@pytest.mark.parametrize("language", LANGUAGES)
def test_nothing_is_called_by_a_second_word(language: str) -> None:
    assert strays(language, texts(language)) == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_second_word_is_named_with_its_message(language: str) -> None:
    for term, languages in TERMS.items():
        for never in languages[language]["never"]:
            word = never.replace("*", "")
            assert strays(language, {"a-message": f"… {word} …"}), (term, never)


@pytest.mark.parametrize("language", [one for one in LANGUAGES if one != "en"])
def test_what_english_has_a_word_for_is_called_by_the_word_of_the_language(language: str) -> None:
    """A term that nobody uses any more is no term: it goes from the list."""
    families = ("care-", "card-", "helper-", "demo ")
    english = [text for name, text in texts("en").items() if name.startswith(families)]
    wanted = [term for term, of in TERMS.items() if of["en"]["said"] and _says(of["en"]["said"], english)]

    assert [term for term in wanted if not _says(TERMS[term][language]["said"], texts(language).values())] == []


def _says(words: list[str], said: object) -> bool:
    looked = pattern(words)
    return any(looked.search(text) for text in said)  # type: ignore[attr-defined]


@pytest.mark.parametrize("language", INFINITIVE)
def test_a_sentence_speaks_to_somebody_and_a_button_says_what_it_does(language: str) -> None:
    found = [
        f"{name}: {verb}"
        for name, text in texts(language).items()
        if not BUTTONS.fullmatch(name) and not name.endswith(" name 0")
        for verb in INFINITIVE[language].findall(text)
        if verb[:1].isupper() and verb.casefold() not in NO_VERB
    ]

    assert found == []
