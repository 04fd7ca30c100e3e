"""Attacks by one sender who does too much of what anybody may do."""

import time
from urllib.parse import quote

from tests.attack.scene import Scene, event


def plan_reloads(scene: Scene) -> None:
    """Twelve who load the Plan page again and again."""
    token, until = scene.session("crew"), time.monotonic() + (20 if scene.whole else 1.5)
    took: list[float] = []

    def reload(number: int) -> None:
        while time.monotonic() < until:
            took.append(scene.ask("GET", ("/plan", "/plan/runs/r1")[number % 2], token=token).seconds)

    scene.at_once(12, reload)
    some = sorted(took)
    scene.remark(f"{len(some)} pages, p50 {1000 * some[len(some) // 2]:.0f} ms, max {1000 * some[-1]:.0f} ms")


def notes_in_one_batch(scene: Scene) -> None:
    """A helper's phone that sends two thousand notes at once."""
    many = scene.size(2000, 200)
    reply = scene.send(
        scene.session("crew"), *(event("note written", {"text": f"note {at}"}, run="r1") for at in range(many))
    )
    scene.remark(f"{many} notes: {reply.status} in {reply.seconds:.1f} s")
    if reply.status == 200:
        scene.remark(f"{sum(one['answer'] == 'accepted' for one in reply.json()['taps'])} accepted")


def notes_and_the_state(scene: Scene) -> None:
    """Long notes, batch after batch, and then the state that every phone asks for."""
    token, text = scene.session("crew"), "x" * 2000
    for _ in range(scene.size(17, 2)):
        scene.send(token, *(event("note written", {"text": text}, run="r1") for _ in range(scene.size(500, 200))))
    size = len(scene.ask("GET", "/state?person=ann", token=scene.session("lead")).body)
    scene.remark(f"/state is {size / 1000:.0f} kB")
    scene.must(size <= 300_000, f"/state is {size / 1000:.0f} kB for every phone")


def refused_presses(scene: Scene) -> None:
    """Presses of 1.9 MB that are refused, and what is kept of each."""
    token, many = scene.session("crew"), scene.size(25, 4)
    before = _stored(scene)
    for _ in range(many):
        scene.send(token, event("note written", {"text": "x" * 1_900_000}, run="r1"))
    more = (_stored(scene) - before) / 1e6
    scene.remark(f"{many} of 1.9 MB made the store {more:.1f} MB bigger")
    scene.must(more <= 3, f"{many} refused presses made the store {more:.1f} MB bigger")


def calls(scene: Scene) -> None:
    """A guest's phone that calls the lead again and again."""
    guest = scene.form(scene.card(), "name=Mia").cookie
    about = scene.ask("GET", "/helper/state", token=guest).json()
    for _ in range(scene.size(300, 25)):
        scene.send(guest, event("lead called", {"why": "help"}, run="r1", tray="1", person=about["person"]))
    state = scene.ask("GET", "/state?person=ann", token=scene.session("lead")).json()
    ringing = sum("call" in one["kind"] for one in state["dues"])
    scene.remark(f"{ringing} alerts")
    scene.must(0 < ringing <= 2, f"repeated calls ring {ringing} alerts")


def guests_by_one_card(scene: Scene) -> None:
    """One card, and names without end."""
    card, many = scene.card(), scene.size(400, 60)
    came = sum(bool(scene.form(card, f"name=Guest{at}", source=f"127.0.3.{1 + at % 200}").cookie) for at in range(many))
    scene.remark(f"{came} of {many} came in")
    scene.must(came < many, f"one card let {came} guests in")


def wrong_codes(scene: Scene) -> None:
    """Twenty addresses that guess ten codes each; then somebody has the right one."""
    for at in range(200):
        scene.form("/pair", "code=ABCD-EFGH", source=f"127.0.4.{1 + at // 10}")
    reply = scene.form("/pair", f"code={quote(scene.code('crew'))}", source="127.0.0.68")
    scene.remark(f"the right code from elsewhere: {reply.status}")
    scene.must(reply.status == 303, f"the right code from an address that guessed nothing: {reply.status}")


def _stored(scene: Scene) -> int:
    return sum(one.stat().st_size for one in scene.data.glob("shop.db*"))
