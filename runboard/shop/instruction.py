"""What tells somebody who never saw the job how it is done, in their language."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Instruction:
    """One short step of what to do, with the name of a picture in the data folder if there is one."""

    text: str
    picture: str | None = None


@dataclass(frozen=True)
class Translation:
    """An operation's own texts in another language, each list in the order of the original; what is missing stays as
    it was written."""

    name: str = ""
    instructions: tuple[str, ...] = ()
    checklist: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    checks: tuple[str, ...] = ()
