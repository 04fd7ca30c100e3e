"""The command that puts a copy back: it says what was found in the copy, and asks whom it may let in."""

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from runboard.commands.asking import Mistaken, add_folder, events_in_words, is_agreed, tidy
from runboard.store.let_in import DeviceIn, LetIn
from runboard.store.proof import Proof
from runboard.store.restore import Look, look_at, restore
from runboard.words.facts import dated, zone_of
from runboard.words.sentences import say

_MOST_SAID = 20
_ALL, _NOBODY = "all", "nobody"


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    add_folder(command, is_made=True)
    command.add_argument("--let-in", choices=(_ALL, _NOBODY), help=say("option", "let in"))
    command.add_argument("file", type=Path, metavar="FILE", help=say("option", "copy"))


def do(asked: Namespace) -> None:
    """Look at the copy, say what is in it, ask, and put it in place."""
    now = datetime.now().astimezone()
    looked = look_at(asked.data, asked.file, now)
    print(_whole(asked.file, looked.proof))
    for line in _found(looked):
        print(line)
    let_in = _may_come_in(looked.let_in, asked.let_in)
    done = restore(asked.data, asked.file, now, let_in=let_in, looked=looked)
    print(say("restore", "kept" if done.kept else "in place", {"folder": asked.data, "kept": done.kept}))
    if looked.let_in.is_anybody and not let_in:
        print(say("restore", "nobody"))


def _whole(file: Path, proof: Proof) -> str:
    """'… is whole: Rail shop, 1,204 events, the last of Sat 7 Mar 2026, 10:00.'"""
    shop = tidy(proof.shop) or say("restore", "a shop")
    facts = {"file": file, "shop": shop, "events": events_in_words(proof.events)}
    if proof.until is None:
        return say("restore", "whole", facts)
    return say("restore", "whole until", {**facts, "until": dated(proof.until, zone_of(proof.time_zone))})


def _found(looked: Look) -> list[str]:
    """What a person should know before they say yes, in lines."""
    lines = [] if looked.is_listed else [say("restore", "unlisted", {"files": looked.files.unchecked})]
    if looked.files.left:
        left = [f"  {tidy(name)}: {say('restore', why)}" for name, why in looked.files.left[:_MOST_SAID]]
        lines += [say("restore", "left"), *left, *_and_more(looked.files.left)]
    if looked.let_in.is_anybody:
        lines += [say("restore", "lets-in"), *(f"  {line}" for line in _those(looked.let_in))]
    if out := [*map(tidy, looked.let_in.channels[:_MOST_SAID]), *filter(None, [tidy(looked.let_in.broker)])]:
        lines.append(say("restore", "sends-to", {"names": ", ".join(out)}))
    return lines


def _those(let_in: LetIn) -> list[str]:
    devices = [f"{tidy(device.name)} ({say('access', device.access)}){_since(device)}" for device in let_in.devices]
    sensors = [f"{tidy(name)} ({say('access', 'sensor')})" for name in let_in.sensors]
    every = [*devices, *sensors]
    return [*every[:_MOST_SAID], *_and_more(every), *([say("restore", "cards")] if let_in.cards else [])]


def _since(device: DeviceIn) -> str:
    return f", {say('restore', 'revoked')}" if device.revoked_here else ""


def _and_more(every: Sequence[object]) -> list[str]:
    more = len(every) - _MOST_SAID
    return [say("restore", "more", {"count": more})] if more > 0 else []


def _may_come_in(let_in: LetIn, said: str | None) -> bool:
    """Whether those stay let in: as the command says, else as a person at the terminal answers. Raises ``Mistaken`` where
    there is nobody to ask: nobody is let in, and nobody shut out, unasked."""
    if said or not let_in.is_anybody:
        return said == _ALL
    if not sys.stdin.isatty():
        raise Mistaken("unasked")
    return is_agreed(say("restore", "keep"))
