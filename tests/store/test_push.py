"""One subscription for each paired device; it goes with the device's revocation."""

from dataclasses import replace

from runboard.floor.letting_in.devices import Door, make_code, pair, revoke_device
from runboard.run.calls.push import Subscription
from runboard.store.open import Store
from tests.conftest import START, HandClock


def paired(store: Store, clock: HandClock) -> tuple[Door, str]:
    door = Door(store.devices, clock)
    code, _ = make_code(door, "crew")
    return door, pair(door, code, "Ben's phone", "10.0.0.2")[1].device.id


def test_a_device_has_one_subscription_and_the_newest(store: Store, clock: HandClock) -> None:
    _, device = paired(store, clock)
    first = Subscription(device, "https://push.example/1", "p", "a", START)
    newer = replace(first, endpoint="https://push.example/2")

    store.push.put(first)
    store.push.put(newer)

    assert store.push.subscriptions() == [newer]
    assert not store.push.remove(device, first.endpoint)
    assert store.push.remove(device, newer.endpoint)
    assert not store.push.remove(device)


def test_a_browser_that_is_another_device_now_is_sent_to_once(store: Store, clock: HandClock) -> None:
    _, one = paired(store, clock)
    _, other = paired(store, clock)
    same = Subscription(one, "https://push.example/1", "p", "a", START)

    store.push.put(same)
    store.push.put(replace(same, device=other))

    assert [found.device for found in store.push.subscriptions()] == [other]


def test_a_revoked_devices_subscription_goes_and_does_not_come_back(store: Store, clock: HandClock) -> None:
    door, device = paired(store, clock)
    store.push.put(Subscription(device, "https://push.example/1", "p", "a", START))

    revoke_device(door, device)
    assert store.push.subscriptions() == []

    code, _ = make_code(door, "crew", device)
    pair(door, code, "", "10.0.0.2")
    assert store.push.subscriptions() == []
