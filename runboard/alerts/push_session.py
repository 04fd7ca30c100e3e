"""A session that posts to the internet and to nothing in the house: it follows no redirect, and reads little."""

import socket
from collections.abc import Callable
from io import BytesIO
from typing import Any

from requests import Response, Session
from requests.adapters import HTTPAdapter
from urllib3 import HTTPConnectionPool, HTTPSConnectionPool
from urllib3.connection import HTTPConnection, HTTPSConnection
from urllib3.exceptions import NewConnectionError

NOT_OUTSIDE = "is not outside"
_MOST_ANSWERED = 2_000

# Whether a message may go to an address.
MayReach = Callable[[str], bool]


def session_outside(may_reach: MayReach) -> Session:
    """The session. What an address leads to is looked at once it is connected, before a byte is sent: what a name led
    to a moment ago proves nothing."""
    session = OneAnswer()
    session.trust_env = False  # a password file must not take the place of the signature
    for scheme in ("https://", "http://"):
        session.mount(scheme, ReachedOnly(may_reach))
    return session


class OneAnswer(Session):
    """Follows no redirect: it could lead into the house."""

    def request(self, *given: Any, **named: Any) -> Response:
        return super().request(*given, **{**named, "allow_redirects": False})


class ReachedOnly(HTTPAdapter):
    """Connects to what may be reached."""

    def __init__(self, may_reach: MayReach) -> None:
        self._may_reach = may_reach
        super().__init__()

    def init_poolmanager(self, *given: Any, **named: Any) -> None:
        super().init_poolmanager(*given, **named)
        self.poolmanager.pool_classes_by_scheme = pools(self._may_reach)

    def send(self, *given: Any, **named: Any) -> Response:
        answer = super().send(*given, **{**named, "stream": True})
        answer.raw = BytesIO(answer.raw.read(_MOST_ANSWERED))
        return answer


def pools(may_reach: MayReach) -> dict[str, Any]:
    """Connections by scheme, each of which looks where it has come to."""

    def looked_at(connection: HTTPConnection, opened: socket.socket) -> socket.socket:
        address = opened.getpeername()[0]
        if may_reach(address):
            return opened
        opened.close()
        raise NewConnectionError(connection, f"{address} {NOT_OUTSIDE}")

    class Plain(HTTPConnection):
        def _new_conn(self) -> socket.socket:
            return looked_at(self, super()._new_conn())

    class Secure(HTTPSConnection):
        def _new_conn(self) -> socket.socket:
            return looked_at(self, super()._new_conn())

    class PlainPool(HTTPConnectionPool):
        ConnectionCls = Plain

    class SecurePool(HTTPSConnectionPool):
        ConnectionCls = Secure

    return {"http": PlainPool, "https": SecurePool}
