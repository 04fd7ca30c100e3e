"""What a phone needs to open Now, Trays and the help without the server: the service worker, with the list of what it keeps."""

import hashlib
import json
from functools import lru_cache
from pathlib import Path

from flask import Blueprint, Response, current_app, request

from runboard.floor.looking.at_hand import book_now
from runboard.places import folder
from runboard.run.fold.table import table_text
from runboard.web.door.pages import workshop
from runboard.web.door.static_files import composed, names_of

SHELLS = ("/", "/trays", "/help")
# The rooms of templates/ that draw them, and the words that these say.
DRAWN_BY = ("door", "now", "trays", "help")
ALSO = ("/table.json", "/static/runboard.webmanifest")
# Files of static/ that Now, Trays and the help are drawn with, beside composed ones; other screens need the server anyway.
KEPT = ("words/en*.ftl", "signs/*.svg", "*.svg", "icons/*.png", "tokens.css", "base.css", "help/help.css")
NOT_KEPT = ("en.forms", "en.pages", "en.commands", "en.lan", "en.review", "en.friend", "en.before")

part = Blueprint("offline", __name__)


@part.get("/worker.js")
def worker() -> Response:
    """The service worker, at the top so that it may serve the whole site; a new version whenever a file changes."""
    files = kept_files()
    text = f"const VERSION = {json.dumps(_version())};\nconst FILES = {json.dumps(files)};\n"
    text += (folder("static") / "worker.js").read_text("utf-8")
    response = Response(text, content_type="text/javascript; charset=utf-8")
    response.headers["Cache-Control"] = "no-cache"
    response.add_etag(weak=True)
    response.make_conditional(request)
    return response


def kept_files() -> list[str]:
    """The addresses that the worker keeps."""
    return [*SHELLS, *ALSO, *(f"/composed/{name}" for name in _composed()), *(f"/static/{name}" for name in _names())]


def _composed() -> list[str]:
    return [name for screen in ("now", "trays") for name in names_of(screen)]


def _names() -> list[str]:
    static = folder("static")
    found = {path.relative_to(static).as_posix() for glob in KEPT for path in static.glob(glob)}
    return sorted(name for name in found if not any(part in name for part in NOT_KEPT))


def _version() -> str:
    """A digest of everything that the worker keeps, and of the worker itself."""
    static, templates = folder("static"), Path(str(current_app.template_folder))
    said = [f"words/en.pages.{room}.ftl" for room in DRAWN_BY]
    stamps = tuple((name, (static / name).stat().st_mtime_ns) for name in [*_names(), *said, "worker.js"])
    shells = (str(path) for room in DRAWN_BY for path in sorted((templates / room).glob("*.html")))
    drawn = tuple((path, Path(path).stat().st_mtime_ns) for path in shells)
    made = tuple(found.etag for name in _composed() if (found := composed(static, name)))
    return _digest(str(static), stamps, drawn, (*made, book_now(workshop()).emergency))


@lru_cache(maxsize=4)
def _digest(
    static: str, stamps: tuple[tuple[str, int], ...], shells: tuple[tuple[str, int], ...], made: tuple[str, ...]
) -> str:
    digest = hashlib.sha256("".join((table_text(), *made)).encode())
    for name, _ in stamps:
        digest.update(name.encode() + (Path(static) / name).read_bytes())
    for path, _ in shells:
        digest.update(Path(path).read_bytes())
    return digest.hexdigest()[:16]
