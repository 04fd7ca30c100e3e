"""What lies in a data folder is closed to the computer's other users: the folder 0700, its files 0600.

The database holds passwords of channels and brokers and the key of the cards. Only what is the shop's own is touched, no
link is followed, and Windows, which keeps rights elsewhere, is left alone.
"""

import os
import re
import stat
from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

FILE_MODE, FOLDER_MODE = 0o600, 0o700
_OTHERS = 0o077
_OWN = re.compile(
    r"shop\.db.*|in-use\.lock|push-key\.pem|files|backups|certificates|replaced-.*|\.shop-.*|\.push-key.*"
)
_OF_THE_DISK = {"lost+found"}


@dataclass(frozen=True)
class OpenFolder:
    """What a person should know of who could read the folder. ``code`` names the sentence, ``facts`` fill it.

    'was open': others could read the shop until now. 'shared': other things are kept in the folder, so it was left as it
    is, and the shop's files were closed. 'other owner': it is another user's to close. 'stays open': the disk refused.
    """

    code: str
    facts: Mapping[str, Any] = field(default_factory=dict)


def make_folder(folder: Path) -> None:
    """A folder that only its owner enters; one that is there stays as it is."""
    folder.mkdir(mode=FOLDER_MODE, parents=True, exist_ok=True)


def make_file(path: Path) -> None:
    """An empty file that only its owner reads, unless there is one; SQLite gives what it puts beside it the same rights."""
    with suppress(FileExistsError):
        os.close(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, FILE_MODE))


def write_file(path: Path, text: str) -> None:
    """Text in a file that only its owner reads."""
    with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, FILE_MODE), "w", encoding="utf-8") as file:
        file.write(text)


def close_to_others(folder: Path) -> OpenFolder | None:
    """Take from others the right to read what is in a data folder; what there is to say of it, None for nothing."""
    if os.name != "posix":
        return None
    try:
        return _close_all(folder)
    except OSError:  # a folder that cannot even be listed
        return OpenFolder("stays open", {"folder": str(folder)})


def _close_all(folder: Path) -> OpenFolder | None:
    facts, about = {"folder": str(folder)}, folder.stat()
    if about.st_uid != _me():
        return OpenFolder("other owner", {**facts, "owner": _name(about.st_uid), "me": _name(_me())})
    is_shared = bool(about.st_mode & stat.S_ISVTX) or _holds_other_folders(folder)
    was_open = bool(about.st_mode & _OTHERS) and any(stat.S_ISREG(mode) and mode & _OTHERS for _, mode in _own(folder))
    # The folder comes first: then nobody else can put a link where a file was.
    closed = [_close(path, mode) for path, mode in [*([] if is_shared else [(folder, about.st_mode)]), *_own(folder)]]
    if not all(closed):
        return OpenFolder("stays open", facts)
    if not was_open:
        return None
    return OpenFolder("shared" if is_shared else "was open", facts)


def _close(path: Path, mode: int) -> bool:
    """Whether it is closed now."""
    if not mode & _OTHERS:
        return True
    wanted = FOLDER_MODE if stat.S_ISDIR(mode) else FILE_MODE
    try:
        path.chmod(wanted)
        return not path.lstat().st_mode & _OTHERS
    except FileNotFoundError:  # a log that went with the last who closed the database
        return True
    except OSError:
        return False


def _own(folder: Path) -> Iterator[tuple[Path, int]]:
    """(path, mode) of every file and folder of the shop's in a data folder; no link, and nothing behind one."""
    with os.scandir(folder) as entries:
        yield from [found for entry in entries if _OWN.fullmatch(entry.name) for found in _all_of(entry)]


def _all_of(entry: "os.DirEntry[str]") -> Iterator[tuple[Path, int]]:
    try:
        mode = entry.stat(follow_symlinks=False).st_mode
        if not (stat.S_ISDIR(mode) or stat.S_ISREG(mode)):
            return
        yield Path(entry.path), mode
        if stat.S_ISDIR(mode):
            with os.scandir(entry.path) as entries:
                yield from [found for entry in entries for found in _all_of(entry)]
    except OSError:  # gone meanwhile, or another user's
        return


def _holds_other_folders(folder: Path) -> bool:
    with os.scandir(folder) as entries:
        return any(
            entry.is_dir(follow_symlinks=False) and not _OWN.fullmatch(entry.name) and entry.name not in _OF_THE_DISK
            for entry in entries
        )


def _me() -> int:
    return os.geteuid()


def _name(user: int) -> str:
    """What the system calls a user; the number where it knows no name."""
    import pwd  # not there on Windows

    try:
        return pwd.getpwuid(user).pw_name
    except KeyError:
        return str(user)
