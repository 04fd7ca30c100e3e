"""Long work without a process: done as soon as it is begun, or, once ``waits``, when the test says so."""

from dataclasses import replace
from typing import Any

from runboard.background.task import Failure, Task


class AtOnce:
    def __init__(self) -> None:
        self.waits, self.is_full, self.number = False, False, 0
        self.tasks: dict[str, Task] = {}
        self.waiting: dict[str, tuple[Any, ...]] = {}

    def start(self, what: str, subject: str, work: Any, *arguments: Any) -> Task | None:
        if self.is_full:
            return None
        self.number += 1
        key = f"task-{self.number}"
        self.waiting[key] = (work, *arguments)
        self.tasks[key] = Task(key, what, subject, "running")
        if not self.waits:
            self.finish()
        return self.tasks[key]

    def finish(self) -> None:
        for key, (function, *given) in self.waiting.items():
            try:
                over = replace(self.tasks[key], state="done", result=function(*given, lambda *_: None))
            except Exception as why:  # noqa: BLE001 - whatever it is, it is said
                over = replace(self.tasks[key], state="failed", failure=Failure(type(why).__name__, str(why)))
            self.tasks[key] = over
        self.waiting.clear()

    def fail(self) -> None:
        self.tasks = {key: replace(task, state="failed") for key, task in self.tasks.items()}

    def look(self, key: str) -> Task | None:
        return self.tasks.get(key)

    def newest(self, what: str, subject: str = "") -> Task | None:
        found = [one for one in self.tasks.values() if (one.what, one.subject) == (what, subject)]
        return found[-1] if found else None

    def end(self, key: str) -> None:
        self.tasks.pop(key, None)
