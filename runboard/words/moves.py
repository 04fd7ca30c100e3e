"""What a plan offers each person, in the words of Now: the sentence, why, and what the alternatives cost."""

from collections.abc import Iterator, Sequence
from datetime import tzinfo
from typing import Any

from runboard.plan.answer import Answer
from runboard.plan.move import Move
from runboard.plan.offers import Offer, lines
from runboard.plan.prices import MOST_ALTERNATIVES
from runboard.plan.taking_over import CODE
from runboard.run.fold.state import ShopState
from runboard.words.plan import trays_in_words
from runboard.words.sentences import say, sentence, zone_of


def moves_record(answer: Answer) -> list[dict[str, Any]]:
    """For each person with something to do: what to do now, why, and up to three alternatives with their price."""
    return [
        _record(answer, person.key, found)
        for person in answer.problem.people
        if (found := _offered(answer, person.key))
    ]


def move_words(state: ShopState, answer: Answer, move: Move, zone: tzinfo) -> str:
    """'Sand 120, tray 4' as a sentence of its kind: start it, go on with it, unload, watch."""
    run = state.runs.get(move.run)
    step = run.route.step(move.step) if run is not None else None
    station = answer.book.station(move.station)
    facts = {
        "at": "",
        "station": station.name if station else "",
        **move.facts,
        "step": step.name if step else "",
        "what": _what(move),
    }
    return say("move", _code(move, answer), facts, zone=zone)


def _code(move: Move, answer: Answer) -> str:
    at = move.facts.get("at")
    if move.code == CODE and at is not None and at > answer.now:
        return "take over at"
    return "free until" if move.code == "free" and at else move.code


def _what(move: Move) -> str:
    trays = move.trays or tuple(move.pieces)
    return sentence("plan-trays", {"trays": trays_in_words(trays), "count": len(trays)}) if trays else ""


def _offered(answer: Answer, person: str) -> list[Move]:
    return lines(answer.state, answer.book, person, answer.now, answer.offers.get(person))


def _record(answer: Answer, person: str, found: Sequence[Move]) -> dict[str, Any]:
    zone = zone_of(answer.book.time_zone)
    first, *others = found
    return {
        "person": person,
        "sentence": move_words(answer.state, answer, first, zone),
        "reason": _reason(answer.offers.get(person), first, zone),
        "alternatives": list(_alternatives(answer, others, first, zone))[:MOST_ALTERNATIVES],
    }


def _reason(offer: Offer | None, move: Move, zone: tzinfo) -> str:
    """Why the plan begins it, where it is the plan's own; else why it comes first."""
    if offer is not None and offer.because and offer.own == move.id:
        return say("why", offer.because["code"], offer.because.get("facts"), zone=zone)
    return say("because", move.because.get("code", ""), move.because.get("facts"), zone=zone)


def _alternatives(answer: Answer, others: Sequence[Move], first: Move, zone: tzinfo) -> Iterator[dict[str, Any]]:
    """One of each sort: the same step for another tray costs the same and is no alternative."""
    known = {(first.code, first.run, first.step)}
    for move in others:
        if (move.code, move.run, move.step) not in known and move.price:
            known.add((move.code, move.run, move.step))
            yield {
                "sentence": move_words(answer.state, answer, move, zone),
                "delay_open_minutes": move.price["minutes"],
                "delay_windows": move.price["windows"],
                "late": [dict(one) for one in move.price.get("late", ())],
                "more_walks": move.price.get("walks", 0),
            }
