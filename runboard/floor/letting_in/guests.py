"""Guests come by a tray's card, stay for so many hours, and go: with the run, by the lead's press, or when time is over.

A card lets in as many phones as can work at a tray, and as come in an hour.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.floor.changing.runs import new_event
from runboard.floor.letting_in.devices import (
    Door,
    begin_session,
    forget,
    new_device_id,
    revoke_device,
    session_of,
    tidy_name,
    was_revoked,
)
from runboard.floor.letting_in.guest_rights import NotForGuest, guest_person
from runboard.floor.letting_in.travellers import (
    hours_of_access,
    read_keys,
    revoke_cards,
    tray_of_code,
    tray_of_token,
)
from runboard.floor.pressing.access import GUEST
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up
from runboard.floor.workshop import KeptSettings, Workshop
from runboard.run.calls.device import Device, Session
from runboard.run.change import replace
from runboard.run.refusal import NotStored, Refused

At = tuple[str, str]

_HOUR = timedelta(hours=1)
# A phone that was not heard of for an hour makes room: nobody is at the tray with it.
MOST_AT_A_TRAY = 12
MOST_AN_HOUR_AT_A_TRAY = 30
MOST_AN_HOUR = 100
# Each time that somebody comes is an event: a few at once, then one now and then.
_PRESSES_TO_COME = 10


@dataclass(frozen=True)
class Browser:
    """What a browser that brings a card has of earlier times: the secrets of its sessions, over or not, and the id of the
    device that it was at https, of which a card's plain address learns nothing else."""

    tokens: tuple[str, ...] = ()
    device: str = ""


NOBODY = Browser()


@dataclass(frozen=True)
class Guest:
    """A guest as the lead sees them: the device, what its tray is of, until when, and why it is over if it is."""

    device: Device
    run_name: str
    ends_at: datetime
    over: str


def find_tray(
    workshop: Workshop, door: Door, settings: KeptSettings, address: str, token: str = "", code: str = ""
) -> At:
    """The (run, tray) that a card's token or code opens. Refused 'card too often', 'card unknown', 'card over'."""
    now = door.clock.now()
    if minutes := door.tries.minutes_to_wait(address, now):
        raise NotForGuest("card too often", minutes=minutes)
    try:
        return tray_of_card(workshop, settings, token, code)
    except NotForGuest as refused:
        if refused.code == "card unknown":
            door.tries.note_wrong(address, now)
        raise


def tray_of_card(workshop: Workshop, settings: KeptSettings, token: str = "", code: str = "") -> At:
    """The same where nobody is kept from guessing. Refused 'card unknown', 'card over'."""
    catch_up(workshop)
    keys, runs = read_keys(settings), workshop.ledger.state.runs
    trays = [(run.id, tray) for run in runs.values() for tray in run.trays]
    found = tray_of_token(keys, trays, token) if token else tray_of_code(keys, trays, code)
    if found is None:
        raise NotForGuest("card unknown")
    if runs[found[0]].state != "open":
        raise NotForGuest("card over", run=runs[found[0]].name)
    return found


def admit(
    workshop: Workshop, door: Door, settings: KeptSettings, at: At, name: str, browser: Browser = NOBODY
) -> tuple[str, Session]:
    """(secret, session) of the guest who gives a name at a tray's card; they have come. A guest's phone keeps its id,
    and works this tray from now on.

    Refused 'guest nameless'; 'revoked' or 'hours over' for a phone that only the lead lets in again, whatever it was;
    'guest too many' where enough phones came to this tray, 'too fast' where this one comes again and again.
    """
    called = tidy_name(name)
    if not called:
        raise NotForGuest("guest nameless")
    if was_revoked(door, browser.tokens, browser.device):
        raise NotForGuest("guest revoked")
    now = door.clock.now()
    device, ends_at = _arriving(
        workshop, door, settings, Device("", called, GUEST, now, run=at[0], tray=at[1]), browser
    )
    with workshop.rates.sending(device.id, GUEST, _PRESSES_TO_COME, now):
        try:
            secret, session = begin_session(door, device, ends_at)
        except Refused:  # shut out in this very moment
            raise NotForGuest("guest revoked") from None
        came = new_event(workshop, "person came", {"name": called}, person=guest_person(device.id))
        record_events(workshop, [replace(came, device=device.id)])
    say_gone(workshop, door)
    return secret, session


def _arriving(
    workshop: Workshop, door: Door, settings: KeptSettings, device: Device, browser: Browser
) -> tuple[Device, datetime]:
    """The device under the id that it has or gets, and until when it is let in."""
    now, hours = device.paired_at, hours_of_access(settings)
    sessions = [session for token in browser.tokens if (session := session_of(door, token))]
    known = next((session for session in sessions if session.device.access == GUEST), None)
    if known is None:
        _check_room(door.devices.devices(), (device.run, device.tray), now)
        return replace(device, id=new_device_id()), now + hours
    over = why_over(workshop, known, now)
    if over in ("revoked", "hours over"):
        raise NotForGuest(f"guest {over}")
    return replace(device, id=known.device.id), now + hours if over else known.ends_at


