"""Two other engines, driven by what they bring themselves: WebKitGTK by WebDriver over HTTP
(https://www.w3.org/TR/webdriver2/), Firefox by Marionette, the same commands over a socket
(https://firefox-source-docs.mozilla.org/testing/marionette/Protocol.html)."""

import json
import os
import shutil
import signal
import socket
import subprocess
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import httpx

MINI_BROWSER = "webkit2gtk-4.1/MiniBrowser"
ELEMENT = "element-6066-11e4-a52e-4f735466cecf"
_BY_HTTP = {
    "NewSession": "",
    "Navigate": "url",
    "AddCookie": "cookie",
    "ExecuteScript": "execute/sync",
}
# Nothing asks Mozilla's servers while a test runs; the port is written to the profile.
_PREFERENCES = {
    "marionette.port": 0,
    "browser.shell.checkDefaultBrowser": False,
    "datareporting.policy.dataSubmissionEnabled": False,
    "app.normandy.enabled": False,
    "app.update.enabled": False,
    "browser.safebrowsing.downloads.remote.enabled": False,
    "extensions.getAddons.cache.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "services.settings.server": "http://127.0.0.1:9/",
    "toolkit.telemetry.enabled": False,
}

Do = Callable[[str, Mapping[str, Any]], Any]


@dataclass
class Engine:
    """One page in another engine. ``do`` sends a command of WebDriver by its name and answers its value."""

    do: Do

    def open(self, address: str) -> None:
        self.do("Navigate", {"url": address})

    def add_cookie(self, cookie: dict[str, Any]) -> None:
        """For the page that is open."""
        self.do("AddCookie", {"cookie": {"path": "/", **cookie}})

    def run(self, script: str, *facts: Any) -> Any:
        """What the body of a function answers, run in the page."""
        return self.do("ExecuteScript", {"script": script, "args": list(facts)})

    def until(self, script: str, *facts: Any, seconds: float = 15) -> Any:
        """Wait until a script answers something true."""
        give_up = time.monotonic() + seconds
        while not (found := self.run(script, *facts)):
            assert time.monotonic() < give_up, (script, facts, self.run("return document.body.innerText"))
            time.sleep(0.1)
        return found

    def press(self, words: str) -> None:
        """Press the first button whose words begin so."""
        self.until(_PRESS, words)

    def says(self, selector: str, words: str, seconds: float = 15) -> None:
        """Wait until the first such element says this."""
        self.until(_SAYS, selector, words, seconds=seconds)


_PRESS = """
const found = [...document.querySelectorAll("button")].find((one) => one.innerText.trim().startsWith(arguments[0]));
if (!found || found.disabled) return false;
found.click();
return true;
"""
_SAYS = """
const text = document.querySelector(arguments[0])?.innerText ?? "";
return text.replaceAll("\\u00a0", " ").includes(arguments[1]);
"""


@contextmanager
def webkit(home: Path) -> Iterator[Engine]:
    """WebKitGTK's small browser, on a screen that nobody sees."""
    driver, browser = _needed("WebKitWebDriver", "webkit2gtk-driver"), _mini_browser()
    port = _free_port()
    wanted = {"webkitgtk:browserOptions": {"binary": browser, "args": ["--automation"]}}
    with (
        screen() as display,
        _process([driver, f"--port={port}"], {**_own(home), "DISPLAY": display}),
        httpx.Client(base_url=f"http://127.0.0.1:{port}/session", timeout=40, trust_env=False) as client,
    ):
        do = OverHttp(client)
        _patiently(lambda: do("NewSession", {"capabilities": {"alwaysMatch": wanted}}))
        try:
            yield Engine(do)
        finally:
            client.delete(do.session)


@contextmanager
def firefox(home: Path) -> Iterator[Engine]:
    """Firefox, without a screen."""
    profile = home / "profile"
    profile.mkdir()
    lines = [f"user_pref({json.dumps(name)}, {json.dumps(value)});" for name, value in _PREFERENCES.items()]
    (profile / "user.js").write_text("\n".join(lines), "utf-8")
    command = [_needed("firefox-esr", "firefox-esr"), "--headless", "--marionette", "--profile", str(profile)]
    with _process(command, _own(home)):
        port = _patiently(lambda: int((profile / "MarionetteActivePort").read_text("utf-8")))
        with socket.create_connection(("127.0.0.1", port), timeout=40) as line:
            marionette = Marionette(line)
            marionette.do("NewSession", {})
            yield Engine(marionette.do)
            marionette.send(["Marionette:Quit", {"flags": ["eForceQuit"]}])


