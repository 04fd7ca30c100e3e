"""What holds a plan: the longest chain back from its finish, what most of the chain's hours in the shop go to, and what
becomes of time that is won in it."""

from bisect import bisect_right
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from runboard.plan.schedule.problem.hours import Presence, common, joined, open_spans
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem
from runboard.plan.schedule.problem.people import hands_of, watching_of
from runboard.plan.schedule.told.shared import Airs, Released

# The same under every problem: ('hands', person), ('station', station), ('wait', run, step), ('service', service),
# ('room', room).
Name = tuple[str, ...]

KINDS = ("hands", "station", "wait", "service", "room")
# What held it last is said until another has so much more of the chain.
CLEARLY = 0.1

# (until when, why, by which block, which service or room)
_Earlier = tuple[int, str, int, int]
_ORDER = ("room", "service", "hands", "station", "before", "wait")


@dataclass(frozen=True)
class ChainLink:
    """A block of the chain and why it starts no earlier: ``wait`` and ``before`` (its pieces), ``station`` and ``hands``
    (what else is done there, or by that person), ``service`` and ``room`` (``which`` of them: all of it was taken, or dust and
    a finish are kept apart in it), ``hours`` (nobody is there before), ``now``."""

    block: int
    why: str
    which: int = -1


@dataclass(frozen=True)
class Holder:
    """``what`` holds the plan: ``hands``, ``station`` (its machine), ``wait``, ``service`` or ``room``; ``which`` is the person,
    the station, the block that is waited after, the service or the room. ``share`` of the chain's hours in the shop go to it.
    ``name`` outlives the problem."""

    what: str
    which: int
    share: float
    name: Name = ()


@dataclass(frozen=True)
class HeldSpan:
    """From ``start`` to ``end`` one thing holds a plan: what a ``Holder`` says, the ``walk`` of a person to what comes next, or
    the ``hours`` until which that cannot begin; ``which`` is then the block that is waited after meanwhile, or -1."""

    what: str
    which: int
    start: int
    end: int


def chain(problem: Problem, plan: Plan, run: str = "") -> list[ChainLink]:
    """The longest chain, of all or to the end of one run, first things first; () where nothing is left."""
    return _chain(_Before(problem, plan), run)


def _chain(before: "_Before", run: str) -> list[ChainLink]:
    problem, plan = before.problem, before.plan
    some = [block.index for block in problem.blocks if not run or block.run == run]
    at = max(some, key=lambda block: (plan.end(problem, block), block), default=None)
    found = list[ChainLink]()
    while at is not None:
        placed = plan.placed[at]
        ended, why, other, which = max(before.all(placed), key=_rank, default=(0, "now", None, -1))
        found.append(ChainLink(at, why, which) if ended >= placed.start else ChainLink(at, "hours"))
        at = other
    return found[::-1]


def _rank(earlier: _Earlier) -> tuple[int, int, int]:
    return earlier[0], _ORDER.index(earlier[1]), -earlier[2]


