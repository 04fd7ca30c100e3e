"""Setups in the constraint model: which loads stand where their station stood on another family."""

from typing import Any

from runboard.plan.schedule.problem.nouns import Block, Placed
from runboard.plan.schedule.search.frame import Frame

# Loads of one station whose every order is in the model; of more than so many, each that might need a setup has one.
MOST_IN_A_ROW = 26


class Setups:
    """For each block whether it ``needs`` its setup, that is, stands where its station stood on another family: no entry
    for never, 1 for always, or a literal."""

    def __init__(self, frame: Frame) -> None:
        self.of, self.problem = frame, frame.problem
        self.needs: dict[int, Any] = {}
        self._rows: list[list[Block]] = []
        self._firsts: list[list[Block]] = []
        for station in range(len(self.problem.stations)):
            here = [
                block
                for block in self.problem.blocks
                if block.station == station and block.unloads is None and block.family
            ]
            able = [block for block in here if block.setup and not block.begun]
            if able:
                self._look_at(station, here, able)

    def _look_at(self, station: int, here: list[Block], able: list[Block]) -> None:
        families = {block.family for block in here}
        if len(families) > 1 and len(here) > MOST_IN_A_ROW:
            self.needs |= {block.index: 1 for block in able}
            self.of.is_bound = False
        elif len(families) > 1 or not (
            self.problem.stations[station].stands_on in families or any(block.begun for block in here)
        ):
            (self._rows if len(families) > 1 else self._firsts).append(here)
            self.needs |= {block.index: self.of.model.new_bool_var(f"setup{block.index}") for block in able}

    def ticks(self, at: int) -> Any:
        """What a block's setup takes."""
        return self.problem.blocks[at].setup * self.needs.get(at, 0)

    def keep(self) -> None:
        """Say when each is needed, now that it is known when loads hold their stations."""
        for here in self._firsts:
            self._one_is_first(here)
        for here in self._rows:
            self._in_a_row(here)

    def _one_is_first(self, here: list[Block]) -> None:
        model = self.of.model
        first = model.new_int_var(0, self.of.wish.before, "")
        literals = [self.needs.get(block.index, model.new_bool_var("")) for block in here]
        model.add_exactly_one(literals)
        for block, literal in zip(here, literals, strict=True):
            model.add(first <= self.of.starts[block.index])
            model.add(self.of.starts[block.index] <= first).only_enforce_if(literal)

    def _in_a_row(self, here: list[Block]) -> None:
        """Each load after another or first; where the one before it is of another family, it is set up for."""
        model, held = self.of.model, self.of.held
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
                if not (block.begun and other.begun):
                    model.add(held[other.index][0] >= held[block.index][1]).only_enforce_if(follows)
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
        need = self.needs.get(at, 0)
        return self.problem.blocks[at].setup * (need if isinstance(need, int) else values.value(need))
