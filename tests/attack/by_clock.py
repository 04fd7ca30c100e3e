"""Attacks by a moment that is not now, and by a database that somebody else holds."""

import sqlite3
import threading
import time
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.opening import open_workshop
from runboard.store.open import Store
from tests.attack import by_count, by_wire
from tests.attack.scene import Scene, event
from tests.conftest import HandClock
from tests.scenario import shop

FAR = "2199-12-31T23:59:59.999Z"
YEAR = timedelta(days=366)


def amended_into_the_future(scene: Scene) -> None:
    """A helper's phone says of its press that it was in 2199; then the server's own events must go on."""
    crew, press = scene.session("crew"), event("note written", {"text": "x"}, run="r1")
    scene.send(crew, press)
    scene.send(crew, event("event amended", {"event": press["id"], "at": FAR}))
    _goes_on(scene)


def pressed_in_the_future(scene: Scene) -> None:
    """Presses whose own clock is a year ahead, or said to be."""
    crew, then = scene.session("crew"), (datetime.now(UTC) + YEAR).isoformat()
    scene.send(crew, event("note written", {"text": "x"}, run="r1", at=then))
    scene.send(crew, event("note written", {"text": "x"}, run="r1", at=then), sent_at=then)
    scene.send(crew, event("note written", {"text": "x"}, run="r1", offset_ms=10**11))
    scene.send(crew, event("person came", {"until": FAR}))
    _goes_on(scene)


def clocks_years_off(scene: Scene) -> None:
    """Tablets without a battery: their presses count as of now, and each by itself."""
    crew, now = scene.session("crew"), datetime.now(UTC)
    for off in (-YEAR, YEAR, -50 * YEAR, timedelta(days=30)):
        at = (now + off).isoformat()
        reply = scene.send(crew, event("note written", {"text": "off"}, run="r1", at=at), sent_at=at)
        told = reply.json()["taps"][0] if reply.status == 200 else {"answer": str(reply.status)}
        scene.must(told["answer"] == "accepted", f"a clock {off.days} days off: {told['answer']} {told.get('code')}")
    honest = event("note written", {"text": "honest"}, run="r1", person="ann")
    wrong = event("note written", {"text": "wrong"}, run="r1", at=(now + 170 * YEAR).isoformat())
    scene.send(crew, honest, wrong)
    at = _moments(scene).get(honest["id"])
    scene.must(at is not None, "an honest press beside one of 2196 was refused")
    scene.must(at is None or abs(at - now) < timedelta(minutes=5), f"an honest press was moved to {at}")


def server_was_ahead(folder: Path) -> None:
    """The shop after an evening on which the server's clock was a year ahead."""
    small_shop(folder)
    store, workshop = open_workshop(folder, HandClock(datetime.now(UTC).replace(microsecond=0) + YEAR))
    record_events(workshop, [new_event(workshop, "note written", {"text": "from next year"}, run="r1", person="ann")])
    store.close()


def served_after_that(scene: Scene) -> None:
    """The clock is right again: the shop is served, and says so."""
    _goes_on(scene)


def _goes_on(scene: Scene) -> None:
    """The lead opens a run and ends it, and a guest comes in: what the server records itself."""
    lead, before = scene.session("lead"), _moments(scene)
    fields = "seen=1&product=rail&orders.0.pieces=5&certainty=0.9&pieces_a_tray=5"
    codes = {
        "opens a run": scene.form("/plan/runs/new", fields, token=lead).status,
        "lets a guest in": scene.form(scene.card("2"), "name=Mia").status,
        "gives a run up": scene.form("/plan/runs/r2/end", "how=abandoned", token=lead).status,
    }
    for what, status in codes.items():
        scene.must(status == 303, f"the lead {what}: {status}")
    now = datetime.now(UTC)
    late = [at for id_, at in _moments(scene).items() if id_ not in before and at > now + timedelta(minutes=1)]
    scene.must(not late, f"{len(late)} events made since are of {max(late, default=now).year}")


def _moments(scene: Scene) -> dict[str, datetime]:
    """When each event that is stored was, by its id."""
    store, _ = open_workshop(scene.data)
    try:
        return {one.id: one.moment for one in store.log.events()}
    finally:
        store.close()


def database_held(scene: Scene) -> None:
    """Another program holds the database. Presses wait or are told to come again; what only looks does not wait."""
    token, took, over = scene.session("crew"), [0.0], threading.Event()

    def look() -> None:
        while not over.is_set():
            took.append(scene.ask("GET", "/state?person=ann", token=token).seconds)
            over.wait(0.2)

    looking = threading.Thread(target=look)
    with closing(sqlite3.connect(scene.data / "shop.db", isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        looking.start()
        time.sleep(12 if scene.whole else 2)
        other.execute("ROLLBACK")
    over.set()
    looking.join()
    scene.remark(f"/state took {1000 * max(took):.0f} ms at most")
    scene.in_time(max(took) < 1, f"/state waited {max(took):.1f} s for a database that is held")


def all_at_once(scene: Scene) -> None:
    """Half-sent bodies, silent connections, streams and floods beside each other; the server is stopped under them."""
    for one in (
        by_wire.half_sent_bodies,
        by_wire.silent,
        by_wire.all_streams,
        by_count.notes_in_one_batch,
        by_count.wrong_codes,
    ):
        one(scene)


def small_shop(folder: Path) -> None:
    """The small shop with a run of 24 pieces, its first board on the machine."""
    store, workshop = _made(folder, 24)
    for kind in ("load started", "machine started"):
        record_events(workshop, [new_event(workshop, kind, {}, run="r1", load="cut/1", person="ann")])
    store.close()


def big_shop(folder: Path) -> None:
    """A run of the README's own size: 500 pieces."""
    store, _ = _made(folder, 500)
    store.close()


def _made(folder: Path, pieces: int) -> tuple[Store, Workshop]:
    store, workshop = open_workshop(folder)
    workshop.books.save(shop(), workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": pieces, "text": "12"}], pieces_a_tray=5), "ann")
    return store, workshop
