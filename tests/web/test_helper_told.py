"""What a friend's phone says where the tray is not to be touched: while it waits, and where the step is another's."""

from typing import Any

import pytest

from runboard.floor.changing.runs import new_event
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from tests.web.test_helper import guest_at, house, show, state_of

__all__ = ["house"]


def lead(house: House, kind: str, body: dict[str, Any], **fields: Any) -> None:
    record_events(house.workshop, [new_event(house.workshop, kind, body, run="r1", person="ann", **fields)])


def told(house: House, tray: str = "4", language: str = "en") -> list[str]:
    client = guest_at(house, tray)
    client.get(f"/helper?language={language}")
    return [one["text"] for one in state_of(client)["notices"]]


def test_a_tray_that_dries_is_not_to_be_taken_anywhere(house: House) -> None:
    lead(house, "pieces counted", {"good": 5}, operation="oil", tray="4")
    tray = house.workshop.ledger.state.runs["r1"].trays["4"]
    at = next(key for key, many in tray.at.items() if many)
    lead(house, "operation given", {"to": "ben", "trays": ["4"]}, operation=at)

    said = told(house)

    assert any(text.startswith("Drying until") for text in said), said
    assert not any("Take the tray" in text for text in said)


@pytest.mark.parametrize(
    ("language", "sentence"),
    [
        ("en", "Assigned to Ben. Ask Ann."),
        ("de", "Diesen Schritt macht Ben. Ann fragen."),
        ("es", "Este paso lo hace Ben. Pregunta a Ann."),
        ("fr", "Cette étape est confiée à Ben. Demandez à Ann."),
    ],
)
def test_a_step_that_is_assigned_says_to_whom_and_whom_to_ask(house: House, language: str, sentence: str) -> None:
    show(house, "guest-nobody")
    lead(house, "operation given", {"to": "ben", "trays": ["4"]}, operation="sand:120")

    assert sentence in told(house, language=language)
