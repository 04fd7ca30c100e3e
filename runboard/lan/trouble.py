"""What a person should see: a sentence of the catalogue by its code and facts, which whoever holds the catalogue says."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

# A family of sentences, a code and its facts made a sentence, as ``words.sentences.say`` does.
Say = Callable[[str, str, Mapping[str, Any]], str]


@dataclass(frozen=True)
class Trouble:
    """A sentence ``lan-…``. A fact of it is a text, a day, or one again: why a file cannot be used."""

    code: str
    facts: Mapping[str, Any] = field(default_factory=dict, hash=False)

    def said(self, say: Say) -> str:
        """The sentence, with its facts in their places."""
        facts = {name: fact.said(say) if isinstance(fact, Trouble) else fact for name, fact in self.facts.items()}
        return say("lan", self.code, facts)
