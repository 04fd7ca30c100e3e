"""Something of a plan chosen anew, with all else as it stands: a stretch of time, who does what, or in which rooms people
stay."""

from collections import defaultdict
from dataclasses import dataclass, replace
from typing import Any

from runboard.plan.schedule.problem.hours import open_spans
from runboard.plan.schedule.problem.nouns import FAR, Block, Lag, Plan, Problem, Span
from runboard.plan.schedule.search.model import Limits, Model, Wish
from runboard.plan.schedule.search.model_people import Done

# Blocks up to which a whole is planned at once, rather than its parts.
WHOLE = 130

# What a change of watcher, other hands than the plan's, and eyes that are not those of whoever loaded count for.
_CHANGE, _HANDS, _EYES = 20, 3, 1


class Part:
    """The blocks of a plan that begin from ``opens`` on and before ``closes``, and when each may begin."""

    def __init__(self, problem: Problem, plan: Plan, opens: int, closes: int) -> None:
        self.whole, self.plan = problem, plan
        self.blocks = [one.block for one in plan.placed if opens <= one.start < closes]
        self.number = {block: at for at, block in enumerate(self.blocks)}
        stations = tuple(
            replace(station, stands_on=self._stands_on(at, opens)) for at, station in enumerate(problem.stations)
        )
        people = tuple(replace(one, room=-1) if opens else one for one in problem.people)
        blocks = tuple(self._block(problem.blocks[block]) for block in self.blocks)
        self.problem = replace(problem, stations=stations, people=people, blocks=blocks, orders=(), left_out=())
        self.between = {at: self._between(block, opens, closes) for at, block in enumerate(self.blocks)}

    def _stands_on(self, station: int, opens: int) -> str:
        here = [block for block in self.whole.blocks if block.station == station and block.family]
        before = [(start, block.family) for block in here if (start := self.plan.placed[block.index].start) < opens]
        return max(before)[1] if before else self.whole.stations[station].stands_on

    def _block(self, block: Block) -> Block:
        """With what it waits for outside as a release."""
        inside = tuple(replace(lag, before=self.number[lag.before]) for lag in block.lags if lag.before in self.number)
        outside = [self._ready(lag) for lag in block.lags if lag.before not in self.number]
        unloads = None if block.unloads is None else self.number.get(block.unloads)
        if block.unloads is not None and unloads is None:
            outside.append(self.plan.end(self.whole, block.unloads))
        release = 0 if block.begun else max([block.release, *outside])
        return replace(block, index=self.number[block.index], lags=inside, unloads=unloads, release=release)

    def _ready(self, lag: Lag) -> int:
        return self.plan.end(self.whole, lag.before) + lag.least

    def _between(self, at: int, opens: int, closes: int) -> Span:
        """When a block may begin for all that is outside to stay as it is."""
        block, latest = self.whole.blocks[at], FAR
        for lag in block.lags:
            if lag.before not in self.number and lag.latest is not None:
                latest = min(latest, self.plan.placed[lag.before].begins() + lag.latest)
        for follower in self.whole.followers[at]:
            if follower not in self.number:
                latest = min(latest, self._before(at, follower) - block.length)
        if block.unloads is not None and block.unloads not in self.number:
            latest = min(latest, self.plan.placed[at].begins())
        return (0 if block.begun else opens, max(min(closes, latest + 1), 1))

    def _before(self, at: int, follower: int) -> int:
        """The latest end for what comes after it."""
        starts = self.plan.placed[follower].start
        return min([starts, *(starts - lag.least for lag in self.whole.blocks[follower].lags if lag.before == at)])

    def plan_of_part(self) -> Plan:
        """What the plan says of the part."""
        return Plan(
            tuple(replace(self.plan.placed[block], block=at) for at, block in enumerate(self.blocks)), self.plan.source
        )

    def with_part(self, plan: Plan) -> Plan:
        """The whole plan with a new one for the part."""
        placed = list(self.plan.placed)
        for block, one in zip(self.blocks, plan.placed, strict=True):
            placed[block] = replace(one, block=block)
        return Plan(tuple(placed), plan.source)


def evenings_of(problem: Problem, plan: Plan) -> tuple[Span, ...]:
    """The hours up to the plan's finish, those less than six hours apart taken as one."""
    found: list[Span] = []
    finish = plan.finish(problem)
    for opens, closes in open_spans(problem):
        if opens >= finish:
            break
        if found and opens - found[-1][1] < 6 * 120:
            found[-1] = (found[-1][0], closes)
        else:
            found.append((opens, closes))
    return tuple(found)


