"""Whoever sends too slowly, too much or not at all is let go, with a sentence where one can be read; nobody else waits."""

import json
import threading
import time
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest

from runboard.house import House
from runboard.web.door.bounds import MOST_A_SENDER, WORKERS, Bounds
from runboard.web.door.sizes import A_FEW_WORDS, BY_ENDPOINT
from tests.web.serving_here import Here, everything, request, serving_here, until
from tests.web.test_taps import batch, came

SOON = Bounds(headers=0.4, body=0.4, unread=0.4)
PATIENT = Bounds()


@pytest.fixture
def here(tmp_path: Path) -> Iterator[Here]:
    with serving_here(tmp_path, SOON) as found:
        yield found


@pytest.fixture
def patient(tmp_path: Path) -> Iterator[Here]:
    with serving_here(tmp_path, PATIENT) as found:
        yield found


def press(here: Here, cookie: str) -> str:
    """What a phone is answered to a press."""
    return here.ask(request("POST", "/taps", cookie, json.dumps(batch(came()))))


def test_a_press_is_answered_beside_twice_as_many_unfinished_ones_as_there_are_workers(patient: Here) -> None:
    cookie = patient.pair()
    with ExitStack() as open_:
        for _ in range(2 * WORKERS):
            open_.enter_context(patient.connect(request("POST", "/taps", cookie, "{", length=20)))

        answer = press(patient, cookie)

    assert answer.startswith("HTTP/1.1 200")
    assert '"accepted"' in answer or '"refused"' in answer


def test_a_body_that_does_not_come_is_given_up_with_a_sentence(here: Here) -> None:
    cookie = here.pair()

    by_script = here.ask(request("POST", "/taps", cookie, "{", length=20))
    by_page = here.ask(request("POST", "/shop/rooms/new", cookie, "n", length=20).replace("application/json", "text/x"))

    assert by_script.startswith("HTTP/1.1 408")
    assert '{"sentence":"The connection was too slow' in by_script
    assert by_page.startswith("HTTP/1.1 408")
    assert "<!doctype html>" in by_page and "The connection was too slow" in by_page


def test_a_byte_now_and_then_makes_the_time_no_longer(here: Here) -> None:
    with here.connect(request("POST", "/taps", here.pair(), "{", length=20_000)) as slow:
        ended = threading.Event()

        def drip() -> None:
            while not ended.wait(0.05):
                try:
                    slow.sendall(b" ")
                except OSError:
                    return

        dripping = threading.Thread(target=drip)
        dripping.start()
        answer = everything(slow)
        ended.set()
        dripping.join()

    assert answer.startswith("HTTP/1.1 408")


def test_headers_that_are_never_finished_end_the_connection(here: Here) -> None:
    for said in ("", "GET / HT", "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX-More: "):
        assert here.ask(said) == ""


def test_a_second_request_that_is_never_finished_ends_the_connection(here: Here) -> None:
    first = request("GET", "/pair").replace("Connection: close\r\n", "")

    answer = here.ask(first + "GET / HTTP/1.1\r\nHost:")

    assert answer.startswith("HTTP/1.1 200")


def chunked(size: int) -> str:
    return f"{size:x}\r\n{' ' * size}\r\n"


def test_a_body_that_is_too_large_is_refused_with_a_sentence_by_what_is_said_and_by_what_comes(here: Here) -> None:
    cookie = here.pair()
    in_pieces = request("POST", "/taps", cookie + "Transfer-Encoding: chunked\r\n").replace("Content-Length: 0\r\n", "")

    said = here.ask(request("POST", "/taps", cookie, length=2_000_001))
    came_so = here.ask(in_pieces + chunked(500_000) * 4 + chunked(1) + "0\r\n\r\n")
    fits = here.ask(in_pieces + chunked(500_000) * 3 + "0\r\n\r\n")

    for answer in (said, came_so):
        assert answer.startswith("HTTP/1.1 413")
        assert '{"sentence":"That is too much at once. Send less."}' in answer
    assert fits.startswith("HTTP/1.1 400")


