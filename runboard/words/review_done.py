"""When a run was done against what the plan at its opening promised, as one line."""

from collections.abc import Sequence
from datetime import datetime, timedelta, tzinfo

from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import OrderLineDone
from runboard.words.facts import date_in_words, time_of_day, zone_of
from runboard.words.review_things import about
from runboard.words.sentences import sentence

# As near to it as this a run was done as promised.
AS_PROMISED = timedelta(minutes=15)


def done_in_words(essentials: Essentials) -> str:
    """'Done Sun 1 Nov, 01:38, a day later than first planned. All order lines on time.'; of a run that goes on its promise; ''
    where nothing is known."""
    happened, zone = essentials.happened, zone_of(essentials.past.book.time_zone)
    promised, finished = happened.promised, happened.finished
    if finished is None:
        return sentence("review-promised-for", {"promised": _on(promised, zone)}) if promised else ""
    off = finished - promised if promised else timedelta(0)
    how = (
        "unknown"
        if promised is None
        else "as"
        if abs(off) < AS_PROMISED
        else "after"
        if off > timedelta(0)
        else "before"
    )
    facts = {"finished": _on(finished, zone), "how": how, "span": about(off), "lines": _in_time(happened.order_lines)}
    return sentence("review-done", facts)


def _in_time(lines: Sequence[OrderLineDone]) -> str:
    """'all' where each line that has a day was there in time, 'some' where not, 'none' where none has a day."""
    dated = [line for line in lines if line.due is not None]
    if not dated:
        return "none"
    return "all" if all(line.done is not None and not line.late for line in dated) else "some"


def _on(moment: datetime, zone: tzinfo) -> str:
    return f"{date_in_words(moment.astimezone(zone))}, {time_of_day(moment, zone)}"
