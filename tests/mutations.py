"""Whether tests/outside notices when the product is wrong: 25 changes of it, each made alone in a copy of the tree.

``python -m tests.mutations`` prints what each change breaks, whether the tests that belong to it fail, and how many were
caught (goal 23 of 25); ``python -m tests.mutations 3 7`` makes only those. ``tests/outside/test_mutations.py`` holds that
each text is still found once.
"""

import os
import shutil
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

ROOT = Path(__file__).parents[1]
PARTS = ("runboard", "static", "templates", "tests")
GOAL = 23
LONGEST = 90  # seconds of one change's tests


@dataclass(frozen=True)
class Mutation:
    """``text`` in ``file`` becomes ``put``; ``breaks`` is what is then wrong, and ``tests`` are those that should say so."""

    file: str
    text: str
    put: str
    breaks: str
    tests: str


MUTATIONS = (
    # push
    Mutation(
        "runboard/alerts/push_service.py",
        '"Topic": topic(subscription, message["id"])',
        '"Topic": message["id"][:32]',
        "a service reads what an alert is about",
        "push",
    ),
    Mutation(
        "runboard/alerts/push_service.py",
        "json.dumps(message, ensure_ascii=False)",
        'json.dumps({"id": message["id"]})',
        "a message arrives without its sentence",
        "push",
    ),
    Mutation(
        "runboard/alerts/push_service.py",
        '"keys": {"p256dh": subscription.p256dh, "auth": subscription.auth}',
        '"keys": {"p256dh": subscription.p256dh, "auth": subscription.p256dh[:22]}',
        "a message is encrypted by another secret",
        "push",
    ),
    Mutation(
        "runboard/alerts/push_service.py", "ttl=KEPT_SECONDS", "ttl=0", "a phone that is off never gets it", "push"
    ),
    # calendar
    Mutation("runboard/run/calls/calendar.py", "MOST_OCTETS = 75", "MOST_OCTETS = 80", "lines are too long", "calendar"),
    Mutation(
        "runboard/run/calls/calendar.py",
        "'-' if span < timedelta(0) else ''",
        "''",
        "an alarm before an event rings after it",
        "calendar",
    ),
    # colours and signs
    Mutation("static/tokens.css", "--soft: #57524a;", "--soft: #8f897d;", "soft text fades by day", "contrast"),
    Mutation("static/tokens.css", "--touch: 3.5rem;", "--touch: 2.75rem;", "buttons shrink", "contrast"),
    Mutation(
        "static/signs/W004.svg", "M100 21 191 179H9z", "M100 21 191 189H9z", "a triangle is stretched", "signs"
    ),
    Mutation(
        "static/signs/P003.svg",
        "M36.4 36.4 163.6 163.6",
        "M163.6 36.4 36.4 163.6",
        "a prohibition's bar runs the other way",
        "signs",
    ),
    # noise and dust
    Mutation("runboard/review/noise.py", "NoiseRule(90, 5)", "NoiseRule(90, 4)", "OSHA's exchange rate is 4 dB", "noise"),
    Mutation(
        "runboard/review/noise.py",
        "rule.exchange_db * log2(percent / 100)",
        "10 * log10(percent / 100)",
        "the level of a day is NIOSH's by any rule",
        "noise",
    ),
    Mutation(
        "runboard/review/dust_limits.py", '"softwood", 5', '"softwood", 3', "a limit for dust is another's", "dust"
    ),
    # extras and yields
    Mutation(
        "runboard/plan/extras.py",
        "range(wanted, started + 1)",
        "range(wanted, started)",
        "the chance that all are good is left out",
        "extras",
    ),
    Mutation(
        "runboard/review/pace.py",
        "math.exp(-defects / units)",
        "1 - defects / units",
        "a yield is no Poisson's",
        "yields",
    ),
    # lengths
    Mutation("runboard/shop/units.py", "Fraction(254, 10)", "Fraction(25400051, 1000051)", "the inch is near", "units"),
    Mutation("runboard/shop/units.py", "SMALLEST_FRACTION = 64", "SMALLEST_FRACTION = 32", "no 64ths", "units"),
    # pace
    Mutation(
        "runboard/review/pace.py",
        "max(served.of_machine, machines * served.of_person)",
        "max(served.of_machine, machines * served.concurrent)",
        "walking takes no time",
        "person_machine",
    ),
    Mutation(
        "runboard/review/pace.py",
        "int(-(-work // a_cycle))",
        "int(work // a_cycle)",
        "a line has a station too few",
        "line_balance",
    ),
    # plans
    Mutation(
        "runboard/plan/schedule/told/pacing.py",
        "(min(first, start), max(last, end))",
        "(start, max(last, end))",
        "a tray's time begins at its last step",
        "littles_law",
    ),
    Mutation(
        "runboard/plan/schedule/search/bounds.py",
        'return Bound(chains.end(last), "hours")',
        'return Bound(2 * chains.end(last), "hours")',
        "a bound lies above the optimum",
        "scheduling",
    ),
    # cautions and codes
    Mutation(
        "runboard/run/care/cautions.py",
        "if caution.key in keys and caution.yields_to not in keys",
        "if caution.key in keys",
        "gloves are asked for at a cutter",
        "cautions",
    ),
    Mutation("runboard/cards/qr.py", "_QUIET = 4", "_QUIET = 2", "a code has half its quiet zone", "qr"),
    # what is shown and served
    Mutation(
        "runboard/shop/route_words.py", '"inspection": "□"', '"inspection": "◇"', "a symbol is none of ASME's",
        "process_chart",
    ),
    Mutation(
        "static/runboard.webmanifest", '"display": "standalone"', '"display": "browser"', "it cannot be installed",
        "manifest",
    ),
)  # fmt: skip


