"""How the phone that asks is spoken to: a guest's in its own language, which was chosen on it or is its browser's."""

from collections.abc import Mapping
from typing import Any

from flask import request

from runboard.floor.pressing.access import GUEST
from runboard.web.door.pages import said, shop_zone, workshop
from runboard.web.door.sessions import access
from runboard.words.sentences import LANGUAGES
from runboard.words.speech import Speech

LANGUAGE_COOKIE = "language"


def language() -> str:
    """The language of who asks: chosen on this phone, else the one of ours that its browser likes best."""
    chosen = request.args.get(LANGUAGE_COOKIE) or request.cookies.get(LANGUAGE_COOKIE, "")
    return chosen if chosen in LANGUAGES else request.accept_languages.best_match(LANGUAGES) or "en"


def speech() -> Speech:
    """The sentences of a helper's page in that language."""
    shop = workshop()
    return Speech("helper", language(), shop_zone(), shop.books.latest().units, shop.clock.now())


def refusal_to_asker(code: str, facts: Mapping[str, Any]) -> str:
    """The sentence of what was refused, to a guest in their language."""
    return speech().refused(code, facts) if access() == GUEST else said("refused", code, facts)