def _check_room(devices: Iterable[Device], at: tuple[str, str], now: datetime) -> None:
    """Refused 'guest too many' where a phone that nobody knows may not come to the tray ``at`` (run, tray) now."""
    all_guests = [device for device in devices if device.access == GUEST]
    here = [device for device in all_guests if (device.run, device.tray) == at]
    heard = [
        device for device in here if device.revoked_at is None and now - (device.seen_at or device.paired_at) < _HOUR
    ]
    fresh = [device for device in all_guests if now - device.paired_at < _HOUR]
    at_tray = sum((device.run, device.tray) == at for device in fresh)
    if len(heard) >= MOST_AT_A_TRAY or at_tray >= MOST_AN_HOUR_AT_A_TRAY or len(fresh) >= MOST_AN_HOUR:
        raise NotForGuest("guest too many")


def let_anyone(workshop: Workshop, at: At, step: str, person: str) -> None:
    """Assign a step of a tray to nobody any more, so that a guest may do it; nothing where it is nobody's already."""
    with workshop.lock:
        catch_up(workshop)
        run, tray = at
        if f"{step}|{tray}" in workshop.ledger.state.runs[run].given:
            body = {"to": "", "trays": [tray], "look": False}
            record_events(
                workshop, [new_event(workshop, "operation given", body, run=run, operation=step, person=person)]
            )


def why_over(workshop: Workshop, session: Session, now: datetime) -> str:
    """Why a guest's access has ended: 'revoked', 'hours over', 'run over'; '' while it has not."""
    if session.device.revoked_at is not None:
        return "revoked"
    if session.ends_at <= now:
        return "hours over"
    catch_up(workshop)
    run = workshop.ledger.state.runs.get(session.device.run)
    return "" if run is not None and run.state == "open" else "run over"


def guests(workshop: Workshop, door: Door) -> Iterator[Guest]:
    """Everybody who came by a card, those who may still work first, then by name."""
    catch_up(workshop)
    now, ends, runs = door.clock.now(), door.devices.ends(), workshop.ledger.state.runs
    found = []
    for device in door.devices.devices():
        if device.access == GUEST:
            ends_at = ends.get(device.id, device.paired_at)
            over = why_over(workshop, Session("", device, device.paired_at, ends_at), now)
            run = runs.get(device.run)
            found.append(Guest(device, run.name if run else "", ends_at, over))
    yield from sorted(found, key=lambda guest: (guest.over != "", guest.device.name))


def revoke_guest(workshop: Workshop, door: Door, device_id: str) -> None:
    """Let a guest in no more, from this moment on. Refused 'device unknown'."""
    revoke_device(door, device_id)
    say_gone(workshop, door)


def revoke_tray(workshop: Workshop, door: Door, settings: KeptSettings, at: At) -> None:
    """What was printed for a tray opens it no more, and nobody who came by it is let in any longer."""
    revoke_cards(settings, at[0], [at[1]])
    for device in door.devices.devices():
        if device.access == GUEST and (device.run, device.tray) == at and device.revoked_at is None:
            revoke_device(door, device.id)
    say_gone(workshop, door)


def let_in_again(workshop: Workshop, door: Door, settings: KeptSettings, device_id: str) -> None:
    """A guest whose access has ended has the usual hours again, from now. Refused 'device unknown'."""
    device = door.devices.device(device_id)
    if device is None or device.access != GUEST:
        raise Refused("device unknown")
    if not door.devices.extend(device_id, door.clock.now() + hours_of_access(settings)):
        raise Refused("device unknown")
    forget(door, device_id)
    came = new_event(workshop, "person came", {"name": device.name}, person=guest_person(device_id))
    record_events(workshop, [replace(came, device=device_id)])


def leave(workshop: Workshop, door: Door, session: Session) -> None:
    """A guest goes by their own press. Refused 'watch first', 'rags first' where they may not yet."""
    went = new_event(workshop, "person went", {}, person=guest_person(session.device.id))
    record_events(workshop, [replace(went, device=session.device.id)])
    revoke_device(door, session.device.id)


def say_gone(workshop: Workshop, door: Door) -> None:
    """Whoever's access has ended is in the shop no more, as far as anybody was told."""
    state = workshop.ledger.state
    here = {key for key, person in state.people.items() if person.came_at is not None}
    for guest in guests(workshop, door):
        person = guest_person(guest.device.id)
        if guest.over and person in here:
            try:
                record_events(workshop, [new_event(workshop, "person went", {}, person=person)])
            except (Refused, NotStored):  # they stay on the list of who is there, which is no reason to fail
                continue
