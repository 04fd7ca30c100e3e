"""What is secret in a channel's address, and a text without it."""

import re
from urllib.parse import parse_qsl, unquote, urlsplit

_SHORTEST = 3  # a shorter piece stands in any sentence by chance


def how_and_where(shown: str) -> str:
    """Of an address whose passwords are hidden already only how and to which server: a user's name, a topic or the path of
    a webhook may be all that somebody needs to send there, or to read along."""
    scheme, found, rest = shown.split("?")[0].partition("://")
    if not found:
        return scheme
    place, _, path = rest.partition("/")
    _, user, server = place.rpartition("@")
    return f"{scheme}://{'…@' if user else ''}{server}{'/…' if path.strip('/') else ''}"


def without_secrets(text: str, url: str, shown: str) -> str:
    """A text, such as why nothing could be sent, without any piece of the address that is not shown."""
    secret = _pieces(url) - _pieces(shown)
    for piece in sorted(secret, key=len, reverse=True):
        text = text.replace(piece, "…")
    return text


def _pieces(url: str) -> set[str]:
    try:
        asked = urlsplit(url)
        values = [value for _, value in parse_qsl(asked.query)]
    except ValueError:
        asked, values = urlsplit(""), [url]
    written = [*re.split(r"[:/@]", f"{asked.scheme}://{asked.netloc}{asked.path}"), *values]
    every = [part for one in written for part in (one, unquote(one), *re.split(r"[\s/:@+&=]", unquote(one)))]
    return {part for part in every if len(part) >= _SHORTEST}
