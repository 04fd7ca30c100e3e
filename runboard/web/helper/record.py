"""The helper's page as JSON: one tray's current operation, wholly in words, for a page that only lays it out."""

from collections.abc import Callable, Iterator
from datetime import datetime
from typing import Any

from runboard.floor.letting_in.guest_rights import NotForGuest
from runboard.floor.letting_in.helper import TrayWork, open_checks, places_of
from runboard.run.care.care import leaves
from runboard.run.care.cautions import CATALOGUE, REMINDERS, cautions_at, watch_check_of
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import ShopState
from runboard.run.log.event import write_moment
from runboard.run.refusal import Refused
from runboard.run.rules.resting import wait_after
from runboard.run.rules.texts import texts_at
from runboard.shop.book import Book
from runboard.shop.care import watch_interval
from runboard.web.helper.presses import after, call, named, views, wrong
from runboard.words.sentences import lang_of
from runboard.words.speech import Speech

Record = dict[str, Any]
# Why a press is refused so that the tray is the lead's to go on with.
_LEADS = ("given to another", "shared load", "skill", "material forbidden", "material unknown", "material look")
# What the page says by itself, whatever the tray's step is.
_FIXED = (
    "what-to-do", "watch-for", "setup", "texts", "first-piece", "first-piece-measured", "first-piece-pass",
    "first-piece-fail", "go-wrong", "wrong-title", "wrong-hurt", "wrong-bad", "wrong-stopped", "bad-title",
    "bad-count", "did-call", "did-stopped", "did-undo", "did-first-piece", "less", "more", "minutes", "min", "list-title",
    "count-title", "good", "scrap", "count-why", "back", "ok", "undo", "saved", "only-here", "sent", "refused", "offline",
    "kept", "running-overdue", "clock-wrong",
)  # fmt: skip
# The same with what the page fills in where it stands in braces.
_FILLED = {"list-left": ("left",), "count-go": ("good", "scrap")}


def helper_record(
    speech: Speech,
    state: ShopState,
    book: Book,
    work: TrayWork,
    person: str,
    refused: Callable[[Record], Refused | None],
) -> Record:
    """Everything that the page shows. ``refused`` tries a press and answers why it would not be taken."""
    known = state.people.get(person)
    found: Record = {
        "lang": speech.locale,
        "person": person,
        "title": speech("tray", tray=work.tray.id),
        "run": work.run.name,
        "words": _words(speech),
        "emergency": speech.care("emergency", number=book.emergency),
        "name": known.name if known else "",
        "at": work.state if work.step else "through",
        "call": call(speech, work, "help", speech("go-call")),
        "wrong": wrong(speech, work, book.emergency),
        "about": {"run": work.run.id},
        "zone": book.time_zone,
        "calls": list(_calls(speech, state, work)),
    }
    if work.step is None:
        return {
            **found,
            "notices": [_notice("note", speech("through", good=work.tray.good)), *_left(speech, book, work)],
        }
    blocked = _blocked(work, person, refused)
    return {
        **found,
        "about": _about(work, work.step),
        "step": _step(speech, book, work, work.step),
        "views": views(speech, state, book, work, person),
        "after": after(work.step),
        "blocked": blocked is not None,
        "notices": [
            *_notices(speech, book, work, work.step, person),
            *_why_blocked(speech, book, work, work.step, blocked),
        ],
        "checks": _checks(speech, state, book, work),
        "watch": _watch(speech, book, work, work.step, person),
        "end_at": write_moment(work.load.end_at) if work.load and work.load.end_at else "",
        **({"show": _show(speech, work, blocked)} if blocked is not None and blocked.code == "not shown" else {}),
    }


def _words(speech: Speech) -> dict[str, str]:
    filled = {key: speech(key, **{name: f"{{{name}}}" for name in names}) for key, names in _FILLED.items()}
    return {key: speech(key) for key in _FIXED} | filled


def _about(work: TrayWork, step: Step) -> Record:
    return {
        "run": work.run.id,
        "load": work.load_id,
        "operation": step.key,
        "station": step.operation.station,
        "revision": work.tray.revision,
    }


