"""Files from a friend: a run's and a shop's as they are exported, with something wrong in them."""

import io
import json
from random import Random
from typing import Any

from flask.testing import FlaskClient

from tests.attack import nasty


class Files:
    """Mutates a real run file and a real shop file."""

    def __init__(self, random: Random, run: dict[str, Any], book: dict[str, Any]) -> None:
        self._random, self._run, self._book, self._count = random, run, book, 0

    def wrong(self) -> bytes:
        """The bytes of a file."""
        random = self._random
        record = self._another_run() if random.random() < 0.7 else self._book
        text = nasty.written(nasty.mutated(random, record, random.choice((0, 1, 1, 2, 5)))).encode()
        if random.random() < 0.15:
            at = random.randrange(len(text))
            text = random.choice((text[:at], text[:at] + random.randbytes(3) + text[at:], b"\xef\xbb\xbf" + text))
        return text

    def _another_run(self) -> dict[str, Any]:
        """The run under keys of its own, so that it is not known already."""
        if self._random.random() < 0.2:
            return self._run
        self._count += 1
        text, key = json.dumps(self._run), f"f{self._count}"
        for event in self._run["events"]:
            text = text.replace(json.dumps(event["id"]), json.dumps(f"{event['id'][:40]}-{key}"))
        found: dict[str, Any] = json.loads(text.replace('"r1"', f'"{key}"'))
        return found


def send_file(client: FlaskClient, raw: bytes, take: bool) -> Any:
    """A file as the import page sends it: to be looked at, or its text to be taken."""
    if take:
        return client.post("/shop/import", data={"text": raw.decode("utf-8", "replace"), "take": "yes", "seen": "1"})
    return client.post("/shop/import", data={"file": (io.BytesIO(raw), "a.json")})
