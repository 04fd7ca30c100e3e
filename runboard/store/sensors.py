"""What may say that a machine runs or has stopped, or press at a station, on disk. Of tokens only the hashes are here."""

from datetime import datetime

from runboard.run.calls.signals import Sensor
from runboard.run.log.event import parse_moment, write_moment
from runboard.store.connect import Connections

_COLUMNS = "id, station, name, hash, made_at, does"


class SensorFile:
    """Sensors, in order of making."""

    def __init__(self, connections: Connections) -> None:
        self._connections = connections

    def sensors(self) -> list[Sensor]:
        """Every sensor that was not revoked."""
        sql = f"SELECT {_COLUMNS} FROM sensor WHERE revoked_at IS NULL ORDER BY made_at, id"
        return [_sensor(row) for row in self._connections.read(sql)]

    def by_hash(self, hash_: str) -> Sensor | None:
        """The sensor whose token has that hash; None where there is none, or it was revoked."""
        sql = f"SELECT {_COLUMNS} FROM sensor WHERE hash = ? AND revoked_at IS NULL"
        row = self._connections.read(sql, hash_).fetchone()
        return None if row is None else _sensor(row)

    def put(self, sensor: Sensor) -> None:
        """Add one."""
        sql = f"INSERT INTO sensor ({_COLUMNS}) VALUES (?, ?, ?, ?, ?, ?)"
        made_at = write_moment(sensor.made_at)
        self._connections.change(sql, sensor.id, sensor.station, sensor.name, sensor.hash, made_at, sensor.does)

    def revoke(self, sensor_id: str, now: datetime) -> bool:
        """Hear it no more; false where there is none of that id, or it was revoked before."""
        sql = "UPDATE sensor SET revoked_at = ? WHERE id = ? AND revoked_at IS NULL"
        return self._connections.change(sql, write_moment(now), sensor_id)


def _sensor(row: tuple[str, ...]) -> Sensor:
    key, station, name, hash_, made_at, does = row
    return Sensor(key, station, name, hash_, parse_moment(made_at), does)
