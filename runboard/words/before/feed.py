"""What is said of feeds and speeds."""

from collections.abc import Iterator, Mapping
from typing import Any

from runboard.plan.feeds.feeding import Fed, Feed
from runboard.shop.book import Book
from runboard.shop.machines import GoodFeed
from runboard.shop.units import MM_A_INCH, Unit
from runboard.words.before.said import Said
from runboard.words.facts import length_in_words, number_in_words
from runboard.words.sentences import sentence

_WHOLE_INCHES = 10
_CAUTIONS = ("before-feed-caution-cutter", "care-extraction", "care-eye-protection")


def said(book: Book, question: Feed, answer: Fed) -> Said:
    """The answer in words: what followed from the others first."""
    facts = _values(answer, book.units)
    return Said(
        _say(answer.solved, facts),
        tuple(_lines(question, answer, book.units)),
        tuple(_doubts(book, answer)),
        (*_warnings(book, question, answer), *(sentence(name) for name in _CAUTIONS)),
        record=_record(answer),
    )


def _values(answer: Fed, units: Unit) -> dict[str, Any]:
    whole = abs(answer.flutes - round(answer.flutes)) < 0.05
    return {
        "chip": chip_in_words(answer.chip, units),
        "feed": feed_in_words(answer.feed, units),
        "wood": (answer.nearest.wood if answer.nearest else "") or _say("any-wood"),
        "rpm": number_in_words(round(answer.rpm)),
        "flutes": number_in_words(round(answer.flutes, 1)),
        "whole": whole,
    }


def feed_in_words(mm: float, units: Unit) -> str:
    """How far it goes in a minute, as finely as anybody sets it."""
    if units == "mm":
        return length_in_words(round(mm), units)
    inches = mm / float(MM_A_INCH)
    return _say("inches", {"number": number_in_words(round(inches, 0 if inches >= _WHOLE_INCHES else 1))})


def note_in_words(note: str) -> str:
    """What was seen, its lines one after the other; 'none'."""
    return "; ".join(line.strip() for line in note.splitlines() if line.strip()) or "none"


def torn_in_words(torn: int | None, torn_of: int | None) -> dict[str, Any]:
    """How many pieces, and of how many, as sentences take them."""
    return {"torn": torn or 0, "of": torn_of if torn_of and torn_of >= (torn or 0) else 0}


def chip_in_words(mm: float, units: Unit) -> str:
    """A chip load: to a thousandth of a millimetre or a ten-thousandth of an inch."""
    if units == "mm":
        return length_in_words(round(mm, 3), units)
    return _say("inches", {"number": number_in_words(round(mm / float(MM_A_INCH), 4))})


def speed_in_words(mm_a_minute: float, units: Unit) -> str:
    """The speed of an edge, in metres or feet a minute."""
    if units == "mm":
        return _say("metres", {"number": number_in_words(round(mm_a_minute / 1000))})
    return _say("feet", {"number": number_in_words(round(mm_a_minute / 12 / float(MM_A_INCH)))})


def _lines(question: Feed, answer: Fed, units: Unit) -> Iterator[str]:
    if answer.solved != "kept":
        yield _say("all", _values(answer, units))
    if answer.surface is not None:
        yield _say("speed", {"speed": speed_in_words(answer.surface, units)})
    if answer.solved == "kept":
        yield from _own(answer)
    elif answer.nearest is not None:
        yield _kept(answer, answer.nearest, units)
    elif answer.cutter is not None:
        yield _say("none")
    yield _say("tables")


def _own(answer: Fed) -> Iterator[str]:
    if answer.nearest is not None and answer.nearest.note:
        yield _say("seen", {"note": note_in_words(answer.nearest.note)})
    yield _say("three")


def _kept(answer: Fed, kept: GoodFeed, units: Unit) -> str:
    facts = {
        "wood": kept.wood or _say("any-wood"),
        "other": answer.is_other_wood,
        "rpm": number_in_words(round(kept.rpm)),
        "feed": feed_in_words(kept.feed, units),
        "chip": chip_in_words(answer.nearest_chip or 0, units),
        "note": note_in_words(kept.note),
    }
    return _say("good" if answer.is_good else "nearest", facts)


def _warnings(book: Book, question: Feed, answer: Fed) -> Iterator[str]:
    """What could spoil the piece: values that tore out, and those at which the spindle does not turn."""
    if question.torn:
        facts = torn_in_words(question.torn, question.torn_of)
        yield _say("caution-torn", facts | {"where": question.torn_in.strip() or "none"})
    for kept in answer.tore_out:
        facts = torn_in_words(kept.torn, kept.torn_of)
        yield _say("caution-tore", facts | {"wood": kept.wood or _say("any-wood"), "note": note_in_words(kept.note)})
    if answer.spindle_most is not None:
        station = book.station(question.station or "")
        most = number_in_words(answer.spindle_most)
        yield _say("caution-spindle", {"station": station.name if station else "", "most": most})


def _doubts(book: Book, answer: Fed) -> Iterator[str]:
    if answer.at_odds is not None:
        yield _say("doubt-odds", {"said": chip_in_words(answer.at_odds, book.units)})


def _say(name: str, facts: Mapping[str, Any] | None = None) -> str:
    return sentence(f"before-feed-{name}", facts)


def _record(answer: Fed) -> dict[str, Any]:
    return {
        "kind": "feed",
        "solved": answer.solved,
        "rpm": round(answer.rpm, 3),
        "flutes": round(answer.flutes, 3),
        "feed_mm_per_min": round(answer.feed, 3),
        "chip_load_mm": round(answer.chip, 5),
        "surface_speed_mm_per_min": None if answer.surface is None else round(answer.surface, 1),
        "good": answer.is_good,
        "nearest": answer.nearest.key if answer.nearest else None,
        "tore_out": [kept.key for kept in answer.tore_out],
        "spindle_most": answer.spindle_most,
    }


# what is found in a run


def found_facts(book: Book, facts: Mapping[str, Any]) -> dict[str, Any]:
    """The facts of a finding as its sentence takes them."""
    said = dict(facts)
    said["rpm"] = number_in_words(round(facts["rpm"]))
    said["feed"] = feed_in_words(facts["feed"], book.units)
    said["chip"] = "none" if facts["chip"] is None else chip_in_words(facts["chip"], book.units)
    if "most" in facts:
        said["most"] = number_in_words(facts["most"])
    if "note" in facts:
        said |= torn_in_words(facts["torn"], facts["torn_of"]) | {"note": note_in_words(facts["note"])}
    return said
