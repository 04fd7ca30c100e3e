"""What a server's own process loads: nothing that only its children, or a card, a picture or an alert, need."""

import subprocess
import sys
import urllib.request
from pathlib import Path

import pytest

from tests.serving import running

# At the end it says what it has loaded.
TELLING = """
import atexit, sys
atexit.register(lambda: print("loaded", *sorted(sys.modules), flush=True))
from runboard.cli import main
sys.exit(main())
"""
CHILDRENS = {"numba", "llvmlite", "ortools", "numpy", "pandas", "scipy", "matplotlib"}
LATER = {"weasyprint", "pypdf", "apprise", "pywebpush"}


@pytest.mark.parametrize("planner", [True, False], ids=["planned", "not planned"])
def test_a_server_that_answers_has_loaded_nothing_that_it_does_not_need(tmp_path: Path, planner: bool) -> None:
    with running(
        "demo", "--data", str(tmp_path / "demo"), python=(sys.executable, "-c", TELLING), planner=planner
    ) as it:
        urllib.request.urlopen(it.address, timeout=30).close()
        it.interrupt()

    loaded = set(next(line for line in it.said if line.startswith("loaded")).split())
    assert "flask" in loaded
    assert loaded & (CHILDRENS | LATER) == set()


def test_the_solver_finds_all_the_same_what_is_kept_from_the_store() -> None:
    asked = (
        "import runboard.store.database, sys; assert not {'numpy', 'pandas'} & set(sys.modules); import numpy, pandas"
    )

    assert subprocess.run([sys.executable, "-c", asked], check=False).returncode == 0
