"""A route as a run walks it: the operations' passes in order, as steps."""

from dataclasses import dataclass
from functools import cached_property

from runboard.shop.product import Operation, Pass, Product


@dataclass(frozen=True)
class Step:
    """One pass of one operation. ``key`` is permanent: the operation's key, with the pass after a colon where there
    are several (``sand:120``)."""

    key: str
    index: int
    operation: Operation
    pass_: Pass
    last_pass: bool

    @property
    def name(self) -> str:
        """'Sand 120', or 'Oil' where there is one pass."""
        return self.operation.name if ":" not in self.key else f"{self.operation.name} {self.pass_.name}"

    @property
    def most_a_load(self) -> int | None:
        """The most pieces that go on one load; ``None`` where it takes a whole tray, or all of them."""
        return None if self.pass_.size == "piece" else self.pass_.pieces

    def is_one_load(self, pieces: int) -> bool:
        """Whether so many pieces go on one load."""
        return self.most_a_load is None or pieces <= self.most_a_load

    def on_a_load(self, pieces: int) -> int:
        """How many of so many pieces go on the next load."""
        return pieces if self.most_a_load is None else min(pieces, self.most_a_load)

    def loads_of(self, pieces: int) -> int:
        """How many loads so many pieces make, filled one after another."""
        return 1 if self.most_a_load is None else -(-pieces // self.most_a_load)

    @property
    def has_machine(self) -> bool:
        return bool(self.pass_.machine)


@dataclass(frozen=True)
class Route:
    """The steps of a product, in order. ``END`` follows the last."""

    product: Product

    @cached_property
    def steps(self) -> tuple[Step, ...]:
        found: list[Step] = []
        for operation in self.product.operations:
            several = len(operation.passes) > 1
            for number, pass_ in enumerate(operation.passes, 1):
                key = f"{operation.key}:{pass_.key}" if several else operation.key
                found.append(Step(key, len(found), operation, pass_, number == len(operation.passes)))
        return tuple(found)

    @cached_property
    def by_key(self) -> dict[str, Step]:
        return {step.key: step for step in self.steps}

    def step(self, key: str) -> Step | None:
        return self.by_key.get(key)

    def step_name(self, key: str) -> str:
        """The name of a step; its key where the route has lost it."""
        step = self.by_key.get(key)
        return step.name if step else key

    def after(self, key: str) -> str:
        """The key of the step after ``key``; ``''`` where pieces are good, and where the route has lost the step."""
        step = self.by_key.get(key)
        index = len(self.steps) if step is None else step.index + 1
        return self.steps[index].key if index < len(self.steps) else ""

    def before(self, key: str) -> str:
        """The key of the step before ``key``; ``''`` where there is none, and where the route has no such step."""
        step = self.by_key.get(key)
        return self.steps[step.index - 1].key if step is not None and step.index else ""

    @cached_property
    def personal_from(self) -> int | None:
        """The index of the step at which pieces become personal, if they do."""
        return next((step.index for step in self.steps if step.operation.personal), None)
