"""What is doubtful in a program, as it is found."""

from collections import Counter
from typing import Any

from runboard.plan.program.doubt import Doubt
from runboard.plan.program.language.limits import MOST_OF_A_KIND


class LeftOut(Exception):
    """A line that cannot be followed as it stands, though those after it can: it is left out, and named."""

    def __init__(self, code: str, **facts: Any) -> None:
        super().__init__(code)
        self.code, self.facts = code, facts


class Doubts:
    """Collects them. Of each code at most ``MOST_OF_A_KIND`` are kept; the rest is one doubt, ``more``, with their count."""

    def __init__(self) -> None:
        self._found: list[Doubt] = []
        self._counts: Counter[str] = Counter()
        self._first_more: dict[str, int] = {}
        self._changing: set[str] = set()
        self._once: set[Any] = set()

    def add(self, line: int, code: str, changes_time: bool = False, **facts: Any) -> None:
        self._counts[code] += 1
        if self._counts[code] <= MOST_OF_A_KIND:
            self._found.append(Doubt(line, code, facts, changes_time))
            return
        self._first_more.setdefault(code, line)
        if changes_time:
            self._changing.add(code)

    def once(self, line: int, code: str, changes_time: bool = False, **facts: Any) -> None:
        """The same, if it was not said before with these facts."""
        if (code, *facts.items()) not in self._once:
            self._once.add((code, *facts.items()))
            self.add(line, code, changes_time, **facts)

    def all(self) -> tuple[Doubt, ...]:
        """In the order of their lines."""
        more = [
            Doubt(line, "more", {"count": self._counts[code] - MOST_OF_A_KIND, "of": code}, code in self._changing)
            for code, line in self._first_more.items()
        ]
        return tuple(sorted([*self._found, *more], key=lambda doubt: doubt.line))
