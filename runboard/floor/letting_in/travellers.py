"""What opens a tray to somebody with its card: an address with a token, and a short code to type when the card is oily.

Both are made from the shop's one secret, the run, the tray and a number that a revocation raises. So a card printed again
says the same, and nothing that is secret is kept for each tray.
"""

import hmac
import json
import secrets
from base64 import urlsafe_b64encode
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import timedelta

from runboard.floor.letting_in.devices import SIGNS
from runboard.floor.workshop import KeptSettings

HOURS = 8.0  # how long a helper's access lasts where the lead set nothing else
MOST_HOURS = 24.0 * 14
_SETTING = "travellers"
_TOKEN_BYTES = 12  # 96 bits
_CODE_SIGNS = 8  # 40 bits, of which a few hundred tries in ten minutes find nothing


@dataclass(frozen=True)
class Keys:
    """The secret, and for the trays whose cards were revoked how often."""

    secret: bytes
    series: Mapping[str, Mapping[str, int]]


@dataclass(frozen=True)
class TravellerLink:
    """What stands on a tray's card: ``path`` follows the server's plain address (``/t/…``), ``code`` is typed at ``/t``."""

    path: str
    code: str


def read_keys(settings: KeptSettings) -> Keys:
    """The keys of the shop's travellers; the secret is made when it is first asked for."""
    record = settings.get(_SETTING)
    if "secret" not in record:
        record = settings.put_first(_SETTING, {"secret": secrets.token_hex(32)})
    return Keys(bytes.fromhex(record["secret"]), record.get("series", {}))


def traveller_link(keys: Keys, run: str, tray: str) -> TravellerLink:
    """The address and the code of a tray's card, the same at each printing until they are revoked."""
    return TravellerLink(f"/t/{_token(keys, run, tray)}", _code(keys, run, tray))


def tray_of_token(keys: Keys, trays: Iterable[tuple[str, str]], token: str) -> tuple[str, str] | None:
    """The (run, tray) of these that a token opens. Each is compared, in the time that it takes to compare all of both."""
    return _find(((tray, _token(keys, *tray)) for tray in trays), token)


def tray_of_code(keys: Keys, trays: Iterable[tuple[str, str]], typed: str) -> tuple[str, str] | None:
    """The (run, tray) of these that a typed code opens, in whatever case and with whatever between its signs."""
    tidy = "".join(sign for sign in typed.upper() if sign.isalnum())
    return _find(((tray, _code(keys, *tray).replace("-", "")) for tray in trays), tidy)


def revoke_cards(settings: KeptSettings, run: str, trays: Iterable[str]) -> None:
    """What is printed for these trays opens nothing any more; what is printed from now on does."""
    read_keys(settings)  # there must be a secret whose cards are revoked
    record = settings.get(_SETTING)
    series = record.setdefault("series", {}).setdefault(run, {})
    for tray in trays:
        series[tray] = series.get(tray, 0) + 1
    settings.put(_SETTING, record)


def hours_of_access(settings: KeptSettings) -> timedelta:
    """How long a helper's access lasts, from when they gave their name."""
    return timedelta(hours=settings.get(_SETTING).get("hours", HOURS))


def hours_in_words(settings: KeptSettings) -> str:
    """The same as a number of hours: '8' or '2.5'."""
    return f"{hours_of_access(settings).total_seconds() / 3600:g}"


def set_hours(settings: KeptSettings, hours: float) -> None:
    """For those who come from now on. ValueError where it is no time that a card may hold."""
    if not 0 < hours <= MOST_HOURS:
        raise ValueError(f"a helper's access lasts up to {MOST_HOURS:g} hours")
    read_keys(settings)
    settings.put(_SETTING, {**settings.get(_SETTING), "hours": hours})


def _find(known: Iterable[tuple[tuple[str, str], str]], said: str) -> tuple[str, str] | None:
    wanted = said.encode("utf-8", "surrogatepass")
    same = [tray for tray, secret in known if hmac.compare_digest(secret.encode(), wanted)]
    return same[0] if same else None


def _token(keys: Keys, run: str, tray: str) -> str:
    return urlsafe_b64encode(_digest(keys, "token", run, tray)[:_TOKEN_BYTES]).decode()


def _code(keys: Keys, run: str, tray: str) -> str:
    digest = _digest(keys, "code", run, tray)
    signs = "".join(SIGNS[byte % len(SIGNS)] for byte in digest[:_CODE_SIGNS])
    return f"{signs[:4]}-{signs[4:]}"


def _digest(keys: Keys, what: str, run: str, tray: str) -> bytes:
    series = keys.series.get(run, {}).get(tray, 0)
    return hmac.digest(keys.secret, json.dumps([what, run, tray, series]).encode(), "sha256")
