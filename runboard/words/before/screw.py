"""What is said of a screw in its stack."""

from collections.abc import Iterator, Mapping
from typing import Any

from runboard.plan.fits.driving import HALF, TWO_THIRDS, Drive, Driven, screw_of
from runboard.plan.fits.screws import NEWTON_A_POUND
from runboard.shop.book import Book
from runboard.shop.units import Unit
from runboard.words.before.measures import both_units, length_about
from runboard.words.before.said import Said, Table
from runboard.words.facts import length_in_words
from runboard.words.sentences import sentence

Facts = Mapping[str, Any]


def said(book: Book, question: Drive, answer: Driven) -> Said:
    """The answer in words: whether the point stays inside first."""
    units = book.units
    return Said(
        head_of(question, answer, units),
        tuple(_lines(book, question, answer)),
        tuple(_doubts(question, answer, units)),
        (*_warnings(question, answer, units), *(sentence(name) for name in _CAUTIONS)),
        (_sizes(answer, units),),
        record=_record(question, answer),
    )


_CAUTIONS = ("before-screw-caution-hold", "care-eye-protection", "before-screw-caution-scrap")


def head_of(question: Drive, answer: Driven, units: Unit) -> str:
    """Whether the point stays inside, and which length would."""
    code = "face" if abs(answer.left) < 0.05 and answer.outcome != "short" else answer.outcome
    return sentence(
        f"before-screw-{code}",
        {
            "left": length_about(answer.left, units),
            "by": length_about(-answer.left, units),
            "margin": length_in_words(question.margin, units),
            "safe": safe_of(answer, units),
        },
    )


def safe_of(answer: Driven, units: Unit) -> str:
    """The longest usual length that is safe; 'none'."""
    return "none" if answer.safe is None else length_in_words(answer.safe, units)


def _lines(book: Book, question: Drive, answer: Driven) -> Iterator[str]:
    units = book.units
    yield from _holes(question, answer, units)
    if answer.fits:
        yield from _holding(question, answer, units)
    yield from _sources(book, question, answer)


def _holes(question: Drive, answer: Driven, units: Unit) -> Iterator[str]:
    if answer.fits:
        yield _say("stop", {"stop": length_in_words(answer.stop, units), "below": _below(question, answer, units)})
    yield _say(
        "pilot",
        {
            "hard": answer.is_hard,
            "own": answer.pilot.is_own,
            "drill": drill_of(answer, units),
            "wanted": length_in_words(round(answer.pilot.wanted, 2), units),
        },
    )
    if answer.clear is not None:
        facts = {"drill": length_in_words(answer.clear, units), "deep": length_about(answer.clear_to, units)}
        yield _say("clear", facts)


def _holding(question: Drive, answer: Driven, units: Unit) -> Iterator[str]:
    yield _say("held", {"held": length_about(answer.held, units), "threads": round(answer.held / answer.screw.pitch)})
    if question.through > 0:
        yield _say("share", {"share": round(answer.share * 100), "enough": _enough(answer)})
    if answer.outcome == "inside" and answer.safe is not None and answer.safe > answer.screw.length:
        yield _say("longer", {"safe": safe_of(answer, units)})
    if answer.ultimate is not None and answer.held:
        yield _say(
            "pulls",
            {
                "held": length_about(answer.held, units),
                "gravity": f"{answer.gravity:g}",
                "ultimate": _force(answer.ultimate, units),
                "allowable": _force(answer.allowable or 0, units),
            },
        )


def drill_of(answer: Driven, units: Unit) -> str:
    """'2 mm (5/64 in)': the shop's drill, and the nearest of the other kind."""
    other = answer.pilot.in_64ths if units == "mm" else answer.pilot.in_mm
    return both_units(answer.drill, other, units)


def _below(question: Drive, answer: Driven, units: Unit) -> str:
    return length_about(answer.below, units) if question.through else "none"


def _enough(answer: Driven) -> str:
    return "usual" if answer.share >= TWO_THIRDS - 0.005 else "half" if answer.share >= HALF else "little"


def _force(newtons: float, units: Unit) -> str:
    if units == "in":
        return sentence("before-screw-pounds", {"force": f"{_rounded(newtons / NEWTON_A_POUND):g}"})
    return sentence("before-screw-newtons", {"force": f"{_rounded(newtons):g}"})