def test_a_stranger_may_send_a_few_words_only(here: Here) -> None:
    answer = here.ask(request("POST", "/shop/import", length=A_FEW_WORDS + 1))

    assert answer.startswith("HTTP/1.1 401")  # by what it asks for: it is not told what could be sent there


def test_a_press_in_pieces_is_taken_as_a_whole_one(here: Here) -> None:
    text = json.dumps(batch(came()))
    in_pieces = request("POST", "/taps", here.pair() + "Transfer-Encoding: chunked\r\n")
    in_pieces = in_pieces.replace("Content-Length: 0\r\n", "")

    answer = here.ask(f"{in_pieces}5\r\n{text[:5]}\r\n{len(text) - 5:x}\r\n{text[5:]}\r\n0\r\n\r\n")

    assert answer.startswith("HTTP/1.1 200")


def test_a_large_body_comes_whole_and_leaves_nothing_behind(patient: Here, tmp_path: Path) -> None:
    before = {one.name for one in tmp_path.iterdir()}
    batch_of = batch(*(came(f"press-{at}", kind="note written", body={"text": "x" * 1000}) for at in range(300)))

    answer = patient.ask(request("POST", "/taps", patient.pair(), json.dumps(batch_of)))

    assert answer.startswith("HTTP/1.1 200")
    assert answer.count('"press-') == 300
    assert {one.name for one in tmp_path.iterdir()} - before <= {"shop.db-wal", "shop.db-shm"}


def test_what_is_held_of_all_bodies_is_bounded_and_a_press_is_taken_all_the_same(tmp_path: Path) -> None:
    with serving_here(tmp_path, Bounds(in_memory=10_000, bodies=50_000)) as here, ExitStack() as open_:
        cookie = here.pair()
        for _ in range(3):
            open_.enter_context(here.connect(request("POST", "/taps", cookie, "x" * 15_000, length=30_000)))
        assert until(lambda: here.served._arrivals._held == 45_000)

        more = here.ask(request("POST", "/taps", cookie, "x" * 30_000))
        answer = press(here, cookie)

    assert more.startswith("HTTP/1.1 503")
    assert '{"sentence":"Not saved: runboard is too busy' in more
    assert answer.startswith("HTTP/1.1 200")


def test_one_sender_has_a_few_workers_and_a_press_of_another_finds_one(tmp_path: Path) -> None:
    busy, go = [], threading.Event()

    def slow() -> str:
        busy.append(1)
        go.wait(10)
        return ""

    def add_page(house: House) -> None:
        house.app.add_url_rule("/slow", view_func=slow)

    with serving_here(tmp_path, PATIENT, add_page) as here, ExitStack() as open_:
        flooding, pressing = here.pair(), here.pair()
        for cookie in (flooding, pressing):
            here.ask(request("GET", "/", cookie))  # so that both are known
        for _ in range(2 * WORKERS):
            open_.enter_context(here.connect(request("GET", "/slow", flooding)))
        assert until(lambda: len(busy) == MOST_A_SENDER)

        answer = press(here, pressing)
        most = len(busy)
        go.set()

    assert answer.startswith("HTTP/1.1 200")
    assert most == MOST_A_SENDER


def test_an_answer_that_nobody_reads_is_given_up(tmp_path: Path) -> None:
    def add_page(house: House) -> None:
        house.app.add_url_rule("/long", view_func=lambda: "x" * 30_000_000)

    with serving_here(tmp_path, SOON, add_page) as here:
        cookie = here.pair()
        here.ask(request("GET", "/", cookie))
        with here.connect() as unread:
            unread.sendall(request("GET", "/long", cookie).encode())
            assert until(lambda: here.connections() == 1)
            assert until(lambda: here.connections() == 0)

            assert len(everything(unread)) < 30_000_000


