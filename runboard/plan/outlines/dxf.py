"""A DXF drawing read as outlines in millimetres (the format's public reference), by the package ezdxf: lines, arcs, circles, ellipses,
splines, polylines, and blocks put in. What is drawn is moved to begin at 0, and turned over: y runs downwards, as in SVG."""

import io
import math
from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Any

import numpy as np

from runboard.plan.outlines.joined import joined
from runboard.plan.outlines.outline import Outline, Points, Shapes, Unclear
from runboard.run.refusal import Refused

DEVIATION = 0.02  # mm
MOST_BYTES = 20_000_000
MOST_ENTITIES, MOST_POINTS = 20_000, 1_000_000
MOST_WITHIN = 20  # blocks in blocks
LARGEST = 100_000.0  # mm, of where something lies
_READ = frozenset({"LINE", "LWPOLYLINE", "POLYLINE", "ARC", "CIRCLE", "ELLIPSE", "SPLINE"})
# What $INSUNITS calls inches, feet, mm, cm, m, thousandths of an inch, yards, micrometres and decimetres, in mm.
_UNITS = {1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0, 9: 0.0254, 10: 914.4, 13: 0.001, 14: 100.0}


def read_dxf(content: bytes, deviation: float = DEVIATION) -> Shapes:
    """The outlines of a DXF file, text or binary, curves at most ``deviation`` mm off; lines that meet are joined.

    Refuses (``Refused('dxf …')``) what is no DXF, too large, or shows nothing that is read. What is left out is named.
    """
    document = _document(content)
    scale, unclear = _scale(document)
    reading = _Reading(document, scale, deviation)
    lines = joined([line for entity in reading.entities(document.modelspace(), 0) for line in reading.lines(entity)])
    if not lines:
        raise Refused("dxf nothing drawn")
    low, high = _corners(line.points for line in lines)
    outlines = [
        Outline(
            np.column_stack((line.points[:, 0] - low[0], high[1] - line.points[:, 1])), line.closed, group=line.group
        )
        for line in lines
    ]
    return Shapes(outlines, float(high[0] - low[0]), float(high[1] - low[1]), [*unclear, *reading.unclear])


def _document(content: bytes) -> Any:
    if not content.strip():
        raise Refused("dxf empty")
    if len(content) > MOST_BYTES:
        raise Refused("dxf too large", most=MOST_BYTES // 1_000_000)
    from ezdxf import recover

    try:
        return recover.read(io.BytesIO(content))[0]
    except Exception:  # noqa: BLE001 - whatever a reader of a stranger's file meets, the file is not readable
        raise Refused("dxf not readable") from None


def _scale(document: Any) -> tuple[float, list[Unclear]]:
    """(mm a unit of the drawing, what is doubtful of it)."""
    factor = _UNITS.get(document.header.get("$INSUNITS", 0))
    return (factor, []) if factor else (1.0, [Unclear("dxf-no-unit")])


class _Reading:
    def __init__(self, document: Any, scale: float, deviation: float) -> None:
        self._scale, self._deviation = scale, deviation / scale
        self._hidden = {layer.dxf.name.casefold() for layer in document.layers if layer.is_off() or layer.is_frozen()}
        self._seen = self._points = 0
        self._left: Counter[str] = Counter()

    @property
    def unclear(self) -> Iterator[Unclear]:
        """What was left out, by what it is."""
        return (
            Unclear(
                f"dxf-{what}" if what in ("hidden", "far", "deep") else "dxf-other", 0, {"what": what, "count": count}
            )
            for what, count in sorted(self._left.items())
        )

    def entities(self, some: Iterable[Any], depth: int) -> Iterator[Any]:
        """What is drawn, blocks taken apart. Refuses more than can be reckoned with."""
        for entity in some:
            self._seen += 1
            if self._seen > MOST_ENTITIES:
                raise Refused("dxf too much")
            kind = entity.dxftype()
            if str(entity.dxf.get("layer", "0")).casefold() in self._hidden:
                self._left["hidden"] += 1
            elif kind == "INSERT" and depth >= MOST_WITHIN:
                self._left["deep"] += 1
            elif kind == "INSERT":
                yield from self._put_in(entity, depth)
            elif kind in _READ:
                yield entity
            else:
                self._left[kind] += 1

    def _put_in(self, entity: Any, depth: int) -> Iterator[Any]:
        copies = [entity]
        if entity.mcount > 1:
            if entity.mcount > MOST_ENTITIES:
                raise Refused("dxf too much")
            copies = list(entity.multi_insert())
        for copy in copies:
            try:
                within = list(copy.virtual_entities())
            except Exception:  # noqa: BLE001 - a block that cannot be put in as it says is named
                self._left["INSERT"] += 1
                continue
            yield from self.entities(within, depth + 1)

    def lines(self, entity: Any) -> Iterator[Outline]:
        """The lines of one entity, in mm, y upwards."""
        from ezdxf.path import make_path

        try:
            path = make_path(entity)
            parts = list(path.sub_paths()) if path.has_sub_paths else [path]
        except Exception:  # noqa: BLE001 - an entity whose own numbers make no line is named
            self._left[entity.dxftype()] += 1
            return
        for part in parts:
            if not self._is_near(part.control_vertices()):
                self._left["far"] += 1
                continue
            points = self._flat(part)
            if len(points) > 1:
                ends = math.dist(points[0], points[-1])
                yield Outline(points, ends <= self._deviation * self._scale, group=str(entity.dxf.get("layer", "")))

    def _is_near(self, vertices: Iterable[Any]) -> bool:
        return all(abs(each) * self._scale <= LARGEST for vertex in vertices for each in (vertex.x, vertex.y))

    def _flat(self, part: Any) -> Points:
        points = np.array([(at.x, at.y) for at in part.flattening(self._deviation, 4)], dtype=np.float64).reshape(-1, 2)
        self._points += len(points)
        if self._points > MOST_POINTS:
            raise Refused("dxf too much")
        return points * self._scale


def _corners(some: Iterable[Points]) -> tuple[Points, Points]:
    ends = [(points.min(axis=0), points.max(axis=0)) for points in some]
    return np.min([low for low, _ in ends], axis=0), np.max([high for _, high in ends], axis=0)
