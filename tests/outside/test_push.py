"""What is sent to push services, held to the RFCs: the example of 8291, and the signature that 8292 asks for."""

import base64
import time
from typing import Any

import http_ece
from cryptography.hazmat.primitives.asymmetric import ec
from py_vapid import Vapid, Vapid02

from runboard.alerts.push_service import CONTACT, KEPT_SECONDS, topic
from runboard.run.push import Subscription, read_subscription
from tests.conftest import START

# RFC 8291, section 5 and appendix A, as printed there.
PLAIN = "V2hlbiBJIGdyb3cgdXAsIEkgd2FudCB0byBiZSBhIHdhdGVybWVsb24"
AS_PRIVATE = "yfWPiYE-n46HLnH0KqZOF1fJJU3MYrct3AELtAQ-oRw"
UA_PUBLIC = "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4"
UA_PRIVATE = "q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94"
SALT = "DGv6ra1nlYgDCS1FRnbzlw"
AUTH = "BTBZMqHH6r4Tts7J_aSIgg"
HEADER = "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A8"
CIPHERTEXT = "8pfeW0KbunFT06SuDKoJH9Ql87S1QUrdirN6GcG7sFz1y1sqLgVi1VhjVkHsUoEsbI_0LpXMuGvnzQ"


def raw(text: str) -> bytes:
    return base64.urlsafe_b64decode(text + "=" * (-len(text) % 4))


def private(text: str) -> ec.EllipticCurvePrivateKey:
    return ec.derive_private_key(int.from_bytes(raw(text), "big"), ec.SECP256R1())


def test_the_example_of_rfc_8291_is_encrypted_byte_for_byte() -> None:
    body = http_ece.encrypt(
        raw(PLAIN),
        salt=raw(SALT),
        private_key=private(AS_PRIVATE),
        dh=raw(UA_PUBLIC),
        auth_secret=raw(AUTH),
        version="aes128gcm",
    )

    assert body == raw(HEADER) + raw(CIPHERTEXT)
    assert len(body) == 144


def test_the_library_that_is_sent_by_can_be_read_by_the_phone_of_the_example() -> None:
    from pywebpush import WebPusher

    sent: Any = WebPusher({"endpoint": "https://push.example", "keys": {"p256dh": UA_PUBLIC, "auth": AUTH}}).encode(
        raw(PLAIN)
    )["body"]

    read = http_ece.decrypt(sent, private_key=private(UA_PRIVATE), auth_secret=raw(AUTH), version="aes128gcm")
    assert read == b"When I grow up, I want to be a watermelon"


def test_the_keys_of_the_example_are_taken_as_a_subscription() -> None:
    record = {"endpoint": "https://push.example.net/push/JzLQ3", "keys": {"p256dh": UA_PUBLIC, "auth": AUTH}}

    assert read_subscription(record, "phone", START).p256dh == UA_PUBLIC


def test_the_signature_of_rfc_8292_is_one_that_py_vapid_accepts() -> None:
    vapid = Vapid(private(AS_PRIVATE))
    claims = {"aud": "https://push.example.net", "exp": int(time.time()) + 3600, "sub": CONTACT}

    assert Vapid02.verify(vapid.sign(claims)["Authorization"])


def test_a_topic_is_as_rfc_8030_wants_it_and_tells_nothing() -> None:
    one = Subscription("phone", "https://push.example", UA_PUBLIC, AUTH, START)
    other = Subscription("other", "https://push.example", UA_PUBLIC, SALT, START)

    name = topic(one, "machine end|r1|cut/1|1")

    assert len(name) == 32 and not set(name) - set("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_")
    assert name == topic(one, "machine end|r1|cut/1|1") != topic(one, "machine end|r1|cut/1|2")
    assert name != topic(other, "machine end|r1|cut/1|1")
    assert 0 < KEPT_SECONDS <= 3600
