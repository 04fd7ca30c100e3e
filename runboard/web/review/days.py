"""The multiple-activity chart of a run as it was, sitting by sitting, with the planned one in narrow rows beside it, and the
same as a list of each."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from markupsafe import Markup

from runboard.charts.activity import Row, Stretch, activity, hours_of
from runboard.plan.schedule.told.figures import BREAK
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import DayPart
from runboard.review.past import Past
from runboard.web.review.looked import minutes_of
from runboard.words.facts import date_in_words, moment_in_words, span_in_words, time_of_day, zone_of
from runboard.words.plan import span_of
from runboard.words.review_things import Named, within
from runboard.words.review_waits import why_waited
from runboard.words.sentences import say
from runboard.words.short_forms import Short, short_forms

# So near to each other the words of the hours would run into one another: so many fit in a sitting's chart.
_HOURS_APART = 9.0
# Shorter than this a wait or a walk is not worth a line.
_SAID_FROM = {"waiting": timedelta(minutes=1), "walking": timedelta(seconds=30)}
_KINDS = {"watching": "watch", "walking": "walk", "waiting": "idle"}
_BUSY = ("work", "watching")

Span = tuple[datetime, datetime]


@dataclass(frozen=True)
class Sitting:
    """A stretch of work without a long break: drawn both ways, and said line by line of (who, what they did)."""

    title: str
    chart: Markup
    said: tuple[tuple[str, tuple[str, ...]], ...]


def charts_of(found: Essentials, named: Named) -> list[Sitting]:
    """Each sitting in which something was done for the run, with who and what was at work in it."""
    happened = found.happened
    return [
        _Drawn(number, span, (happened.day, happened.planned), named).sitting
        for number, span in enumerate(sittings_of(found.past, happened.day))
    ]


def _shorts(named: Named) -> dict[str, Short]:
    return short_forms(step.name for step in named.past.run.route.steps)


def key_of(named: Named) -> list[tuple[str, str, str]]:
    """Each step with its short form on a bar that has no room for it: (letter, form, step)."""
    return [(short.letter, short.form, name) for name, short in _shorts(named).items()]


def sittings_of(past: Past, parts: Sequence[DayPart]) -> list[Span]:
    """From the first to the last thing that was done without so long a break between that it is better left out: those in
    which something was done for the run itself."""
    busy = sorted((part for part in parts if part.doing in _BUSY), key=lambda part: part.began_at)
    found: list[tuple[datetime, datetime, bool]] = []
    for part in busy:
        is_own = part.run in ("", past.run.id) and part.kind != "job"
        if found and part.began_at - found[-1][1] <= span_of(BREAK):
            began, ended, has_own = found[-1]
            found[-1] = (began, max(ended, part.ended_at), has_own or is_own)
        else:
            found.append((part.began_at, part.ended_at, is_own))
    return [(began, ended) for began, ended, has_own in found if has_own]


@dataclass(frozen=True)
class _Cut:
    """What lies within a sitting, cut to it, and whole."""

    part: DayPart
    whole: DayPart


class _Drawn:
    """One sitting. Who or what had no work in it has no row."""

    def __init__(
        self, number: int, span: Span, parts: tuple[Sequence[DayPart], Sequence[DayPart]], named: Named
    ) -> None:
        self._number, self._span, self._named, self._shorts = number, span, named, _shorts(named)
        self._zone = zone_of(named.past.book.time_zone)
        self._real, self._planned = ([*_within(some, span)] for some in parts)
        busy = dict.fromkeys((one.part.row, one.part.key) for one in self._real if one.part.doing in _BUSY)
        self._keys = sorted(busy, key=lambda one: one[0])

    @property
    def sitting(self) -> Sitting:
        """Titled by its day and hours."""
        began, ended = self._span
        day, hours = date_in_words(began.astimezone(self._zone)), (self._clock(began), self._clock(ended))
        facts = {"day": day, "from": hours[0], "to": hours[1]}
        rows = [Row(self._named.who(*key), self._stretches(self._real, key), self._stretches(self._planned, key))
                for key in self._keys]  # fmt: skip
        length = minutes_of(ended - began)
        label = say("review-chart", "day", facts)
        chart = activity(f"d{self._number}", label, rows, length, self._hours(length))
        return Sitting(say("review-chart", "sitting", facts), chart, tuple(self._said()))

    def _hours(self, length: float) -> list[tuple[float, str]]:
        local = self._span[0].astimezone(self._zone)
        start = local.hour * 60 + local.minute + local.second / 60
        return [
            (at - start, self._clock(self._span[0] + timedelta(minutes=at - start)))
            for at in hours_of(start, start + length, length / _HOURS_APART)
        ]

    def _clock(self, moment: datetime) -> str:
        return time_of_day(moment, self._zone)

    def _stretches(self, parts: Iterable[_Cut], key: tuple[str, str]) -> tuple[Stretch, ...]:
        first = self._span[0]
        return tuple(
            Stretch(
                minutes_of(one.part.began_at - first),
                minutes_of(one.part.ended_at - first),
                "setup" if one.part.kind == "setup" else _KINDS.get(one.part.doing, "work"),
                _at(one.part, self._named),
                self._short(one.part),
                goes_on=one.part.ended_at < one.whole.ended_at,
            )
            for one in parts
            if (one.part.row, one.part.key) == key
        )

    def _short(self, part: DayPart) -> tuple[str, str]:
        short = self._shorts.get("" if part.kind == "job" else self._named.step(part.step))
        return (short.form, short.letter) if short is not None else ("", "")

    def _said(self) -> Iterable[tuple[str, tuple[str, ...]]]:
        for key in self._keys:
            own = [one.whole for one in self._real if (one.part.row, one.part.key) == key]
            yield (
                self._named.who(*key),
                tuple(self._line(part) for part in own if part.length >= _least(part)),
            )

    def _line(self, part: DayPart) -> str:
        """What somebody or a machine did, from its own beginning to its own end, wherever the sitting cuts it."""
        facts = {
            "from": self._moment(part.began_at),
            "to": self._moment(part.ended_at),
            "who": self._named.who(part.row, part.key),
            "step": _at(part, self._named),
            "why": within(why_waited(self._named.past, part.why, part.of)) if part.why else "none",
            "span": span_in_words(part.length),
            "kind": say("element", part.kind) if part.kind else "none",
        }
        return say("review-did", part.doing, facts)

    def _moment(self, moment: datetime) -> str:
        """With its day where that is another than the sitting's."""
        is_near = self._span[0] <= moment <= self._span[1]
        if is_near or moment.astimezone(self._zone).date() == self._span[0].astimezone(self._zone).date():
            return self._clock(moment)
        return moment_in_words(moment, self._zone)


def _within(parts: Iterable[DayPart], span: Span) -> Iterable[_Cut]:
    """What lies within a sitting. Nobody is told where somebody was who was away."""
    for part in parts:
        began, ended = max(part.began_at, span[0]), min(part.ended_at, span[1])
        if began < ended and part.doing != "away":
            yield _Cut(replace(part, began_at=began, ended_at=ended), part)


def _at(part: DayPart, named: Named) -> str:
    """What somebody or a machine was at: a step, or a small job of the shop's own."""
    jobs = named.past.book.jobs if part.kind == "job" else ()
    return next((job.name for job in jobs if job.key == part.step), named.step(part.step))


def _least(part: DayPart) -> timedelta:
    return _SAID_FROM.get(part.doing, timedelta(0))
