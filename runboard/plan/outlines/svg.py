"""An SVG drawing read as outlines in millimetres (W3C SVG 1.1 and 2): what lasers are given. Nothing it names is fetched, and
what is not understood is named with its line."""

import math
import re
from collections.abc import Mapping

import numpy as np

from runboard.plan.outlines.outline import Outline, Shapes, Unclear
from runboard.plan.outlines.svg_lines import TooManyPoints, data_of, lines_of
from runboard.plan.outlines.svg_place import MM_A_PX, Place, length_px, numbers, transform, unit_of, viewport
from runboard.plan.outlines.svg_style import START, Paint, StyleSheet
from runboard.plan.outlines.svg_text import runs_of
from runboard.plan.outlines.svg_tree import MOST_ELEMENTS, Node, read_tree
from runboard.run.refusal import Refused

DEVIATION = 0.02  # mm: less than a beam is wide
MOST_POINTS = 500_000
MOST_NUMBERS = 250_000  # in all path data together
MOST_WITHIN = 150  # elements in elements, those that are used counted anew
LARGEST = 100_000.0  # mm, of a drawing's side
_SHAPES = ("path", "rect", "circle", "ellipse", "line", "polyline", "polygon")
_GROUPS = ("svg", "g", "a", "symbol", "switch")
_NAMED = {"image": "image", "foreignObject": "foreign", "script": "script", "animate": "moving", "animateTransform": "moving",
          "animateMotion": "moving", "set": "moving"}  # fmt: skip
_A_NUMBER = re.compile(r"\d(?:[\d.eE]*)")


def read_svg(content: bytes, deviation: float = DEVIATION) -> Shapes:
    """The outlines of an SVG file, curves at most ``deviation`` mm off.

    Refuses (``Refused('drawing-…', line=…)``) what is no SVG, too large, or of no size. Letters that are not turned into outlines
    come as the box that they take up, roughly, and are named; so is all that changes how a drawing looks and is not followed.
    """
    return _Reading(read_tree(content), deviation).shapes()


