"""Luck by name: the same seed gives the same load the same luck, whoever does it, when, and whatever else was changed."""

from dataclasses import dataclass, field
from math import exp, log2
from random import Random

from tests.simulated.world import TrueTime


@dataclass
class Luck:
    """One go of a world's luck."""

    seed: int
    _normals: dict[str, float] = field(default_factory=dict)

    def time(self, known: TrueTime, element: str, load: str, day: int, done: int) -> float:
        """How long an element of a load takes on a day, after ``done`` loads of it."""
        drawn = known.mean
        if known.load:
            drawn *= exp(known.load * self.normal(f"{element}|{load}") - known.load**2 / 2)
        if known.session:
            drawn *= exp(known.session * self.normal(f"{element}|day {day}") - known.session**2 / 2)
        if known.learning != 1.0:
            drawn *= (done + 1) ** log2(known.learning)
        return drawn

    def normal(self, name: str) -> float:
        if name not in self._normals:
            self._normals[name] = Random(f"{self.seed}|{name}").gauss()
        return self._normals[name]

    def spoilt(self, name: str, pieces: int, rate: float) -> int:
        """How many of some pieces are spoilt; never all of them."""
        if not rate:
            return 0
        chance = Random(f"{self.seed}|{name}|spoilt")
        return min(pieces - 1, sum(chance.random() < rate for _ in range(pieces)))