def _step(speech: Speech, book: Book, work: TrayWork, step: Step) -> Record:
    operation, route = step.operation, work.route
    instructions = speech.texts(operation, "instructions")
    pictures = [instruction.picture for instruction in operation.instructions]
    return {
        "line": speech("step-of", number=step.index + 1, total=len(route.steps)),
        **named(speech.step(step), "name"),
        "place": place(book, step),
        "pieces": speech("pieces", pieces=work.pieces) if work.pieces else "",
        "cautions": [
            {**named(speech.caution(operation, caution)), "signs": list(caution.signs)}
            for caution in cautions_at(book, route, step)
        ],
        "instructions": [
            {**named(text), **({"picture": f"/helper/pictures/{picture}"} if picture else {})}
            for text, picture in zip(instructions, pictures, strict=True)
        ]
        or [{"text": speech("no-instructions")}],
        "setup": [[*pair, lang_of(pair[1])] for pair in speech.setup(operation)],
        "texts": _texts(speech, work, step),
        "wait": _wait(speech, book, route, step),
    }


def place(book: Book, step: Step) -> str:
    """Where a step is done: 'Laser, House'."""
    station = book.station(step.operation.station)
    room = book.room(station.room) if station else None
    return ", ".join(where.name for where in (station, room) if where is not None)


def _texts(speech: Speech, work: TrayWork, step: Step) -> list[list[str]]:
    """Which text at which position, from where pieces are personal."""
    personal = work.route.personal_from
    if personal is None or step.index < personal:
        return []
    placed = texts_at(work.tray)
    coming = places_of(work).get(work.tray.id, [])
    placed |= {piece["position"]: piece["text"] or piece["line"] for piece in coming}
    return [[speech("position", place=at), placed[at]] for at in sorted(placed)]


def _wait(speech: Speech, book: Book, route: Route, step: Step) -> str:
    wait = wait_after(book, route, step)
    if wait is None:
        return ""
    latest = speech("after-latest", span=speech.span(wait.latest)) if wait.latest else ""
    return " ".join(text for text in (speech(f"after-{wait.why}", span=speech.span(wait.least)), latest) if text)


def _notice(kind: str, text: str, signs: tuple[str, ...] = ()) -> Record:
    """``kind``: note, look (yellow) or danger."""
    return {"kind": kind, "text": text, **({"signs": list(signs)} if signs else {})}


def _notices(speech: Speech, book: Book, work: TrayWork, step: Step, person: str) -> Iterator[Record]:
    if work.hold is not None:
        yield _notice("look", speech("held", why=work.hold.why))
    if work.state == "none" and _was_done_by(work, person) and work.before is not None:
        good = sum(pieces for pieces, _ in work.tray.counts.get(work.before.key, {}).values())
        said = "finished" if work.rest is not None else "moved"
        name = speech.step(work.before)
        done = _notice("note", speech(said, step=name, good=good, place=place(book, step)))
        yield done | ({"own": named(name)} if lang_of(name) else {})
        yield from _left(speech, book, work)
    rest = work.rest
    if work.state == "none" and rest is not None and rest.ready_at > speech.now:
        yield _notice("look", speech(f"resting-{rest.why}", at=speech.moment(rest.ready_at)))
    if work.state == "none" and rest is not None and rest.latest_at is not None:
        yield _notice("look", speech("resting-latest", at=speech.moment(rest.latest_at)))
    if step.key in work.run.stopped:
        yield _notice("danger", speech("refused-first-piece-failed"))
    watcher = book.person(work.load.watcher) if work.load and work.state == "running" else None
    if watcher is not None:  # a guest who watches is in no book
        yield _notice("note", speech("watched-by", person=watcher.name))
    yield from _look(speech, work, person)


def _look(speech: Speech, work: TrayWork, person: str) -> Iterator[Record]:
    if not work.given.get("look") or work.given.get("to") != person:
        return
    yield _notice("note" if work.looked == "pass" else "look", speech(f"look-{work.looked or 'first'}"))
    if work.looked != "pass" and work.load is not None:
        yield _notice("note", speech("look-waits"))


