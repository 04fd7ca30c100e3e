"""Order lines with due moments in the constraint model: by how many ticks they are late, all together.

Where all last blocks of a run are alike and keep their order, the one that completes an order line is known. Else some of
them are chosen that make pieces enough, and are there when the last of those is.
"""

from itertools import pairwise
from typing import Any

from runboard.plan.schedule.problem.nouns import Order, Plan
from runboard.plan.schedule.problem.worth import dated, there_at


class Dues:
    """What each order line is late by, at least: ``sum`` is what is as small as it can be, or kept within the wish.

    ``model`` is the model that these belong to, whose finish and blocks are there already.
    """

    def __init__(self, model: Any) -> None:
        self.of, self.problem = model, model.problem
        self.lates = [(order, due, self._late(order, due)) for order, due in dated(self.problem)]
        self.sum = sum(late for _, _, late in self.lates)
        if model.wish.late and self.lates:
            model.model.add(self.sum <= model.wish.late)

    def hints(self, plan: Plan) -> list[tuple[Any, int]]:
        """How late each is in a plan."""
        ends = [plan.end(self.problem, at) for at in range(len(self.problem.blocks))]
        found = []
        for order, due, late in self.lates:
            if not isinstance(late, int):
                there = there_at(self.problem, ends, order)
                found.append((late, max(0, (max(ends, default=0) if there is None else there) - due)))
        return found

    def _late(self, order: Order, due: int) -> Any:
        most = self.of.wish.before - due
        if self.of.wish.late is not None:
            most = min(most, self.of.wish.late)
        late = self.of.model.new_int_var(0, most, "late") if most > 0 else 0
        self._keep(order, due + late)
        return late

    def _keep(self, order: Order, until: Any) -> None:
        """The pieces of an order line are there by then."""
        last = [one for one in self.problem.blocks if one.last and one.run == order.run and one.pieces]
        groups = {self.of.alike.group_of[one.index] for one in last}
        if sum(one.pieces for one in last) < order.by_then:
            self.of.model.add(self.of.finish <= until)
        elif len(groups) == 1 and groups <= self.of.alike.ordered:
            completes = last[-(-order.by_then // last[0].pieces) - 1]
            self.of.model.add(self.of.end(completes.index) <= until)
        else:
            self._choose(order, {one.index: self._is_there(one.index, until) for one in last})

    def _is_there(self, at: int, until: Any) -> Any:
        there = self.of.model.new_bool_var("")
        self.of.model.add(self.of.end(at) <= until).only_enforce_if(there)
        return there

    def _choose(self, order: Order, there: dict[int, Any]) -> None:
        """Pieces enough; of alike blocks that keep their order the first."""
        self.of.model.add(sum(self.problem.blocks[at].pieces * one for at, one in there.items()) >= order.by_then)
        for group in {self.of.alike.group_of[at] for at in there} & self.of.alike.ordered:
            for one, other in pairwise(self.of.alike.groups[group]):
                self.of.model.add_implication(there[other], there[one])