def staffed(problem: Problem, plan: Plan) -> Plan | None:
    """The plan with every start as it is, hands and watchers chosen anew: as few changes of watcher as can be, then as few
    other hands. None where those who are there cannot do it so. The caller checks it."""
    between = {one.block: (one.begins(), one.begins() + 1) for one in plan.placed}
    wish = Wish(plan.finish(problem) + 1, between=between, watching="by turns", least="nothing")
    model = Model(problem, wish)
    costs = [_CHANGE * one for change in model.people.changes.values() for one in change.second.values()]
    for placed in plan.placed:
        block = problem.blocks[placed.block]
        loads = block.by if block.begun else placed.hands
        for weight, by, who in ((_HANDS, model.people.hands, placed.hands), (_EYES, model.people.eyes, loads)):
            some = by.get(placed.block, {}).items()
            costs += [weight * literal for one, literal in some if literal is not None and one != who]
    model.model.minimize(sum(costs))
    model.hint(plan)
    return model.solve(Limits(20, work=2)).plan


# walks


@dataclass(frozen=True)
class FewWalks:
    """Instead of the least finish: the fewest walks. ``before`` and ``after`` are the rooms in which each person is before
    and after all this, -1 for any; nobody has more than ``stays`` in one room. With ``most``: no more walks than those, and
    everything as early as it can be."""

    before: tuple[int, ...]
    after: tuple[int, ...]
    stays: int
    most: int | None = None


class WalksModel(Model):
    """The model of a problem in which walks are counted: each person's time as stays in rooms, as few as there can be. Its
    answers bound nothing but them.

    Each room has some stays that may be or not, one after the other; all that is done in a room is done within one of them,
    and a person's stays never overlap. How long the walk between two takes is kept by the model itself. That a doing names
    its stay is what makes a proof short: of rooms that the time is cut into, without names, none was found.
    """

    def __init__(self, problem: Problem, wish: Wish, few: FewWalks) -> None:
        super().__init__(problem, wish)
        self.few = few
        walks = [self._walks(person, done) for person, done in self.people.done.items() if done]
        if few.most is None:
            self.model.minimize(sum(walks))
        else:
            self.model.add(sum(walks) <= few.most)
            self.model.minimize(sum(self.begins))

    def _walks(self, person: int, done: list[Done]) -> Any:
        """The walks of one person: one less than their stays."""
        spans: dict[int, list[tuple[Any, Any, Any]]] = defaultdict(list)
        for one in done:
            if not self._is_seen_from_afar(one):
                ends = one.start + one.size if one.end is None else one.end
                spans[self._room(one)].append((one.start, ends, one.present))
        for room, tick in ((self.few.before[person], 0), (self.few.after[person], self.wish.before)):
            if room >= 0:
                spans[room].append((tick, tick, None))
        rows: list[Any] = []
        walks: Any = -1
        for room in sorted(spans):
            there, stays = self._stays(spans[room])
            rows += stays
            walks += sum(there)
        self.model.add_no_overlap(rows)
        return walks

    def _room(self, one: Done) -> int:
        return self.problem.stations[one.kind[0]].room

    def _is_seen_from_afar(self, one: Done) -> bool:
        """Whether something is watched that may be watched from another room too: it keeps nobody in its own."""
        stations, (at, kind) = self.problem.stations, one.kind
        others = [other for other in stations[at].watched_from if other < len(stations)]
        return kind == "watched" and any(stations[other].room != self._room(one) for other in others)

    def _stays(self, spans: list[tuple[Any, Any, Any]]) -> tuple[list[Any], list[Any]]:
        """The stays of one person in one room: literals of those that are, the first ones, and their intervals. Each span
        (from, to, whether it is) lies in one of them."""
        raw, before = self.model, self.wish.before
        many = range(max(1, min(self.few.stays, len(spans))))
        opens = [raw.new_int_var(0, before, "") for _ in many]
        closes = [raw.new_int_var(0, before, "") for _ in many]
        there = [raw.new_bool_var("") for _ in many]
        rows = []
        for at in many:
            size = raw.new_int_var(0, before, "")
            rows.append(raw.new_optional_interval_var(opens[at], size, closes[at], there[at], ""))
            if at:
                raw.add_implication(there[at], there[at - 1])
                raw.add(opens[at] >= closes[at - 1])
        for start, end, present in spans:
            chosen = [raw.new_bool_var("") for _ in many]
            raw.add(sum(chosen) == (1 if present is None else present))
            for at, literal in enumerate(chosen):
                raw.add_implication(literal, there[at])
                raw.add(start >= opens[at]).only_enforce_if(literal)
                raw.add(end <= closes[at]).only_enforce_if(literal)
        return there, rows