class _Before:
    """What must be over before a block may start: its pieces', its station's and its people's, each kept by its end, so that
    of the thousands that a long plan has only the last are looked at; and what it shares with others."""

    def __init__(self, problem: Problem, plan: Plan) -> None:
        self.problem, self.plan = problem, plan
        self.services, self.airs = Released(problem, plan), Airs(problem, plan)
        # Each (end, the block counted from behind): of those that end together the first is the last in its row.
        self.stations: dict[int, list[tuple[int, int]]] = {}
        self.people: dict[tuple[int, int], list[tuple[int, int]]] = {}
        for block in problem.blocks:
            self.stations.setdefault(block.station, []).append((plan.end(problem, block.index), -block.index))
        for at in (*hands_of(problem, plan), *watching_of(problem, plan)):
            room = problem.stations[at.station].room
            self.people.setdefault((at.person, room), []).append((at.end, -at.block))
        for row in (*self.stations.values(), *self.people.values()):
            row.sort()

    def all(self, placed: Placed) -> Iterator[_Earlier]:
        """What is over before a block, and begun before it: of each station and person the last."""
        yield from self.own(placed)
        yield from self.shared(placed)

    def own(self, placed: Placed) -> Iterator[_Earlier]:
        """Of its pieces, its station, its people."""
        block, walks = self.problem.blocks[placed.block], self.problem.walks
        pieces = [(lag.before, lag.least) for lag in block.lags]
        if block.unloads is None:
            yield from self._last_in(self.stations[block.station], placed, "station")
        else:
            pieces.append((block.unloads, 0))
        for other, least in pieces:
            ended = self.plan.end(self.problem, other) + least
            if ended <= placed.start and self.plan.placed[other].start < placed.start:
                yield ended, "wait" if least else "before", other, -1
        for person in _people(placed):
            for room in range(len(walks)):
                walk = walks[room][self.problem.stations[block.station].room]
                yield from self._last_in(self.people.get((person, room), []), placed, "hands", walk)

    def shared(self, placed: Placed) -> Iterator[_Earlier]:
        """Of services, and of the air in its room."""
        for ended, other, service in self.services.before(placed):
            if self.plan.placed[other].start < placed.start:
                yield ended, "service", other, service
        for ended, other, room in self.airs.before(placed):
            if self.plan.placed[other].start < placed.start:
                yield ended, "room", other, room

    def _last_in(self, row: list[tuple[int, int]], placed: Placed, why: str, walk: int = 0) -> Iterator[_Earlier]:
        """Of a row by its ends the last that is over ``walk`` before the block."""
        for at in range(bisect_right(row, (placed.start - walk, 0)) - 1, -1, -1):
            ended, other = row[at]
            if self.plan.placed[-other].start < placed.start:
                yield ended + walk, why, -other, -1
                return

    def kept(self, link: ChainLink) -> Iterator[HeldSpan]:
        """When a block of the chain could have begun, in the hours of whoever does it, but for a service or the air."""
        placed, block = self.plan.placed[link.block], self.problem.blocks[link.block]
        for until, why, _, which in self.shared(placed):
            waits = (self.plan.end(self.problem, before) + least for before, least in block.waits)
            if max(waits, default=0) > until:
                continue
            since = max((ended for ended, *_ in self.own(replace(placed, start=until))), default=0)
            windows = self.problem.people[placed.hands].windows if placed.hands is not None else ((0, until),)
            for start, end in common(joined(windows), ((max(since, block.release), until),) if since < until else ()):
                if end == until or end - start >= block.hands:
                    yield HeldSpan(why, which, start, end)


def _people(placed: Placed) -> set[int]:
    return {watcher for watcher in (placed.hands, *(who for who, _ in placed.watchers)) if watcher is not None}


def holder(problem: Problem, plan: Plan, run: str = "", before: Name = ()) -> Holder | None:
    """Who or what most of the chain's hours in the shop go to; None where nothing is left. ``before`` is what held it last:
    it stays unless another has clearly more, so that plans that are as good are said alike."""
    sums: dict[Name, int] = {}
    which: dict[Name, int] = {}
    there = Presence.of([open_spans(problem)])
    for span in held_spans(problem, plan, run):
        if span.what in KINDS:
            name = name_of(problem, span.what, span.which)
            sums[name] = sums.get(name, 0) + there.between(span.start, span.end)
            which[name] = min(which.get(name, span.which), span.which)
    whole = sum(sums.values())
    if not whole:
        return None
    most = min(sums, key=lambda name: (-sums[name], KINDS.index(name[0]), name))
    if before in sums and sums[most] - sums[before] <= CLEARLY * whole:
        most = before
    return Holder(most[0], which[most], sums[most] / whole, most)


def held_spans(problem: Problem, plan: Plan, run: str = "") -> list[HeldSpan]:
    """What holds a plan from its start to its finish, or a run's, one after the other. While a block of the chain only waits
    for a service, or for the air in its room, that holds it, whatever else goes on."""
    before = _Before(problem, plan)
    links = _chain(before, run)
    kept = sorted((span for link in links for span in before.kept(link)), key=lambda span: (span.start, -span.end))
    found: list[HeldSpan] = []
    for at, link in enumerate(links):
        until = plan.placed[links[at + 1].block].start if at + 1 < len(links) else plan.end(problem, link.block)
        since = found[-1].end if found else 0
        found += [span for span in _of_link(problem, plan, link, since, until) if span.start < span.end]
    return list(_laid_over(found, kept))


