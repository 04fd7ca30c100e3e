"""Hours of the week in JSON: ``{"days": ["mon", "tue"], "from": "18:00", "to": "22:00"}``."""

import re
from collections.abc import Sequence
from datetime import time
from typing import Any

from runboard.shop.book import Window
from runboard.shop.fields import Fields, shown

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
TIME_PATTERN = r"^(?:[01]\d|2[0-3]):[0-5]\d$"
_TIME = re.compile(TIME_PATTERN[:-1] + r"\Z")
_FIELDS = frozenset(("days", "from", "to"))
END_OF_DAY = "24:00"


def read_windows(fields: Fields, field: str) -> tuple[Window, ...]:
    """The windows of a list, one a day; problems are noted."""
    found: list[Window] = []
    for one in fields.each(field, ""):
        one.only(_FIELDS)
        days = _days(one)
        opens, closes = _time(one, "from"), _time(one, "to", end=True)
        if opens is None or closes is None:
            continue
        if closes != time(0) and closes <= opens:
            one.wrong("window backwards", "to", opens=one.record["from"], closes=one.record["to"])
        found.extend(Window(day, opens, closes) for day in days)
    return tuple(found)


def _days(fields: Fields) -> list[int]:
    found = []
    for at, day in enumerate(fields.items("days", required=True, least=1, of="day")):
        if not isinstance(day, str) or day not in DAYS:
            fields.wrong("not a choice", f"days[{at}]", found=shown(day), choices=", ".join(DAYS))
        elif DAYS.index(day) in found:
            fields.wrong("listed twice", "days", found=shown(day))
        else:
            found.append(DAYS.index(day))
    return found


def _time(fields: Fields, field: str, end: bool = False) -> time | None:
    """A time of day. The end of a window may be 24:00, kept as 00:00."""
    value = fields.take(field)
    if field not in fields.record:
        return None
    if end and value == END_OF_DAY:
        return time(0)
    if not isinstance(value, str) or not _TIME.match(value) or (end and value == "00:00"):
        fields.wrong("not a time of day", field, found=shown(value))
        return None
    return time.fromisoformat(value)


def write_windows(windows: Sequence[Window]) -> list[dict[str, Any]]:
    """The windows with neighbours of the same hours put together, in an order that reads back the same."""
    found: list[dict[str, Any]] = []
    for window in windows:
        day, opens = DAYS[window.weekday], window.opens.strftime("%H:%M")
        closes = END_OF_DAY if window.closes == time(0) else window.closes.strftime("%H:%M")
        last = found[-1] if found else None
        if last and (last["from"], last["to"]) == (opens, closes) and day not in last["days"]:
            last["days"].append(day)
        else:
            found.append({"days": [day], "from": opens, "to": closes})
    return found
