"""Peers that open a connection and say nothing, and a page asked for beside them on connections of its own."""

import http.client
import socket
import ssl
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass

from runboard.web.door.sessions import COOKIE, COOKIE_BY_HTTPS

HERE = "127.0.0.1"


@contextmanager
def saying_nothing(port: int, many: int) -> Iterator[None]:
    """So many of them, until the end of the block. At a port of https they never come to shake hands."""
    with ExitStack() as stack:
        for _ in range(many):
            stack.enter_context(socket.create_connection((HERE, port), timeout=10))
        time.sleep(0.2)  # they are accepted
        yield


@dataclass(frozen=True)
class Fresh:
    """A browser that comes back: each request on a connection of its own, by https if it trusts somebody. Times are in
    milliseconds."""

    port: int
    token: str
    trusts: ssl.SSLContext | None = None
    state: str = "/state?person=ann"

    def pages(self, times: int) -> list[float]:
        """Now and its state, one after the other."""
        return [self._get("/")[0] + self._get(self.state)[0] for _ in range(times)]

    def polls(self, times: int) -> list[float]:
        """Polls that find nothing new, a little apart."""
        tag = self._get(self.state)[1]
        found = []
        for _ in range(times):
            found.append(self._get(self.state, tag)[0])
            time.sleep(0.02)
        return found

    def _get(self, path: str, tag: str = "") -> tuple[float, str]:
        began = time.perf_counter()
        connection = self._connect()
        cookie = f"{COOKIE_BY_HTTPS if self.trusts else COOKIE}={self.token}"
        try:
            connection.request("GET", path, headers={"Cookie": cookie} | ({"If-None-Match": tag} if tag else {}))
            answer = connection.getresponse()
            body = answer.read()
            took = 1000 * (time.perf_counter() - began)
            assert answer.status == (304 if tag else 200), (path, answer.status, body[:200])
            return took, answer.headers.get("ETag") or ""
        finally:
            connection.close()

    def _connect(self) -> http.client.HTTPConnection:
        if self.trusts is None:
            return http.client.HTTPConnection(HERE, self.port, timeout=30)
        return http.client.HTTPSConnection(HERE, self.port, timeout=30, context=self.trusts)
