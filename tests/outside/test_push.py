"""What the shop sends to push services, as it arrives there, held to RFC 8291, 8188, 8292 and 8030.

``post`` is the product's own: it is given the keys, the salt and the text of the example of RFC 8291 (section 5 and appendix
A), and a service on this computer keeps what came.
"""

import json
import time
from functools import cache
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import http_ece
import pytest
from cryptography.hazmat.primitives.asymmetric import ec
from py_vapid import Vapid02

from runboard.alerts import push_service
from runboard.alerts.push_service import KEPT_SECONDS, PushKey, post, topic
from runboard.run.calls.push import Subscription, read_subscription
from runboard.run.refusal import Refused
from tests.conftest import START
from tests.outside.said import from_memory, published
from tests.push_service import Got, PushService, raw, text

# As printed in the RFC.
PLAIN = "V2hlbiBJIGdyb3cgdXAsIEkgd2FudCB0byBiZSBhIHdhdGVybWVsb24"
AS_PRIVATE = "yfWPiYE-n46HLnH0KqZOF1fJJU3MYrct3AELtAQ-oRw"
AS_PUBLIC = "BP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A8"
UA_PUBLIC = "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4"
UA_PRIVATE = "q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94"
SALT = "DGv6ra1nlYgDCS1FRnbzlw"
AUTH = "BTBZMqHH6r4Tts7J_aSIgg"
HEADER = "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A8"
CIPHERTEXT = "8pfeW0KbunFT06SuDKoJH9Ql87S1QUrdirN6GcG7sFz1y1sqLgVi1VhjVkHsUoEsbI_0LpXMuGvnzQ"
ALERT = "machine end|r1|cut/1|1"


def private(written: str) -> ec.EllipticCurvePrivateKey:
    return ec.derive_private_key(int.from_bytes(raw(written), "big"), ec.SECP256R1())


class Keeping(PushService):
    """A service that keeps what came as it is."""

    def take(self, path: str, headers: dict[str, str], body: bytes) -> None:
        self.got.append(Got(path, headers, body, {}))


def shop_key() -> PushKey:
    return PushKey(Path(), lambda _path, _pem: False, private(AS_PRIVATE))


def send(message: dict[str, str]) -> tuple[Got, str]:
    """(what came, the service's origin), posted by the product to the phone of the example."""
    service = Keeping()
    try:
        record = {"endpoint": f"{service.address}/push/JzLQ3", "keys": {"p256dh": UA_PUBLIC, "auth": AUTH}}
        assert post(shop_key(), read_subscription(record, "phone", START, True), message, True) == ("sent", "")
        (got,) = service.got
        return got, service.address
    finally:
        service.close()


