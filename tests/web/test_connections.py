"""Who makes room where there are too many connections: nobody who has just come and was not read yet."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from runboard.web.door.bounds import Bounds
from runboard.web.door.connections import BUSY, THEIR_SAY, DoorConnections

SILENT, HALF = 0, 2


@dataclass
class Loop:
    """An event loop whose clock the test sets."""

    now: float = 0.0
    later: list[tuple[float, Callable[[], Any]]] = field(default_factory=list)

    def time(self) -> float:
        return self.now

    def call_later(self, delay: float, does: Callable[..., Any], *given: Any) -> None:
        self.later.append((self.now + delay, lambda: does(*given)))

    def call_soon(self, does: Callable[..., Any], *given: Any) -> None:
        self.later.append((self.now, lambda: does(*given)))

    def go_on(self, until: float) -> None:
        """All that is due by a moment, one turn after the other."""
        while due := [call for call in self.later if call[0] <= until]:
            self.later = [call for call in self.later if call[0] > until]
            for at, does in due:
                self.now = max(self.now, at)
                does()
        self.now = until


@dataclass(eq=False)
class Caller:
    loop: Loop
    at: int
    is_gone: bool = False
    came_at: float = 0.0

    def __post_init__(self) -> None:
        self.came_at = self.loop.now

    def goes(self) -> int:
        return self.at

    def leave(self) -> None:
        self.is_gone = True


def full(loop: Loop, *, half: int) -> tuple[Any, list[Caller]]:
    """A door that so many fill who sent half of what they ask."""
    door: Any = DoorConnections(Bounds(connections=half, from_one=half))
    callers = [Caller(loop, HALF) for _ in range(half)]
    for caller in callers:
        door.add(caller, "home")
    return door, callers


def test_whoever_has_just_come_has_their_say_before_room_is_made() -> None:
    loop = Loop()
    door, callers = full(loop, half=4)
    first = Caller(loop, BUSY)
    door.add(first, "home")
    loop.now = THEIR_SAY * 0.99
    phone = Caller(loop, SILENT)
    door.add(phone, "home")  # its request waits to be read

    loop.go_on(THEIR_SAY * 1.5)
    phone.at = BUSY
    loop.go_on(THEIR_SAY * 5)

    assert not phone.is_gone and not first.is_gone
    assert [caller.is_gone for caller in callers] == [True, True, False, False]


def test_whoever_says_nothing_goes_once_they_could_have() -> None:
    loop = Loop()
    door, callers = full(loop, half=4)
    newcomers = []
    for at in range(9):
        loop.go_on(at * THEIR_SAY / 4)
        newcomers.append(Caller(loop, SILENT))
        door.add(newcomers[-1], "home")

    loop.go_on(THEIR_SAY * 6)

    assert all(newcomer.is_gone for newcomer in newcomers)
    assert not any(caller.is_gone for caller in callers)
