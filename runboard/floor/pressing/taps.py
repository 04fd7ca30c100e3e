"""Presses from phones: each is accepted, already known, or refused with its reason. A batch twice counts once.

What a batch says is read before anything is looked up for it; of a refused press is kept as much as tells what it was,
and no more, whatever a sender puts in it.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from runboard.floor.letting_in.guest_rights import check_guest
from runboard.floor.pressing.access import GUEST, LEAD, check_access
from runboard.floor.pressing.batch import Batch, by_the_shops_clock, corrected, read_batch
from runboard.floor.workshop import LogWrite, Workshop
from runboard.floor.writing import writing
from runboard.run.change import replace
from runboard.run.fold.decide import decide
from runboard.run.fold.record import dump, plain
from runboard.run.log.ahead import check_not_ahead
from runboard.run.log.corrections import press_of
from runboard.run.log.event import VERSION, Event, write_moment
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused

Answer = dict[str, Any]

# What one transaction takes of a batch, so that others wait no longer than for a press of their own. A press that lies
# back costs as many events as came after it, so the time counts too.
MOST_A_SLICE = 10
LONGEST_SLICE = timedelta(milliseconds=40)
# Signs of JSON of one press, but of what a run is, which may be long; and as many as are kept of a refused one.
MOST_SIGNS = 64_000
_LONG_KINDS = ("run opened", "route revised", "orders changed", "event amended")
_MOST_KEPT = 4000
_LONGEST_TEXT = 300
_MOST_FACTS = 20
_ENVELOPE = ("id", "kind", "at", "run", "load", "tray", "operation", "station", "person", "device", "seen", "basis")


@dataclass(frozen=True)
class Sender:
    """The device that sends, and what it may: its access, and for a guest the (run, tray) that its card opened.

    Without ``device`` a batch says itself which one it is from: only where no device is asked who it is.
    """

    device: str = ""
    access: str = LEAD
    at: tuple[str, str] = ("", "")


@dataclass(frozen=True)
class Tap:
    """One record as it came, its id ('' where it has none), and the event that it says, or why it says none."""

    record: object
    id: str
    said: Event | Refused


def take_taps(workshop: Workshop, raw: object, device: str = "", access: str = LEAD) -> dict[str, Any]:
    """Take a batch from a device that works anywhere. See ``take_taps_of``."""
    return take_taps_of(workshop, raw, Sender(device, access))


def take_taps_of(workshop: Workshop, raw: object, sender: Sender) -> dict[str, Any]:
    """Take a batch ``{"device", "sent_at", "taps": [event, …]}``.

    Returns ``{"now", "seq", "taps": [{"id", "answer", "code"?, "facts"?}]}`` in the batch's order. Raises Refused
    'batch form' where it is no batch; then nothing is stored. It is taken in slices, between which others get their
    turn. Where one of them is not stored (``NotStored``), those before it are: sent again, they are known. Refused
    'too fast' where the sender has to wait; nothing is stored, and it keeps them.
    """
    batch = read_batch(raw, sender.device)
    sender = replace(sender, device=batch.device)
    now = workshop.clock.now()
    with workshop.rates.sending(sender.device, sender.access, len(batch.taps), now):
        answers, seq = _take_all(workshop, _read_all(batch, now), sender)
    return {"now": write_moment(workshop.clock.now()), "seq": seq, "taps": answers}


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
        return [_accept(workshop, write, replace(event, seen=workshop.ledger.last_seq), now) for event in events]


def _take_all(workshop: Workshop, taps: Sequence[Tap], sender: Sender) -> tuple[list[Answer], int]:
    answers: list[Answer] = []
    while True:
        taken, seq = _take_slice(workshop, taps[len(answers) :], sender)
        answers += taken
        if len(answers) >= len(taps):
            return answers, seq
        workshop.lock.give_way()
        workshop.log.give_way()


def _take_slice(workshop: Workshop, taps: Sequence[Tap], sender: Sender) -> tuple[list[Answer], int]:
    """The answers to the first of these, in one transaction: to so many, or for so long, as others may wait. And the
    number of the last event then."""
    answers: list[Answer] = []
    with writing(workshop) as (write, now):
        for at, tap in enumerate(taps):
            is_full = at >= MOST_A_SLICE or workshop.clock.now() - now >= LONGEST_SLICE
            if at and is_full and not _belong_together(taps[at - 1], tap):
                break
            answers.append(_answer(workshop, write, tap, sender, now))
        seq = workshop.ledger.last_seq
    return answers, seq


def _belong_together(tap: Tap, other: Tap) -> bool:
    """Whether two are of one press, of which nobody should see a half."""
    both = isinstance(tap.said, Event) and isinstance(other.said, Event)
    return both and press_of(tap.id) == press_of(other.id)


def _answer(workshop: Workshop, write: LogWrite, tap: Tap, sender: Sender, now: datetime) -> Answer:
    if isinstance(tap.said, Refused):
        return _refuse(write, tap, tap.said, now, sender.device)
    before = write.known([tap.id]).get(tap.id)
    if before is not None:
        said = {"code": before.code, "facts": dict(before.facts)} if before.answer == "refused" else {}
        return {"id": tap.id, "answer": "refused" if said else "known", **said}
    try:
        return _accept(workshop, write, _allowed(workshop, tap.said, sender), now)
    except Refused as refusal:
        return _refuse(write, tap, refusal, now, sender.device)


def _allowed(workshop: Workshop, event: Event, sender: Sender) -> Event:
    """The event, if its sender may make it."""
    ledger = workshop.ledger
    check_access(sender.access, event, ledger.arrived)
    if sender.access != GUEST:
        return event
    check_guest(ledger.state, workshop.book, event, sender.device, sender.at, ledger.arrived)
    # What a guest pressed without a network is judged by the rules all the same, and nobody has to settle it for them.
    return replace(event, seen=ledger.last_seq)


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


def _refuse(write: LogWrite, tap: Tap, refusal: Refused, now: datetime, device: str) -> Answer:
    facts = _cut_facts(plain(refusal.facts))
    if tap.id and len(tap.id) <= 80 and isinstance(tap.record, Mapping):
        write.refuse(_cut_record({**tap.record, "id": tap.id}), refusal.code, facts, now, device)
    return {"id": tap.id, "answer": "refused", "code": refusal.code, "facts": facts}


# what a batch says


def _read_all(batch: Batch, now: datetime) -> list[Tap]:
    """Each record of the batch in its order, read at ``now``."""
    read = [_read(record, batch, now) for record in batch.taps]
    placed = iter(corrected([tap.said for tap in read if isinstance(tap.said, Event)], now))
    return [replace(tap, said=next(placed)) if isinstance(tap.said, Event) else tap for tap in read]


def _read(record: object, batch: Batch, now: datetime) -> Tap:
    named = record.get("id") if isinstance(record, Mapping) else None
    id_ = named if isinstance(named, str) else ""
    try:
        _check_size(record)
        event = check_form(by_the_shops_clock(record, batch.sent_at, now))
        return Tap(record, id_, replace(event, device=batch.device, seq=0, v=VERSION))
    except Refused as refusal:
        return Tap(record, id_, refusal)


def _check_size(record: object) -> None:
    """Refused 'press too large'. What a run is may be long; a press is not."""
    is_long = isinstance(record, Mapping) and record.get("kind") in _LONG_KINDS
    if not is_long and len(dump(record)) > MOST_SIGNS:
        raise Refused("press too large", most=MOST_SIGNS)


# what is kept of a refused press


def _cut_record(record: Mapping[str, Any]) -> dict[str, Any]:
    """The record, in at most so many signs of JSON; of a longer one its envelope and how long it was, as ``cut``."""
    length = len(dump(record))
    if length <= _MOST_KEPT:
        return dict(record)
    envelope = {name: record[name] for name in _ENVELOPE if isinstance(record.get(name), (str, int))}
    return {name: _cut(value, 80) for name, value in envelope.items()} | {"cut": length}


def _cut_facts(facts: Mapping[str, Any]) -> dict[str, Any]:
    """A refusal's facts, each short enough for a sentence: the same are kept and told."""
    return {name: _cut(value, _LONGEST_TEXT) for name, value in list(facts.items())[:_MOST_FACTS]}


def _cut(value: Any, most: int, depth: int = 3) -> Any:
    if isinstance(value, str):
        return value if len(value) <= most else value[: most - 1] + "…"
    if isinstance(value, (list, Mapping)) and not depth:
        return None
    if isinstance(value, list):
        return [_cut(part, most, depth - 1) for part in value[:_MOST_FACTS]]
    if isinstance(value, Mapping):
        return {str(key)[:most]: _cut(part, most, depth - 1) for key, part in list(value.items())[:_MOST_FACTS]}
    return value
