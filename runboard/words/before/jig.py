"""A jig in words: its places, whether it fits on the bed, and how it is put back where it was."""

from collections.abc import Iterator
from typing import Any

from runboard.plan.jig.question import JigAnswer, Layout, Plate, corner_of, kept_for, plate_of, step_meant
from runboard.plan.jig.sheet import svg_of
from runboard.run.fold.route import Step
from runboard.shop.book import Book
from runboard.shop.keys import key_for
from runboard.shop.machines import Jig
from runboard.words.before.said import Download, Said, Table
from runboard.words.facts import length_in_words, number_in_words
from runboard.words.sentences import say, sentence


def said(book: Book, question: Layout, answer: JigAnswer) -> Said:
    """Places and sizes, what does not fit, the file to cut."""
    plate = answer.plate
    name = question.name.strip() or _product(book, question) or sentence("before-jig-file")
    text = svg_of(plate, answer.numbers)
    return Said(
        _head(book, plate),
        tuple(_lines(book, question, answer)),
        tuple(_doubts(book, answer)),
        tuple(say("before-jig", f"caution-{what}") for what in ("watch", "air", "material")),
        (_table(book, answer),),
        (Download(f"{key_for(name)}.svg", "image/svg+xml", text, sentence("before-jig-download")),),
        _record(answer),
    )  # fmt: skip


def _head(book: Book, plate: Plate) -> str:
    lie = (
        "one" if len(plate.places) == 1 else "below" if plate.columns == 1 else "beside" if plate.rows == 1 else "grid"
    )
    counts = {"places": len(plate.places), "columns": plate.columns, "rows": plate.rows}
    return say("before-jig-head", lie, {**counts, **_sizes(book, plate)})


def length(book: Book, mm: float) -> str:
    """A length that was reckoned, to a thousandth of a millimetre."""
    return length_in_words(round(mm, 3), book.units)


def put_back(book: Book, jig: Jig) -> tuple[str, ...]:
    """How a kept jig is put back where it was, a sentence a step."""
    station, corner, plate = book.station(jig.station), corner_of(jig), plate_of(jig)
    name = station.name if station else jig.station
    if corner is None:
        return (sentence("before-jig-no-corner", {"station": name}),)
    facts = {
        "station": name,
        "x": _coordinate(corner[0]),
        "y": _coordinate(corner[1]),
        "end": _coordinate(corner[0] + plate.wide),
    }
    return tuple(say("before-jig-back", step, facts) for step in ("zero", "corner", "straight", "clamp", "trial"))


def put_back_head() -> str:
    return sentence("before-jig-back")


def drawing_label(name: str) -> str:
    return sentence("before-jig-drawn", {"name": name})


def drawing_about() -> str:
    return sentence("before-jig-drawing")


def place_size(book: Book, plate: Plate) -> str:
    """'Each place 300.1 mm by 40.1 mm'"""
    return sentence("before-jig-place-size", {"length": length(book, plate.length), "width": length(book, plate.width)})


def bed_called(book: Book, bed: tuple[float, float]) -> str:
    """'The bed, 400 mm by 400 mm'"""
    return sentence("before-jig-bed", {"wide": length(book, bed[0]), "high": length(book, bed[1])})


def _coordinate(mm: float) -> str:
    """As a machine shows it: millimetres without the word."""
    return number_in_words(round(mm, 2))


def _product(book: Book, question: Layout) -> str:
    product = book.product(question.product or "")
    return product.name if product else ""


def _sizes(book: Book, plate: Plate) -> dict[str, str]:
    return {"wide": length(book, plate.wide), "high": length(book, plate.high)}


