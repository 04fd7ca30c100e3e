"""The last copy of the shop on the Shop page, and a press that makes one now."""

import logging
from datetime import datetime, timedelta
from typing import Any

from babel.dates import format_date, format_time
from flask import Blueprint, Response

from runboard.floor.keeping.backup import local_now, look_at_copies, make_copy
from runboard.floor.pressing.access import LEAD
from runboard.store.proof import BadCopy
from runboard.web.door.pages import said, see_other, workshop
from runboard.web.door.sessions import access
from runboard.web.fittings import fittings

part = Blueprint("backup", __name__)
_log = logging.getLogger("runboard")


def folder_shown() -> str:
    """Who could read the data folder, as a sentence for a lead; '' where nobody else could, or for who may not know."""
    found = fittings().found
    return said("folder", found.code, found.facts) if found and access() == LEAD else ""


def copies_shown() -> dict[str, Any]:
    """``sentences`` about the last copy, and whether they are ``red``."""
    look, now = look_at_copies(workshop(), fittings().copies), local_now(workshop())
    when = day_in_words(look.at, now) if look.at else ""
    if look.state != "failed" or look.failed_at is None:
        return {"sentences": [said("copy", look.state, {"when": when, "events": look.events})], "red": look.is_red}
    failed = said("copy", "failed", {"when": day_in_words(look.failed_at, now)})
    before = said("copy", "failed before" if when else "failed none", {"when": when})
    return {"sentences": [failed, said("bad-copy", look.code, look.facts), before], "red": True}


def day_in_words(moment: datetime, now: datetime, locale: str = "en") -> str:
    """'today 3:00', 'yesterday 3:00', 'Mon 23 Nov 3:00'; ``now`` is in the zone that is meant."""
    here = moment.astimezone(now.tzinfo)
    clock = format_time(here, "H:mm", locale=locale)
    match now.date() - here.date():
        case timedelta(days=0):
            return f"today {clock}"
        case timedelta(days=1):
            return f"yesterday {clock}"
    return f"{format_date(here, 'EEE d MMM', locale=locale)} {clock}"


@part.post("/shop/copies")
def make() -> Response:
    """Make a copy now. What fails is kept, and shown where one is sent."""
    try:
        make_copy(workshop(), fittings().copies)
    except BadCopy as bad:
        _log.error("no copy was made: %s", bad.code)
    return see_other("/shop#copies")
