"""The phones that are sent alerts while they are locked, on disk: one subscription for each device."""

from runboard.run.calls.push import Subscription
from runboard.run.log.event import parse_moment, write_moment
from runboard.store.connect import Connections

_COLUMNS = "push.device, endpoint, p256dh, auth, made_at"
_OF_PAIRED = "FROM push JOIN device ON device.id = push.device WHERE device.revoked_at IS NULL"


class PushFile:
    """Subscriptions, in order of making. That of a revoked device is gone: it goes with the revocation."""

    def __init__(self, connections: Connections) -> None:
        self._connections = connections

    def subscriptions(self) -> list[Subscription]:
        """Every subscription of a device that is paired."""
        rows = self._connections.read(f"SELECT {_COLUMNS} {_OF_PAIRED} ORDER BY made_at, push.device")
        return [_subscription(*row) for row in rows]

    def put(self, subscription: Subscription) -> None:
        """Keep it in place of the device's earlier one, and of another device's with the same endpoint."""
        kept = subscription
        with self._connections.write() as connection:
            connection.execute("DELETE FROM push WHERE device = ? OR endpoint = ?", (kept.device, kept.endpoint))
            connection.execute(
                "INSERT INTO push (device, endpoint, p256dh, auth, made_at) VALUES (?, ?, ?, ?, ?)",
                (kept.device, kept.endpoint, kept.p256dh, kept.auth, write_moment(kept.made_at)),
            )

    def remove(self, device_id: str, endpoint: str = "") -> bool:
        """End the device's subscription, if its endpoint still is this one where one is named; false where none was."""
        sql = "DELETE FROM push WHERE device = ?1 AND (?2 = '' OR endpoint = ?2)"
        return self._connections.change(sql, device_id, endpoint)


def _subscription(device: str, endpoint: str, p256dh: str, auth: str, made_at: str) -> Subscription:
    return Subscription(device, endpoint, p256dh, auth, parse_moment(made_at))
