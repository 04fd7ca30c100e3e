"""The rooms of the page's script: who may import whom, at once or late; and that state flows one way."""

import json
import re
from collections.abc import Iterator
from graphlib import TopologicalSorter
from pathlib import Path
from posixpath import dirname, join, normpath

import pytest

from runboard.run.fold.table import table_text

STATIC = Path(__file__).parents[2] / "static"
SHARED = {"door", "views", "alerts", "sheets"}
# What a room may import from, beside itself and what is vendored.
MAY_IMPORT: dict[str, set[str]] = {
    "table": set(),
    "door": {"table"},
    "views": {"door"},
    "alerts": {"door", "views"},
    "sheets": {"door", "views", "alerts"},
    "now": SHARED,
    "trays": SHARED,
    "wall": SHARED,
    "helper": {"door"},
    "forms": set(),
    "before": set(),
}
MOST_IN_A_ROOM = 25
_IMPORTED = re.compile(r"""\b(?:from|import)\s*\(?\s*["'](\.[^"']+)["']""")
# Reaching the server or this phone's storage, and drawing: the door's alone.
_REACHES = re.compile(r"\b(?:fetch\(|localStorage|sessionStorage|indexedDB|EventSource|XMLHttpRequest)|\brender\b")
# What the outbox may be asked for by those who draw: how it stands, and to put away what was read.
_MAY_ASK = {
    "dismiss",
    "notSaved",
    "onlyHere",
    "outboxTrouble",
    "pressState",
    "refused",
    "storageFull",
    "unseen",
    "waiting",
}

SCRIPTS = sorted(path.relative_to(STATIC).as_posix() for path in STATIC.glob("*/*.js") if path.parent.name != "vendor")
DRAWN = [name for name in SCRIPTS if name.startswith(("views/", "alerts/", "sheets/", "now/", "trays/", "wall/"))]


def room(name: str) -> str:
    return name.split("/", maxsplit=1)[0]


def text(name: str) -> str:
    return (STATIC / name).read_text("utf-8")


def imported(name: str) -> Iterator[str]:
    """The modules of ours that one imports, at once and late."""
    found = {normpath(join(dirname(name), one)) for one in _IMPORTED.findall(text(name))}
    return (one for one in sorted(found) if not one.startswith("vendor/"))


# The kinds of event that a page makes a draft of.
MADE = frozenset(
    kind for name in SCRIPTS if room(name) != "table" for kind in re.findall(r"""\bkind: "([a-z ]+)\"""", text(name))
)


# What the page folds: the transition table whole, and of the rest what a page makes.
FOLDED = MADE | {row["kind"] for subject in ("load", "tray") for row in json.loads(table_text())[subject]["rows"]}


def test_every_script_lies_in_a_room_that_says_what_it_is() -> None:
    told = re.findall(r"`([a-z]+)/`", (STATIC / "README.md").read_text("utf-8"))

    assert {room(name) for name in SCRIPTS} == set(MAY_IMPORT) == set(told)
    assert [path.name for path in STATIC.glob("*.js")] == ["worker.js"]
    assert not list(STATIC.glob("*/*/**/*.js"))


@pytest.mark.parametrize("name", SCRIPTS)
def test_a_script_imports_only_what_its_room_may(name: str) -> None:
    assert [one for one in imported(name) if room(one) not in MAY_IMPORT[room(name)] | {room(name)}] == []


def test_nothing_that_is_imported_leads_back_to_who_asked() -> None:
    order = TopologicalSorter({name: imported(name) for name in SCRIPTS})

    order.prepare()


@pytest.mark.parametrize("one", MAY_IMPORT)
def test_a_room_holds_no_more_than_one_can_look_over(one: str) -> None:
    assert 0 < len([name for name in SCRIPTS if room(name) == one]) <= MOST_IN_A_ROOM


@pytest.mark.parametrize("name", DRAWN)
def test_what_is_drawn_neither_fetches_nor_stores_nor_draws_by_itself(name: str) -> None:
    asked = re.search(r"""import \{([^}]*)\} from "[^"]*/outbox.js";""", text(name))

    assert _REACHES.findall(text(name)) == []
    assert {one.strip() for one in asked[1].split(",")} <= _MAY_ASK if asked else True


def test_every_part_and_sheet_that_is_named_is_offered() -> None:
    sheets = set(re.findall(r"""^  "?([a-z -]+?)"?: async""", text("sheets/sheets.js"), re.MULTILINE))
    parts = set(re.findall(r"""^  "?([a-z -]+?)"?: (?:async )?(?:\(\) =>|fetch)""", text("now/now.js"), re.MULTILINE))
    named = [text(name) for name in DRAWN]

    assert {one for script in named for one in re.findall(r"""\bopen\("([^"]+)\"""", script)} == sheets
    asked = {one for script in named for one in re.findall(r"""\b(?:part|here|wanted)\("([^"]+)\"""", script)}
    assert asked <= parts
    assert parts - asked == {"sheets", "overlay"}


def test_the_pages_fold_knows_the_kinds_of_event_that_a_page_makes_and_no_others() -> None:
    scripts = [text(name) for name in SCRIPTS if room(name) == "table"]
    handled = {
        kind for script in scripts for kind in re.findall(r"""^  "([a-z]+(?: [a-z]+)+)": """, script, re.MULTILINE)
    }
    rows = {row["kind"] for subject in ("load", "tray") for row in json.loads(table_text())[subject]["rows"]}
    effects = set(
        re.findall(r"""^  "?([a-z ]+?)"?[:,]""", text("table/effects.js").split("EFFECTS", 1)[1], re.MULTILINE)
    )

    assert MADE - rows - {"event undone", "entry settled", "span answered"} == handled - effects
    assert rows - MADE == {"card printed", "texts placed"}
