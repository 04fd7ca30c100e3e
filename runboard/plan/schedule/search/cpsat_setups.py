"""Setups in the constraint model: what comes before a block where its station stands on another family."""

from typing import TYPE_CHECKING, Any

from runboard.plan.schedule.problem.nouns import Block, Placed

if TYPE_CHECKING:
    from runboard.plan.schedule.search.cpsat import Ends, Model

# Loads of one station whose every order is in the model; of more than so many, each that might need a setup has one.
MOST_IN_A_ROW = 26


class Setups:
    """For each block whether it needs its setup: never, always, or a literal."""

    def __init__(self, model: "Model") -> None:
        self.model = model
        self.problem = model.problem
        self.needs: dict[int, Any] = {}
        self._rows: list[list[Block]] = []
        self._firsts: list[list[Block]] = []
        for station in range(len(self.problem.stations)):
            self._look_at(station)

    def _look_at(self, station: int) -> None:
        here = [
            block
            for block in self.problem.blocks
            if block.station == station and block.unloads is None and block.family
        ]
        if not any(block.setup and not block.begun for block in here):
            return
        if not self.model.wish.setups:
            self.model.is_plan = False
            return
        families = {block.family for block in here}
        if len(families) > 1 and len(here) > MOST_IN_A_ROW:
            self.needs |= {block.index: 1 for block in here if block.setup and not block.begun}
            self.model.is_bound = False
        elif len(families) > 1:
            self._rows.append(here)
            self._let(here)
        elif self.problem.stations[station].stands_on not in families and not any(block.begun for block in here):
            self._firsts.append(here)
            self._let(here)

    def _let(self, here: list[Block]) -> None:
        for block in here:
            if block.setup and not block.begun:
                self.needs[block.index] = self.model.model.new_bool_var(f"setup{block.index}")

    def ticks(self, at: int) -> Any:
        """What a block's setup takes."""
        return self.problem.blocks[at].setup * self.needs[at] if at in self.needs else 0

    def present(self, at: int) -> Any:
        """Whether a block has a setup: None for never, 1 for always, or a literal."""
        return self.needs.get(at)

    def keep(self, holds: "dict[int, tuple[Ends, Ends, int]]") -> None:
        """Say when each is needed, given when loads hold their stations."""
        for here in self._firsts:
            self._one_is_first(here, holds)
        for here in self._rows:
            self._in_a_row(here, holds)

    def _one_is_first(self, here: list[Block], holds: "dict[int, tuple[Ends, Ends, int]]") -> None:
        model = self.model.model
        first = model.new_int_var(0, self.model.wish.before, "")
        able = [block for block in here if block.index in self.needs]
        for block in here:
            model.add(first <= holds[block.index][0])
        model.add(sum(self.needs[block.index] for block in able) <= 1)
        others = [model.new_bool_var("") for _ in range(len(here) - len(able))]
        plain = [block for block in here if block.index not in self.needs]
        model.add_exactly_one([*(self.needs[block.index] for block in able), *others])
        for block, literal in [*((one, self.needs[one.index]) for one in able), *zip(plain, others, strict=True)]:
            model.add(holds[block.index][0] <= first).only_enforce_if(literal)

    def _in_a_row(self, here: list[Block], holds: "dict[int, tuple[Ends, Ends, int]]") -> None:
        """Each load after another or first; where the one before it is of another family, it is set up for."""
        model = self.model.model
        stands_on = self.problem.stations[here[0].station].stands_on
        changes: dict[int, list[Any]] = {block.index: [] for block in here}
        arcs = []
        for nth, block in enumerate(here, 1):
            first, last = model.new_bool_var(""), model.new_bool_var("")
            arcs += [(0, nth, first), (nth, 0, last)]
            if stands_on != block.family:
                changes[block.index].append(first)
            for other_nth, other in enumerate(here, 1):
                if other.index == block.index:
                    continue
                follows = model.new_bool_var("")
                arcs.append((nth, other_nth, follows))
                model.add(holds[other.index][0] >= holds[block.index][1]).only_enforce_if(follows)
                if other.family != block.family:
                    changes[other.index].append(follows)
        model.add_circuit(arcs)
        for at, found in changes.items():
            if at in self.needs:
                model.add(self.needs[at] == sum(found))

    def hints(self, placed: Placed) -> list[tuple[Any, int]]:
        """What a plan says of a block's setup."""
        need = self.needs.get(placed.block)
        return [] if need is None or isinstance(need, int) else [(need, int(placed.setup > 0))]

    def value(self, at: int, values: Any) -> int:
        """The ticks of setup in a solution."""
        need = self.needs.get(at)
        if need is None:
            return 0
        return self.problem.blocks[at].setup * (need if isinstance(need, int) else values.value(need))
