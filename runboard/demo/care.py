"""What the demo's people say they did about rags, oily dust and burnt cuts: a reminder is answered soon after it comes."""

from collections.abc import Iterator

from runboard.demo.phone import Draft, Shopfloor, draft
from runboard.run.care.care import DUST, RAGS, lock_up_reminders

_DONE = {
    "care start": "The lidded metal can with water stands ready",
    "care end": "They are in water in the metal can, lid on",
    "care lock-up": "They are in water in the metal can, lid on",
    "care again": "Looked again: no smoke, no smell, no warmth",
    "care morning": "Looked: cold, and no smell",
}
_OF_DUST = "The dust is outdoors, in water in the metal can, lid on"
_OF_A_BIN = "The bin is emptied, outdoors"


def answers_to_reminders(floor: Shopfloor) -> Iterator[Draft]:
    """A press for each reminder that is due now."""
    for kind in ("care start", "care end", "care again", "care morning"):
        yield from (_answer(due.id) for due in floor.ringing(kind))


def answers_at_lock_up(floor: Shopfloor) -> list[Draft]:
    """What has to be said about today's rags before a session ends."""
    return [_answer(one) for one in lock_up_reminders(floor.state, floor.book)]


def _answer(reminder: str) -> Draft:
    kind, thing = reminder.split("|")[:2]
    done = _DONE[kind]
    if kind in ("care end", "care lock-up") and thing != RAGS:
        done = _OF_DUST if thing == DUST else _OF_A_BIN
    return draft("reminder answered", {"reminder": reminder, "done": done})
