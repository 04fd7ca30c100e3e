"""What the pages about one run share: the run, who presses, the shop's calendar, and dates as people write them."""

from datetime import UTC, datetime, time
from zoneinfo import ZoneInfo

from flask import Flask, abort

from runboard.floor.looking.at_hand import run_now
from runboard.run.fold.state import RunState
from runboard.web.door.pages import asking_person, shop_zone, workshop
from runboard.words.dues import whom_of
from runboard.words.facts import END_OF_DAY, due_in_words, seen_from


def init_app(app: Flask) -> None:
    """Plug into the app: dates for templates, and what an order line is called."""
    app.jinja_env.filters.update(day=day, due=due, called=whom_of)


def known_run(key: str) -> RunState:
    """The run of that key; 404 where there is none."""
    return run_now(workshop(), key) or abort(404)


def known_person() -> str:
    """The key of the person who asks, if the book knows them."""
    person = workshop().book.person(asking_person())
    return person.key if person else ""


def day(moment: datetime | None) -> str:
    """'09:05', 'Sat 09:05', 'Sat 7 Mar, 09:05' where the shop is, with its year where that is another; a dash where there is none."""
    return "–" if moment is None else seen_from(workshop().clock.now(), moment, shop_zone())


def due(moment: datetime) -> str:
    """When something is due, said as ``day`` says it; the day alone where no time of day was said."""
    return due_in_words(moment, shop_zone(), now=workshop().clock.now())


def due_texts(moment: datetime | None, zone: str) -> tuple[str, str]:
    """Date and time of day for two inputs; the end of a day is no time of day that anybody said."""
    if moment is None:
        return "", ""
    here = moment.astimezone(ZoneInfo(zone))
    clock = here.strftime("%H:%M")
    return here.strftime("%Y-%m-%d"), "" if clock == f"{END_OF_DAY:%H:%M}" else clock


def due_moment(date_text: str, time_text: str, zone: str) -> datetime | None:
    """The moment that two inputs say, aware UTC; ``ValueError`` for what is no date, ``None`` where there is none.

    A time that comes twice is the first of them, one that is skipped is as much later.
    """
    if not date_text.strip():
        return None
    clock = time.fromisoformat(time_text.strip()) if time_text.strip() else END_OF_DAY
    local = datetime.combine(datetime.fromisoformat(date_text.strip()).date(), clock.replace(tzinfo=None))
    return local.replace(tzinfo=ZoneInfo(zone)).astimezone(UTC)
