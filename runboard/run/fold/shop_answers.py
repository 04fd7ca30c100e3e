"""Alerts by name, and the answers that stop them everywhere."""

from typing import Any

from runboard.run.fold.draft import Draft, put
from runboard.run.log.event import Event, write_moment

# Answers older than the last thousand are no longer looked up: their alerts are long gone.
KEPT = 1000


def alert_id(kind: str, *subject: object) -> str:
    """An alert's name: its kind, what it is about, which occurrence. Phones and server make the same one."""
    return "|".join([kind, *map(str, subject)])


def note(draft: Draft, alert: str, answer: str, event: Event, ask_again_at: str | None = None) -> None:
    """Keep who answered what, and when to ask again."""
    kept: dict[str, Any] = {"answer": answer, "person": event.person, "at": write_moment(event.moment)}
    if ask_again_at:
        kept["ask_again_at"] = ask_again_at
    answers = put(draft.shop("answers"), alert, kept)
    if len(answers) > KEPT:
        answers.pop(next(iter(answers)))
    draft.changes["answers"] = answers