def _left(speech: Speech, book: Book, work: TrayWork) -> list[Record]:
    """After work that leaves what may heat by itself, rags or oily dust: where that goes, now."""
    left = leaves(book, work.route, work.before) if work.before else None
    if left is None or not left.heats:
        return []
    key = REMINDERS["care end"][left.what]
    return [_notice("danger", speech.care(key), CATALOGUE[key].signs)]


def _was_done_by(work: TrayWork, person: str) -> bool:
    """Whether this person did the step before."""
    return work.before is not None and any(
        load.step == work.before.key
        and work.tray.id in load.pieces
        and any(span.person == person for span in load.spans)
        for load in work.run.past.values()
    )


def _blocked(work: TrayWork, person: str, refused: Callable[[Record], Refused | None]) -> Refused | None:
    """Why what comes next would not be taken, if it would not."""
    if work.hold is not None:
        return NotForGuest("held")
    if work.state == "none" or (work.load is not None and person not in work.load.people and work.state != "stopped"):
        pieces = {"pieces": {work.tray.id: work.pieces}} if work.load is None else {}
        kind = "unloading started" if work.state in ("running", "ended", "unloading") else "load started"
        return refused({"kind": kind, "body": pieces if kind == "load started" else {}})
    return None


def _why_blocked(speech: Speech, book: Book, work: TrayWork, step: Step, blocked: Refused | None) -> Iterator[Record]:
    if blocked is None or blocked.code in ("held", "first piece failed"):
        return  # said already
    rests = work.rest is not None and work.rest.ready_at > speech.now
    if not (blocked.code == "still waiting" and work.rest is not None):
        yield _notice("look", speech.refused(blocked.code, blocked.facts))
    if blocked.code in _LEADS and work.state == "none" and not rests:  # what dries stays where it is
        yield _notice("note", speech("lead-takes", place=place(book, step)))


def _show(speech: Speech, work: TrayWork, blocked: Refused) -> Record:
    """'Call the lead to show me', which says what is to be shown."""
    return call(speech, work, "help", speech("go-show-me"), str(blocked.facts.get("station", "")))


def _calls(speech: Speech, state: ShopState, work: TrayWork) -> Iterator[str]:
    for key, said in state.calls.items():
        if (said["run"], said["tray"]) == (work.run.id, work.tray.id):
            at = speech.moment(datetime.fromisoformat(said["at"]))
            coming = state.answers.get(f"call|{key}", {}).get("answer") == "claimed"
            called = speech("called", at=at, why=str(said["why"]).replace(" ", "-"))
            yield f"{called} {speech('coming')}" if coming else called


def _checks(speech: Speech, state: ShopState, book: Book, work: TrayWork) -> list[Record]:
    """The first-piece checks that are open once the load is begun."""
    if work.load is None or work.step is None:
        return []
    operation = work.step.operation
    texts = dict(zip((check.key for check in operation.checks), speech.texts(operation, "checks"), strict=True))
    return [
        {
            "key": check.key,
            **named(texts[check.key]),
            "limits": speech.limits(check),
            "measured": check.nominal is not None,
            "units": speech.units,
        }
        for check in open_checks(state, book, work, speech.now)
    ]


def _watch(speech: Speech, book: Book, work: TrayWork, step: Step, person: str) -> Record | None:
    """What a watched machine asks of the helper who watches it."""
    every, load = watch_interval(book, step.operation), work.load
    if every is None:
        return None
    watcher = load.watcher if load else ""
    station = book.station(step.operation.station)
    kind = station.kind if station else ""
    return {
        "mine": watcher in ("", person),
        "every_ms": round(every.total_seconds() * 1000),
        "checked_at": write_moment(load.checked_at) if load and load.checked_at and load.state == "running" else "",
        "check": load.checks if load else 0,
        "sentence": speech.care(watch_check_of(kind)),
        "note": speech.care("watch-note"),
        "words": speech("go-watch", kind=kind),
        "label": speech("did-watch"),
    }
