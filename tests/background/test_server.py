"""A server that is put down while a child works leaves none behind."""

from pathlib import Path

import httpx

from tests.background.test_children import until
from tests.serving import Running, running


def children(server: Running) -> list[int]:
    """The children of a server that do long work."""
    found = []
    for place in Path(f"/proc/{server.process.pid}/task").glob("*/children"):
        for child in place.read_text().split():
            try:
                if b"spawn_main" in Path(f"/proc/{child}/cmdline").read_bytes():
                    found.append(int(child))
            except OSError:  # gone meanwhile
                continue
    return found


def test_a_server_that_is_put_down_takes_its_children_along() -> None:
    with running("demo") as server:
        base = server.address
        origin = {"Origin": base.rstrip("/")}
        runs = [key for key, one in httpx.get(f"{base}state").json()["runs"].items() if one["state"] == "open"]
        for paper in ("a6", "letter", "a4", "4x6"):
            asked = {"kind": ["travellers", "sheet", "jigs"], "paper": paper, "how": "pdf"}
            answer = httpx.post(f"{base}plan/runs/{runs[0]}/cards", data=asked, headers=origin)
            assert answer.status_code == 303
        until(lambda: children(server))
        before = children(server)

        took = server.interrupt()

    assert took < 8
    assert not [one for one in before if Path(f"/proc/{one}").exists()]