def _rounded(force: float) -> float:
    """To two figures: no wood is known better."""
    return float(f"{force:.2g}")


def _warnings(question: Drive, answer: Driven, units: Unit) -> Iterator[str]:
    """What could spoil the piece or the joint."""
    screw = answer.screw
    if answer.outcome == "near":
        yield _say("caution-near", {"margin": length_in_words(question.margin, units)})
    if question.grain == "end":
        yield _say("caution-end")
    if answer.holds_little and answer.fits:
        longer = answer.safe is not None and answer.safe > screw.length
        yield _say("caution-little", {"safe": "longer" if longer else "none"})
    if answer.pilot.wanted >= screw.diameter:
        yield _say("caution-wide")
    if screw.is_countersunk and 0 < question.washer + question.through - question.sunk < screw.head_height:
        yield _say("caution-head")


def _doubts(question: Drive, answer: Driven, units: Unit) -> Iterator[str]:
    screw = answer.screw
    short = screw.length + question.sunk - question.washer - answer.stop
    if answer.outcome == "near" and answer.is_hard and short >= 0.1:
        yield _say("doubt-drill", {"short": length_about(short, units)})
    if answer.hardness_from == "nobody":
        yield _say("doubt-hardness", {"wood": question.wood or "none"})
    if not answer.is_hard:
        yield _say("doubt-soft")
    if answer.gravity is None:
        yield _say("doubt-gravity")
    if "root" in screw.assumed and not answer.pilot.is_own:
        yield _say("doubt-root")
    if "thread" in screw.assumed:
        yield _say("doubt-thread")


def _sources(book: Book, question: Drive, answer: Driven) -> Iterator[str]:
    kept = screw_of(book, question)
    if kept.gauge is not None and kept.diameter is None:
        yield _say("gauge-source")
    if answer.screw.source:
        yield _say("source", {"source": answer.screw.source})
    if answer.wood and question.gravity is None:
        yield _say("gravity-source", {"gravity": f"{answer.wood.gravity:g}", "source": answer.wood.gravity_source})


def _sizes(answer: Driven, units: Unit) -> Table:
    screw = answer.screw
    rows = {
        "diameter": length_in_words(round(screw.diameter, 2), units),
        "root": length_in_words(round(screw.root, 2), units),
        "thread": length_about(screw.thread, units),
        "pitch": length_in_words(round(screw.pitch, 2), units),
    }
    heads = tuple(sentence(f"before-screw-size-{size}") for size in rows)
    return Table("", (sentence("ask-drive-screw"), *heads), ((screw.name, *rows.values()),))


def _say(name: str, facts: Facts | None = None) -> str:
    return sentence(f"before-screw-{name}", facts)


def _record(question: Drive, answer: Driven) -> dict[str, Any]:
    pilot = answer.pilot
    return {
        "kind": "screw",
        "outcome": answer.outcome,
        "left_mm": _mm(answer.left),
        "margin_mm": question.margin,
        "safe_length_mm": answer.safe,
        "held_mm": _mm(answer.held),
        "held_threads": _mm(answer.threads),
        "share": _mm(answer.share),
        "pilot_mm": {
            "wanted": _mm(pilot.wanted),
            "drill": _mm(pilot.in_mm),
            "drill_64ths": _mm(pilot.in_64ths),
            "own": pilot.is_own,
        },
        "depth_stop_mm": _mm(answer.stop),
        "shank_hole_mm": None if answer.clear is None else {"drill": _mm(answer.clear), "deep": _mm(answer.clear_to)},
        "withdrawal_n": None
        if answer.ultimate is None
        else {"allowable": _mm(answer.allowable or 0), "ultimate": _mm(answer.ultimate)},
        "assumed": list(answer.screw.assumed),
    }


def _mm(number: float) -> float:
    return round(number, 3)


# what is found in a run


def found_facts(book: Book, facts: Facts) -> dict[str, Any]:
    """The facts of a finding as its sentence takes them: lengths in the shop's units."""
    exact = {"margin", "safe", "stop", "pilot"}
    return {
        name: ("none" if value is None else (length_in_words if name in exact else length_about)(value, book.units))
        if name in _LENGTHS
        else value
        for name, value in facts.items()
    }


_LENGTHS = frozenset({"left", "by", "margin", "safe", "held", "stop", "pilot"})
