"""What is said of an insert or a magnet in its hole."""

from collections.abc import Iterator, Mapping
from typing import Any

from runboard.plan.fits.seating import Seat, Seated
from runboard.shop.book import Book
from runboard.shop.units import Unit
from runboard.words.before.measures import length_about
from runboard.words.before.said import Said
from runboard.words.facts import length_in_words
from runboard.words.sentences import sentence


def said(book: Book, question: Seat, answer: Seated) -> Said:
    """The answer in words: the hole, its depth and what stays beneath it first."""
    units = book.units
    return Said(
        head_of(question, answer, units),
        tuple(_lines(question, answer, units)),
        tuple(_doubts(question, answer)),
        tuple(_cautions(question, answer, units)),
        record=_record(answer),
    )


def head_of(question: Seat, answer: Seated, units: Unit) -> str:
    """The hole, and whether the wood is thick enough for it."""
    code = "fits" if answer.is_thick_enough else "thin" if answer.beneath > 0 else "out"
    return _say(
        code,
        {
            "hole": _hole(answer.hole, units),
            "depth": length_in_words(answer.depth, units),
            "beneath": length_about(answer.beneath, units),
            "margin": length_in_words(question.margin, units),
            "thickness": length_in_words(question.thickness, units),
        },
    )


def _hole(mm: float, units: Unit) -> str:
    return length_in_words(round(mm, 2) if units == "mm" else mm, units)


def _lines(question: Seat, answer: Seated, units: Unit) -> Iterator[str]:
    part = answer.part
    by = "maker" if answer.by_maker else "insert" if part.what == "insert" else "rule"
    facts = {"by": by, "clearance": _hole(abs(answer.clearance), units), "more": answer.clearance >= 0}
    yield _say("hole", facts)
    yield _drills(answer, units)
    more = length_about(max(0.0, answer.depth - question.sunk - part.length), units)
    yield _say("depth", {"by": "maker" if answer.depth_by_maker else "rule", "more": more, "what": part.what})
    if answer.beside is not None and answer.has_wall:
        yield _say("beside", {"beside": length_about(answer.beside, units)})
    if part.source:
        yield _say("source", {"source": part.source})


def _drills(answer: Seated, units: Unit) -> str:
    first, *others = answer.drills
    facts = {"drill": length_in_words(first.mm, units), "fit": first.fit}
    if others:
        facts |= {"next": length_in_words(others[0].mm, units), "sits": others[0].fit}
    return _say("drills" if others else "drill", facts)


def _doubts(question: Seat, answer: Seated) -> Iterator[str]:
    if question.fit == "press" and question.glue == "none" and answer.part.what == "magnet":
        yield _say("doubt-press")
    yield _say("doubt-scrap")


def _cautions(question: Seat, answer: Seated, units: Unit) -> Iterator[str]:
    if answer.beside is not None and not answer.has_wall:
        facts = {"beside": length_about(answer.beside, units), "wall": length_in_words(question.wall, units)}
        yield _say("caution-wall" if answer.beside > 0 else "caution-edge", facts)
    if answer.is_slack:
        yield _say("caution-slack", {"more": _hole(answer.clearance, units)})
    if answer.part.what == "magnet":
        yield _say("caution-magnets")
        yield _say("caution-pole")
    yield sentence("before-screw-caution-hold")
    yield sentence("care-eye-protection")


def _say(name: str, facts: Mapping[str, Any] | None = None) -> str:
    return sentence(f"before-fit-{name}", facts)


def _record(answer: Seated) -> dict[str, Any]:
    return {
        "kind": "fit",
        "hole_mm": round(answer.hole, 3),
        "by_maker": answer.by_maker,
        "drill_mm": round(answer.in_mm, 3),
        "drill_64ths_mm": round(answer.in_64ths, 3),
        "depth_mm": round(answer.depth, 3),
        "beneath_mm": round(answer.beneath, 3),
        "beside_mm": None if answer.beside is None else round(answer.beside, 3),
        "thick_enough": answer.is_thick_enough,
        "wall_enough": answer.has_wall,
    }
