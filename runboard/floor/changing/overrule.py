"""Overruling what was learned of how long something takes: a person says it, with a reason; what is measured later moves it."""

import re
from collections.abc import Iterable
from datetime import timedelta

from runboard.floor.changing.runs import new_event
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.plan.change import KINDS_OF_TIME
from runboard.plan.observed import guess_of, is_likely
from runboard.run.fold.route import Route, Step
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from runboard.shop.durations import parse_duration
from runboard.shop.problem import Unreadable

_STOPWATCH = re.compile(r"(\d{1,4}):([0-5]\d)")


def length_said(text: str) -> timedelta:
    """A time element as one types it: '2 min 30 s', '2.5' (minutes), and '2:45' as a stopwatch shows it, minutes and seconds.
    Refused 'time wrong'."""
    shown = _STOPWATCH.fullmatch(text.strip())
    if shown:
        return timedelta(minutes=int(shown[1]), seconds=int(shown[2]))
    try:
        return parse_duration(text)
    except Unreadable:
        raise Refused("time wrong") from None


def is_far_off(length: timedelta, known: Iterable[timedelta | None]) -> bool:
    """Whether a length is like nothing that is believed or was measured, so that it was likely typed wrong."""
    lengths = [each for each in known if each]
    return bool(lengths) and not any(is_likely(each, length) for each in lengths)


def overrule_time(
    workshop: Workshop,
    product: str,
    step: str,
    kind: str,
    minutes: float,
    why: str,
    person: str = "",
    device: str = "server",
) -> Event:
    """From now on this time element of a product takes so many minutes: of a load, for hand time of a piece. Taken back like
    any press, by an 'event undone' that names what is returned.

    Refused 'product unknown', 'step unknown', 'time not on route' where the route asks for no such time, 'why missing', 'form'
    where the minutes are none or too many.
    """
    if not why.strip():
        raise Refused("why missing")
    with workshop.lock:
        catch_up(workshop)
        found = _step(workshop, product, step)
        if kind not in KINDS_OF_TIME or not guess_of(found, kind):
            raise Refused("time not on route", step=found.name)
        body = {"of": product, "step": step, "kind": kind, "minutes": minutes, "why": why.strip()}
        event = new_event(workshop, "time overruled", body, person=person, device=device)
        record_events(workshop, [event])
    return event


def take_back_time(workshop: Workshop, said: str, person: str = "") -> None:
    """What somebody said of a time, by its event, never was. Refused 'time taken back' where it stands no more."""
    with workshop.lock:
        catch_up(workshop)
        if not any(one.event == said for some in workshop.ledger.state.overruled.values() for one in some):
            raise Refused("time taken back")
        record_events(workshop, [new_event(workshop, "event undone", {"event": said}, person=person, device="server")])


def _step(workshop: Workshop, product: str, step: str) -> Step:
    """The step as the book has it, else as the newest run that was made of the product."""
    runs = [run for run in workshop.ledger.state.runs.values() if run.product == product]
    routes = [run.route for run in sorted(runs, key=lambda run: run.opened_at, reverse=True)]
    known = workshop.book.product(product)
    if known is not None:
        routes.insert(0, Route(known))
    if not routes:
        raise Refused("product unknown", product=product)
    found = next((found for route in routes if (found := route.step(step)) is not None), None)
    if found is None:
        raise Refused("step unknown", step=step, tray="")
    return found
