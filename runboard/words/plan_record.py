"""What ``runboard plan`` prints of a run's plan: as a record for other programs, and as lines for a person."""

from collections.abc import Iterator, Sequence
from datetime import timedelta, tzinfo
from typing import Any

from runboard.plan.answer import Answer
from runboard.plan.move import Move
from runboard.plan.offers import Offer, lines
from runboard.plan.prices import MOST_ALTERNATIVES
from runboard.plan.schedule.problem.hours import open_minutes
from runboard.plan.schedule.problem.nouns import TICK, Plan, Problem
from runboard.plan.schedule.problem.people import hands_of, watching_of
from runboard.plan.schedule.search.bounds import Bound
from runboard.plan.schedule.told.effort import finish_of, hands_ticks, person_loads
from runboard.plan.schedule.told.forecast import Forecast
from runboard.plan.schedule.told.holding import holder
from runboard.plan.taking_over import CODE
from runboard.run.fold.state import RunState, ShopState
from runboard.run.log.event import parse_moment, write_moment
from runboard.words.dues import late_sentences, limit_sentences, order_called
from runboard.words.facts import span_in_words, zone_of
from runboard.words.plan import Names, done_sentence, holds_sentence, left_out_sentences, range_sentence, span_of
from runboard.words.sentences import say, trays_in_words

Record = dict[str, Any]


def plan_record(run: RunState, answer: Answer, bound: Bound, outlook: Forecast | None) -> Record:
    """The record. All of it is the run's own, beside the other runs that are open; ``moves`` alone are each person's, of
    whichever run. ``finish`` and ``bound`` are null where nothing is left to plan; what no plan can hold is in
    ``left_out``, as sentences."""
    problem, plan = answer.problem, answer.plan or Plan(())
    is_any = any(block.run == run.id for block in problem.blocks)
    finish = finish_of(problem, plan, run.id)
    return {
        "run": run.id,
        "made_at": write_moment(answer.now),
        "finish": _at(problem, finish) if is_any else None,
        "bound": _at(problem, bound.tick) if is_any else None,
        "bound_rule": bound.rule if is_any else None,
        "gap_open_minutes": round(open_minutes(problem, bound.tick, finish), 1),
        "proved": finish <= bound.tick,
        "hands_on_minutes": _minutes(hands_ticks(problem, plan, run.id)),
        "walks": sum(load.walks for load in person_loads(problem, plan, run.id)),
        "operations": operations_record(problem, plan, run.id),
        "moves": moves_record(answer),
        "forecast": _forecast(problem, run.id, outlook, names_of(answer)),
        "left_out": left_out_sentences(names_of(answer), [out for out in problem.left_out if out.run == run.id]),
    }


def plan_lines(run: RunState, answer: Answer, bound: Bound, outlook: Forecast | None) -> Iterator[str]:
    """The same as lines of text: first when it will be done, then who does what, then what no plan can beat."""
    problem, plan, names = answer.problem, answer.plan or Plan(()), names_of(answer)
    record = plan_record(run, answer, bound, outlook)
    yield f"{run.name} ({run.id})"
    if record["finish"] is None:
        yield names.say("nothing-fits" if record["left_out"] else "done-already")
    else:
        finish = finish_of(problem, plan, run.id)
        yield done_sentence(names, finish, outlook, person_loads(problem, plan, run.id))
        yield range_sentence(names, finish, outlook)
        yield holds_sentence(names, holder(problem, plan, run.id))
    yield from (f"- {text}" for text in (*late_sentences(names, plan, run.id), *record["left_out"]))
    for move in record["moves"]:
        yield from _move_lines(names, move)
    if record["finish"] is None:
        return
    yield ""
    yield from _table(names, run, record["operations"])
    yield ""
    yield names.say("sums", hands=_span(hands_ticks(problem, plan, run.id)), walks=record["walks"])
    yield from limit_sentences(names, plan, bound, run.id)


def operations_record(problem: Problem, plan: Plan, run: str) -> list[Record]:
    """What is still to be done of a run, a load each, by its start. A part has the people who are at it: whose hands, or
    who watches; watching that changes hands is a part each. What is done and only dries still is not in it."""
    loads: dict[int, list[int]] = {}
    for block in problem.blocks:
        first = block
        while first.unloads is not None:
            first = problem.blocks[first.unloads]
        if block.run == run:
            loads.setdefault(first.index, []).append(block.index)
    parts = _parts(problem, plan)
    found = [_load(problem, plan, load, parts) for load in loads.values() if any(parts[block] for block in load)]
    return sorted(found, key=lambda said: (said["start"], said["load"]))


def _load(problem: Problem, plan: Plan, blocks: list[int], parts: dict[int, list[Record]]) -> Record:
    block = problem.blocks[blocks[0]]
    return {
        "operation": block.operation,
        "step": block.step,
        "load": block.load,
        "trays": list(block.trays),
        "station": problem.stations[block.station].key,
        "start": _at(problem, plan.placed[block.index].start),
        "end": _at(problem, max(plan.end(problem, block) for block in blocks)),
        "parts": [part for block in blocks for part in parts[block]],
    }


