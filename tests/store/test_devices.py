"""Devices pair by a code, are known by their session, and can be shut out at any moment."""

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from runboard.floor.letting_in.devices import (
    CODE_LASTS,
    FRESH_FOR,
    HERE,
    HTTP,
    HTTPS,
    PLAIN_LASTS,
    RENEWED_AFTER,
    SEEN_EVERY,
    SESSION_LASTS,
    Door,
    begin_session,
    forget,
    has_lead,
    make_code,
    make_console_code,
    note_seen,
    pair,
    rename_device,
    revoke_device,
    session_of,
    who,
)
from runboard.floor.letting_in.tries import FEWER_FROM_ONE, IN_A_WHILE, MOST_FROM_ALL, MOST_FROM_ONE, MOST_PLACES
from runboard.run.calls.device import Device, Session
from runboard.run.refusal import NotStored, Refused
from runboard.store.connect import FILE_NAME
from runboard.store.open import Store
from tests.conftest import HandClock


@pytest.fixture
def door(store: Store, clock: HandClock) -> Door:
    return Door(store.devices, clock)


def paired(door: Door, access: str = "lead", name: str = "Ann's phone", token: str = "") -> tuple[str, Device]:
    code, _ = make_code(door, access)
    secret, session = pair(door, code, name, "10.0.0.2", token)
    return secret, session.device


def known(door: Door, token: str) -> Session:
    session = who(door, token)
    assert session is not None
    return session


def test_a_code_pairs_a_device_that_is_known_from_then_on(door: Door) -> None:
    token, device = paired(door, "crew", "Ben's phone")

    assert known(door, token).device == device
    assert (device.name, device.access) == ("Ben's phone", "crew")


def test_a_code_is_read_however_it_is_typed(door: Door) -> None:
    code, _ = make_code(door, "lead")

    token, _ = pair(door, f"  {code.lower().replace('-', ' ')} ", "", "10.0.0.2")

    assert who(door, token)


def test_a_code_works_once(door: Door) -> None:
    code, _ = make_code(door, "lead")
    pair(door, code, "", "10.0.0.2")

    with pytest.raises(Refused, match="pairing code wrong"):
        pair(door, code, "", "10.0.0.2")


def test_a_code_does_not_work_for_long(door: Door, clock: HandClock) -> None:
    code, ends_at = make_code(door, "lead")

    assert clock.now() + CODE_LASTS == ends_at == clock.forward(minutes=10)
    with pytest.raises(Refused, match="pairing code wrong"):
        pair(door, code, "", "10.0.0.2")


@pytest.mark.parametrize("typed", ["", "-", "ABCD-EFGH", "0" * 4000, "\0", "\ud800", "é" * 8])
def test_what_is_no_code_pairs_nothing(door: Door, typed: str) -> None:
    make_code(door, "lead")

    with pytest.raises(Refused, match="pairing code wrong"):
        pair(door, typed, "", "10.0.0.2")


def test_who_tries_too_often_waits_and_others_do_not(door: Door, clock: HandClock) -> None:
    code, _ = make_code(door, "lead")
    for _ in range(MOST_FROM_ONE):
        with pytest.raises(Refused, match="pairing code wrong"):
            pair(door, "ABCD-EFGH", "", "10.0.0.66")

    with pytest.raises(Refused, match="pairing too often") as refused:
        pair(door, code, "", "10.0.0.66")

    assert refused.value.facts["minutes"] == 10
    assert pair(door, code, "", "10.0.0.2")
    clock.forward(minutes=10)
    assert pair(door, make_code(door, "lead")[0], "", "10.0.0.66")


def guessed(door: Door, address: str, times: int = MOST_FROM_ONE) -> None:
    for _ in range(times):
        with pytest.raises(Refused):
            pair(door, "ABCD-EFGH", "", address)


