"""Scripts, styles, pictures and the words of the catalogue, each with an ETag of its content."""

import hashlib
import mimetypes
from functools import lru_cache
from pathlib import Path

from flask import Blueprint, Response, abort, request
from werkzeug.security import safe_join

from runboard.places import folder

# What Windows or a bare Debian may not know, and a browser insists on.
_TYPES = {".js": "text/javascript", ".ftl": "text/plain", ".webmanifest": "application/manifest+json"}
_FOR_GOOD = "public, max-age=31536000, immutable"

part = Blueprint("static_files", __name__)


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


@lru_cache(maxsize=256)
def _read(path: str, changed_ns: int, size: int) -> tuple[bytes, str]:
    """Content and its digest; moment of change and size are there so that a changed file is read again."""
    content = Path(path).read_bytes()
    return content, hashlib.sha256(content).hexdigest()[:20]


def _content_type(path: str) -> str:
    kind = _TYPES.get(Path(path).suffix) or mimetypes.guess_type(path)[0] or "application/octet-stream"
    return f"{kind}; charset=utf-8" if kind.startswith("text/") else kind
