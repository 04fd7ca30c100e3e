"""A plan in sentences: when it will be done, with how much more of whom, what holds it, and what no plan can hold."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo
from typing import Any

from runboard.plan.schedule.problem.nouns import FAR, TICK, LeftOut, Problem
from runboard.plan.schedule.told.effort import PersonLoad
from runboard.plan.schedule.told.forecast import GOES, Forecast
from runboard.plan.schedule.told.holding import Holder
from runboard.run.fold.state import RunState
from runboard.shop.book import Book
from runboard.shop.hours import local_day
from runboard.words.facts import list_in_words, moment_in_words, span_in_words, time_of_day
from runboard.words.sentences import day_in_words, say, sentence, tray_numbers, trays_in_words

# Work that begins this late in the day is an evening's.
EVENING_FROM = 16


@dataclass(frozen=True)
class Names:
    """What is called how: steps by their run, the rest by the problem and the book; and the shop's time of day."""

    problem: Problem
    runs: Mapping[str, RunState]
    book: Book
    zone: tzinfo
    now: datetime

    def room(self, at: int) -> str:
        key = self.problem.rooms[at]
        return next((room.name for room in self.book.rooms if room.key == key), key)

    def service(self, at: int) -> str:
        key = self.problem.services[at][0]
        return next((service.name for service in self.book.services if service.key == key), key)

    def step(self, run: str, key: str) -> str:
        found = self.runs[run].route.step(key) if run in self.runs else None
        return found.name if found else key

    def block_step(self, block: int) -> str:
        found = self.problem.blocks[block]
        return self.step(found.run, found.step)

    def block_trays(self, block: int) -> str:
        return tray_numbers(self.problem.blocks[block].trays)

    def people(self, some: Sequence[int]) -> str:
        return list_in_words(self.problem.people[at].name for at in some)

    def clock(self, tick: int) -> str:
        """The time of day, to the nearest minute."""
        return time_of_day(self._nearest(tick), self.zone)

    def day(self, tick: int) -> str:
        return day_in_words(self.problem.moment(tick), self.now, self.zone)

    def tick(self, tick: int) -> str:
        """'16:40' of today, 'Thu 16:40', 'Thu 12 Jun, 16:40' of a day farther off."""
        return moment_in_words(self._nearest(tick), self.zone, now=self.now, stays=False)

    def between(self, first: int, last: int, said: int | None = None) -> str:
        """'Thu 13:52–14:19', or both days where they differ; without a day that ``said`` named already."""
        days = [self.day(tick) for tick in (first, last, first if said is None else said)]
        if days[0] != days[1]:
            return f"{self.tick(first)} – {self.tick(last)}"
        early = self.tick(first) if said is None or days[0] != days[2] else self.clock(first)
        return early if self.tick(first) == self.tick(last) else f"{early}–{self.clock(last)}"

    def short(self, tick: int) -> str:
        """'Thu 16:40'"""
        return moment_in_words(self._nearest(tick), self.zone, now=self.now)

    def _nearest(self, tick: int) -> datetime:
        return self.problem.moment(tick) + timedelta(seconds=30)

    def say(self, name: str, **facts: Any) -> str:
        return sentence(f"plan-{name}", facts, zone=self.zone, now=self.now)


def done_sentence(
    names: Names, finish: int, outlook: Forecast | None, loads: Sequence[PersonLoad], me: str = ""
) -> str:
    """'Done about Thu 16:40 (2 more evenings, you)'. It is the middle of how it may turn out, so that it lies in
    the range that stands beside it; the plan's own end where that is not reckoned."""
    finish = finish if outlook is None or outlook.finish[50] >= FAR else outlook.finish[50]
    working = [load for load in loads if load.sessions]
    days = {local_day(names.problem.moment(start), str(names.zone)) for load in working for start, _ in load.sessions}
    unit = "evening" if _all_evenings(names, working) else "day"
    who = names.people([load.person for load in working])
    if len(working) == 1 and names.problem.people[working[0].person].key in ("", me):
        who = "you"
    return names.say("done", at=names.tick(finish), who=who, count=len(days), unit=unit)


def _all_evenings(names: Names, loads: Sequence[PersonLoad]) -> bool:
    starts = [names.problem.moment(start).astimezone(names.zone) for load in loads for start, _ in load.sessions]
    return all(start.hour >= EVENING_FROM for start in starts)


def range_sentence(names: Names, finish: int, outlook: Forecast | None) -> str:
    """The finish as likely as not, and nine times in ten; where the plan itself ends, if that is outside of it; and from how
    many goes, where those are few."""
    if outlook is None:
        return names.say("range-not-yet")
    first, early, late, last = (outlook.finish[share] for share in (5, 25, 75, 95))
    if names.tick(early) == names.tick(late):
        said = names.say("range-one", range=names.between(first, last))
    else:
        said = names.say("range", likely=names.between(early, late), range=names.between(first, last, early))
    if not outlook.finish[5] <= finish <= outlook.finish[95]:
        said = f"{said} {names.say('itself', at=names.tick(finish))}"
    return said if outlook.goes >= GOES else f"{said} {names.say('range-few', goes=outlook.goes)}"


def holds_sentence(names: Names, found: Holder | None) -> str:
    """What most of the longest chain's hours go to; '' where nothing is left."""
    if found is None:
        return ""
    problem = names.problem
    match found.what:
        case "hands":
            return names.say("holds-hands", person=problem.people[found.which].name)
        case "station":
            return names.say("holds-station", station=problem.stations[found.which].name)
        case "service":
            return names.say("holds-service", service=names.service(found.which))
        case "room":
            return names.say("holds-room", room=names.room(found.which))
    return names.say("holds-wait", step=names.block_step(found.which))


def bound_sentence(names: Names, tick: int, rule: str, facts: Mapping[str, Any]) -> str:
    """'No plan can be done before Thu 15:55: …', with the rule that makes it so."""
    known = {"people": "none", **facts}
    if "step" in known:
        known["step"] = names.step(str(known.get("run", "")), str(known["step"]))
    why = names.say(f"rule-{rule}", **known) or names.say("rule-hours")
    return names.say("bound", at=names.tick(tick), why=why)


def left_out_sentences(names: Names, left_out: Sequence[LeftOut]) -> list[str]:
    """Each reason once, with all that it keeps out; the sentence names the clash and what to do."""
    found: dict[str, list[LeftOut]] = {}
    for out in left_out:
        spans = {key: span_in_words(fact) for key, fact in out.facts.items() if isinstance(fact, timedelta)}
        facts = {**out.facts, **spans, "step": names.step(out.run, out.step)}
        if out.code == "skill nobody has":
            facts["skill"] = out.facts.get("skill") or "none"
        found.setdefault(say("left-out", out.code, facts, zone=names.zone, now=names.now), []).append(out)
    return [f"{text} {_trays(some)}." for text, some in found.items()]


def _trays(some: Sequence[LeftOut]) -> str:
    said = trays_in_words(dict.fromkeys(tray for out in some for tray in out.trays))
    return said[:1].upper() + said[1:]


def span_of(ticks: int) -> timedelta:
    """Ticks as a span."""
    return ticks * TICK
