"""What can be asked about a machine's program."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Annotated

from runboard.plan.program.factor import factor_of
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import ShopState
from runboard.shop.book import Book
from runboard.shop.record import MOST_NUMBER, Length, Of


@dataclass(frozen=True)
class Program:
    """A program at a station, for a step of a product. What is left open of how the machine moves is the station's; ``factor`` is
    what the station's measured runs taught, of so many times and programs."""

    station: Annotated[str | None, Of(refers="station")] = None
    product: Annotated[str | None, Of(refers="product")] = None
    step: Annotated[str, Of(most=81)] = ""
    loads: Annotated[int | None, Of("Loads a run.", least=1)] = None
    rapid: Annotated[float | None, Of("mm/min.", least=1)] = None
    accel: Annotated[float | None, Of("mm/s².", least=0.1)] = None
    corner: Annotated[Length | None, Of("By how much its path rounds a corner.", most=10)] = None
    stock_length: Annotated[Length | None, Of("Along x.", least=1)] = None
    stock_width: Annotated[Length | None, Of("Along y.", least=1)] = None
    stock_thickness: Annotated[Length | None, Of("Along z.", least=0.1)] = None
    factor: Annotated[float, Of(least=0.01, most=MOST_NUMBER)] = 1.0
    factor_times: int = 0
    factor_programs: int = 0


def begin(book: Book, keys: Mapping[str, str]) -> Program:
    """For the step that is named, else the product's first at a machine that cuts; at its station, else at the shop's only one."""
    product = book.product(keys.get("product", ""))
    steps = Route(product).steps if product else ()
    cutting = {station.key for station in book.stations if station.machine and station.cuts}
    meant = next((step for step in steps if step.key == keys.get("step")), None) or _only(steps, cutting)
    station = keys.get("station") or (meant.operation.station if meant else "")
    if book.station(station) is None:
        station = next(iter(cutting)) if len(cutting) == 1 else ""
    return Program(station or None, product.key if product else None, meant.key if meant else "")


def _only(steps: tuple[Step, ...], cutting: set[str]) -> Step | None:
    """The one step at such a station; None where there are several, which its page then offers all."""
    found = [step for step in steps if step.operation.station in cutting]
    return found[0] if len(found) == 1 else None


def learned(book: Book, state: ShopState, question: Program) -> Program:
    """The question with the factor of its station."""
    found = factor_of(state.runs.values(), question.station) if question.station else None
    if found is None or not found.times:
        return replace(question, factor=1.0, factor_times=0, factor_programs=0)
    return replace(question, factor=found.value, factor_times=found.times, factor_programs=found.programs)