class _Reading:
    def __init__(self, root: Node, deviation: float) -> None:
        self.root, self.deviation = root, deviation
        self.unclear: dict[str, tuple[int, int]] = {}
        self.outlines: list[Outline] = []
        self.points = self.visited = self.parts = self.numbers = 0
        self.by_id: Mapping[str, Node] = {
            node.attributes["id"]: node for node in reversed([*root]) if "id" in node.attributes
        }
        self.styles = StyleSheet(root, self.named)
        self.using: list[Node] = []
        self.whole = (0.0, 0.0)

    def named(self, code: str, line: int) -> None:
        first, count = self.unclear.get(code, (line, 0))
        self.unclear[code] = min(first, line), count + 1

    def shapes(self) -> Shapes:
        width, height, place = self._root()
        for node in self.root:
            if node.tag == "script":
                self.named("script", node.line)
        self._within(self.root, place, self.styles.paint(self.root, START), "", 0)
        found = [Unclear(code, line, {"count": count}) for code, (line, count) in self.unclear.items()]
        return Shapes(self.outlines, width, height, sorted(found, key=lambda one: (one.line, one.code)))

    def _root(self) -> tuple[float, float, Place]:
        """(width, height in mm, what takes the drawing's units there)."""
        said, line = self.root.attributes, self.root.line
        box = self._box(self.root)
        units = unit_of(said.get("width")), unit_of(said.get("height"))
        is_said = all(unit not in (None, "%") for unit in units)
        if not is_said:
            self.named("no-size", line)
        elif "" in units:
            self.named("no-unit", line)
        wide, high = box[2:] if box else (0.0, 0.0)
        width = length_px(said.get("width") if is_said else None, wide, wide)
        height = length_px(said.get("height") if is_said else None, high, high)
        if not box and not is_said:
            width, height = 300.0, 150.0  # what a page takes (CSS 2.2, 10.3.2)
        if not (0 < width * MM_A_PX <= LARGEST and 0 < height * MM_A_PX <= LARGEST):
            raise Refused("drawing-no-size", line=line)
        inner = viewport(box, width, height, said.get("preserveAspectRatio", "")) if box else Place()
        self.whole = (box[2], box[3]) if box else (width, height)
        return width * MM_A_PX, height * MM_A_PX, Place(a=MM_A_PX, d=MM_A_PX).then(inner)

    def _box(self, node: Node) -> list[float] | None:
        text = node.attributes.get("viewBox")
        if text is None:
            return None
        said = numbers(text, 5)
        if re.search(r"nan|inf", text, re.IGNORECASE) or len(said) != 4 or not all(map(math.isfinite, said)):
            raise Refused("drawing-viewbox", line=node.line)
        if said[2] <= 0 or said[3] <= 0:
            raise Refused("drawing-no-size", line=node.line)
        return said

    # through the tree

    def _within(self, node: Node, place: Place, paint: Paint, group: str, depth: int) -> None:
        if depth > MOST_WITHIN:
            raise Refused("drawing-too-deep", line=node.line)
        children = node.children
        if node.tag == "switch":
            children = [one for one in children if one.tag in (*_SHAPES, *_GROUPS, "use", "text")][:1]
        for child in children:
            self._visit(child, place, paint, group, depth)

    def _visit(self, node: Node, place: Place, above: Paint, group: str, depth: int) -> None:
        self.visited += 1
        if self.visited > MOST_ELEMENTS:
            raise Refused("drawing-too-many", most=MOST_ELEMENTS)
        if node.tag in _NAMED:
            if node.tag != "script":
                self.named(_NAMED[node.tag], node.line)
            return
        if node.tag not in (*_SHAPES, *_GROUPS, "use", "text") or node.tag == "symbol":
            return
        paint = self.styles.paint(node, above)
        if paint.is_out:
            return
        own = transform(node.attributes.get("transform", ""))
        if own is None:
            self.named("transform", node.line)
        place = place.then(own or Place())
        group = _path(group, node)
        if node.tag in _SHAPES:
            self._shape(node, place, paint, group)
        elif node.tag == "text":
            self._text(node, place, paint, group)
        elif node.tag == "use":
            self._use(node, place, paint, group, depth)
        else:
            self._within(node, self._nested(node, place), paint, group, depth + 1)

    def _nested(self, node: Node, place: Place, sizes: Mapping[str, str] | None = None) -> Place:
        """Where a viewport within another begins."""
        if node.tag not in ("svg", "symbol"):
            return place
        said = {**node.attributes, **(sizes or {})}
        wide, high = self.whole
        width, height = length_px(said.get("width"), wide, wide), length_px(said.get("height"), high, high)
        box = self._box(node)
        if node.tag == "svg":
            place = place.then(Place(e=length_px(said.get("x"), wide), f=length_px(said.get("y"), high)))
        return place.then(viewport(box, width, height, said.get("preserveAspectRatio", ""))) if box else place

    def _use(self, node: Node, place: Place, paint: Paint, group: str, depth: int) -> None:
        href = node.attributes.get("href", "")
        target = self.by_id.get(href.removeprefix("#")) if href.startswith("#") else None
        if target is None or target in self.using:
            self.named("use", node.line)
            return
        x, y = length_px(node.attributes.get("x"), self.whole[0]), length_px(node.attributes.get("y"), self.whole[1])
        place = place.then(Place(e=x, f=y))
        self.using.append(target)
        if depth > MOST_WITHIN or len(self.using) > MOST_WITHIN:
            raise Refused("drawing-too-deep", line=node.line)
        if target.tag == "symbol":
            inner = self.styles.paint(target, paint)
            sizes = {name: node.attributes[name] for name in ("width", "height") if name in node.attributes}
            self._within(target, self._nested(target, place, sizes), inner, group, depth + 1)
        else:
            self._visit(target, place, paint, group, depth + 1)
        self.using.pop()

    # what is drawn

    def _shape(self, node: Node, place: Place, paint: Paint, group: str) -> None:
        if paint.is_hidden or not (paint.fills or paint.strokes):
            return
        data = data_of(node, self.whole)
        if not data.strip() or data.strip() == "none":
            return
        self.numbers += sum(1 for _ in _A_NUMBER.finditer(data))
        if self.numbers > MOST_NUMBERS:
            raise Refused("drawing-too-many-points", line=node.line)
        if paint.strokes and paint.said.get("stroke-dasharray", "none") != "none":
            self.named("dashes", node.line)
        width = length_px(paint.said.get("stroke-width"), self.whole[0], 1.0) * place.mean if paint.strokes else 0.0
        self.parts += 1
        try:
            for points, closed in lines_of(data, place, self.deviation, MOST_POINTS - self.points):
                self._add(Outline(points, closed, paint.fills, group, self.parts, paint.even_odd, width), node)
        except TooManyPoints:
            raise Refused("drawing-too-many-points", line=node.line) from None
        except (ValueError, ArithmeticError, IndexError, TypeError):
            self.named("path", node.line)

    def _add(self, outline: Outline, node: Node) -> None:
        self.points += len(outline.points)
        if self.points > MOST_POINTS:
            raise Refused("drawing-too-many-points", line=node.line)
        if not (
            np.isfinite(outline.points).all()
            and np.abs(outline.points).max() <= LARGEST
            and math.isfinite(outline.stroke)
        ):
            self.named("far", node.line)
            return
        self.outlines.append(outline)

    def _text(self, node: Node, place: Place, paint: Paint, group: str) -> None:
        for x, y, wide, high in runs_of(node, self.styles, paint, self.whole):
            self.named("text", node.line)
            corners = [place.then(Place(e=at, f=down))[4:] for at, down in
                       ((x, y - 0.8 * high), (x + wide, y - 0.8 * high), (x + wide, y + 0.2 * high), (x, y + 0.2 * high))]  # fmt: skip
            self.parts += 1
            self._add(Outline(np.array(corners), True, True, group, self.parts), node)


def _path(group: str, node: Node) -> str:
    """The names of the groups that something lies in, the outermost first: 'mark/numbers'."""
    name = node.attributes.get("id", "") if node.tag == "g" else ""
    return "/".join(part for part in (group, name) if part)[:200]