def _lines(book: Book, question: Layout, answer: JigAnswer) -> Iterator[str]:
    plate = answer.plate
    sizes = {"length": length(book, answer.piece[0]), "width": length(book, answer.piece[1])}
    yield sentence("before-jig-piece", {**sizes, "clearance": length(book, answer.clearance)})
    yield sentence("before-jig-kerf", {"kerf": length(book, plate.kerf), "half": length(book, plate.kerf / 2)})
    if answer.corner is not None:
        facts = {
            "x": _coordinate(answer.corner[0]),
            "y": _coordinate(answer.corner[1]),
            "end": _coordinate(answer.corner[0] + plate.wide),
        }
        yield sentence("before-jig-corner", facts)
    else:
        yield sentence("before-jig-corner-later")
    if answer.fitting is not None and answer.fits and answer.fitting[0] * answer.fitting[1] > len(plate.places):
        yield sentence("before-jig-room", {"columns": answer.fitting[0], "rows": answer.fitting[1]})
    yield sentence("before-jig-groups")
    step = step_meant(book, question)
    kept = kept_for(book, step)
    if step is not None and kept is not None:
        yield _kept_already(book, step, kept)


def _kept_already(book: Book, step: Step, kept: Jig) -> str:
    """What the jig is that the step has now, and how far its places lie from one another."""
    way = "rows" if kept.rows > 1 else "columns" if kept.columns > 1 else "one"
    pitch = length(book, kept.pitch_y if kept.rows > 1 else kept.pitch_x)
    facts = {"step": step.name, "jig": kept.name, "places": kept.columns * kept.rows, "pitch": pitch}
    return say("before-jig-already", way, facts)


def _doubts(book: Book, answer: JigAnswer) -> Iterator[str]:
    plate, room = answer.plate, answer.room
    if room is None:
        yield sentence("before-jig-bed-unknown")
    elif not answer.fits and answer.fitting is not None:
        facts = {
            "columns": answer.fitting[0],
            "rows": answer.fitting[1],
            "count": answer.fitting[0] * answer.fitting[1],
        }
        bed = {"bed_wide": length(book, max(0.0, room[0])), "bed_high": length(book, max(0.0, room[1]))}
        yield sentence("before-jig-too-large", {**facts, **bed, **_sizes(book, plate)})
    if answer.wanted is not None and answer.wanted > len(plate.places):
        yield sentence("before-jig-too-few", {"places": len(plate.places), "pieces": answer.wanted})
    if answer.from_outline:
        yield sentence("before-jig-outline")
    yield sentence("before-jig-usual")
    for one in answer.unclear:
        yield say("outline-unclear", one.code, {**one.facts, "line": one.line})


def _table(book: Book, answer: JigAnswer) -> Table:
    """Each place's middle from the corner mark, and on the machine where that is known."""
    plate, corner = answer.plate, answer.corner
    columns = ("place", "x", "y", *(("machine-x", "machine-y") if corner else ()))
    rows = []
    for place in plate.places:
        x, y = plate.place_at(place.x, place.y)
        there = (_coordinate(corner[0] + x), _coordinate(corner[1] + y)) if corner else ()
        rows.append((str(place.number), length(book, x), length(book, y), *there))
    heads = tuple(say("before-jig-column", name) for name in columns)
    return Table(sentence("before-jig-table"), heads, tuple(rows), frozenset(range(1, len(columns))))


def _record(answer: JigAnswer) -> dict[str, Any]:
    plate = answer.plate
    return {
        "kind": "jig",
        "columns": plate.columns,
        "rows": plate.rows,
        "place_mm": [round(plate.length, 4), round(plate.width, 4)],
        "pitch_mm": [round(plate.pitch_x, 4), round(plate.pitch_y, 4)],
        "plate_mm": [round(plate.wide, 4), round(plate.high, 4)],
        "clearance_mm": answer.clearance,
        "kerf_mm": plate.kerf,
        "bed_mm": list(answer.bed) if answer.bed else None,
        "fits": answer.fits,
        "fitting": list(answer.fitting) if answer.fitting else None,
        "corner_mm": list(answer.corner) if answer.corner else None,
        "places": [{"number": one.number, "x": round(one.x, 4), "y": round(one.y, 4)} for one in plate.places],
    }
