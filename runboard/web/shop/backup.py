"""The last copy of the shop on the Shop page, and a press that makes one now."""

import logging
from datetime import UTC, datetime
from typing import Any

from flask import Blueprint, Response

from runboard.floor.keeping.backup import local_now, look_at_copies, make_copy
from runboard.floor.pressing.access import LEAD
from runboard.store.proof import BadCopy
from runboard.web.door.pages import said, see_other, workshop
from runboard.web.door.sessions import access
from runboard.web.fittings import fittings
from runboard.words.facts import moment_in_words

part = Blueprint("backup", __name__)
_log = logging.getLogger("runboard")


def folder_shown() -> str:
    """Who could read the data folder, as a sentence for a lead; '' where nobody else could, or for who may not know."""
    found = fittings().found
    return said("folder", found.code, found.facts) if found and access() == LEAD else ""


def copies_shown() -> dict[str, Any]:
    """``sentences`` about the last copy, and whether they are ``red``."""
    look, now = look_at_copies(workshop(), fittings().copies), local_now(workshop())
    when = _when(look.at, now) if look.at else ""
    if look.state != "failed" or look.failed_at is None:
        return {"sentences": [said("copy", look.state, {"when": when, "events": look.events})], "red": look.is_red}
    failed = said("copy", "failed", {"when": _when(look.failed_at, now)})
    before = said("copy", "failed before" if when else "failed none", {"when": when})
    return {"sentences": [failed, said("bad-copy", look.code, look.facts), before], "red": True}


def _when(moment: datetime, now: datetime) -> str:
    """'03:00' today, 'Sun 03:00'; ``now`` is in the zone that is meant."""
    return moment_in_words(moment, now.tzinfo or UTC, now=now)


@part.post("/shop/copies")
def make() -> Response:
    """Make a copy now. What fails is kept, and shown where one is sent."""
    try:
        make_copy(workshop(), fittings().copies)
    except BadCopy as bad:
        _log.error("no copy was made: %s", bad.code)
    return see_other("/shop#copies")
