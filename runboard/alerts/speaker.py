"""The shop's computer sounds by itself, by whatever program it has for that."""

import math
import os
import shutil
import struct
import subprocess
import tempfile
import threading
import wave
from collections.abc import Sequence
from importlib import import_module
from io import BytesIO
from pathlib import Path
from typing import Any

from runboard.words.sentences import say

PROGRAMS = ("paplay", "pw-play", "aplay", "afplay")
_PATIENCE_SECONDS = 10
_RATE = 22_050
# (hertz, seconds): the same three notes as on the phones.
_NOTES = ((880, 0.22), (0, 0.06), (660, 0.22), (0, 0.06), (880, 0.5))
_LONGEST_WHY = 160


class Speaker:
    """Plays the call. ``programs`` are looked for in that order; the first that is there plays."""

    def __init__(self, programs: Sequence[str] = PROGRAMS) -> None:
        self._programs = programs
        self._lock = threading.Lock()
        self._playing: threading.Thread | None = None
        self._why = ""

    def program(self) -> str:
        """What plays: a program's name; '' where there is none."""
        if os.name == "nt":
            return "winsound"
        return next((name for name in self._programs if shutil.which(name)), "")

    def said(self) -> tuple[str, dict[str, str]]:
        """(code, facts) of what there is to say: 'none', 'failed' with why, 'ready'."""
        if not self.program():
            return "none", {"programs": ", ".join(self._programs)}
        return ("failed", {"why": self._why}) if self._why else ("ready", {"program": self.program()})

    def play(self) -> threading.Thread | None:
        """Begin to play, unless it plays already; answers the thread that does it, None where nothing can be played."""
        with self._lock:
            if not self.program() or (self._playing is not None and self._playing.is_alive()):
                return None
            self._playing = threading.Thread(target=self._play, name="speaker", daemon=True)
            self._playing.start()
            return self._playing

    def _play(self) -> None:
        if self.program() == "winsound":
            self._why = _by_windows()
            return
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "call.wav"
            path.write_bytes(call_as_wav())
            self._why = _by_program(self.program(), path)


def _by_program(program: str, path: Path) -> str:
    """Why it did not play; '' where it did."""
    try:
        done = subprocess.run(  # noqa: S603 - one of the programs above, with a file of our own
            [shutil.which(program) or program, str(path)],
            stdin=subprocess.DEVNULL,
            capture_output=True,
            text=True,
            errors="replace",
            timeout=_PATIENCE_SECONDS,
            check=False,
        )
    except subprocess.TimeoutExpired:
        return say("sound", "why late", {"program": program, "seconds": _PATIENCE_SECONDS})
    except OSError as error:
        return f"{program}: {error.strerror}"
    if done.returncode == 0:
        return ""
    said = next(
        (line.strip() for line in done.stderr.splitlines() if line.strip()),
        say("sound", "why code", {"code": str(done.returncode)}),
    )
    return f"{program}: {said}"[:_LONGEST_WHY]


def _by_windows() -> str:
    windows: Any = import_module("winsound")  # there is none elsewhere
    try:
        windows.PlaySound(call_as_wav(), windows.SND_MEMORY)
    except RuntimeError as error:
        return str(error)[:_LONGEST_WHY]
    return ""


def call_as_wav() -> bytes:
    """The call as a WAV file: 16 bit, one channel, each note faded in and out."""
    frames = bytearray()
    for hertz, seconds in _NOTES:
        count = round(seconds * _RATE)
        for at in range(count):
            fade = min(1.0, at / 400, (count - at) / 400)
            frames += struct.pack("<h", round(26_000 * fade * math.sin(2 * math.pi * hertz * at / _RATE)))
    held = BytesIO()
    with wave.open(held, "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(_RATE)
        file.writeframes(bytes(frames))
    return held.getvalue()
