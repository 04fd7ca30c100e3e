"""A program read: bytes in, what it moves out."""

import re
from contextlib import suppress
from typing import Literal

from runboard.plan.before.kind import Told
from runboard.plan.program.language.fast import Fast
from runboard.plan.program.language.interpreter import Interpreter
from runboard.plan.program.language.limits import LONGEST_LINE, MOST_BYTES, MOST_LINES
from runboard.plan.program.moves import Moves
from runboard.run.refusal import Refused

_BOM = b"\xef\xbb\xbf"
_TELL_EVERY = 50_000  # lines
_MANY = 20_000  # from so many lines on machine code earns what it takes to have it at hand
# What reading says of prose, which begins with three letters, as no line of a program does.
_MISREAD = ("program-number", "program-character", "program-expected", "program-bracket")
_PROSE = re.compile(rb"\s*[A-Za-z]{3}")
Way = Literal["interpreted", "plain", "compiled"]


def read_program(content: bytes, told: Told | None = None, *, way: Way | None = None) -> Moves:
    """What a program does, up to its M2, M30 or second %.

    ``told`` hears (lines done, lines there are). Refused: what is no text, is empty or too large, and a line after which nothing
    can be known, with its number. Where the machine stands before the first travel along an axis nobody knows: that travel
    takes no time. ``way``: all by the interpreter, or plain lines by ``plain_lines``, as plain Python or compiled; by itself it is
    compiled where there are many lines, and a compiler."""
    content = _text(content)
    lines = content.count(b"\n") + (not content.endswith(b"\n"))
    if lines > MOST_LINES:
        raise Refused("program-lines", most=MOST_LINES)
    reader = _Reader(content, lines, way)
    reader.read(told)
    return reader.moves()


def _text(content: bytes) -> bytes:
    """The program's lines, each ended by a line feed. Refused: what no program is."""
    if len(content) > MOST_BYTES:
        if content.find(b"\n", 0, LONGEST_LINE + 1) < 0:
            raise Refused("program-line-long", line=1, most=LONGEST_LINE)
        raise Refused("program-large", megabytes=MOST_BYTES // 1_000_000)
    if b"\0" in content:
        if content[0] not in b"\t\n\r" and not 32 <= content[0] < 127:  # a file of another sort from its first sign on
            raise Refused("program-no-text")
        raise Refused("program-binary", line=content.count(b"\n", 0, content.index(b"\0")) + 1)
    content = content.removeprefix(_BOM)
    if b"\r" in content:
        content = content.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    if not content.strip():
        raise Refused("program-empty")
    return content


def _fast(content: bytes, lines: int, interpreter: Interpreter, way: Way | None) -> Fast | None:
    """What reads the plain lines, if anything but the interpreter does."""
    if way in ("plain", "compiled"):
        return Fast(content, interpreter, is_compiled=way == "compiled")
    if way is None and lines >= _MANY:
        with suppress(Exception):  # whatever another version of the compiler says: the interpreter reads it all
            return Fast(content, interpreter, is_compiled=True)
    return None


class _Reader:
    """Goes through a program's lines, the plain ones fast."""

    def __init__(self, content: bytes, lines: int, way: Way | None) -> None:
        self.content, self.lines = content, lines
        self.interpreter = Interpreter(lines + 16)
        self.number = self.at = 0
        self.percents = 0
        self.is_over = False
        self.fast = _fast(content, lines, self.interpreter, way)

    def read(self, told: Told | None) -> None:
        tell_at = _TELL_EVERY
        while self.at < len(self.content) and not self.is_over:
            if self.fast:
                self.at, self.number = self.fast.read(self.at, self.number, tell_at)
            if self.number >= tell_at:
                tell_at += _TELL_EVERY
                if told:
                    told(self.number, self.lines)
            elif self.at < len(self.content):
                self._read_line()
        self._name_the_end()
        if told:
            told(self.lines, self.lines)

    def _read_line(self) -> None:
        ends = self.content.find(b"\n", self.at)
        ends = len(self.content) if ends < 0 else ends
        self.number += 1
        if ends - self.at > LONGEST_LINE:
            raise Refused("program-line-long", line=self.number, most=LONGEST_LINE)
        raw = self.content[self.at : ends]
        self.at = ends + 1
        if raw.strip() == b"%":
            self.percents += 1
            self.is_over = self.percents == 2 or (self.number > 1 and self.percents == 1 and self._has_begun())
        else:
            self._interpret(raw)
            self.is_over = self.interpreter.state.has_ended

    def _interpret(self, raw: bytes) -> None:
        """Refused 'program-none' for words of prose before anything of a program was there."""
        try:
            self.interpreter.read(raw, self.number)
        except Refused as refused:
            if refused.code in _MISREAD and _PROSE.match(raw) and not self.interpreter.moving.blocks.count:
                raise Refused("program-none", line=self.number) from refused
            raise

    def _has_begun(self) -> bool:
        """Whether anything stood before the first %, so that it is the last."""
        return bool(self.content[: self.at].replace(b"%", b"").strip())

    def _name_the_end(self) -> None:
        doubts = self.interpreter.doubts
        if not self.is_over:
            doubts.add(self.number, "no-end")
        elif self.content[self.at :].replace(b"%", b"").strip():
            doubts.add(self.number + 1, "after-the-end")

    def moves(self) -> Moves:
        interpreter = self.interpreter
        start = interpreter.moving.start
        return Moves(
            **interpreter.moving.blocks.filled(),
            start=(start[0], start[1], start[2]),
            lines=self.number,
            units=interpreter.state.units,
            doubts=interpreter.doubts.all(),
        )
