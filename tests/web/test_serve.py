"""The socket that the server listens on."""

import socket

import pytest

from runboard.web.serve import CannotListen, listen


def test_an_answer_in_two_parts_is_not_held_back() -> None:
    """asyncio switches Nagle off only on sockets that name their protocol; else every answer takes 40 ms more."""
    with listen(0) as listening, socket.create_connection(listening.getsockname()):
        accepted, _ = listening.accept()
        with accepted:
            assert accepted.proto == socket.IPPROTO_TCP


def test_only_this_computer_is_listened_to() -> None:
    with listen(0) as listening:
        assert listening.getsockname()[0] == "127.0.0.1"


def test_a_port_is_given_out_once() -> None:
    with listen(0) as listening, pytest.raises(CannotListen):
        listen(listening.getsockname()[1])
