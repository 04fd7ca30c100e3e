"""A file that a command writes: whole, or not at all."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from runboard.commands.asking import Mistaken


def check_out(out: Path) -> None:
    """Before anything is made."""
    if out.is_dir():
        raise Mistaken("is a folder", file=out)
    if not out.parent.is_dir():
        raise Mistaken("no folder", folder=out.parent)


@contextmanager
def whole(out: Path) -> Iterator[Path]:
    """A file beside ``out`` that takes its place at the end of the block, and is gone where the block fails."""
    part = out.with_name(f".{out.name}.{os.getpid()}.part")
    try:
        part.touch(exist_ok=False)
        yield part
        part.replace(out)
    except OSError as problem:
        raise Mistaken("cannot write", file=out, why=problem.strerror or str(problem)) from problem
    finally:
        part.unlink(missing_ok=True)
