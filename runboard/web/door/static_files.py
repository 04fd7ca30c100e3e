"""Scripts, styles, pictures and the words of the catalogue, each with an ETag of its content."""

import hashlib
import mimetypes
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache, partial
from pathlib import Path

from flask import Blueprint, Response, abort, request
from werkzeug.security import safe_join

from runboard.places import folder
from runboard.web.door import composing

# What Windows or a bare Debian may not know, and a browser insists on.
_TYPES = {".js": "text/javascript", ".ftl": "text/plain", ".webmanifest": "application/manifest+json"}
_FOR_GOOD = "public, max-age=31536000, immutable"

# Screens that a script draws: where it begins, and their styles.
SCREENS = {
    "now": ("now/now.js", ("tokens.css", "base.css", "now/now.css")),
    "trays": ("trays/trays.js", ("tokens.css", "base.css", "now/now.css", "trays/trays.css")),
    "wall": ("wall/wall.js", ("tokens.css", "base.css", "wall/wall.css")),
}

part = Blueprint("static_files", __name__)


@dataclass(frozen=True)
class Composed:
    """One file made of many: its text, a digest of it, and how each stood."""

    text: str
    etag: str
    made_of: tuple[tuple[str, int, int], ...]


_made: dict[tuple[str, str], Composed] = {}


@part.get("/static/<path:name>")
def static(name: str) -> Response:
    """A file of ``static/``; 404 where there is none, and for every way out of the folder. Vendored ones carry their version
    in the name and are kept for good; others are asked after each time, and answer 304 while they are the same."""
    path = safe_join(str(folder("static")), name)
    if path is None or "\0" in name:
        abort(404)
    try:
        stat = Path(path).stat()
        content, etag = _read(path, stat.st_mtime_ns, stat.st_size)
    except (OSError, ValueError):
        abort(404)
    response = Response(content, content_type=_content_type(path))
    response.set_etag(etag, weak=True)
    response.headers["Cache-Control"] = _FOR_GOOD if name.startswith("vendor/") else "no-cache"
    response.make_conditional(request)
    return response


@part.get("/composed/<name>")
def composed_file(name: str) -> Response:
    """What a screen needs at once (``now.js``), fetches later (``now.later.js``), and its styles (``now.css``)."""
    found = composed(folder("static"), name) or abort(404)
    response = Response(found.text, content_type=_content_type(name))
    response.set_etag(found.etag, weak=True)
    response.headers["Cache-Control"] = "no-cache"
    response.make_conditional(request)
    return response


def names_of(screen: str) -> list[str]:
    """The composed files of a screen."""
    return [f"{screen}.css", f"{screen}.js", f"{screen}.later.js"]


def composed(static: Path, name: str) -> Composed | None:
    """The composed file of that name, made anew where one of those that it is made of has changed; None where there is none."""
    kept = _made.get((str(static), name))
    if kept is None or kept.made_of != _stamps(static, [one for one, _, _ in kept.made_of]):
        make = _how(static).get(name)
        if make is None:
            return None
        text, names = make()
        etag = hashlib.sha256(text.encode()).hexdigest()[:20]
        kept = _made[str(static), name] = Composed(text, etag, _stamps(static, names))
    return kept


def _how(static: Path) -> dict[str, Callable[[], tuple[str, list[str]]]]:
    ways: dict[str, Callable[[], tuple[str, list[str]]]] = {}
    for screen, (script, styles) in SCREENS.items():
        style, first, later = names_of(screen)
        ways[style] = partial(composing.styles, static, styles)
        ways[first] = partial(composing.at_once, static, script, later)
        ways[later] = partial(composing.later, static, script)
    return ways


def _stamps(static: Path, names: list[str]) -> tuple[tuple[str, int, int], ...]:
    stats = [(name, (static / name).stat() if (static / name).exists() else None) for name in names]
    return tuple((name, stat.st_mtime_ns if stat else 0, stat.st_size if stat else 0) for name, stat in stats)


@lru_cache(maxsize=256)
def _read(path: str, changed_ns: int, size: int) -> tuple[bytes, str]:
    """Content and its digest; moment of change and size are there so that a changed file is read again."""
    content = Path(path).read_bytes()
    return content, hashlib.sha256(content).hexdigest()[:20]


def _content_type(path: str) -> str:
    kind = _TYPES.get(Path(path).suffix) or mimetypes.guess_type(path)[0] or "application/octet-stream"
    return f"{kind}; charset=utf-8" if kind.startswith("text/") else kind