def _parts(problem: Problem, plan: Plan) -> dict[int, list[Record]]:
    """The parts of each block, in order."""
    found: dict[int, list[tuple[int, int, str, tuple[int, ...]]]] = {block.index: [] for block in problem.blocks}
    for at in (*hands_of(problem, plan), *watching_of(problem, plan)):
        found[at.block].append((at.start, at.end, "machine" if at.kind == "watching" else at.kind, (at.person,)))
    for placed in plan.placed:
        attended = {kind for _, _, kind, _ in found[placed.block]}
        for stretch in problem.blocks[placed.block].stretches:
            start = placed.begins() + stretch.offset
            if stretch.kind not in attended:
                found[placed.block].append((start, start + stretch.length, stretch.kind, ()))
    return {block: [_part(problem, *part) for part in sorted(parts)] for block, parts in found.items()}


def _part(problem: Problem, start: int, end: int, kind: str, people: tuple[int, ...]) -> Record:
    keys = [problem.people[person].key for person in people]
    return {"kind": kind, "start": _at(problem, start), "end": _at(problem, end), "people": keys}


def names_of(answer: Answer) -> Names:
    """What the plan's things are called."""
    return Names(answer.problem, answer.state.runs, answer.book, zone_of(answer.book.time_zone), answer.now)


def _forecast(problem: Problem, run: str, outlook: Forecast | None, names: Names) -> Record | None:
    if outlook is None:
        return None
    return {
        **{f"p{share}": _at(problem, tick) for share, tick in outlook.finish.items()},
        "chance_by_due": {line: chance for (of, line), chance in outlook.by_due.items() if of == run},
        "chance_by_evening": {
            problem.moment(tick - 1).astimezone(names.zone).date().isoformat(): chance
            for tick, chance in outlook.by_evening
        },
    }


def _move_lines(names: Names, move: Record) -> Iterator[str]:
    person = next(person.name for person in names.problem.people if person.key == move["person"])
    yield f"{person}: {move['sentence']}. {move['reason']}."
    for other in move["alternatives"]:
        yield f"  or {other['sentence']}: {_price(names, other)}"


def _price(names: Names, other: Record) -> str:
    """What would be lost, of it what weighs most: order lines, the finish, walks."""
    minutes, windows, walks = round(other["delay_open_minutes"]), other["delay_windows"], other["more_walks"]
    if other["late"]:
        late = other["late"][0]
        facts = {"pieces": late["pieces"], "what": order_called(names, late["run"], late["line"])}
        span = span_in_words(timedelta(minutes=late["minutes"]))
        return names.say("price-late", **facts, span=span, more="yes" if late["more"] else "no")
    if walks and not minutes and not windows:
        return names.say("price-walks", walks=walks)
    return names.say("price", minutes=minutes, windows=windows)


def _table(names: Names, run: RunState, operations: list[Record]) -> Iterator[str]:
    """A line a load: when, what, where, who."""
    rows = [_row(names, run, operation) for operation in operations]
    widths = [max(len(row[column]) for row in rows) for column in range(3)]
    for row in rows:
        yield "  ".join([*(text.ljust(width) for text, width in zip(row, widths, strict=False)), row[3]]).rstrip()


def _row(names: Names, run: RunState, said: Record) -> tuple[str, str, str, str]:
    start, end = (names.problem.tick(parse_moment(said[key])) for key in ("start", "end"))
    station = next(
        (station.name for station in names.problem.stations if station.key == said["station"]), said["station"]
    )
    what = f"{names.step(run.id, said['step'])}, {_trays(said['trays'])}"
    return f"{names.short(start)}–{names.clock(end)}", what, station, _people(names, said["parts"])


def _people(names: Names, parts: list[Record]) -> str:
    """Who is at a load, and who takes over its watching when."""
    called = {person.key: person.name for person in names.problem.people}
    later = [part for part in parts if part["kind"] == "machine"][1:]
    people = dict.fromkeys(person for part in parts if part not in later for person in part["people"])
    turns = [
        names.say("takes-over", who=called[who], at=names.clock(names.problem.tick(parse_moment(part["start"]))))
        for part in later
        for who in part["people"]
    ]
    return "; ".join([", ".join(called[who] for who in people), *turns])


def _at(problem: Problem, tick: int) -> str:
    return write_moment(problem.moment(tick))


def _minutes(ticks: int) -> float:
    return round(ticks * TICK.total_seconds() / 60, 1)


def _span(ticks: int) -> str:
    return span_in_words(span_of(ticks))


# What the plan offers each person, in the words of Now


def moves_record(answer: Answer) -> list[dict[str, Any]]:
    """For each person with something to do: what to do now, why, and up to three alternatives with their price."""
    return [
        _of_person(answer, person.key, found)
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
    return say("move", _move_code(move, answer), facts, zone=zone)


def _move_code(move: Move, answer: Answer) -> str:
    at = move.facts.get("at")
    if move.code == CODE and at is not None and at > answer.now:
        return "take over at"
    return "free until" if move.code == "free" and at else move.code


def _what(move: Move) -> str:
    trays = move.trays or tuple(move.pieces)
    return _trays(trays) if trays else ""


def _trays(some: Sequence[str]) -> str:
    """As a terminal has it, and a program that looks for it: with plain spaces, since nothing is wrapped."""
    return trays_in_words(some).replace("\u00a0", " ")


def _offered(answer: Answer, person: str) -> list[Move]:
    return lines(answer.state, answer.book, person, answer.now, answer.offers.get(person))


def _of_person(answer: Answer, person: str, found: Sequence[Move]) -> dict[str, Any]:
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
                "late": [dict(order) for order in move.price.get("late", ())],
                "more_walks": move.price.get("walks", 0),
            }
