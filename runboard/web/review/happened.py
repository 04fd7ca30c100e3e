"""What happened in a run: everybody's day beside the planned one, hours by operation, waiting and why, yields, scrap, the
process chart, order lines."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import timedelta

from flask import Blueprint, Response
from markupsafe import Markup

from runboard.charts.bars import bars, pareto
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import Happened, Lost, OperationBar, ProcessLine, SinceChange
from runboard.web.door.pages import page
from runboard.web.review.days import charts_of, key_of
from runboard.web.review.looked import minutes_of, review_of
from runboard.web.review.sections import answers_of
from runboard.words.facts import number_in_words, span_in_words, unbroken
from runboard.words.review_done import done_in_words
from runboard.words.review_things import Named, lost_in_words
from runboard.words.review_waits import why_waited
from runboard.words.sentences import say

part = Blueprint("review_happened", __name__)


# Shorter than this nobody would call it waiting, nor a walk one.
_A_WAIT, _A_WALK = timedelta(minutes=1), timedelta(seconds=30)


@dataclass(frozen=True)
class Waited:
    """What people, machines or trays waited for, as a chart and row by row: (who, why, how long)."""

    row: str
    chart: Markup
    rows: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True)
class Scrapped:
    """What was lost, as a chart and row by row: (why, wood, board, pieces)."""

    chart: Markup
    rows: tuple[tuple[str, str, str, int], ...]


@part.get("/review/runs/<key>/happened")
def happened(key: str) -> Response:
    """Everything that happened, section by section with its answer, and a table behind each chart."""
    found = review_of(key)
    what, named = found.happened, Named(found.past)
    sittings = charts_of(found, named)
    return page(
        "review/happened.html",
        run=found.past.run,
        found=what,
        done=unbroken(done_in_words(found)),
        answers=answers_of(found, sittings),
        an_hour=_an_hour(found),
        first_go=_first_go(what),
        rolled=_percent(what.rolled),
        days=sittings,
        shorts=key_of(named),
        hands=_hands(what.bars),
        waited=[one for row in ("person", "station", "tray") if (one := _waited(row, found, named)).rows],
        lost=_scrapped(what.lost),
        since=[(_since(one, named), one.hours) for one in what.since_changes if any(lost for _, lost in one.hours)],
        orders=sorted(what.order_lines, key=lambda line: (line.done is not None, -(line.late or timedelta(0)))),
        until=found.past.until,
        process=[_process_row(line, named) for line in what.process if not _is_no_walk(line)],
        unmeasured=[bar.name for bar in what.bars if bar.hands_taken is None],
    )


def _an_hour(found: Essentials) -> str:
    """Good pieces for each hour of hands; '' of a run that is open, whose hands are in pieces not yet done."""
    pieces = found.happened.pieces_an_hour
    return "" if pieces is None or found.past.is_open else number_in_words(round(pieces, 1))


def _hands(operations: Iterable[OperationBar]) -> Markup:
    rows = [
        (bar.name, minutes_of(bar.hands_taken), span_in_words(bar.hands_taken)) for bar in operations if bar.hands_taken
    ]
    return bars("hands", say("review-chart", "hands"), pareto(rows)) if rows else Markup("")


def _scrapped(lost: Sequence[Lost]) -> Scrapped:
    sums: dict[str, int] = {}
    for one in lost:
        said = lost_in_words(one)
        sums[said] = sums.get(said, 0) + one.pieces
    shown = [(said, float(pieces), str(pieces)) for said, pieces in sums.items()]
    chart = bars("scrap", say("review-chart", "lost"), pareto(shown)) if shown else Markup("")
    return Scrapped(chart, tuple((lost_in_words(one), one.wood, one.board, one.pieces) for one in lost))


def _waited(row: str, found: Essentials, named: Named) -> Waited:
    here = [one for one in found.happened.waiting if one.row == row and one.length >= _A_WAIT]
    here.sort(key=lambda one: -one.length)
    sums: dict[str, timedelta] = {}
    for one in here:
        why = why_waited(found.past, one.why, one.of)
        sums[why] = sums.get(why, timedelta(0)) + one.length
    shown = [(why, minutes_of(length), span_in_words(length)) for why, length in sums.items()]
    chart = bars(f"waited-{row}", say("review-chart", f"waited {row}"), pareto(shown)) if shown else Markup("")
    rows = (
        (named.who(one.row, one.key), why_waited(found.past, one.why, one.of), span_in_words(one.length))
        for one in here
    )
    return Waited(row, chart, tuple(rows))


def _since(one: SinceChange, named: Named) -> str:
    what = say("review-since", one.what or "none")
    return say("review-since", "at", {"station": named.station(one.station), "what": what})


def _is_no_walk(line: ProcessLine) -> bool:
    """Whether a line is of a way to the next station that takes nobody any time to speak of."""
    return line.symbol == "transport" and line.walking < _A_WALK


def _process_row(line: ProcessLine, named: Named) -> tuple[ProcessLine, str, str, str, int]:
    """A line with its station, its time, what trays waited before it, and the walks to it."""
    waited = line.waited if line.waited and line.waited >= _A_WAIT else None
    walks = line.walks if line.walking >= _A_WALK else 0
    return line, named.station(line.station), _time_of(line), span_in_words(waited), walks


def _time_of(line: ProcessLine) -> str:
    """What a line of the process chart took; '' where it was not measured, a dash where it takes none to speak of."""
    if line.time is None and line.symbol in ("operation", "inspection"):
        return ""
    took = line.time or line.walking
    return span_in_words(took if took >= timedelta(seconds=1) else None)


def _first_go(what: Happened) -> tuple[int, int] | None:
    """How many of the pieces that are through came through every step at the first go, and of how many; None where nobody
    knows."""
    through = what.good + what.scrap
    return None if what.first_pass is None else (round(what.first_pass * through), through)


def _percent(share: float | None) -> str:
    """In whole per cent, never rounded up to all; '' where nobody knows."""
    return "" if share is None else "100" if share >= 1 else str(min(99, round(100 * share)))
