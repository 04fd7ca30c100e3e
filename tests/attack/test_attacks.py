"""The attacks, reduced: whatever one sender does, a phone beside it goes on working, and the server starts again.

How long a press takes beside them is measured by ``python -m tests.attack``.
"""

import signal
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from runboard.app import Settings, build
from tests.attack.attacks import ATTACKS, Attack
from tests.attack.by_clock import small_shop
from tests.attack.memory import Memory
from tests.attack.scene import Scene
from tests.attack.victim import Victim
from tests.phone import Phone
from tests.serving import Running, running

PATIENCE = 8.0
# These leave something in the shop: each has a server of its own, which then starts again.
ALONE = ("half-bodies", "drips", "heavy-file", "amended", "server-ahead", "everything")
TOGETHER = tuple(name for name in ATTACKS if name not in ALONE)


@contextmanager
def serving(data: Path) -> Iterator[Running]:
    with running("serve", "--data", str(data)) as server:
        server.data = data
        yield server


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Running]:
    data = tmp_path_factory.mktemp("attacked")
    small_shop(data)
    with serving(data) as found:
        yield found


def attacked(server: Running, one: Attack) -> Scene:
    """What an attack, reduced, came to."""
    assert server.data is not None
    with Victim(server.address, server.pair("crew"), PATIENCE) as victim:
        scene = Scene(server, server.data, victim, whole=False)
        scene.suffer(one.does)
    return scene


def refused(scene: Scene, one: Attack) -> list[str]:
    return [why for why in scene.victim.refused if not (one.may_be_busy and why.startswith("503"))]


@pytest.mark.parametrize("name", TOGETHER)
def test_a_phone_goes_on_working_beside(server: Running, name: str) -> None:
    one = ATTACKS[name]

    scene = attacked(server, one)
    scene.kept.close()

    assert scene.wrong == []
    assert scene.victim.times and refused(scene, one) == []
    assert Phone(server.address).state()["runs"]


@pytest.mark.parametrize("name", ALONE)
def test_a_server_starts_again_after(tmp_path: Path, name: str) -> None:
    one = ATTACKS[name]
    data = tmp_path / "shop"
    data.mkdir()
    one.shop(data)

    with serving(data) as first:
        scene = attacked(first, one)
        first.process.send_signal(signal.SIGTERM)
        first.process.wait(timeout=20)
    scene.kept.close()

    assert scene.wrong == [] and refused(scene, one) == []
    again = build(Settings(data, plans=False, open_to_all=True))
    again.open()
    try:
        assert again.app.test_client().get("/state").get_json()["runs"]
    finally:
        again.close()


def test_every_attack_says_what_it_does() -> None:
    assert all(one.about.endswith(".") for one in ATTACKS.values())


def test_memory_is_counted_from_idle(server: Running) -> None:
    with Memory(server.process.pid) as memory:
        memory.call_idle()

        assert 0 <= memory.over_idle < 1000
