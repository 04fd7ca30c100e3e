"""The shape of the code is a rule too: the linter, the types, the layers, and each package's stated law."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PURE = ("shop", "run", "plan", "review")
PACKAGES = (*PURE, "words", "floor", "store", "alerts", "background", "cards", "lan", "web", "commands", "demo")


def said_by(*command: str) -> str:
    """Run a tool that is installed beside this Python; what it said, empty where it was content."""
    tool = Path(sys.executable).parent / command[0]
    done = subprocess.run([str(tool), *command[1:]], cwd=ROOT, capture_output=True, text=True, check=False)
    return "" if done.returncode == 0 else done.stdout + done.stderr


def test_the_linter_is_content() -> None:
    assert said_by("ruff", "check", "--no-cache", "runboard", "tests") == ""


def test_the_code_is_formatted() -> None:
    assert said_by("ruff", "format", "--check", "--no-cache", "runboard", "tests") == ""


def test_the_types_hold() -> None:
    assert said_by("mypy", "--no-error-summary") == ""


def test_imports_run_one_way() -> None:
    assert said_by("lint-imports", "--no-cache") == ""


@pytest.mark.parametrize("package", PACKAGES)
def test_each_package_states_its_law(package: str) -> None:
    module = ast.parse((ROOT / "runboard" / package / "__init__.py").read_text("utf-8"))

    assert "Law: " in (ast.get_docstring(module) or "")


@pytest.mark.parametrize("package", PURE)
def test_the_pure_packages_read_no_clock_and_open_no_socket(package: str) -> None:
    clocks = {"now", "utcnow", "today", "monotonic", "perf_counter", "time_ns", "sleep"}
    found = []

    for path in sorted((ROOT / "runboard" / package).rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in clocks:
                found.append(f"{path.name}:{node.lineno} {node.func.attr}()")
            if isinstance(node, ast.Import) and {alias.name for alias in node.names} & {"time", "socket"}:
                found.append(f"{path.name}:{node.lineno} import")

    assert found == []
