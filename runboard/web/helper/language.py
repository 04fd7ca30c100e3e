"""The language of a helper's phone: chosen on it, else what its browser likes best."""

from flask import request

from runboard.words.sentences import LANGUAGES

LANGUAGE_COOKIE = "language"


def language() -> str:
    """The language of who asks: chosen on this phone, else the one of ours that its browser likes best."""
    chosen = request.args.get(LANGUAGE_COOKIE) or request.cookies.get(LANGUAGE_COOKIE, "")
    return chosen if chosen in LANGUAGES else request.accept_languages.best_match(LANGUAGES) or "en"
