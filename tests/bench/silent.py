"""Peers that open a connection and say nothing, and a page asked for beside them on connections of its own."""

import http.client
import json
import socket
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from urllib.parse import urlsplit

from runboard.web.sessions import COOKIE
from tests.phone import Phone


@contextmanager
def saying_nothing(address: str, many: int) -> Iterator[None]:
    """So many of them, until the end of the block."""
    place = urlsplit(address)
    with ExitStack() as stack:
        for _ in range(many):
            stack.enter_context(socket.create_connection((place.hostname or "", place.port or 0), timeout=10))
        time.sleep(0.2)  # they are accepted
        yield


class Fresh:
    """A browser that comes back: each request on a connection of its own. Times in milliseconds."""

    def __init__(self, phone: Phone) -> None:
        self._netloc = urlsplit(phone.at).netloc
        self._cookie = {"Cookie": f"{COOKIE}={phone.token}"}
        self._state = f"/state?person={phone.person}"

    def pages(self, times: int) -> list[float]:
        """Now and its state, one after the other."""
        return [self._get("/")[0] + self._get(self._state)[0] for _ in range(times)]

    def polls(self, times: int) -> list[float]:
        """Polls that find nothing new, a little apart."""
        tag = self._get(self._state)[1]
        found = []
        for _ in range(times):
            found.append(self._get(self._state, tag)[0])
            time.sleep(0.02)
        return found

    def _get(self, path: str, tag: str = "") -> tuple[float, str]:
        began = time.perf_counter()
        connection = http.client.HTTPConnection(self._netloc, timeout=30)
        try:
            connection.request("GET", path, headers=self._cookie | ({"If-None-Match": tag} if tag else {}))
            answer = connection.getresponse()
            body = answer.read()
            took = 1000 * (time.perf_counter() - began)
            assert answer.status == (304 if tag else 200), (path, answer.status, json.dumps(body[:200].decode()))
            return took, answer.headers.get("ETag") or ""
        finally:
            connection.close()
