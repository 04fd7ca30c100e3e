"""What a phone that has never been here fetches to show Now: the page, and everything it leads to.

What is fetched once the page has come to rest (``import("./…")``, the words of the sheets, the transition table) is told
apart.
"""

import gzip
import re
from urllib.parse import urljoin

import httpx

from tests.pairing import cookies
from tests.serving import Running

_AT_ONCE = (
    re.compile(r"""<(?:link|script)\b[^>]*?\b(?:href|src)="([^"]+)""", re.IGNORECASE),
    re.compile(r"""\b(?:from|import)\s*["']([./][^"']+)["']"""),
    re.compile(r"""@import\s+(?:url\()?["']([^"']+)"""),
)
_WORDS_LATER = ("/static/words/en.sheets.ftl", "/static/words/en.care.ftl")
_LATER = (re.compile(r"""\bimport\(\s*["']([./][^"']+)["']"""),)


def first_load(server: Running, person: str) -> tuple[dict[str, int], dict[str, int]]:
    """(at once, later): bytes on the wire of each answer, gzipped where the server does it."""
    known = cookies(server.pair())
    with httpx.Client(base_url=server.address, headers={"Accept-Encoding": "gzip"}, cookies=known) as client:
        at_once, leads_on = _fetch(client, ["/", f"/state?person={person}"], set())
        later: dict[str, int] = {}
        leads_on += ["/table.json", *_WORDS_LATER]
        while leads_on:
            more, leads_on = _fetch(client, leads_on, {*at_once, *later})
            later |= more
    return at_once, later


def _fetch(client: httpx.Client, wanted: list[str], known: set[str]) -> tuple[dict[str, int], list[str]]:
    """Sizes of these and of what they lead to at once; and what they lead to later."""
    sizes: dict[str, int] = {}
    later: list[str] = []
    while wanted:
        path = wanted.pop()
        if path in sizes or path in known:
            continue
        with client.stream("GET", path) as answer:
            raw = b"".join(answer.iter_raw())
        answer.raise_for_status()
        sizes[path] = len(raw)
        text = (gzip.decompress(raw) if answer.headers.get("Content-Encoding") == "gzip" else raw).decode(
            errors="replace"
        )
        if path == "/" or path.endswith((".js", ".css")):
            wanted += [urljoin(path, found) for one in _AT_ONCE for found in one.findall(text)]
            later += [urljoin(path, found) for one in _LATER for found in one.findall(text)]
    return sizes, later
