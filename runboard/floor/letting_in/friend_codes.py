"""A code that shows one review to somebody who is not paired: made by a lead, good for some days, taken back at any moment.

It opens that review and takes answers to it, and nothing else. Only its hash is kept, so it is shown once, when it is made.
"""

import hmac
import secrets
from collections.abc import Iterable
from dataclasses import asdict, dataclass, replace
from datetime import datetime, timedelta

from runboard.floor.changing.answers import Taken, take_answers
from runboard.floor.letting_in.devices import Door, digest_of
from runboard.floor.warm import find_run
from runboard.floor.workshop import KeptSettings, Workshop
from runboard.review.answers import AnswerSheet
from runboard.run.log.event import parse_moment, write_moment
from runboard.run.refusal import Refused

USUAL_DAYS, MOST_DAYS = 7, 30
MOST_SHEETS = 20  # that one code brings: a friend sends one, and perhaps a better one
MOST_OPEN = 20  # codes of the shop at a time
_MOST_KNOWN = 200  # with those that are over, so that they are told from what never was
_BYTES = 16  # 128 bits, which nobody guesses; wrong tries are counted all the same
_SETTING = "friend codes"


@dataclass(frozen=True)
class FriendCode:
    """``id`` names it where it opens nothing. ``names`` says whether the review is shown with people's names, ``sheets``
    how often answers came by it. Moments are texts, as they are kept."""

    id: str
    hash: str
    run: str
    made_at: str
    ends_at: str
    names: bool = False
    revoked_at: str = ""
    sheets: int = 0

    @property
    def until(self) -> datetime:
        return parse_moment(self.ends_at)

    def is_open(self, now: datetime) -> bool:
        """Whether it opens the review."""
        return not self.revoked_at and now < self.until


def make_friend_code(
    workshop: Workshop, settings: KeptSettings, run: str, days: int, names: bool = False
) -> tuple[str, FriendCode]:
    """(secret, code) that opens the review of a run for so many days; the secret is told nobody else.

    Refused 'run unknown', 'friend days', 'friend codes many'.
    """
    with workshop.lock:
        find_run(workshop, run)
        now = workshop.clock.now()
        if not 1 <= days <= MOST_DAYS:
            raise Refused("friend days", most=MOST_DAYS)
        here = _codes(settings)
        if sum(one.is_open(now) for one in here) >= MOST_OPEN:
            raise Refused("friend codes many", most=MOST_OPEN)
        secret = secrets.token_urlsafe(_BYTES)
        ends_at = write_moment(now + timedelta(days=days))
        made = FriendCode(secrets.token_hex(6), digest_of(secret), run, write_moment(now), ends_at, names)
        _put(settings, [*here, made])
    return secret, made


def friend_codes(settings: KeptSettings, run: str) -> list[FriendCode]:
    """The codes of a run's review, the newest first, those that are over among them."""
    return [one for one in reversed(_codes(settings)) if one.run == run]


def revoke_friend_code(workshop: Workshop, settings: KeptSettings, run: str, code: str) -> None:
    """It opens nothing from this moment on; one that was taken back already is no error. Refused 'friend code unknown'."""
    with workshop.lock:
        now, here = write_moment(workshop.clock.now()), _codes(settings)
        if not any((one.id, one.run) == (code, run) for one in here):
            raise Refused("friend code unknown")
        _put(settings, [replace(one, revoked_at=one.revoked_at or now) if one.id == code else one for one in here])


def open_by_code(
    workshop: Workshop, settings: KeptSettings, secret: str, door: Door | None = None, address: str = ""
) -> FriendCode:
    """The code of that secret, which opens its review now. Wrong ones count with those of pairing and of cards, where there
    is a ``door``. Refused 'friend too often', 'friend unknown', 'friend revoked', 'friend over'."""
    now = workshop.clock.now()
    if door and (minutes := door.tries.minutes_to_wait(address, now)):
        raise Refused("friend too often", minutes=minutes)
    wanted = digest_of(secret)
    same = [one for one in _codes(settings) if hmac.compare_digest(one.hash, wanted)]
    if not same:
        if door:
            door.tries.note_wrong(address, now)
        raise Refused("friend unknown")
    return _still_open(same[0], now)


def _still_open(code: FriendCode, now: datetime) -> FriendCode:
    if code.revoked_at:
        raise Refused("friend revoked")
    if not code.is_open(now):
        raise Refused("friend over", at=code.until)
    return code


def answer_by_code(workshop: Workshop, settings: KeptSettings, code: FriendCode, sheet: AnswerSheet) -> Taken:
    """Keep the answers that came by a code. Refused 'friend sheets many', as ``take_answers``, and where it is open no more."""
    with workshop.lock:
        here = _codes(settings)
        known = _still_open(next(one for one in here if one.id == code.id), workshop.clock.now())
        if known.sheets >= MOST_SHEETS:
            raise Refused("friend sheets many")
        taken = take_answers(workshop, settings, code.run, sheet)
        _put(settings, [replace(one, sheets=one.sheets + 1) if one.id == code.id else one for one in here])
    return taken


def _codes(settings: KeptSettings) -> list[FriendCode]:
    return [FriendCode(**one) for one in settings.get(_SETTING).get("codes", [])]


def _put(settings: KeptSettings, codes: Iterable[FriendCode]) -> None:
    settings.put(_SETTING, {"codes": [asdict(one) for one in codes][-_MOST_KNOWN:]})
