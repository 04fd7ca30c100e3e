"""A change and what comes of it, in words: by how much the finish and the hands-on hours move, and what holds them."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from typing import Any

from runboard.plan.change import (
    Capacity,
    Change,
    Helper,
    HoursAdded,
    Instead,
    LoadSize,
    OnePersonMore,
    OneVisit,
    Rested,
    Several,
    Single,
    Swapped,
    Times,
    TraySize,
    word_of,
)
from runboard.plan.changed_route import pair_at
from runboard.plan.schedule.problem.nouns import LeftOut, Plan, Problem
from runboard.plan.schedule.told.compared import Compared, Side
from runboard.plan.schedule.told.holding import Holder, is_part, slack_of
from runboard.run.fold.state import RunState
from runboard.shop.book import Book
from runboard.words.facts import date_in_words, list_in_words, span_in_words, zone_of
from runboard.words.plan import Names, holds_sentence, left_out_sentences, span_of
from runboard.words.sentences import sentence

# Less than a minute is no difference that anybody could tell.
_A_MINUTE = 2


# What holds the end of a run in a plan with the change.
Holds = Callable[[Problem, Plan, str], Holder | None]


@dataclass(frozen=True)
class ShopNow:
    """What the words are about: the book, the runs, and what holds a tried plan."""

    book: Book
    runs: Mapping[str, RunState]
    holds: Holds


def change_in_words(shop: ShopNow, run: str, change: Change) -> str:
    """What is changed, as it stands above the answer and in the Review."""
    return words_of_change(shop.book, shop.runs[run], change)


def words_of_change(book: Book, run: RunState, change: Change) -> str:
    """The same of a run whose shop need not be at hand. What the book or the route has lost since goes by its key."""
    if isinstance(change, Several):
        return _say("change-several", changes=list_in_words(words_of_change(book, run, one) for one in change.changes))
    return _say(f"change-{word_of(change)}", **dict(_facts_of(book, run, change)))


def _facts_of(book: Book, run: RunState, change: Single) -> Iterator[tuple[str, Any]]:
    """What the sentence of a change's kind says."""
    match change:
        case HoursAdded():
            yield "person", person_name(book, change.person)
            yield "day", date_in_words(change.day, with_year=True)
            yield "from", f"{change.opens:%H:%M}"
            yield "to", "24:00" if change.closes == time() else f"{change.closes:%H:%M}"
        case OnePersonMore() | Helper():
            yield "like", person_name(book, change.like)
            yield "day", "now" if change.start is None else _day(book, change.start)
            if isinstance(change, Helper):
                yield "operation", operation_name(run, change.operation)
                yield "span", span_in_words(timedelta(minutes=change.minutes))
            else:
                yield "skills", [*change.skills] or "none"
        case Capacity():
            names = (service.name for service in book.services if service.key == change.service)
            yield "service", next(names, change.service)
            yield "capacity", change.capacity
        case TraySize():
            yield "pieces", change.pieces
        case LoadSize():
            yield from (("step", run.route.step_name(change.step)), ("pieces", change.pieces))
        case Times():
            yield from (("operation", operation_name(run, change.operation)), ("percent", change.per_cent))
            yield "kind", change.kind or "all"
        case Instead():
            yield from (("operation", operation_name(run, change.operation)), ("thing", change.name or "none"))
            yield from (("means", change.means), ("percent", change.per_cent))
            yield "rate", "same" if change.good_rate is None else round(100 * change.good_rate)
        case Rested():
            yield from (
                ("operation", operation_name(run, change.operation)),
                ("span", span_in_words(timedelta(minutes=change.minutes))),
            )
        case Swapped() | OneVisit():
            yield from (("first", operation_name(run, change.first)), ("then", operation_name(run, _next(run, change))))


def _day(book: Book, moment: datetime) -> str:
    return date_in_words(moment.astimezone(zone_of(book.time_zone)), with_year=True)


def _next(run: RunState, change: Swapped | OneVisit) -> str:
    pair = pair_at(run.route.product, change.first)
    return pair[1].key if pair else "–"


def person_name(book: Book, key: str) -> str:
    """What a person of the book is called."""
    person = book.person(key)
    return person.name if person else key


def operation_name(run: RunState, key: str) -> str:
    """What an operation of a run's route is called, or one of its steps."""
    names = {operation.key: operation.name for operation in run.route.product.operations}
    return names.get(key) or run.route.step_name(key)


def answer_of(shop: ShopNow, run: str, change: Change, found: Compared) -> Iterator[str]:
    """By how much the finish and the hands-on hours move; where the finish does not, why, and what holds it."""
    before, after = found.before, found.after
    if after is None:
        yield _say("no-plan-now" if before is None else "no-plan-then")
        return
    names = _names(shop, after)
    if found.left_out:
        yield _say("left-out")
        yield from left_out_sentences(names, found.left_out)
    elif before is None or (not before.finish and found.let_in):
        yield _say("only-then", at=names.tick(after.finish))
    elif not before.finish:
        yield _say("nothing-fits" if _is_short(before, run) else "done")
    else:
        finish, hands = after.finish - before.finish, after.hands - before.hands
        yield _say("moves", finish=_way(finish), by=_span(finish), hands=_way(hands), hours=_span(hands))
        if found.let_in:  # more is done, so neither says anything of better or worse
            yield _say("let-in", steps=_steps(names, found.let_in))
        else:
            yield from _judged(shop, names, run, change, before, after)
        yield from _of_all(before, after, is_same_work=not found.let_in)
        if _is_short(after, run):
            yield _say("part")