def test_an_address_that_did_nothing_wrong_pairs_however_many_others_guess(door: Door) -> None:
    code, _ = make_code(door, "lead")
    for number in range(2 * MOST_FROM_ALL // MOST_FROM_ONE):
        guessed(door, f"10.0.0.{number + 10}")

    assert pair(door, code, "", "10.0.0.2")


def test_while_many_addresses_guess_each_has_fewer_tries(door: Door, clock: HandClock) -> None:
    for number in range(MOST_FROM_ALL // MOST_FROM_ONE):
        guessed(door, f"10.0.0.{number + 10}")

    guessed(door, "10.0.0.3", FEWER_FROM_ONE - 1)
    assert door.tries.wait("10.0.0.3", clock.now()) == timedelta(0)
    guessed(door, "10.0.0.3", 1)
    assert door.tries.wait("10.0.0.3", clock.now()) == IN_A_WHILE


def test_addresses_without_end_take_no_memory_without_end(door: Door, clock: HandClock) -> None:
    for number in range(MOST_PLACES + 500):
        door.tries.note_wrong(f"10.{number // 65536}.{number // 256 % 256}.{number % 256}", clock.now())

    assert len(door.tries) == MOST_PLACES
    assert door.tries.wait("10.9.9.9", clock.now()) == timedelta(0)


def test_a_clock_that_goes_back_shuts_nobody_out_for_longer(door: Door, clock: HandClock) -> None:
    guessed(door, "10.0.0.66")

    clock.forward(days=-400)

    assert door.tries.wait("10.0.0.66", clock.now()) == timedelta(0)


def test_a_code_of_the_console_pairs_from_an_address_that_tried_too_often(door: Door) -> None:
    code, _ = make_console_code(door)
    guessed(door, "10.0.0.66")

    _, session = pair(door, code, "Ann's new phone", "10.0.0.66")

    assert session.device.access == "lead"


def test_what_is_as_long_as_a_code_of_the_console_is_counted_too(door: Door, clock: HandClock) -> None:
    for _ in range(MOST_FROM_ONE):
        with pytest.raises(Refused, match="pairing code wrong"):
            pair(door, "ABCD-EFGH-JKLM", "", "10.0.0.66")

    with pytest.raises(Refused, match="pairing too often"):
        pair(door, "ABCD-EFGH-JKLM", "", "10.0.0.66")
    assert door.tries.wait("10.0.0.66", clock.now()) == IN_A_WHILE


def test_a_device_that_asks_again_and_again_to_go_over_takes_no_code_from_others(door: Door, clock: HandClock) -> None:
    _, device = paired(door, "crew")
    code, _ = make_console_code(door)

    made = [make_code(door, "crew", device.id)[0] for _ in range(30)]

    assert len(door.devices.codes(clock.now())) == 2
    assert pair(door, code, "", "10.0.0.2")
    assert pair(door, made[-1], "", "10.0.0.3")


def test_an_ipv6_network_counts_as_one_address(door: Door, clock: HandClock) -> None:
    for number in range(MOST_FROM_ONE):
        door.tries.note_wrong(f"fd00::{number + 1:x}", clock.now())

    assert door.tries.wait("fd00::99", clock.now()) == IN_A_WHILE
    assert door.tries.wait("fd00:0:0:1::99", clock.now()) == timedelta(0)


def test_pairing_again_keeps_the_device_and_ends_its_earlier_session(door: Door) -> None:
    first, before = paired(door, "lead")
    shut_out: list[str] = []
    door.shut_out = shut_out.append

    second, after = paired(door, "crew", "", token=first)

    assert (after.id, after.name, after.access) == (before.id, before.name, "crew")
    assert who(door, first) is None and who(door, second)
    assert shut_out == [before.id]
    assert len(door.devices.devices()) == 1


def test_a_revoked_device_that_is_paired_again_is_the_same(door: Door) -> None:
    token, before = paired(door)
    revoke_device(door, before.id)

    again, after = paired(door, token=token)

    assert after.id == before.id
    assert known(door, again).device.revoked_at is None


def test_a_code_may_be_for_one_device_only(door: Door) -> None:
    _, before = paired(door)
    code, _ = make_code(door, "lead", before.id)

    _, session = pair(door, code, "", "10.0.0.2")

    assert session.device.id == before.id
    with pytest.raises(Refused, match="device unknown"):
        make_code(door, "lead", "nobody")


def test_a_revoked_device_is_shut_out_at_once(door: Door) -> None:
    token, device = paired(door)
    assert who(door, token)

    revoke_device(door, device.id)

    assert who(door, token) is None


def test_what_another_process_revoked_is_known_soon(door: Door, store: Store, clock: HandClock) -> None:
    token, device = paired(door)
    assert who(door, token)
    store.devices.revoke(device.id, clock.now())

    clock.forward(seconds=FRESH_FOR.total_seconds() + 1)

    assert who(door, token) is None


def test_what_was_read_before_a_revocation_is_not_kept_after_it(
    door: Door, store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    token, device = paired(door)
    read = store.devices.session

    def read_and_revoke(hash_: str) -> Session | None:
        found = read(hash_)
        monkeypatch.undo()
        revoke_device(door, device.id)
        return found

    monkeypatch.setattr(store.devices, "session", read_and_revoke)
    who(door, token)

    assert who(door, token) is None


def test_a_session_ends_unless_it_is_used(door: Door, clock: HandClock) -> None:
    token, _ = paired(door)

    clock.forward(days=SESSION_LASTS.days)

    assert who(door, token) is None


def test_a_session_that_is_used_goes_on(door: Door, clock: HandClock) -> None:
    token, _ = paired(door)
    clock.forward(days=RENEWED_AFTER.days)

    assert note_seen(door, known(door, token))
    assert not note_seen(door, known(door, token))
    clock.forward(days=SESSION_LASTS.days - 1)
    assert who(door, token)


# By plain http others on the network can read along


def paired_by(door: Door, way: str, access: str = "lead") -> tuple[str, Session]:
    code, _ = make_code(door, access)
    return pair(door, code, "A phone", "192.168.1.7", way=way)


@pytest.mark.parametrize(
    ("access", "way", "lasts"),
    [
        ("lead", HTTP, PLAIN_LASTS),
        ("lead", HTTPS, SESSION_LASTS),
        ("lead", HERE, SESSION_LASTS),
        ("crew", HTTP, SESSION_LASTS),
    ],
)
def test_only_a_leads_session_by_plain_http_is_short(
    door: Door, clock: HandClock, access: str, way: str, lasts: timedelta
) -> None:
    token, session = paired_by(door, way, access)

    assert session.ends_at == clock.now() + lasts
    clock.forward(seconds=lasts.total_seconds() - 1)
    assert who(door, token, way)
    clock.forward(seconds=1)
    assert who(door, token, way) is None


def test_a_leads_session_by_plain_http_goes_on_while_it_is_used(door: Door, clock: HandClock) -> None:
    token, _ = paired_by(door, HTTP)

    for _ in range(4):
        clock.forward(hours=20)
        session = who(door, token, HTTP)
        assert session is not None
        note_seen(door, session, HTTP)

    clock.forward(hours=24)
    assert who(door, token, HTTP) is None
    assert session_of(door, token) is not None  # it is known for the same device when it pairs again


@pytest.mark.parametrize(("begun", "asked"), [(HTTP, HTTPS), (HTTPS, HTTP), (HTTPS, HERE), (HERE, HTTPS)])
def test_a_secret_that_was_read_along_opens_nothing_by_the_other_way(door: Door, begun: str, asked: str) -> None:
    token, _ = paired_by(door, begun)

    assert who(door, token, asked) is None
    assert who(door, token, begun)


def test_a_secret_of_the_computer_itself_that_comes_by_the_network_is_plain_from_then_on(
    door: Door, clock: HandClock
) -> None:
    token, _ = paired_by(door, HERE)
    session = who(door, token, HTTP)
    assert session is not None

    note_seen(door, session, HTTP)
    note_seen(door, known(door, token), HERE)

    assert known(door, token).ends_at == clock.now() + PLAIN_LASTS


@pytest.mark.parametrize(("way", "lasts"), [(HTTP, PLAIN_LASTS), (HTTPS, SESSION_LASTS), (HERE, SESSION_LASTS)])
def test_a_session_from_before_belongs_to_the_way_by_which_it_asks_first(
    door: Door, clock: HandClock, way: str, lasts: timedelta
) -> None:
    token, before = paired(door)
    note_seen(door, known(door, token))
    clock.forward(minutes=1)

    session = who(door, token, way)
    assert session is not None and session.device.id == before.id
    note_seen(door, session, way)

    after = session_of(door, token)
    assert after is not None and after.way == way
    assert after.ends_at <= clock.now() + lasts
    clock.forward(hours=25)
    assert bool(who(door, token, way)) is (way != HTTP)


def test_a_disk_that_takes_nothing_leaves_no_lead_in_for_longer(
    door: Door, store: Store, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    token, _ = paired(door)

    def full(session: Session, now: object) -> None:
        raise NotStored("full")

    monkeypatch.setattr(store.devices, "note_seen", full)
    session = who(door, token, HTTP)
    assert session is not None
    note_seen(door, session, HTTP)

    assert known(door, token).ends_at == clock.now() + PLAIN_LASTS


def test_last_seen_is_written_now_and_then(door: Door, store: Store, clock: HandClock) -> None:
    token, device = paired(door)
    began = clock.now()
    note_seen(door, known(door, token))
    clock.forward(minutes=1)
    note_seen(door, known(door, token))

    assert seen(store, device) == began
    clock.forward(seconds=SEEN_EVERY.total_seconds())
    note_seen(door, known(door, token))
    assert seen(store, device) == clock.now()


def test_a_disk_that_takes_nothing_keeps_nobody_out(
    door: Door, store: Store, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    token, device = paired(door)
    tried = []

    def full(session: Session, now: object) -> None:
        tried.append(session)
        raise NotStored("full")

    monkeypatch.setattr(store.devices, "note_seen", full)
    clock.forward(days=2)

    assert not any(note_seen(door, known(door, token)) for _ in range(3))
    assert len(tried) == 1
    assert seen(store, device) is None


def test_a_device_is_called_what_a_person_calls_it(door: Door) -> None:
    _, device = paired(door)

    rename_device(door, device.id, "  Bench \n tablet\0 ")

    assert [one.name for one in door.devices.devices()] == ["Bench tablet"]
    for wrong in ("", " \t\0"):
        with pytest.raises(Refused, match="device nameless"):
            rename_device(door, device.id, wrong)
    with pytest.raises(Refused, match="device unknown"):
        rename_device(door, "nobody", "Phone")
    with pytest.raises(Refused, match="device unknown"):
        revoke_device(door, "nobody")


def test_a_shop_has_a_lead_while_one_is_not_revoked(door: Door) -> None:
    assert not has_lead(door)
    _, device = paired(door)
    paired(door, "crew")
    assert has_lead(door)

    revoke_device(door, device.id)

    assert not has_lead(door)


def test_no_secret_is_on_disk(door: Door, tmp_path: Path) -> None:
    code, _ = make_code(door, "crew")
    token, _ = paired(door)

    stored = b"".join(path.read_bytes() for path in tmp_path.glob(f"{FILE_NAME}*"))

    assert b"pairing" in stored
    for secret in (code, code.replace("-", ""), token):
        assert secret.encode() not in stored


def test_only_so_many_codes_wait(door: Door, clock: HandClock) -> None:
    codes = [make_code(door, "crew")[0] for _ in range(25)]

    assert len(door.devices.codes(clock.now())) == 20
    assert pair(door, codes[-1], "", "10.0.0.2")


def seen(store: Store, device: Device) -> object:
    found = store.devices.device(device.id)
    return found and found.seen_at


# Those who come without a code: by a tray's card


def test_a_session_begins_without_a_code_and_ends_the_one_before(door: Door, clock: HandClock) -> None:
    device = Device("g1", "Mia", "guest", clock.now(), run="r1", tray="4")

    first, _ = begin_session(door, device, clock.now() + timedelta(hours=8))
    second, session = begin_session(door, replace(device, tray="5"), clock.now() + timedelta(hours=2))

    assert who(door, first) is None
    assert who(door, second) == session
    assert door.devices.ends() == {"g1": clock.now() + timedelta(hours=2)}
    assert door.devices.devices() == [replace(device, tray="5")]


def test_a_guests_hours_end_however_often_it_asks(door: Door, clock: HandClock) -> None:
    device = Device("g1", "Mia", "guest", clock.now(), run="r1", tray="4")
    token, session = begin_session(door, device, clock.now() + timedelta(days=3))

    clock.forward(days=2)
    assert note_seen(door, session) is False
    clock.forward(days=1)

    assert who(door, token) is None
    assert session_of(door, token) is not None


def test_a_device_is_let_in_again_revoked_or_not(door: Door, clock: HandClock) -> None:
    device = Device("g1", "Mia", "guest", clock.now(), run="r1", tray="4")
    token, _ = begin_session(door, device, clock.now() + timedelta(hours=1))
    revoke_device(door, "g1")
    clock.forward(hours=2)
    assert who(door, token) is None

    assert door.devices.extend("g1", clock.now() + timedelta(hours=1))
    forget(door, "g1")

    assert who(door, token) is not None
    assert not door.devices.extend("nobody", clock.now())


def test_a_setting_is_first_set_once(store: Store) -> None:
    assert store.settings.put_first("key", {"secret": "a"}) == {"secret": "a"}
    assert store.settings.put_first("key", {"secret": "b"}) == {"secret": "a"}
