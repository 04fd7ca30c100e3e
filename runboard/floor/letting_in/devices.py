"""Who may ask: a device pairs by a code, is known by its session from then on, and can be revoked at any moment."""

import hashlib
import hmac
import secrets
import threading
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from typing import Protocol

from runboard.floor.letting_in.tries import Tries
from runboard.floor.pressing.access import GUEST, LEAD
from runboard.floor.workshop import Clock
from runboard.run.calls.device import Device, PairingCode, Session
from runboard.run.log.one_line import one_line
from runboard.run.refusal import NotStored, Refused

CODE_LASTS = timedelta(minutes=10)
# As long as a browser keeps a cookie; begun anew at each day of use.
SESSION_LASTS = timedelta(days=400)
RENEWED_AFTER = timedelta(days=1)
# The ways by which a device asks. By plain http whoever is on the network can read its secret along, and a lead's is all of
# the shop: so there it ends after a day without use.
HTTPS, HERE, HTTP = "https", "here", "http"
PLAIN_LASTS = timedelta(days=1)
SEEN_EVERY = timedelta(minutes=5)
# What another process did to a device (a copy of the data was put back) is known after this long.
FRESH_FOR = timedelta(seconds=20)
LONGEST_NAME = 60
_MOST_CODES = 20
_MOST_HELD = 500
# 32 signs that nobody takes for another, eight of them: 40 bits. What a guesser finds of them is counted out in ``tries``.
SIGNS = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"
CODE_SIGNS = 8
# Sixty bits: so many that no limit has to keep anybody from guessing. 600,000 tries, what a server can answer in ten
# minutes, find one with a chance of one in 1,900,000,000,000. So it is taken from an address that is shut out too.
CONSOLE_SIGNS = 12


class Devices(Protocol):
    """Where devices, sessions and codes are kept; each call is one transaction."""

    def devices(self) -> list[Device]: ...
    def device(self, device_id: str) -> Device | None: ...
    def session(self, hash_: str) -> Session | None: ...
    def codes(self, now: datetime) -> list[PairingCode]: ...
    def put_code(self, code: PairingCode, now: datetime, most: int) -> None: ...
    def pair(self, code: PairingCode, session: Session, now: datetime) -> bool: ...
    def begin(self, session: Session) -> bool: ...
    def extend(self, device_id: str, ends_at: datetime) -> bool: ...
    def ends(self) -> dict[str, datetime]: ...
    def rename(self, device_id: str, name: str) -> bool: ...
    def revoke(self, device_id: str, now: datetime) -> bool: ...
    def note_seen(self, session: Session, now: datetime) -> None: ...


@dataclass
class Door:
    """What the floor needs to let devices in. ``shut_out`` is told the id of each device whose session ended."""

    devices: Devices
    clock: Clock
    shut_out: Callable[[str], None] = lambda device: None
    tries: Tries = field(default_factory=Tries)
    held: dict[str, tuple[Session, datetime]] = field(default_factory=dict)
    turn: int = 0
    lock: threading.Lock = field(default_factory=threading.Lock)


def has_lead(door: Door) -> bool:
    """Whether a lead's device is paired."""
    return any(device.access == LEAD and device.revoked_at is None for device in door.devices.devices())


def make_code(door: Door, access: str, device: str = "") -> tuple[str, datetime]:
    """(code, until when) to pair one device with that access: a new one, or ``device`` under its id.

    A device has one such code at a time. Refused 'device unknown'.
    """
    if device and door.devices.device(device) is None:
        raise Refused("device unknown")
    return _make_code(door, access, CODE_SIGNS, device)


def make_console_code(door: Door) -> tuple[str, datetime]:
    """(code, until when) to pair a lead's device, for who sits at the shop's computer: longer, and taken from any
    address, whoever tried too often there."""
    return _make_code(door, LEAD, CONSOLE_SIGNS)


