"""Attacks by what is in a file or a number: of the wrong form, or of the right one and far too much."""

import json
from typing import Any

from tests.attack.scene import Scene, event
from tests.scenario import a_pass, key_rails, operation

AT = "2026-03-07T09:00:00Z"
LEAST_SENTENCE = 20
JSON = {"Content-Type": "application/json"}


def opened(product: dict[str, Any], trays: int, pieces: int, run: str = "friend") -> dict[str, Any]:
    """A run file with one event: it opens a run of so many trays."""
    body = {
        "name": "A friend's run",
        "product": product,
        "orders": [{"line": "1", "pieces": trays}],
        "trays": [{"tray": str(at), "pieces": pieces} for at in range(1, trays + 1)],
    }
    first = {"id": f"{run}-open", "v": 1, "kind": "run opened", "at": AT, "run": run, "person": "ann", "body": body}
    return {"runboard_run": 1, "run": run, "name": "x", "time_zone": "Europe/Berlin", "events": [first]}


def bad_files(scene: Scene) -> None:
    """Files of which nothing can be taken: each gets a sentence, and nothing of it is stored."""
    token = scene.session("lead")
    for name, raw in _files(scene):
        reply = scene.upload(raw, token)
        if reply.seconds > 2 or reply.status not in (200, 413, 422):
            scene.remark(f"{name}: {reply.status} in {reply.seconds:.1f} s")
        scene.must(reply.status in (200, 400, 413, 422), f"{name}: {reply.status}")
        scene.in_time(reply.seconds <= 2, f"{name}: {reply.seconds:.1f} s")
        scene.must(len(reply.body) > LEAST_SENTENCE, f"{name}: no sentence")
    state = scene.ask("GET", "/state?person=ann", token=token)
    scene.must(b"friend" not in state.body, "something of a bad file was stored")


def _files(scene: Scene) -> list[tuple[str, bytes]]:
    good = json.dumps(opened(key_rails(), 1, 5)).encode()
    at = b'"name": "x"'
    shop = b'{"runboard_book": 1, "name": "x", "rooms": [{"key": "shop", "name": "Shop"}], "people": [{"key": "ann", "name": "Ann"%s}]}'
    more = scene.size(3_000_000, 100_000)
    unknown = b"".join(b',"field %d": 1' % number for number in range(more // 16))
    found = [
        ("NaN", good.replace(at, b'"name": NaN')),
        ("NaN in an event", good.replace(b'"pieces": 5', b'"pieces": NaN')),
        ("lone surrogates", good.replace(b'"x"', b'"\\ud800"').replace(b'"Europe/Berlin"', b'"\\udfff"')),
        ("surrogates in a shop", shop % b', "room": "\\ud800"'),
        ("5,000 digits", good.replace(at, b'"name": ' + b"9" * 5000)),
        ("5,000 digits in an event", good.replace(b'"pieces": 5', b'"pieces": ' + b"9" * 5000)),
        ("979 levels", good.replace(at, b'"name": ' + b"[" * 979 + b"]" * 979)),
        ("979 levels in an event", good.replace(b'"pieces": 5', b'"pieces": ' + b"[" * 979 + b"]" * 979)),
        ("50,000 levels", b'{"runboard_run": ' + b"[" * 50_000 + b"]" * 50_000 + b"}"),
        ("unknown fields in a shop", shop % unknown),
        ("unknown fields in a run", good.replace(b'"v": 1', b'"v": 1' + unknown)),
        ("not UTF-8", b"\xff" * 100_000),
        ("a key like a path", json.dumps(opened(key_rails(), 1, 5, "../../friend")).encode()),
        ("a key with a line break", json.dumps(opened(key_rails(), 1, 5, "friend\nx")).encode()),
    ]
    return found + ([("200 MB", b'{"runboard_run": 1, "x": "' + b"x" * 199_000_000 + b'"}')] if scene.whole else [])


def heavy_run_file(scene: Scene) -> None:
    """A small file with a run of a million loads."""
    token = scene.session("lead")
    product = key_rails() | {
        "operations": [operation("cut", "bench", a_pass(size="piece", hand=1)), operation("oil", "bench")]
    }
    raw = json.dumps(opened(product, 100, 10_000)).encode()
    reply = scene.upload(raw, token)
    scene.remark(f"{len(raw) / 1000:.0f} kB: {reply.status} in {reply.seconds:.1f} s")
    scene.must(reply.status in (200, 400, 413, 422), f"a run of a million loads was answered {reply.status}")
    for path in ("/", "/plan", "/state?person=ann"):
        scene.ask("GET", path, token=token)


def numbers_and_depths(scene: Scene) -> None:
    """Numbers without end, levels without end, names too long, where each could be typed."""
    lead = scene.session("lead")
    for path, fields in [
        ("/plan/products/preview", f"text=cut&pieces_a_tray={'9' * 5000}"),
        ("/plan/products/rail", f"seen=1&name=x&pieces_a_tray={'9' * 5000}"),
        ("/plan/runs/preview", f"product=rail&orders.0.pieces={'9' * 309}&pieces_a_tray={'9' * 5000}"),
        ("/plan/runs/new", f"product=rail&orders.0.pieces={'9' * 5000}&begun.5%2B6=cut"),
        ("/helpers/hours", f"hours={'9' * 309}"),
        ("/shop/alarms/steps", f"computer={'9' * 400}"),
        ("/plan/try", f"run=r1&what=trays&pieces={'9' * 5000}"),
    ]:
        scene.form(path, fields, token=lead)
    sensor = _sensor(scene)
    for watts in (
        "9" * 309,
        "9" * 5000,
        '{"watts": ' + "9" * 309 + "}",
        "[" * 60_000,
        '{"watts":' * 900 + "1" + "}" * 900,
    ):
        scene.ask("POST", "/signals/cnc", watts.encode(), headers={"Authorization": f"Bearer {sensor}"})
    for path in ("/taps", "/push/subscription"):
        for body in (b"[" * 100_000, b'{"a":' * 20_000, b'{"taps":' + b"[" * 979 + b"]" * 979 + b"}", b"9" * 5000):
            scene.ask("POST", path, body, headers=JSON, token=lead)
    scene.send(lead, event("alert answered", {"alert": "call|" + "x" * 500, "answer": "seen"}, person="ann"))


def _sensor(scene: Scene) -> str:
    """The token of a sensor, made as the lead makes one."""
    page = scene.form("/shop/signals/cnc/tokens", "name=Plug", token=scene.session("lead")).body.decode()
    return next((word for word in page.replace("<", " ").replace(">", " ").split() if len(word) == 32), "")
