"""What takes long is reckoned from what was read, and nobody who presses waits for it."""

import threading
from collections.abc import Callable
from typing import Any

import pytest

from runboard.floor.looking import look_back
from runboard.floor.planning import try_change
from runboard.floor.planning.try_change import Trials
from runboard.floor.workshop import Workshop
from runboard.plan.change import Times
from runboard.plan.search import compare
from tests.floor.fakes import FakeWork
from tests.floor.test_plans import Scene, scene

__all__ = ["scene"]


def is_free(workshop: Workshop) -> bool:
    """Whether somebody else could press now."""
    found = list[bool]()

    def press() -> None:
        if workshop.lock.acquire(0):
            workshop.lock.release()
            found.append(True)

    other = threading.Thread(target=press)
    other.start()
    other.join()
    return bool(found)


LOOKS: dict[str, tuple[Any, str, Callable[[Scene], Any]]] = {
    "review": (look_back, "time_elements", lambda scene: look_back.study_run(scene.workshop, scene.run)),
    "history": (look_back, "tray_history", lambda scene: look_back.history_of(scene.workshop, scene.run, "1")),
    "days": (look_back, "exposures", lambda scene: look_back.exposures_of_days(scene.workshop, 3)),
    "times": (look_back, "estimates_from", lambda scene: look_back.estimates_now(scene.workshop)),
    "a change": (
        try_change,
        "problem_for",
        lambda scene: Trials(scene.workshop, FakeWork(), compare).answer(scene.run, Times(scene.run, "sand", "", 50)),
    ),
}


@pytest.mark.parametrize("name", LOOKS)
def test_while_it_is_reckoned_others_may_press(scene: Scene, name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    module, function, look = LOOKS[name]
    inner, free = getattr(module, function), list[bool]()

    def watched(*given: Any, **named: Any) -> Any:
        free.append(is_free(scene.workshop))
        return inner(*given, **named)

    monkeypatch.setattr(module, function, watched)

    look(scene)

    assert free
    assert all(free)