def _make_code(door: Door, access: str, signs: int, device: str = "") -> tuple[str, datetime]:
    code = "".join(secrets.choice(SIGNS) for _ in range(signs))
    now = door.clock.now()
    ends_at = now + CODE_LASTS
    door.devices.put_code(PairingCode(digest_of(code), access, ends_at, device), now, _MOST_CODES)
    return "-".join(code[at : at + 4] for at in range(0, signs, 4)), ends_at


def pair(door: Door, typed: str, name: str, address: str, token: str = "", *, way: str = "") -> tuple[str, Session]:
    """(secret, session) of the device that brings a code from ``address`` by that ``way`` ('' where it is not known yet).
    The secret is told nobody else.

    A ``token`` that it has from an earlier pairing, revoked or not, keeps its id. Refused 'pairing too often' and
    'pairing code wrong': never made, used up, or over.
    """
    now, tidy = door.clock.now(), _tidy(typed)
    minutes = door.tries.minutes_to_wait(address, now)
    may_try = not minutes or len(tidy) == CONSOLE_SIGNS
    code = _find(door.devices.codes(now), digest_of(tidy)) if may_try else None
    if code is not None:
        secret = secrets.token_urlsafe(32)
        device = _device_for(door, code, name, token, now)
        session = Session(digest_of(secret), device, now, now + _lasts(device.access, way), way)
        if door.devices.pair(code, session, now):
            forget(door, device.id)  # what was open with its earlier session
            return secret, session
    if minutes:
        raise Refused("pairing too often", minutes=minutes)
    door.tries.note_wrong(address, now)
    raise Refused("pairing code wrong")


def session_of(door: Door, token: str) -> Session | None:
    """The session that a secret opened once, over or not: what a device that is turned away is known by."""
    return door.devices.session(digest_of(token)) if token else None


def begin_session(door: Door, device: Device, ends_at: datetime) -> tuple[str, Session]:
    """(secret, session) of a device that is let in without a pairing code, under its id. Its earlier sessions end.

    Refused 'device revoked'.
    """
    secret = secrets.token_urlsafe(32)
    session = Session(digest_of(secret), device, door.clock.now(), ends_at)
    if not door.devices.begin(session):
        raise Refused("device revoked")
    forget(door, device.id)
    return secret, session


def was_revoked(door: Door, tokens: Iterable[str], device_id: str = "") -> bool:
    """Whether a browser was a device that is let in no more: known by the secrets that it has, of whatever session, and by
    the id that it was given."""
    sessions = [session_of(door, token) for token in tokens]
    known = [session.device for session in sessions if session] + [door.devices.device(device_id)]
    return any(device is not None and device.revoked_at is not None for device in known)


def who(door: Door, token: str, way: str = "") -> Session | None:
    """The session that a secret opens by that ``way``; None where there is none, or it is over, or its device revoked, or
    it came by https and asks without, or the other way round: then somebody else has its secret.

    It only reads: what asks again and again is answered from memory, which a revocation empties.
    """
    now = door.clock.now()
    key = digest_of(token)
    with door.lock:
        turn = door.turn
        session, read_at = door.held.get(key, (None, None))
    if session is None or read_at is None or now - read_at > FRESH_FOR:
        session = door.devices.session(key)
        _hold(door, session, now, turn)
    if session is None or session.device.revoked_at is not None or session.ends_at <= now:
        return None
    return session if not way or not session.way or (way == HTTPS) == (session.way == HTTPS) else None


def held_session(door: Door, token: str) -> Session | None:
    """The same without reading: None too for one that was not asked after lately."""
    session, _ = door.held.get(digest_of(token), (None, None))
    if session is None or session.device.revoked_at is not None or session.ends_at <= door.clock.now():
        return None
    return session


def note_seen(door: Door, session: Session, way: str = "") -> bool:
    """Note that a device asked by that ``way``, now and then; answers whether its session was renewed, to be told to the
    device."""
    now = door.clock.now()
    come = _come_by(session, way, now)
    seen_at = session.device.seen_at
    if come is session and seen_at is not None and now - seen_at < SEEN_EVERY:
        return False
    later = _renewed(come, now)
    renewed = later is not come
    with door.lock:
        turn = door.turn
    try:
        door.devices.note_seen(later, now)
    except NotStored:  # a full disk is no reason to answer nobody
        renewed = False
    # Held even if it could not be written, so that the disk is not tried at each request.
    _hold(door, replace(later, device=replace(later.device, seen_at=now)), now, turn)
    return renewed


