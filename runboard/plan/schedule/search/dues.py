"""Order lines with due moments in the constraint model."""

from collections.abc import Iterator
from itertools import pairwise
from typing import Any

from runboard.plan.schedule.problem.hours import common, open_spans
from runboard.plan.schedule.problem.nouns import FAR, OrderDue, Plan
from runboard.plan.schedule.problem.worth import Worth, dated, ends_of
from runboard.plan.schedule.search.frame import Frame


class LateLines:
    """By how much each order line is late, at least, in open ticks; ``sum`` is what is to be least, or kept within the wish.

    Where all last blocks of a run are alike and keep their order, the one that completes an order line is known. Else some of
    them are chosen that make pieces enough, and are there when the last of those is.
    """

    def __init__(self, frame: Frame) -> None:
        self.of, self.problem, self.worth = frame, frame.problem, Worth(frame.problem)
        self.lates = [(due, *self._late(order, due)) for order, due in dated(self.problem)]
        self.sum = sum(self._counted(late, in_time) for _, late, in_time in self.lates)
        if frame.wish.late is not None and self.lates:
            frame.model.add(self.sum <= frame.wish.late)

    def _counted(self, late: Any, in_time: Any) -> Any:
        return late + FAR * (1 - in_time) if self.problem.late_counts == "lines" else late

    def hints(self, plan: Plan) -> Iterator[tuple[Any, int]]:
        """How late each is in a plan."""
        margins = self.worth.margins(ends_of(self.problem, plan))
        for (due, late, in_time), margin in zip(self.lates, margins, strict=True):
            yield in_time, int(margin <= 0)
            yield late, self.worth.late_by(due, due + margin) if margin > 0 else 0

    def _late(self, order: OrderDue, due: int) -> tuple[Any, Any]:
        """The open ticks by which it is late, and whether it is in time: by when it is there follows from them."""
        model, hours, before = self.of.model, self.worth.hours, self.of.wish.before
        until = model.new_int_var(0, before, "")
        in_time = model.new_bool_var("")
        late = model.new_int_var(0, max(1, hours.between(due, before) - min(0, due)), "late")
        model.add(until <= due).only_enforce_if(in_time)
        ways = [in_time]
        spans = common(open_spans(self.problem), ((max(due, 0), before),)) if due < before else ()
        for opens in sorted({max(due, 0), *(opens for opens, _ in spans)}):
            gone = hours.between(due, opens) - min(0, due)
            ways.append(model.new_bool_var(""))
            model.add(until <= opens + late - gone).only_enforce_if(ways[-1])
            model.add(late >= max(1, gone)).only_enforce_if(ways[-1])
        model.add_exactly_one(ways)
        self._keep(order, until)
        return late, in_time

    def _keep(self, order: OrderDue, until: Any) -> None:
        """The pieces of an order line are there by then."""
        last = [self.problem.blocks[at] for at, pieces in self.problem.last.get(order.run, ()) if pieces]
        groups = {self.of.alike.group_of[block.index] for block in last}
        if sum(block.pieces for block in last) < order.by_then:
            self.of.model.add(self.of.finish <= until)
        elif len(groups) == 1 and groups <= self.of.alike.ordered:
            completes = last[-(-order.by_then // last[0].pieces) - 1]
            self.of.model.add(self.of.end(completes.index) <= until)
        else:
            self._choose(order, {block.index: self._is_there(block.index, until) for block in last})

    def _is_there(self, at: int, until: Any) -> Any:
        there = self.of.model.new_bool_var("")
        self.of.model.add(self.of.end(at) <= until).only_enforce_if(there)
        return there

    def _choose(self, order: OrderDue, there: dict[int, Any]) -> None:
        """Pieces enough; of alike blocks that keep their order the first."""
        self.of.model.add(
            sum(self.problem.blocks[at].pieces * is_there for at, is_there in there.items()) >= order.by_then
        )
        for group in {self.of.alike.group_of[at] for at in there} & self.of.alike.ordered:
            for one, other in pairwise(self.of.alike.groups[group]):
                self.of.model.add_implication(there[other], there[one])