class OverHttp:
    """WebDriver: a session's commands as requests."""

    def __init__(self, client: httpx.Client) -> None:
        self.client = client
        self.session = ""

    def __call__(self, name: str, facts: Mapping[str, Any]) -> Any:
        answer = self.client.post(f"{self.session}/{_BY_HTTP[name]}".rstrip("/"), json=dict(facts))
        value = answer.json()["value"]
        assert answer.status_code == 200, value
        if name == "NewSession":
            self.session = f"/{value['sessionId']}"
        return value


class Marionette:
    """The same commands as numbered messages: ``length:[0, number, name, facts]``."""

    def __init__(self, line: socket.socket) -> None:
        self.line = line.makefile("rwb")
        self.number = 0
        self._read()  # it greets

    def do(self, name: str, facts: Mapping[str, Any]) -> Any:
        self.send([f"WebDriver:{name}", dict(facts)])
        _, number, error, value = self._read()
        assert number == self.number and error is None, error
        return value["value"] if isinstance(value, dict) and set(value) == {"value"} else value

    def send(self, message: list[Any]) -> None:
        self.number += 1
        text = json.dumps([0, self.number, *message]).encode()
        self.line.write(b"%d:%b" % (len(text), text))
        self.line.flush()

    def _read(self) -> Any:
        digits = b""
        while (digit := self.line.read(1)) != b":":
            assert digit, "the browser went away"
            digits += digit
        return json.loads(self.line.read(int(digits)))


@contextmanager
def screen() -> Iterator[str]:
    """A screen that nobody sees, under a number that is free."""
    reads, writes = os.pipe()
    command = [_needed("Xvfb", "xvfb"), "-displayfd", str(writes), "-screen", "0", "800x900x24", "-nolisten", "tcp"]
    with _process(command, dict(os.environ), pass_fds=(writes,)):
        os.close(writes)
        with os.fdopen(reads) as told:
            yield f":{told.readline().strip()}"


@contextmanager
def _process(command: list[str], env: Mapping[str, str], pass_fds: tuple[int, ...] = ()) -> Iterator[None]:
    """A process in a group of its own, ended with all that it started."""
    process = subprocess.Popen(
        command,
        env=env,
        pass_fds=pass_fds,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    )
    try:
        yield
    finally:
        for how in (signal.SIGTERM, signal.SIGKILL):
            try:
                os.killpg(process.pid, how)
                process.wait(timeout=5)
            except (ProcessLookupError, subprocess.TimeoutExpired):
                pass
        process.wait(timeout=5)


def _own(home: Path) -> dict[str, str]:
    """The browser finds nothing of this machine's user, and leaves nothing."""
    places = {name: str(home) for name in ("HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME", "XDG_DATA_HOME")}
    # Tests run as root in a container, where WebKit's own sandbox cannot be made.
    return {**os.environ, **places, "WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1", "NO_AT_BRIDGE": "1"}


def _needed(command: str, package: str) -> str:
    place = shutil.which(command)
    assert place, f"{command} is missing: apt-get install {package}"
    return place


def _mini_browser() -> str:
    found = next(iter(Path("/usr/lib").glob(f"*/{MINI_BROWSER}")), None)
    assert found, "MiniBrowser is missing: apt-get install webkit2gtk-driver"
    return str(found)


def _free_port() -> int:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return int(free.getsockname()[1])


def _patiently(ask: Callable[[], Any], seconds: float = 30) -> Any:
    """Ask again until there is an answer."""
    give_up = time.monotonic() + seconds
    while True:
        try:
            return ask()
        except (OSError, ValueError, httpx.TransportError):
            assert time.monotonic() < give_up, "the browser never answered"
            time.sleep(0.1)