def _of_all(before: Side, after: Side, is_same_work: bool) -> Iterator[str]:
    """What of all that is due is in time, and how long people are in the shop, and walk, for all that is open."""
    if after.lines:
        way = _more_or_less(after.in_time - before.in_time)
        yield _say("in-time", lines=after.lines, then=after.in_time, now=before.in_time, way=way)
    if is_same_work:
        presence, walks = after.presence - before.presence, after.walks - before.walks
        people = sum(bool(person.windows) for person in after.problem.people)
        yield _say(
            "presence", way=_way(presence), by=_span(presence), people=people, walking=_more_or_less(walks),
            walks=abs(walks),
        )  # fmt: skip


def _judged(shop: ShopNow, names: Names, run: str, change: Change, before: Side, after: Side) -> Iterator[str]:
    """What the move comes of, and how sure it is."""
    match _way(after.finish - before.finish), _way(after.hands - before.hands):
        case "same", more_or_less:
            yield from _why_no_earlier(shop, names, run, change, before, after)
            wins = after.in_time > before.in_time or before.presence - after.presence >= _A_MINUTE
            if more_or_less == "more" and not wins:
                yield _say("worse-hands")
        case "more", _:
            yield _say("worse" if after.bound - before.finish >= _A_MINUTE else "worse-found")
        case "less", "more":
            yield _say("more-hands")


def _why_no_earlier(shop: ShopNow, names: Names, run: str, change: Change, before: Side, after: Side) -> Iterator[str]:
    """That it has slack, or where what is won is lost; what holds the run; and whether that is sure."""
    is_quicker = isinstance(change, Times) and change.per_cent < 100
    operation, kind = (change.operation, change.kind) if isinstance(change, Times) else ("", "")
    slack = slack_of(after.problem, after.plan, is_part(after.plan, run, operation, kind), run)
    facts = {"operation": operation_name(names.runs[run], operation)}
    if slack.waits is not None:
        facts |= {"step": names.block_step(slack.waits), "at": names.tick(after.plan.placed[slack.waits].start)}
    if is_quicker and slack.is_off:
        yield _say("why-slack", **facts)
    if is_quicker and slack.is_lost:
        yield _say("why-lost", **facts)
    elif slack.waits is not None:
        yield _say("holds-hours", **facts)
    else:
        yield holds_sentence(names, shop.holds(after.problem, after.plan, run))
    if before.finish <= after.bound:
        yield _say("sure")
    elif not is_quicker or not (slack.is_off or slack.is_lost):
        yield _say("not-sure")


def _is_short(side: Side, run: str) -> bool:
    """Whether some of the run fits into no plan."""
    return any(out.run == run for out in side.problem.left_out)


def _steps(names: Names, some: Iterable[LeftOut]) -> str:
    return list_in_words(dict.fromkeys(names.step(out.run, out.step) for out in some))


def table_of(shop: ShopNow, found: Compared) -> Iterator[tuple[str, str, str]]:
    """(what, as it is, with the change), row by row; nothing where there is nothing to compare."""
    before, after = found.before, found.after
    if before is None or after is None or found.left_out or not before.finish or not after.finish:
        return
    sides = [(side, _names(shop, side)) for side in (before, after)]
    yield _row("finish", [names.tick(side.finish) for side, names in sides])
    if before.outlook is not None and after.outlook is not None:
        yield _row(
            "likely",
            [names.between(side.outlook.finish[25], side.outlook.finish[75]) for side, names in sides if side.outlook],
        )
        yield _row("late", [names.tick(side.outlook.finish[95]) for side, names in sides if side.outlook])
    yield _row("hands", [span_in_words(span_of(side.hands)) for side, _ in sides])
    if after.lines:
        yield _row("in-time", [_say("row-in-time-of", some=side.in_time, lines=side.lines) for side in (before, after)])
    yield _row("presence", [span_in_words(span_of(side.presence)) for side, _ in sides])
    yield _row("walks", [str(side.walks) for side, _ in sides])


def _row(name: str, cells: list[str]) -> tuple[str, str, str]:
    return _say(f"row-{name}"), cells[0], cells[1]


def _way(ticks: int) -> str:
    if abs(ticks) < _A_MINUTE:
        return "same"
    return "more" if ticks > 0 else "less"


def _more_or_less(count: int) -> str:
    return "same" if not count else "more" if count > 0 else "less"


def _span(ticks: int) -> str:
    return span_in_words(span_of(abs(ticks)))


def _names(shop: ShopNow, side: Side) -> Names:
    return Names(side.problem, shop.runs, shop.book, zone_of(shop.book.time_zone), side.problem.start)


def _say(name: str, **facts: Any) -> str:
    return sentence(f"try-{name}", facts)
