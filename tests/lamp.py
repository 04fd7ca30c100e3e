"""A lamp in the house that a webhook lights: a real endpoint on the loopback."""

import json
import threading
import time
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any


class Lamp:
    """It keeps what it was sent. While ``slow`` is set it answers nothing, until it is closed. ``url`` is its address for Apprise."""

    def __init__(self) -> None:
        self.got: list[dict[str, Any]] = []
        self.slow, self.ends = threading.Event(), threading.Event()
        lamp = self

        class Handler(BaseHTTPRequestHandler):
            def do_POST(self) -> None:
                text = self.rfile.read(int(self.headers["Content-Length"]))
                if lamp.slow.is_set():
                    lamp.ends.wait(30)
                    return
                lamp.got.append(json.loads(text))
                self.send_response(200)
                self.end_headers()

            def log_message(self, format: str, *args: Any) -> None:
                pass

        self.server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        self.server.daemon_threads = True
        self.url = f"json://127.0.0.1:{self.server.server_port}/lamp"
        threading.Thread(target=self.server.serve_forever, args=(0.05,), daemon=True).start()

    def close(self) -> None:
        self.ends.set()
        self.server.shutdown()
        self.server.server_close()

    def titles(self, count: int, seconds: float = 10) -> list[str]:
        """The titles that it got, once it got so many."""
        until = time.monotonic() + seconds
        while len(self.got) < count and time.monotonic() < until:
            time.sleep(0.02)
        return [one["title"] for one in self.got]