@cache
def the_example() -> tuple[Got, str]:
    """Of the example's text, with the example's sender's key and salt where chance would choose them."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(push_service, "json", SimpleNamespace(dumps=lambda *_, **__: raw(PLAIN).decode()))
        patch.setattr(
            "pywebpush.ec",
            SimpleNamespace(SECP256R1=ec.SECP256R1, generate_private_key=lambda *_: private(AS_PRIVATE)),
        )
        patch.setattr("http_ece.os", SimpleNamespace(urandom=lambda count: raw(SALT)[:count]))
        return send({"id": ALERT})


@published(
    "RFC 8291, 5 and appendix A",
    {
        "salt": SALT,
        "record size": 4096,
        "key length": 65,
        "as_public": AS_PUBLIC,
        "header": HEADER,
        "ciphertext": CIPHERTEXT,
        "length": 144,
    },
)
def test_the_example_is_sent_byte_for_byte(part: str) -> Any:
    got, _ = the_example()
    body = got.body
    return {
        "salt": text(body[:16]),
        "record size": int.from_bytes(body[16:20], "big"),
        "key length": body[20],
        "as_public": text(body[21:86]),
        "header": text(body[:86]),
        "ciphertext": text(body[86:]),
        "length": len(body),
    }[part]


@from_memory("RFC 8291, 4; RFC 8188, 2: the content coding", {"content-encoding": "aes128gcm"})
def test_the_coding_is_named(header: str) -> str:
    return the_example()[0].headers[header]


@from_memory(
    "RFC 8291, 3.1 and 3.2: an uncompressed point of P-256, 65 octets; a secret of 16",
    {
        (UA_PUBLIC, AUTH): True,
        (text(raw(UA_PUBLIC)[:-1]), AUTH): False,
        (text(b"\x02" + raw(UA_PUBLIC)[1:]), AUTH): False,
        (UA_PUBLIC, text(raw(AUTH)[:-1])): False,
        (UA_PUBLIC, text(raw(AUTH) + b"\x00")): False,
    },
)
def test_keys_of_that_form_alone_are_taken(p256dh: str, auth: str) -> bool:
    record = {"endpoint": "https://push.example.net/push/JzLQ3", "keys": {"p256dh": p256dh, "auth": auth}}
    try:
        return read_subscription(record, "phone", START).p256dh == p256dh
    except Refused:
        return False


def test_what_the_shop_says_is_read_by_the_phone_of_the_example_and_by_no_other_secret() -> None:
    message = {"id": ALERT, "says": "The laser has ended – tray 3"}

    got, _ = send(message)

    read = http_ece.decrypt(got.body, private_key=private(UA_PRIVATE), auth_secret=raw(AUTH), version="aes128gcm")
    assert json.loads(read) == message
    with pytest.raises(http_ece.ECEException):
        http_ece.decrypt(got.body, private_key=private(UA_PRIVATE), auth_secret=raw(SALT), version="aes128gcm")


def test_two_messages_share_neither_salt_nor_key() -> None:
    one, other = send({"id": ALERT})[0].body, send({"id": ALERT})[0].body

    assert one[:16] != other[:16] and one[21:86] != other[21:86]


def signed() -> tuple[str, dict[str, str]]:
    """(scheme, its parameters) of what proves who sends: ``vapid t=…, k=…``."""
    scheme, _, rest = the_example()[0].headers["authorization"].partition(" ")
    return scheme, dict(part.strip().split("=", 1) for part in rest.split(","))


@published(
    "RFC 8292, 2 and 3",
    {"scheme": "vapid", "typ": "JWT", "alg": "ES256", "k": AS_PUBLIC, "key length": 65, "first byte": 4},
)
def test_the_sender_says_who_it_is(part: str) -> Any:
    scheme, parameters = signed()
    head = json.loads(raw(parameters["t"].split(".")[0]))
    point = raw(parameters["k"])
    return {"scheme": scheme, "k": parameters["k"], "key length": len(point), "first byte": point[0], **head}[part]


@from_memory("RFC 8292, 2: the audience is the service's origin; it ends within 24 h", {"aud": True, "exp": True})
def test_the_claims_are_those_of_this_service_and_not_for_long(claim: str) -> bool:
    got, origin = the_example()
    said = got.claims()
    assert said["sub"].startswith(("mailto:", "https://"))
    return {"aud": said["aud"] == origin, "exp": 0 < said["exp"] - time.time() <= 24 * 3600}[claim]


def test_the_signature_is_the_shops() -> None:
    assert Vapid02.verify(the_example()[0].headers["authorization"])


@from_memory(
    "RFC 8030, 5.2 and 5.3: how long it is kept is said, urgency is one of four words", {"ttl": True, "urgency": True}
)
def test_how_long_and_how_urgent_are_said(header: str) -> bool:
    said = the_example()[0].headers[header]
    return said == str(KEPT_SECONDS) if header == "ttl" else said in ("very-low", "low", "normal", "high")


def test_it_is_kept_for_longer_than_an_instant_and_not_for_an_hour() -> None:
    assert 0 < int(the_example()[0].headers["ttl"]) <= 3600


def test_a_topic_is_as_rfc_8030_wants_it_and_tells_nothing() -> None:
    # 5.4: at most 32 of base64url's signs (from memory).
    one = Subscription("phone", "https://push.example", UA_PUBLIC, AUTH, START)
    other = Subscription("other", "https://push.example", UA_PUBLIC, SALT, START)

    name = the_example()[0].headers["topic"]

    assert len(name) <= 32 and not set(name) - set("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_")
    assert name == topic(one, ALERT) != topic(one, "machine end|r1|cut/1|2")
    assert name != topic(other, ALERT)
