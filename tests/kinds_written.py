"""The kinds of events written out for others: ``event.schema.json`` and the table in ``runboard/run/README.md``.

``python -m tests.kinds_written`` writes both again from ``kinds.py``.
"""

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import runboard.run.log
from runboard.run.log.form import ENVELOPE, body_schema, needed
from runboard.run.log.kinds import KINDS, Kind

BEGIN, END = "<!-- kinds -->", "<!-- /kinds -->"
SCHEMA = Path(runboard.run.log.__file__).parent / "event.schema.json"
GUIDE = Path(__file__).parents[1] / "runboard" / "run" / "README.md"


def event_schema() -> dict[str, Any]:
    """The JSON Schema of every event: the envelope, and for each kind its body."""
    return {
        "$schema": "http://json-schema.org/draft-07/schema#",
        "title": "An event of the shop's log",
        "type": "object",
        "required": ["id", "kind", "at"],
        "properties": ENVELOPE,
        "additionalProperties": False,
        "allOf": [
            {
                "if": {"properties": {"kind": {"const": kind}}, "required": ["kind"]},
                "then": {
                    "description": KINDS[kind].about,
                    "required": list(needed(kind)),
                    "properties": {
                        **{name: {"type": "string", "minLength": 1} for name in needed(kind)},
                        "body": body_schema(kind),
                    },
                },
            }
            for kind in KINDS
        ],
    }


def schema_text() -> str:
    """The JSON Schema of every event, as the file has it."""
    return json.dumps(event_schema(), indent=1, ensure_ascii=False) + "\n"


def kinds_table() -> str:
    """Every kind as a row of a Markdown table: what it is about, what it must name, its body."""
    rows = ["| kind | names | body | meaning |", "| --- | --- | --- | --- |"]
    rows += [f"| `{name}` | {_names(name)} | {_body(kind)} | {kind.about} |" for name, kind in KINDS.items()]
    return "\n".join(rows)


def with_kinds(guide: str) -> str:
    """The guide's text with the table between its two markers; as it is where it has none."""
    if BEGIN not in guide or END not in guide:
        return guide
    before, rest = guide.split(BEGIN, 1)
    return f"{before}{BEGIN}\n{kinds_table()}\n{END}{rest.split(END, 1)[1]}"


def _names(kind: str) -> str:
    return ", ".join(needed(kind)) or "–"


def _body(kind: Kind) -> str:
    """'good, scrap?: list': required fields first, the optional ones with a question mark."""
    fields = [_field(name, shape) for name, shape in kind.required.items()]
    fields += [_field(f"{name}?", shape) for name, shape in kind.optional.items()]
    return ", ".join(fields) or "–"


def _field(name: str, shape: Mapping[str, Any]) -> str:
    if "enum" in shape:
        return f"`{name}`: " + " / ".join(str(word) for word in shape["enum"])
    word = {"date-time": "moment"}.get(shape.get("format", "")) or str(shape.get("type", ""))
    return f"`{name}`: {word}"


def main() -> None:
    """Write the schema, and the table where the guide is at hand."""
    SCHEMA.write_text(schema_text(), encoding="utf-8")
    if GUIDE.exists():
        GUIDE.write_text(with_kinds(GUIDE.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main()
