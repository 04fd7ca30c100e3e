"""A batch is taken in slices, between which whoever waits gets the shop."""

import threading
from contextlib import contextmanager

import pytest

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.pressing.taps import MOST_A_SLICE, take_taps
from runboard.run.refusal import NotStored
from runboard.turn import Turn
from tests.floor.fakes import FakeLog, workshop
from tests.scenario import shop


class WatchedLog(FakeLog):
    """Calls ``begins`` with the number of each transaction, inside of it."""

    def __init__(self):
        super().__init__()
        self.writes = 0
        self.begins = lambda number: None

    @contextmanager
    def write(self, wait=3.0):
        with super().write(wait) as write:
            self.writes += 1
            self.begins(self.writes)
            yield write


@pytest.fixture
def shopfloor():
    made = workshop(shop())
    made.log = WatchedLog()
    open_run(made, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    made.log.writes = 0
    return made


def note(made, id_, **fields):
    at = made.clock.now().isoformat()
    return {
        "id": id_,
        "kind": "note written",
        "at": at,
        "person": "ann",
        "run": "r1",
        "body": {"text": "dry"},
        **fields,
    }


def notes(made, count):
    return [note(made, f"note-{at:04d}") for at in range(count)]


def send(made, taps, device="phone"):
    return take_taps(made, {"device": device, "sent_at": made.clock.now().isoformat(), "taps": taps})


def until_somebody_waits(turn):
    # Not for ever: where nobody comes, the test fails by what it asserts.
    for _ in range(2000):
        if turn.waiting:
            return
        threading.Event().wait(0.005)


def test_whoever_waits_is_let_in_before_the_batch_is_through(shopfloor):
    other = threading.Thread(target=send, args=(shopfloor, [note(shopfloor, "other-1")], "other"))

    def begins(number):
        if number == 1:
            other.start()
            until_somebody_waits(shopfloor.lock)

    shopfloor.log.begins = begins

    send(shopfloor, notes(shopfloor, 10 * MOST_A_SLICE))
    other.join()

    order = [event.id for event in shopfloor.log.stored[1:]]
    assert order.index("other-1") == MOST_A_SLICE


def test_a_batch_is_answered_in_its_order_though_it_is_taken_in_slices(shopfloor):
    taps = notes(shopfloor, 35)
    taps[3] = {"id": "none-1"}
    taps[12] = note(shopfloor, "note-0012", run="r9")

    answers = send(shopfloor, taps)

    assert shopfloor.log.writes == 4
    assert [one["id"] for one in answers["taps"]] == [one["id"] for one in taps]
    assert [at for at, one in enumerate(answers["taps"]) if one["answer"] == "refused"] == [3, 12]
    assert answers["seq"] == shopfloor.ledger.last_seq == 34


def test_half_a_batch_that_was_stored_is_known_when_it_is_sent_again(shopfloor):
    taps = notes(shopfloor, 25)

    def begins(number):
        if number == 2:
            raise NotStored("full")

    shopfloor.log.begins = begins
    with pytest.raises(NotStored):
        send(shopfloor, taps)
    again = send(shopfloor, taps)

    assert [one["answer"] for one in again["taps"]] == ["known"] * 10 + ["accepted"] * 15
    assert [event.id for event in shopfloor.log.stored[1:]] == [one["id"] for one in taps]


def test_the_events_of_one_press_are_stored_together(shopfloor):
    taps = notes(shopfloor, MOST_A_SLICE - 1)
    taps += [note(shopfloor, id_) for id_ in ("press-9", "press-9.2", "press-9.3", "press-12")]
    before = []
    shopfloor.log.begins = lambda number: before.append([event.id for event in shopfloor.log.stored])

    send(shopfloor, taps)

    assert before[1][-1] == "press-9.3"


def test_a_slow_press_ends_its_slice(shopfloor):
    clock = shopfloor.clock
    now = clock.now
    clock.now = lambda: clock.pass_(0.001)  # 60 ms each time that somebody asks

    send(shopfloor, notes(shopfloor, 4))

    clock.now = now
    assert shopfloor.log.writes == 4


def test_the_shop_is_given_on_and_taken_again_by_the_same_thread():
    turn = Turn()

    with turn, turn:
        pass
    turn.give_way()

    assert turn.waiting == 0