def _of_link(problem: Problem, plan: Plan, link: ChainLink, since: int, until: int) -> Iterator[HeldSpan]:
    """What holds from the end of the link before until the next begins."""
    placed, block = plan.placed[link.block], problem.blocks[link.block]
    start = min(placed.start, until)
    waits = [(plan.end(problem, lag.before) + lag.least, lag.before) for lag in block.lags if lag.least]
    ready, after = max(((min(ended, start), other) for ended, other in waits), default=(since, -1))
    if link.why in ("wait", "hours") and ready > since:
        yield HeldSpan(link.why, after, since, ready)
        since = ready
    if link.why == "hands" and placed.hands is not None:
        yield HeldSpan("walk", placed.hands, since, start)
    elif link.why in ("service", "room"):
        yield HeldSpan(link.why, link.which, since, start)
    else:
        yield HeldSpan("hours", -1, since, start)
    hands = [(placed.start, placed.begins())] if placed.hands is not None else []
    for stretch in block.stretches:
        begins = placed.begins() + stretch.offset
        if stretch.attendance == "hands-on" and placed.hands is not None:
            hands.append((begins, begins + stretch.length))
    spans = [HeldSpan("hands", placed.hands or 0, *span) for span in hands]
    for stretch in block.stretches:
        if stretch.attendance != "hands-on":
            begins = placed.begins() + stretch.offset
            spans.append(HeldSpan("station", block.station, begins, begins + stretch.length))
    for span in sorted(spans, key=lambda span: span.start):
        yield replace(span, start=min(span.start, until), end=min(span.end, until))


def _laid_over(spans: list[HeldSpan], others: list[HeldSpan]) -> Iterator[HeldSpan]:
    """The others where they are, the spans where they are not; each moment once."""
    covered: list[HeldSpan] = []
    for span in others:
        start = max(span.start, covered[-1].end) if covered else span.start
        if start < span.end:
            covered.append(replace(span, start=start))
    at = 0
    for span in spans:
        start = span.start
        while at < len(covered) and covered[at].end <= start:
            at += 1
        place = at
        while place < len(covered) and covered[place].start < span.end:
            over = covered[place]
            if over.start > start:
                yield replace(span, start=start, end=over.start)
            yield replace(over, start=max(start, over.start), end=min(over.end, span.end))
            start = min(over.end, span.end)
            place += 1
        if start < span.end:
            yield replace(span, start=start)


def name_of(problem: Problem, what: str, which: int) -> Name:
    """The name of what holds a plan, which another problem knows as well."""
    match what:
        case "wait":
            return what, problem.blocks[which].run, problem.blocks[which].step
        case "service":
            return what, problem.services[which][0]
        case "room":
            return what, problem.rooms[which]
    return what, (problem.people if what == "hands" else problem.stations)[which].key


# time that is won


@dataclass(frozen=True)
class Slack:
    """``is_off`` where the longest chain does not go through the work; ``waits`` is the last block of the chain that waits
    for hours to begin, and ``is_lost`` where it comes behind the work, so that what is won is lost in that wait."""

    is_off: bool
    waits: int | None
    is_lost: bool


def slack_of(problem: Problem, plan: Plan, is_it: Callable[[Block], bool], run: str = "") -> Slack:
    """What the longest chain, to the end of a run, does with the work that ``is_it`` names."""
    is_off, waits, is_lost, ended = True, None, False, 0
    for link in chain(problem, plan, run):
        if link.why == "hours" and _opens_for(problem, plan.placed[link.block], ended):
            waits, is_lost = link.block, not is_off
        if is_it(problem.blocks[link.block]):
            is_off, is_lost = False, False
        ended = plan.end(problem, link.block)
    return Slack(is_off, waits, is_lost)


def _opens_for(problem: Problem, placed: Placed, ended: int) -> bool:
    """Whether the hours of whoever does a block, or of its station, open after what is before it in the chain has ended."""
    runs = problem.stations[problem.blocks[placed.block].station].runs
    hours = [runs, *(problem.people[person].windows for person in _people(placed))]
    return any(ended < opens <= placed.start for spans in hours for opens, _ in spans)


def is_part(plan: Plan, run: str, operation: str, kind: str = "") -> Callable[[Block], bool]:
    """Whether a block has a time element of an operation of a run, or with ``kind`` '' any of its work."""

    def found(block: Block) -> bool:
        if (block.run, block.operation) != (run, operation):
            return False
        set_up = kind == "setup" and plan.placed[block.index].setup > 0
        return not kind or set_up or any(stretch.kind == kind for stretch in block.stretches)

    return found
