"""The presses that the helper's page offers at each state of the load, in words and with the events that they make.

They are offered for every state that the load may come to, so that a phone without a network can go on by itself.
"""

from typing import Any

from runboard.floor.letting_in.helper import TrayWork, is_listed, list_of, places_of
from runboard.run.care.cautions import CATALOGUE
from runboard.run.fold.route import Step
from runboard.run.fold.state import ShopState
from runboard.shop.book import Book
from runboard.words.sentences import lang_of, say
from runboard.words.speech import Speech

Record = dict[str, Any]
SCRAP = ("tear-out", "crack", "broke", "size", "surface", "engraving", "burnt", "knot", "other")
STOPS = ("power", "cutter", "slip", "failed", "other")


def views(speech: Speech, state: ShopState, book: Book, work: TrayWork, person: str) -> Record:
    """For each state of the load: its heading, a text, and the presses; the first of them is the big one, unless it is
    ``small``."""
    step = work.step
    if step is None:
        return {}
    states = ("loading", "running", "ended", "unloading") if step.has_machine else ("working",)
    found = {}
    for name in ("none", *states, "stopped", "done"):
        mine = name != work.state or (work.load is not None and person in work.load.people)
        found[name] = {
            "heading": speech(f"state-{name}"),
            "text": _text(speech, work, step, name),
            "presses": _presses(speech, state, book, work, step, name, mine, person),
        }
    return found


def after(step: Step) -> dict[str, str]:
    """The state that each kind of press brings a load to."""
    return {
        "load started": "loading" if step.has_machine else "working",
        "machine started": "running",
        "machine ended": "ended",
        "unloading started": "unloading",
        "load stopped": "stopped",
        "load done": "done",
    }


def _text(speech: Speech, work: TrayWork, step: Step, state: str) -> str:
    watched = step.operation.attendance == "watched"
    if state == "running":
        end_at = work.load.end_at if work.load else None
        until = speech("running-until", at=speech.moment(end_at)) if end_at else ""
        return " ".join(text for text in (until, speech("running-stay") if watched else "") if text)
    return {"stopped": speech("stopped-wait"), "done": speech("done-wait")}.get(state, "")


def _presses(
    speech: Speech, state: ShopState, book: Book, work: TrayWork, step: Step, at: str, mine: bool, person: str
) -> list[Record]:
    aside = _press(speech("go-aside"), speech("did-aside"), {"kind": "load put aside"}) | {"small": True}
    start = _press(speech("go-on"), speech("did-start"), {"kind": "load started"})
    unload = _press(speech("go-at-it"), speech("did-at-it"), {"kind": "unloading started"})
    if at == "none":
        places = places_of(work)
        body = {"pieces": {work.tray.id: work.pieces}, **({"places": places} if places else {})}
        return [_press(speech("go-start"), speech("did-start"), {"kind": "load started", "body": body})]
    if at in ("running", "ended"):
        return [unload]
    if not mine:
        return [unload | {"words": speech("go-on")}] if at == "unloading" else [start]
    if at == "loading":
        return [_running(speech, state, book, step, person), aside]
    if at in ("working", "unloading"):
        return [*_ending(speech, state, work, person), aside]
    return []


def _running(speech: Speech, state: ShopState, book: Book, step: Step, person: str) -> Record:
    """'It runs now', with about how long; the full start list comes before it where it is wanted."""
    wanted = list_of(book, step)
    listed = is_listed(state, book, step.operation.station, person, speech.now)
    points = [] if listed else _points(speech, step, wanted)
    return {
        "do": "run",
        "words": speech("go-list") if points else speech("go-running"),
        "ready": speech("list-run"),
        "label": speech("did-running"),
        "minutes": max(1, round(step.pass_.machine.total_seconds() / 60)),
        "points": points,
        # What stays in the log is said as the shop's own screens say it.
        "items": [say("care", key) if key else text for key, text in wanted] if points else [],
    }


def _points(speech: Speech, step: Step, wanted: tuple[tuple[str, str], ...]) -> list[Record]:
    own = speech.texts(step.operation, "checklist")
    known = [{**named(speech.care(key)), "signs": list(CATALOGUE[key].signs)} for key, _ in wanted if key]
    return [*known, *({**named(text), "signs": []} for text in own)]


def named(text: str, what: str = "text") -> Record:
    """A text of the shop's own as the page draws it, with its language where nobody translated it."""
    lang = lang_of(text)
    return {what: text, **({"lang": lang} if lang else {})}


def _ending(speech: Speech, state: ShopState, work: TrayWork, person: str) -> list[Record]:
    """'Done', or first 'Show the first piece' where the lead wants to see it; nothing while they are called to look."""
    if work.given.get("look") and work.given.get("to") == person and work.looked != "pass":
        calls = ((said["run"], said["tray"], said["why"]) for said in state.calls.values())
        called = (work.run.id, work.tray.id, "look") in calls
        return [] if called else [call(speech, work, "look", speech("go-look"))]
    counted = work.tray.counts.get(work.step.key, {}).get(work.load_id, (0, 0)) if work.step else (0, 0)
    bad = [{"pieces": 1, "why": why or say("scrap", "other")} for why in work.bad]
    good = work.pieces - counted[1] - len(bad)
    counts = {work.tray.id: {"good": good, "scrap": [*_scrap_before(work), *bad]}}
    done = _press(
        speech("count-go", good=good, scrap=len(bad)) if bad else speech("go-done", good=good),
        speech("did-done"),
        {"kind": "load done", "body": {"counts": counts}},
    )
    count = {
        "do": "count",
        "words": speech("go-count"),
        "label": speech("did-done"),
        "tray": work.tray.id,
        "pieces": good + len(bad),
        "bad": len(bad),
        "before": _scrap_before(work),
        "reasons": reasons(speech),
    }
    return [done, count] if good > 0 else [count]


def _scrap_before(work: TrayWork) -> list[Record]:
    """The scrap that was counted of this load before: a count is absolute, so it is said again."""
    step = work.step.key if work.step else ""
    before = [reason for reason in work.tray.scrap.get(step, ()) if reason.get("load") == work.load_id]
    return [{key: value for key, value in entry.items() if key != "load"} for entry in before]


def reasons(speech: Speech) -> list[Record]:
    """Why a piece is bad: as the helper reads it, and as the shop keeps it."""
    return [{"words": speech(f"scrap-{key}"), "why": say("scrap", key)} for key in SCRAP]


def call(speech: Speech, work: TrayWork, why: str, words: str, note: str = "") -> Record:
    """A press that calls the lead."""
    body = {"why": why, **({"note": note} if note else {})}
    return _press(words, speech("did-call"), {"kind": "lead called", "tray": work.tray.id, "body": body})


def wrong(speech: Speech, work: TrayWork, emergency: str) -> Record:
    """What 'Something is wrong' offers: hurt or fire first, a bad piece, a stop."""
    step = work.step
    heading = speech("stop-title") if step is not None and step.has_machine else speech("stop-hand-title")
    stops = [{"words": speech(f"stop-{key}"), "why": key} for key in STOPS]
    return {
        "emergency": speech.care("emergency", number=emergency),
        "phone": {"words": speech("hurt-phone", number=emergency), "number": emergency},
        "hurt": call(speech, work, "hurt", speech("hurt-call")),
        "bad": reasons(speech),
        "stop": {"heading": heading, "reasons": stops} if step is not None else None,
        "stops": ["loading", "working", "running", "ended", "unloading"],
    }


def _press(words: str, label: str, *drafts: Record) -> Record:
    return {"do": "press", "words": words, "label": label, "drafts": list(drafts)}