def main(numbers: list[int]) -> int:
    """Make each change, print the table; 1 where fewer than the goal are caught."""
    chosen = numbers or list(range(1, len(MUTATIONS) + 1))
    caught = 0
    with TemporaryDirectory() as folder:
        tree = Path(folder)
        for part in PARTS:
            shutil.copytree(ROOT / part, tree / part, ignore=shutil.ignore_patterns("__pycache__"))
        shutil.copy(ROOT / "pyproject.toml", tree)
        for one in sorted({MUTATIONS[number - 1].tests for number in chosen}):
            assert passes(tree, one) == "passes", f"test_{one}.py fails without any change"
        for number in chosen:
            one, began = MUTATIONS[number - 1], time.perf_counter()
            result = with_change(tree, one)
            caught += result != "passes"
            said = "MISSED" if result == "passes" else "caught"
            print(f"{number:2} {said} {time.perf_counter() - began:5.1f} s  {one.file}: {one.breaks}", flush=True)
    print(f"{caught} of {len(chosen)} caught; the goal is {GOAL} of {len(MUTATIONS)}")
    return int(caught < min(GOAL, len(chosen)))


def with_change(tree: Path, one: Mutation) -> str:
    """What its tests say of the tree with the change, which is taken back."""
    path = tree / one.file
    before = path.read_text("utf-8")
    assert before.count(one.text) == 1, f"{one.file} has {one.text!r} {before.count(one.text)} times"
    path.write_text(before.replace(one.text, one.put), "utf-8")
    try:
        return passes(tree, one.tests)
    finally:
        path.write_text(before, "utf-8")


def passes(tree: Path, tests: str) -> str:
    """'passes', 'fails', or 'hangs' after the longest time; only the copy is imported, and no old byte code."""
    quietly = ("-n0", "-xq", "-p", "no:cacheprovider")
    command = [sys.executable, "-m", "pytest", *quietly, f"tests/outside/test_{tests}.py"]
    only_the_copy = {**os.environ, "PYTHONPATH": str(tree), "PYTHONDONTWRITEBYTECODE": "1"}
    try:
        done = subprocess.run(command, cwd=tree, env=only_the_copy, capture_output=True, timeout=LONGEST, check=False)
    except subprocess.TimeoutExpired:
        return "hangs"
    if done.returncode not in (0, 1):  # neither passed nor failed, but never ran
        raise RuntimeError(done.stdout.decode() + done.stderr.decode())
    return "fails" if done.returncode else "passes"


if __name__ == "__main__":
    sys.exit(main([int(number) for number in sys.argv[1:]]))
