"""An installed wheel and a checkout behave alike."""

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import httpx
import pytest

from tests.pairing import cookies
from tests.serving import ROOT, running

ADDRESSES = ("/static/base.css", "/static/icon.svg", "/static/words/en.ftl", "/table.json", "/nowhere")


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A wheel, built from this checkout and laid open as an installer does."""
    place = tmp_path_factory.mktemp("wheel")
    subprocess.run(
        [sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "--no-build-isolation", "-w", str(place), str(ROOT)],
        check=True,
    )
    (wheel,) = place.glob("*.whl")
    zipfile.ZipFile(wheel).extractall(place / "site")
    return place / "site"


def files_under(folder: Path) -> set[str]:
    return {
        path.relative_to(folder).as_posix()
        for path in folder.rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }


@pytest.mark.parametrize("name", ["templates", "static"])
def test_pages_and_scripts_are_in_the_wheel(installed: Path, name: str) -> None:
    assert files_under(installed / "runboard" / name) == files_under(ROOT / name)


def test_the_package_is_whole(installed: Path) -> None:
    within = {one for one in files_under(installed / "runboard") if not one.startswith(("templates/", "static/"))}

    assert within == files_under(ROOT / "runboard")


def test_the_licence_and_the_command_are_told(installed: Path) -> None:
    (about,) = installed.glob("*.dist-info")

    assert "License-Expression: Apache-2.0" in (about / "METADATA").read_text("utf-8")
    assert "runboard = runboard.cli:main" in (about / "entry_points.txt").read_text("utf-8")


def test_both_answer_alike(installed: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def answers(folder: str) -> list[tuple[int, str, bytes]]:
        with running("serve", "--data", str(tmp_path / folder)) as server:
            paired = cookies(server.pair())
            asked = [httpx.get(server.address.rstrip("/") + one, cookies=paired) for one in ADDRESSES]
        return [(one.status_code, one.headers["content-type"], one.content) for one in asked]

    checkout = answers("one")
    monkeypatch.setenv("PYTHONPATH", os.pathsep.join([str(installed), os.environ.get("PYTHONPATH", "")]))
    monkeypatch.setattr("tests.serving.ROOT", tmp_path)  # away from the checkout, which would be found first

    assert answers("two") == checkout
