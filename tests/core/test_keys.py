"""Keys are keys, wherever an event says one: no paths, no line breaks, nothing that could be read as two."""

from typing import Any

import pytest

from runboard.run.log.form import check_form
from runboard.run.refusal import Refused
from tests.scenario import key_rails

BAD = ("../../x", "a/../b", "a\nb", "a\x00b", "a b", "r1\n", "\u2028", "<i>", "ä" * 3, "a|b", "x" * 401)


def event(kind: str, body: dict[str, Any] | None = None, **fields: Any) -> dict[str, Any]:
    return {"id": "press-001", "kind": kind, "at": "2026-06-01T16:00:00Z", "body": body or {}, **fields}


def opened(**changes: Any) -> dict[str, Any]:
    body = {"name": "Rails", "product": key_rails(), "orders": [{"line": "1", "pieces": 1}], "wood": "ash"}
    body |= {"trays": [{"tray": "1", "pieces": 5}], "boards": {"cut/1": {"1": 5}}}
    return event("run opened", body | changes, run="r1")


def says(key: str) -> list[dict[str, Any]]:
    """One event for each place where an event says a key."""
    return [
        event("note written", {"text": "x"}, run=key),
        event("load started", run="r1", load=key),
        event("pieces released", run="r1", tray=key),
        event("pieces counted", {"good": 1}, run="r1", tray="1", operation=key),
        event("station out of use", station=key),
        event("person went", person=key),
        event("card printed", {"print": 1}, run="r1", tray="1", entered_by=key),
        event("person came", {"room": key}, person="ann"),
        event("job done", {"job": key}, person="ann"),
        event("shown how", {"person": key}, person="ann", station="cnc"),
        event("board added", {"board": key, "pieces": {"1": 1}}, run="r1"),
        event("board added", {"board": "cut/2", "pieces": {key: 1}}, run="r1"),
        event("board lost", {"board": key}, run="r1"),
        event("route revised", {"product": key_rails(), "from_tray": key}, run="r1"),
        event("operation given", {"to": key, "trays": ["1"]}, run="r1", operation="clean"),
        event("operation given", {"to": "ann", "trays": [key]}, run="r1", operation="clean"),
        event("first piece checked", {"result": "pass", "check": key}, run="r1", operation="cut"),
        event("load started", {"pieces": {key: 1}}, run="r1", load="cut/1"),
        event("load done", {"counts": {key: {"good": 1}}}, run="r1", load="cut/1"),
        event("pieces moved", {"to": key, "pieces": 1, "to_operation": "cut"}, run="r1", tray="1"),
        event("pieces moved", {"to": "2", "pieces": 1, "to_operation": key}, run="r1", tray="1"),
        opened(trays=[{"tray": key, "pieces": 5}]),
        opened(trays=[{"tray": "1", "pieces": 5, "at": key}]),
        opened(boards={key: {"1": 5}}),
        opened(boards={"cut/1": {key: 5}}),
        opened(orders=[{"line": key, "pieces": 1}]),
        opened(copied_from=key),
    ]


@pytest.mark.parametrize("key", BAD)
@pytest.mark.parametrize("place", range(len(says("x"))))
def test_what_is_no_key_is_refused(place: int, key: str) -> None:
    with pytest.raises(Refused) as refused:
        check_form(says(key)[place])

    assert refused.value.code == "form"


@pytest.mark.parametrize("key", ["5+6", "4.2", "*"])
def test_a_tray_has_no_name_that_could_be_a_load_s(key: str) -> None:
    for record in (
        event("pieces moved", {"to": key, "pieces": 1, "to_operation": "cut"}, run="r1", tray="1"),
        event("board added", {"board": "cut/2", "pieces": {key: 1}}, run="r1"),
        opened(trays=[{"tray": key, "pieces": 5}]),
    ):
        with pytest.raises(Refused):
            check_form(record)


@pytest.mark.parametrize("name", ["two\nlines", "a\u2028b", "bell\x07", "null\x00"])
def test_a_name_is_one_line(name: str) -> None:
    for record in (
        opened(name=name),
        opened(wood=name),
        event("person came", {"name": name}, person="guest-12345678"),
        event("supply out", {"supply": name}, run="r1"),
        event("alert answered", {"alert": f"wait over|{name}", "answer": "done"}),
    ):
        with pytest.raises(Refused):
            check_form(record)


@pytest.mark.parametrize(
    "record",
    [
        event("load started", run="r1", load="sand:120/4"),
        event("load started", run="r1", load="engrave/4.2"),
        event("load started", run="r1", load="oil/" + "+".join(str(tray) for tray in range(1, 100))),
        event("load done", {"counts": {"*": {"good": 1}}}, run="r1", load="oil/1+2+3"),
        event("texts placed", {"places": [{"position": 1, "line": "-", "text": ""}]}, run="r1", tray="4a"),
        event("note written", {"text": "first\nsecond\tline"}, run="r1"),
        event("supply out", {"supply": "Hooks, 20 mm (brass)"}, run="r1"),
        event("person came", {"name": "Zoë"}, person="guest-12345678"),
        event("operation given", {"to": "", "trays": ["1", "4a"]}, run="r1", operation="sand:120"),
        event("alert answered", {"alert": "machine end|r1|oil/" + "+".join("1234567890") * 9 + "|1", "answer": "seen"}),
        event("server restarted", {"open": ["r1|oil/" + "+".join(str(tray) for tray in range(1, 99))]}),
    ],
)
def test_what_runboard_names_itself_is_taken(record: dict[str, Any]) -> None:
    assert check_form(record).kind == record["kind"]
