"""Serve a data folder to the phones on the shop's network: its ports, who may reach them, what is printed when it listens."""

import sys
from argparse import ArgumentParser, ArgumentTypeError, Namespace
from contextlib import nullcontext
from socket import socket

from runboard.app import build, served
from runboard.commands.asking import PORT, Mistaken, add_folder, make_data_folder
from runboard.floor.letting_in.devices import CODE_LASTS, Door, has_lead, make_console_code
from runboard.house import Settings
from runboard.lan import qr
from runboard.lan.addresses import whereabouts
from runboard.lan.announce import Announcer
from runboard.lan.network import Network, here_only
from runboard.lan.trouble import Trouble
from runboard.opening import WallClock
from runboard.run.refusal import NotStored
from runboard.store.holding import hold
from runboard.web.door.serve import ALL_INTERFACES, HOST, CannotListen, listen, serve
from runboard.words.sentences import say

CERTIFICATES = "certificates"  # in the data folder
_LAST_PORT = 65535


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    add_folder(command, is_made=True)
    add_serving(command)
    command.add_argument("--https-port", type=_port, metavar="Q", help=say("option", "https port"))
    command.add_argument("--local", action="store_true", help=say("option", "local"))


def add_serving(command: ArgumentParser) -> None:
    """What whoever serves is asked: the port, a browser, a planner."""
    says = say("option", "port", {"port": str(PORT)})
    command.add_argument("--port", type=_port, default=PORT, metavar="P", help=says)
    command.add_argument("--no-open", action="store_true", help=say("option", "no open"))
    command.add_argument("--no-planner", action="store_true", help=say("option", "no planner"))


def _port(text: str) -> int:
    if not text.isdecimal() or int(text) > _LAST_PORT:
        raise ArgumentTypeError(say("mistaken", "no port", {"text": repr(text), "most": str(_LAST_PORT)}))
    return int(text)


def do(asked: Namespace) -> None:
    """Serve it until Ctrl-C, to devices that are paired. No folder is made where the port cannot be had."""
    host = HOST if asked.local else ALL_INTERFACES
    with listen_at(asked.port, host) as plain:
        secure, trouble = _listen_securely(asked, plain, host)
        with secure or nullcontext():
            make_data_folder(asked.data)
            with hold(asked.data):
                _serve(asked, plain, secure, trouble)


def _serve(asked: Namespace, plain: socket, secure: socket | None, trouble: Trouble | None) -> None:
    clock = WallClock()
    network = Network(
        asked.data / CERTIFICATES,
        clock.now,
        plain.getsockname()[1],
        secure,
        say,
        where=here_only if asked.local else whereabouts,
        announcer=None if asked.local else Announcer(),
        trouble=trouble,
    )
    house = build(Settings(asked.data, clock, hosts=network.hosts, ways=network, plans=not asked.no_planner))

    def more(address: str) -> str:
        found = network.pages("http")
        return network.told() + _first_code(house.door, found[0] if found else address)

    serve(served(house), plain, not asked.no_open, more, network)


def listen_at(port: int, host: str = HOST) -> socket:
    """A socket that listens, or a sentence why there is none."""
    try:
        return listen(port, host)
    except CannotListen as problem:
        raise Mistaken("port taken", port=str(problem.port), why=str(problem)) from problem


def _listen_securely(asked: Namespace, plain: socket, host: str) -> tuple[socket | None, Trouble | None]:
    """The second socket. The port that nobody named may be taken: then there is none, which is said. Another
    free one would not do, since an installed page belongs to its port."""
    if asked.https_port is not None:
        return listen_at(asked.https_port, host), None
    following = plain.getsockname()[1] + 1
    try:
        return listen(following if asked.port and following <= _LAST_PORT else 0, host), None
    except CannotListen as problem:
        return None, Trouble("no https port", {"port": str(problem.port), "why": str(problem)})


def _first_code(door: Door, address: str) -> str:
    """How the first phone pairs, to be printed once the server listens; nothing where a lead's phone is paired."""
    if has_lead(door):
        return ""
    try:
        code, _ = make_console_code(door)
    except NotStored as failed:
        return say("told", "no first code", {"why": failed.why}) + "\n"
    address = f"{address}pair?code={code}"
    picture = qr.terminal(address, colours=True) if sys.stdout.isatty() and _can_print("▀▄█") else ""
    how = say("told", "first code", {"code": code, "minutes": CODE_LASTS})
    return f"{how}\n{address}\n{picture}{say('told', 'later codes')}\n"


def _can_print(signs: str) -> bool:
    try:
        signs.encode(sys.stdout.encoding or "ascii")
    except UnicodeEncodeError:
        return False
    return True
