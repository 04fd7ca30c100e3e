"""What happened in a run: everybody's day beside the planned one, hours by operation, waiting and why, yields, scrap, the
process chart, order lines."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import timedelta

from flask import Blueprint, Response
from markupsafe import Markup

from runboard.charts.bars import bars, pareto
from runboard.review.happened.nouns import Lost, OperationBar, ProcessLine, SinceChange, Waiting
from runboard.web.door.pages import page
from runboard.web.review.days import charts_of
from runboard.web.review.looked import minutes_of, review_of
from runboard.words.facts import number_in_words, span_in_words
from runboard.words.review import Named, lost_in_words
from runboard.words.sentences import say

part = Blueprint("review_happened", __name__)


@dataclass(frozen=True)
class Waited:
    """What people, machines or trays waited for, as a chart and row by row: (who, why, how long)."""

    row: str
    chart: Markup
    rows: tuple[tuple[str, str, str], ...]


@part.get("/review/runs/<key>/happened")
def happened(key: str) -> Response:
    """Everything that happened, with a table behind each chart."""
    found = review_of(key)
    what, named = found.happened, Named(found.past)
    an_hour = what.good / (what.hands / timedelta(hours=1)) if what.hands else 0.0
    return page(
        "review/happened.html",
        run=found.past.run,
        found=what,
        an_hour=number_in_words(round(an_hour, 1)) if an_hour else "",
        first_pass=_percent(what.first_pass),
        rolled=_percent(what.rolled),
        days=charts_of(found, named),
        hands=_hands(what.bars),
        waited=[one for row in ("person", "station", "tray") if (one := _waited(row, what.waiting, named)).rows],
        lost=_lost(what.lost),
        lost_rows=[(lost_in_words(lost), lost.wood, lost.board, lost.pieces) for lost in what.lost],
        since=[(_since(one, named), one.hours) for one in what.since_changes if any(lost for _, lost in one.hours)],
        orders=sorted(what.order_lines, key=lambda line: (line.done is not None, -(line.late or timedelta(0)))),
        in_time=sum(line.done is not None and not line.late for line in what.order_lines),
        process=[(line, named.station(line.station), _time_of(line)) for line in what.process],
        unmeasured=[bar.name for bar in what.bars if bar.hands_taken is None],
    )


def _hands(operations: Iterable[OperationBar]) -> Markup:
    rows = [
        (bar.name, minutes_of(bar.hands_taken), span_in_words(bar.hands_taken)) for bar in operations if bar.hands_taken
    ]
    return bars("hands", say("review-chart", "hands"), pareto(rows)) if rows else Markup("")


def _lost(lost: Iterable[Lost]) -> Markup:
    sums: dict[str, int] = {}
    for one in lost:
        said = lost_in_words(one)
        sums[said] = sums.get(said, 0) + one.pieces
    rows = [(said, float(pieces), str(pieces)) for said, pieces in sums.items()]
    return bars("scrap", say("review-chart", "lost"), pareto(rows)) if rows else Markup("")


def _waited(row: str, waiting: Iterable[Waiting], named: Named) -> Waited:
    here = sorted((one for one in waiting if one.row == row), key=lambda one: -one.length)
    sums: dict[str, timedelta] = {}
    for one in here:
        sums[one.why] = sums.get(one.why, timedelta(0)) + one.length
    shown = [(_why(why), minutes_of(length), span_in_words(length)) for why, length in sums.items()]
    chart = bars(f"waited-{row}", say("review-chart", f"waited {row}"), pareto(shown)) if shown else Markup("")
    return Waited(
        row, chart, tuple((named.who(one.row, one.key), _why(one.why), span_in_words(one.length)) for one in here)
    )


def _since(one: SinceChange, named: Named) -> str:
    what = say("review-since", one.what or "none")
    return say("review-since", "at", {"station": named.station(one.station), "what": what})


def _time_of(line: ProcessLine) -> str:
    """What a line of the process chart took; '' where it was not measured, a dash where it takes none to speak of."""
    if line.time is None and line.symbol in ("operation", "inspection"):
        return ""
    took = line.time or line.walking
    return span_in_words(took if took >= timedelta(seconds=1) else None)


def _percent(share: float | None) -> str:
    """In whole per cent, never rounded up to all; '' where nobody knows."""
    return "" if share is None else "100" if share >= 1 else str(int(100 * share))


def _why(why: str) -> str:
    return say("review-waits", why)
