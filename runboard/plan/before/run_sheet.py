"""The run sheet: everything that is looked at before a run starts, each green, to be looked at, or a stop.

A 'look' is passed by somebody's initials, and only as it stood when they looked: once something else is found there, it is
asked again. A 'stop' is passed by nobody; what makes it one has to be mended.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import get_args

from runboard.plan.before.finding import BeforeRun, Finding, Level, Look
from runboard.run.fold.state import Passed

LEVELS: tuple[Level, ...] = tuple(reversed(get_args(Level)))  # what asks most of a person first


@dataclass(frozen=True)
class Checked:
    """One finding, and who went past it as it stands."""

    finding: Finding
    passed: Passed | None = None

    @property
    def is_open(self) -> bool:
        """Whether it still asks something of somebody."""
        return self.finding.level == "stop" or (self.finding.level == "look" and self.passed is None)


@dataclass(frozen=True)
class RunSheet:
    """All that was found, stops first, then what is to be looked at, then what is right. ``is_begun`` where work on it has begun."""

    checked: Sequence[Checked]
    is_begun: bool = False

    def of(self, level: Level) -> list[Checked]:
        return [each for each in self.checked if each.finding.level == level]

    @property
    def stops(self) -> int:
        return len(self.of("stop"))

    @property
    def looks(self) -> int:
        """How many are to be looked at by somebody still."""
        return sum(each.is_open for each in self.of("look"))

    @property
    def passed(self) -> int:
        """How many somebody went past."""
        return sum(each.passed is not None for each in self.of("look"))

    @property
    def is_ready(self) -> bool:
        """Whether nothing stands in the way that these checks know of."""
        return not any(each.is_open for each in self.checked)


def run_sheet(asked: BeforeRun, looks: Sequence[Look]) -> RunSheet:
    """Everything that these looks find of a run."""
    found = [finding for look in looks for finding in look(asked)]
    found.sort(key=lambda finding: LEVELS.index(finding.level))
    begun = bool(asked.run.loads or asked.run.past)
    return RunSheet([Checked(finding, _passed(asked, finding)) for finding in found], begun)


def _passed(asked: BeforeRun, finding: Finding) -> Passed | None:
    passed = asked.run.passed.get(finding.check)
    return passed if passed is not None and passed.found == finding.mark else None