def _lasts(access: str, way: str) -> timedelta:
    return PLAIN_LASTS if access == LEAD and way == HTTP else SESSION_LASTS


def _come_by(session: Session, way: str, now: datetime) -> Session:
    """The session as one that came by that way. What once came by plain http stays so: its secret may be known."""
    if not way or session.way in (way, HTTP):
        return session
    ends_at = min(session.ends_at, now + _lasts(session.device.access, way))
    return replace(session, way=way, ends_at=ends_at)


def _renewed(session: Session, now: datetime) -> Session:
    """The session begun anew, where it is time. A guest's hours are not made longer by using them."""
    access = session.device.access
    lasts = _lasts(access, session.way)
    if access == GUEST or (lasts == SESSION_LASTS and now - session.renewed_at < RENEWED_AFTER):
        return session
    return replace(session, renewed_at=now, ends_at=now + lasts)


def devices_shown(door: Door) -> list[Device]:
    """The devices as a lead sees them: those paired, then the revoked, each as last seen; guests stand elsewhere."""
    paired = (device for device in door.devices.devices() if device.access != GUEST)
    return sorted(paired, key=lambda device: device.revoked_at is not None)


def rename_device(door: Door, device_id: str, name: str) -> None:
    """Call a device something else. Refused 'device unknown', 'device nameless'."""
    tidy = tidy_name(name)
    if not tidy:
        raise Refused("device nameless")
    if not door.devices.rename(device_id, tidy):
        raise Refused("device unknown")
    _forget(door)


def revoke_device(door: Door, device_id: str) -> None:
    """Let a device in no more, from this moment on. Refused 'device unknown'."""
    if door.devices.device(device_id) is None:
        raise Refused("device unknown")
    door.devices.revoke(device_id, door.clock.now())
    forget(door, device_id)


def tidy_name(name: str) -> str:
    """A name without signs that cannot be seen, not longer than fits a row."""
    return one_line(name, LONGEST_NAME)


def new_device_id() -> str:
    """An id that a device keeps for good."""
    return secrets.token_hex(8)


def forget(door: Door, device_id: str) -> None:
    """What is known of this device is read anew, and its open streams end."""
    _forget(door)
    door.shut_out(device_id)


def _device_for(door: Door, code: PairingCode, name: str, token: str, now: datetime) -> Device:
    before = door.devices.session(digest_of(token)) if token else None
    known = door.devices.device(code.device) if code.device else before.device if before else None
    if known is not None:
        called = tidy_name(name) or known.name
        return replace(known, name=called, access=code.access, paired_at=now, revoked_at=None)
    return Device(new_device_id(), tidy_name(name) or "Unnamed", code.access, now)


def _find(codes: list[PairingCode], digest: str) -> PairingCode | None:
    """The code of that hash. Each is compared, in the time that it takes to compare all of both."""
    same = [code for code in codes if hmac.compare_digest(code.hash, digest)]
    return same[0] if same else None


def _tidy(typed: str) -> str:
    return "".join(sign for sign in typed.upper() if sign.isalnum())


def digest_of(secret: str) -> str:
    """What is kept of a secret, and compared."""
    return hashlib.sha256(secret.encode("utf-8", "surrogatepass")).hexdigest()


def _hold(door: Door, session: Session | None, now: datetime, turn: int) -> None:
    """Keep a session at hand, unless something changed since it was read."""
    with door.lock:
        if session is None or turn != door.turn:
            return
        if len(door.held) >= _MOST_HELD:
            door.held.clear()
        door.held[session.hash] = (session, now)


def _forget(door: Door) -> None:
    with door.lock:
        door.turn += 1
        door.held.clear()