def test_an_answer_that_is_read_slowly_comes_whole(tmp_path: Path) -> None:
    def add_page(house: House) -> None:
        house.app.add_url_rule("/long", view_func=lambda: "x" * 40_000_000)

    bounds = Bounds(headers=0.1, body=0.1, unread=0.3, read_least=1000)
    with serving_here(tmp_path, bounds, add_page) as here:
        cookie = here.pair()
        here.ask(request("GET", "/", cookie))
        with here.connect() as slow:
            slow.sendall(request("GET", "/long", cookie).encode())
            found = 0
            while part := slow.recv(1_000_000):
                found += len(part)
                time.sleep(0.01)

    assert found > 40_000_000


def test_the_one_that_is_silent_for_longest_makes_room(tmp_path: Path) -> None:
    with serving_here(tmp_path, Bounds(headers=60, connections=8, from_one=4)) as here, ExitStack() as open_:
        silent = [open_.enter_context(here.connect(at=f"127.0.0.{at}")) for at in (2, 3) for _ in range(4)]
        assert until(lambda: here.connections() == 8)

        phone = open_.enter_context(here.connect("GET /pair HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n"))
        assert phone.recv(65536).startswith(b"HTTP/1.1 200")
        assert everything(silent[0]) == ""
        open_.enter_context(here.connect(at="127.0.0.3"))
        assert everything(silent[4]) == ""  # of its own address first

        phone.sendall(request("GET", "/pair").encode())
        assert "HTTP/1.1 200" in everything(phone)


def test_a_phone_between_two_presses_stays_however_many_come_that_say_nothing(tmp_path: Path) -> None:
    with serving_here(tmp_path, Bounds(headers=60, connections=8, from_one=4)) as here, ExitStack() as open_:
        phone = open_.enter_context(here.connect("GET /pair HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n"))
        assert phone.recv(65536).startswith(b"HTTP/1.1 200")
        for at in range(30):
            open_.enter_context(here.connect(at=f"127.0.0.{2 + at % 5}"))
        press(here, here.pair())  # they are all accepted

        phone.sendall(request("GET", "/pair").encode())

        assert "HTTP/1.1 200" in everything(phone)


def test_whoever_only_sends_half_makes_room_too(tmp_path: Path) -> None:
    patient = Bounds(headers=60, body=60, connections=8, from_one=4)
    with serving_here(tmp_path, patient) as here, ExitStack() as open_:
        cookie = here.pair()
        half = request("POST", "/pair", "", "c", length=9)
        for at in (2, 3):
            for _ in range(4):
                open_.enter_context(here.connect(half, at=f"127.0.0.{at}"))
        assert until(lambda: here.connections() == 8)

        assert press(here, cookie).startswith("HTTP/1.1 200")


def test_many_that_come_at_once_are_no_more_than_there_may_be(tmp_path: Path) -> None:
    with serving_here(tmp_path, Bounds(headers=60, connections=8, from_one=4)) as here, ExitStack() as open_:
        for at in range(120):
            open_.enter_context(here.connect(at=f"127.0.0.{2 + at % 5}"))
        press(here, here.pair())  # they are all accepted

        assert until(lambda: here.connections() <= 8, within=3)


def test_a_stop_waits_for_nobody_who_is_silent_or_still_sending(tmp_path: Path) -> None:
    with serving_here(tmp_path, PATIENT) as here, ExitStack() as open_:
        cookie = here.pair()
        silent = [open_.enter_context(here.connect(said)) for said in ("", "GET / HT") for _ in range(5)]
        half = [open_.enter_context(here.connect(request("POST", "/taps", cookie, "{", length=9))) for _ in range(10)]
        assert until(lambda: here.connections() == 20)

        here.stop()

        assert not here.thread.is_alive()
        assert [everything(one) for one in silent] == [""] * 10
        assert all(everything(one).startswith("HTTP/1.1 503") for one in half)


def test_every_size_is_of_something_that_can_be_asked_for(patient: Here) -> None:
    assert BY_ENDPOINT.keys() <= patient.house.app.view_functions.keys()
