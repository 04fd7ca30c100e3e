"""Screws, inserts and magnets, and where an operation drives or sets them. Sizes are the maker's, and the shop may change them."""

from dataclasses import dataclass
from typing import Annotated, Literal

from runboard.shop.record import Key, Length, Name, Of


@dataclass(frozen=True)
class Screw:
    """A wood screw. A diameter left open follows from the gauge by ASME B18.6.1; other open sizes by what is usual."""

    key: Key
    name: Name
    length: Annotated[Length, Of("From what lies on the surface to the point.", least=1)]
    gauge: Annotated[int | None, Of("Number 0 to 24; none for a metric screw.", most=24)] = None
    diameter: Annotated[Length | None, Of("Outside the thread.", least=0.5)] = None
    root: Annotated[Length | None, Of("At the bottom of the thread.", least=0.3)] = None
    thread: Annotated[Length | None, Of("How much of its length has thread.", least=1)] = None
    head: Literal["countersunk", "round"] = "countersunk"
    head_height: Annotated[Length | None, Of("Of a countersunk head, what goes into the wood.")] = None
    pilot_hard: Annotated[Length | None, Of("The hole for it in hardwood.", least=0.3)] = None
    pilot_soft: Annotated[Length | None, Of("The hole for it in softwood.", least=0.3)] = None
    source: Annotated[str, Of("Whose figures these are.", most=200)] = ""


@dataclass(frozen=True)
class Insert:
    """A threaded insert or a magnet, set into a hole."""

    key: Key
    name: Name
    diameter: Annotated[Length, Of("Outside.", least=0.5)]
    length: Annotated[Length, Of("How deep it is.", least=0.2)]
    what: Literal["insert", "magnet"] = "insert"
    hole: Annotated[Length | None, Of("The hole that its maker asks for.", least=0.3)] = None
    depth: Annotated[Length | None, Of("How deep its maker wants the hole.", least=0.2)] = None
    source: Annotated[str, Of("Whose figures these are.", most=200)] = ""


@dataclass(frozen=True)
class Fastening:
    """Where an operation drives a screw: through ``through`` mm of what it holds, into ``into`` mm of what holds it. Its head lies
    ``washer`` above the surface, or ``sunk`` below it."""

    screw: Annotated[str, Of(refers="screw")]
    through: Annotated[Length, Of("Of what is fastened, under the head.")] = 0.0
    into: Annotated[Length, Of("Of what it goes into.", least=0.1)] = 10.0
    margin: Annotated[Length, Of("What must stay between its point and the far face.")] = 3.0
    washer: Annotated[Length, Of("What lies between head and surface.")] = 0.0
    sunk: Annotated[Length, Of("How far its head lies below the surface, under a plug.")] = 0.0
