"""A part of a plan as a problem of its own: what begins in some evenings, with all else as it stands."""

from dataclasses import replace

from runboard.plan.schedule.problem.nouns import FAR, Block, Lag, Placed, Plan, Problem, Span

# Blocks up to which a whole is planned at once, rather than its parts.
WHOLE = 130


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
        before = [
            (one.start, one.block)
            for one in self.plan.placed
            if self.whole.blocks[one.block].station == station
            and one.start < opens
            and self.whole.blocks[one.block].family
        ]
        return self.whole.blocks[max(before)[1]].family if before else self.whole.stations[station].stands_on

    def _block(self, block: Block) -> Block:
        """With what it waits for outside as a release."""
        inside = tuple(replace(lag, before=self.number[lag.before]) for lag in block.lags if lag.before in self.number)
        outside = [self._ready(lag) for lag in block.lags if lag.before not in self.number]
        unloads = self.number.get(block.unloads) if block.unloads is not None else None
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
        for at, block in enumerate(self.blocks):
            one = plan.placed[at]
            placed[block] = Placed(block, one.start, one.setup, one.hands, one.watchers)
        return Plan(tuple(placed), plan.source)
