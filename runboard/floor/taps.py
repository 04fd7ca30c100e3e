"""Presses from phones: each is accepted, already known, or refused with its reason. A batch twice counts once."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from runboard.floor.access import GUEST, LEAD, check_access
from runboard.floor.batch import Batch, by_the_shops_clock, corrected, read_batch
from runboard.floor.guest_rights import check_guest
from runboard.floor.workshop import LogWrite, Workshop
from runboard.floor.writing import writing
from runboard.run.ahead import check_not_ahead
from runboard.run.change import replace
from runboard.run.decide import decide
from runboard.run.event import VERSION, Event, write_moment
from runboard.run.form import check_form
from runboard.run.record import plain
from runboard.run.refusal import Refused

Answer = dict[str, Any]


@dataclass(frozen=True)
class Sender:
    """The device that sends, and what it may: its access, and for a guest the (run, tray) that its card opened.

    Without ``device`` a batch says itself which one it is from: only where no device is asked who it is.
    """

    device: str = ""
    access: str = LEAD
    at: tuple[str, str] = ("", "")


def take_taps(workshop: Workshop, raw: object, device: str = "", access: str = LEAD) -> dict[str, Any]:
    """Take a batch from a device that works anywhere. See ``take_taps_of``."""
    return take_taps_of(workshop, raw, Sender(device, access))


def take_taps_of(workshop: Workshop, raw: object, sender: Sender) -> dict[str, Any]:
    """Take a batch ``{"device", "sent_at", "taps": [event, …]}``.

    Returns ``{"now", "seq", "taps": [{"id", "answer", "code"?, "facts"?}]}`` in the batch's order. Raises Refused
    'batch form' where it is no batch; then nothing is stored.
    """
    batch = read_batch(raw, sender.device)
    with writing(workshop) as (write, now):
        answers = _answer_all(workshop, write, batch, now, sender)
        seq = workshop.ledger.last_seq
    return {"now": write_moment(now), "seq": seq, "taps": answers}


def why_refused(workshop: Workshop, event: Event, sender: Sender) -> Refused | None:
    """Why an up-to-date press of this sender would be refused now; nothing is stored."""
    try:
        decide(workshop.ledger, _allowed(workshop, replace(event, seen=workshop.ledger.last_seq), sender))
    except Refused as refused:
        return refused
    return None


def record_events(workshop: Workshop, events: list[Event]) -> list[Answer]:
    """Take events that the server itself or a command makes, as an up-to-date press. Raises Refused at the first
    that is refused, and then stores none."""
    with writing(workshop) as (write, now):
        return [_accept(workshop, write, replace(one, seen=workshop.ledger.last_seq), now) for one in events]


def _answer_all(workshop: Workshop, write: LogWrite, batch: Batch, now: datetime, sender: Sender) -> list[Answer]:
    formed, answers = _formed(batch, write, now)
    known = write.known([event.id for event in formed.values()])
    for at, event in formed.items():
        before = known.get(event.id)
        if before is not None:
            answers[at] = {"id": event.id, "answer": "known"}
            if before.answer == "refused":
                answers[at] |= {"answer": "refused", "code": before.code, "facts": dict(before.facts)}
            continue
        try:
            answers[at] = _accept(workshop, write, _allowed(workshop, event, sender), now)
        except Refused as refusal:
            answers[at] = _refuse(write, batch.taps[at], event.id, refusal, now)
        known |= write.known([event.id])
    return [answers[at] for at in range(len(batch.taps))]


def _allowed(workshop: Workshop, event: Event, sender: Sender) -> Event:
    """The event, if its sender may make it."""
    ledger = workshop.ledger
    check_access(sender.access, event, ledger.arrived)
    if sender.access != GUEST:
        return event
    check_guest(ledger.state, workshop.book, event, sender.device, sender.at, ledger.arrived)
    # What a guest pressed without a network is judged by the rules all the same, and nobody has to settle it for them.
    return replace(event, seen=ledger.last_seq)


def _formed(batch: Batch, write: LogWrite, now: datetime) -> tuple[dict[int, Event], dict[int, Answer]]:
    """The taps that are events, with their moments corrected; and the answers to those that are none."""
    formed: dict[int, Event] = {}
    answers: dict[int, Answer] = {}
    for at, record in enumerate(batch.taps):
        try:
            event = check_form(by_the_shops_clock(record, batch.sent_at, now))
            formed[at] = replace(event, device=batch.device, seq=0, v=VERSION)
        except Refused as refusal:
            named = record.get("id") if isinstance(record, Mapping) else None
            answers[at] = _refuse(write, record, named if isinstance(named, str) else "", refusal, now)
    return dict(zip(formed, corrected(list(formed.values()), now), strict=True)), answers


def _accept(workshop: Workshop, write: LogWrite, event: Event, now: datetime) -> Answer:
    check_not_ahead(event, now)
    trial = decide(workshop.ledger, event)
    check_not_ahead(trial.event, now)  # a blind press counts from the opening of its run, which may itself lie ahead
    seq = write.append(trial.event, now)
    workshop.ledger.keep(trial, seq)
    answer: Answer = {"id": event.id, "answer": "accepted"}
    entry = trial.state.unsettled.get(event.id)
    if entry is not None:
        answer |= {"to_settle": True, "code": entry.code, "facts": plain(entry.facts)}
    return answer


def _refuse(write: LogWrite, record: object, event_id: str, refusal: Refused, now: datetime) -> Answer:
    facts = plain(refusal.facts)
    if event_id and len(event_id) <= 80 and isinstance(record, Mapping):
        write.refuse({**record, "id": event_id}, refusal.code, facts, now)
    return {"id": event_id, "answer": "refused", "code": refusal.code, "facts": facts}
