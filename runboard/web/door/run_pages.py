"""What the pages about one run share: the run, who presses, the shop's calendar, and dates as people write them."""

from datetime import UTC, datetime, time
from zoneinfo import ZoneInfo

from flask import Flask, abort

from runboard.floor.looking.at_hand import run_now
from runboard.run.fold.state import RunState
from runboard.web.door.pages import asking_person, shop_zone, workshop
from runboard.words.facts import dated

# A day without a time of day is meant to its end.
END_OF_DAY = time(23, 59)


def init_app(app: Flask) -> None:
    """Plug into the app: dates for templates."""
    app.jinja_env.filters.update(day=day)


def known_run(key: str) -> RunState:
    """The run of that key; 404 where there is none."""
    return run_now(workshop(), key) or abort(404)


def known_person() -> str:
    """The key of the person who asks, if the book knows them."""
    person = workshop().book.person(asking_person())
    return person.key if person else ""


def day(moment: datetime | None) -> str:
    """'Sat 7 Mar 2026, 09:05' where the shop is; a dash where there is none."""
    return "–" if moment is None else dated(moment, shop_zone())


def due_texts(moment: datetime | None, zone: str) -> tuple[str, str]:
    """Date and time of day for two inputs."""
    if moment is None:
        return "", ""
    here = moment.astimezone(ZoneInfo(zone))
    return here.strftime("%Y-%m-%d"), here.strftime("%H:%M")


def due_moment(date_text: str, time_text: str, zone: str) -> datetime | None:
    """The moment that two inputs say, aware UTC; ``ValueError`` for what is no date, ``None`` where there is none.

    A time that comes twice is the first of them, one that is skipped is as much later.
    """
    if not date_text.strip():
        return None
    clock = time.fromisoformat(time_text.strip()) if time_text.strip() else END_OF_DAY
    local = datetime.combine(datetime.fromisoformat(date_text.strip()).date(), clock.replace(tzinfo=None))
    return local.replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)
