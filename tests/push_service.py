"""A push service on this computer, and the phone that reads what it got: keys of its own, decrypted by http-ece."""

import base64
import json
import secrets
import threading
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any

import http_ece
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat


def text(raw: bytes) -> str:
    return base64.urlsafe_b64encode(raw).rstrip(b"=").decode()


def raw(written: str) -> bytes:
    return base64.urlsafe_b64decode(written + "=" * (-len(written) % 4))


@dataclass
class Got:
    """One message as it arrived: its headers, and what the phone reads in it."""

    path: str
    headers: dict[str, str]
    body: bytes
    record: dict[str, Any]

    def claims(self) -> dict[str, Any]:
        """What the shop signed (RFC 8292)."""
        return dict(json.loads(raw(self.headers["authorization"].split("t=")[1].split(",")[0].split(".")[1])))


@dataclass
class PushService:
    """Answers each message with ``status``, or hangs while ``silent`` is set."""

    status: int = 201
    got: list[Got] = field(default_factory=list)
    silent: threading.Event = field(default_factory=threading.Event)
    more: threading.Condition = field(default_factory=threading.Condition)
    headers: dict[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.key = ec.generate_private_key(ec.SECP256R1())
        self.auth = secrets.token_bytes(16)
        self.ended = threading.Event()
        service = self

        class Handler(BaseHTTPRequestHandler):
            def do_POST(self) -> None:
                body = self.rfile.read(int(self.headers["Content-Length"]))
                if service.silent.is_set():
                    service.ended.wait(20)
                    return
                self.send_response(service.status)
                for name, value in service.headers.items():
                    self.send_header(name, value)
                self.end_headers()
                service.take(self.path, {name.lower(): value for name, value in self.headers.items()}, body)

            def log_message(self, format: str, *args: Any) -> None:
                pass

        self.server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        self.server.daemon_threads = True
        self.address = f"http://127.0.0.1:{self.server.server_port}"
        threading.Thread(target=self.server.serve_forever, args=(0.05,), daemon=True).start()

    def take(self, path: str, headers: dict[str, str], body: bytes) -> None:
        """Keep a message, decrypted as the phone would."""
        read = http_ece.decrypt(body, private_key=self.key, auth_secret=self.auth, version="aes128gcm")
        with self.more:
            self.got.append(Got(path, headers, body, json.loads(read)))
            self.more.notify_all()

    def until(self, count: int) -> list[str]:
        """What the first ``count`` messages say, once they are here."""
        with self.more:
            assert self.more.wait_for(lambda: len(self.got) >= count, 10), self.got
            return [one.record["says"] for one in self.got]

    def record(self, name: str = "phone") -> dict[str, Any]:
        """What the phone's browser says of its subscription."""
        point = self.key.public_key().public_bytes(Encoding.X962, PublicFormat.UncompressedPoint)
        keys = {"p256dh": text(point), "auth": text(self.auth)}
        return {"endpoint": f"{self.address}/{name}", "expirationTime": None, "keys": keys}

    def close(self) -> None:
        self.ended.set()
        self.server.shutdown()
        self.server.server_close()
