"""The guides for contributors name what is there: every room stands in the map, and no path in a guide leads nowhere."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
GUIDES = [
    ROOT / "DEVELOPERS.md",
    *(
        path
        for room in ("runboard", "static", "tests")
        for path in sorted((ROOT / room).rglob("README.md"))
        if "vendor" not in path.parts
    ),
]
# From where a guide may name a path; `plan/next_move.py` is read as runboard's own.
_FROM = (ROOT, ROOT / "runboard", ROOT / "runboard" / "run", ROOT / "static")
_PATH = re.compile(r"`((?:[\w.-]+/)+(?:[\w.-]+\.(?:py|js|json|ftl|md|toml|html))?)`")
_FOLDER = re.compile(r"`((?:[\w.-]+/)+)`")


def rooms() -> set[str]:
    """Every package of the server that holds modules, and every folder of the page's script."""
    packages = {path.parent for path in (ROOT / "runboard").rglob("*.py") if path.name != "__init__.py"}
    scripts = {path.parent for path in (ROOT / "static").rglob("*.js")} - {ROOT / "static"}
    return {f"{path.relative_to(ROOT).as_posix()}/" for path in packages | scripts} - {"runboard/"}


def named_in_the_map() -> set[str]:
    """The folders that the map names."""
    text = (ROOT / "DEVELOPERS.md").read_text("utf-8").split("## The map")[1].split("\n## ")[0]
    return {name for row in text.splitlines() if row.startswith("| `") for name in _FOLDER.findall(row.split("|")[1])}


def test_every_room_stands_in_the_map() -> None:
    assert rooms() - named_in_the_map() == set()


@pytest.mark.parametrize("guide", GUIDES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_no_path_in_a_guide_leads_nowhere(guide: Path) -> None:
    named = _PATH.findall(guide.read_text("utf-8"))

    assert [path for path in named if not any((base / path).exists() for base in (*_FROM, guide.parent))] == []
