"""'Send alerts to this phone when it is locked': asked by a person on that phone, ended there or by a revocation."""

from typing import Any, Protocol

from runboard.floor.workshop import Clock
from runboard.run.calls.push import Subscription, read_subscription


class Subscriptions(Protocol):
    """Where subscriptions are kept; each call is one transaction."""

    def subscriptions(self) -> list[Subscription]: ...
    def put(self, subscription: Subscription) -> None: ...
    def remove(self, device_id: str, endpoint: str = "") -> bool: ...


def subscribe(held: Subscriptions, clock: Clock, device: str, record: Any, near: bool = False) -> Subscription:
    """Send alerts to this device from now on, by what its browser said. Refused 'push form', 'push address'."""
    subscription = read_subscription(record, device, clock.now(), near)
    held.put(subscription)
    return subscription


def unsubscribe(held: Subscriptions, device: str) -> bool:
    """Send this device nothing any more; false where nothing was sent to it."""
    return held.remove(device)


def subscription_of(held: Subscriptions, device: str) -> Subscription | None:
    """The device's subscription; None where it has none."""
    return next((subscription for subscription in held.subscriptions() if subscription.device == device), None)
