"""A shop's data folder, opened."""

from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from runboard.store.backup import BackupFolder
from runboard.store.books import BookFile
from runboard.store.closed import OpenFolder, close_to_others, make_file, make_folder
from runboard.store.connect import FILE_NAME, Connections
from runboard.store.devices import DeviceFile
from runboard.store.dues import DuesFile
from runboard.store.events import LogFile
from runboard.store.incoming import Incoming
from runboard.store.looked_at import LookedAt
from runboard.store.migrations import migrate
from runboard.store.pictures import PictureFolder
from runboard.store.push import PushFile
from runboard.store.sensors import SensorFile
from runboard.store.settings import SettingsFile


@dataclass(frozen=True)
class Store:
    """What lies in a data folder; ``found`` says who could read it, where a person should know."""

    connections: Connections
    log: LogFile
    books: BookFile
    dues: DuesFile
    devices: DeviceFile
    settings: SettingsFile
    sensors: SensorFile
    push: PushFile
    pictures: PictureFolder
    copies: BackupFolder
    incoming: Incoming
    looked_at: LookedAt
    found: OpenFolder | None = None

    def close(self) -> None:
        """Close every connection; only once no thread uses the store any more."""
        self.connections.close()


def open_store(folder: Path) -> Store:
    """The store in ``folder``, made if it is not there, closed to other users, its tables brought up to date."""
    make_folder(folder)
    found = close_to_others(folder)
    with suppress(OSError):  # SQLite says it better
        make_file(folder / FILE_NAME)
    connections = Connections(folder / FILE_NAME)
    migrate(connections)
    log, books, dues = LogFile(connections), BookFile(connections), DuesFile(connections)
    devices, settings, sensors = DeviceFile(connections), SettingsFile(connections), SensorFile(connections)
    push, pictures, copies, incoming = (
        PushFile(connections),
        PictureFolder(folder),
        BackupFolder(folder),
        Incoming(folder),
    )
    looked_at = LookedAt(folder)
    return Store(
        connections, log, books, dues, devices, settings, sensors, push, pictures, copies, incoming, looked_at, found
    )
