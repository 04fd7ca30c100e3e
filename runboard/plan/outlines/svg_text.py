"""Letters that were not turned into outlines: how much room they take up, roughly. Which letters they are drawn with is known
to no file that stands alone."""

from collections.abc import Iterator

from runboard.plan.outlines.svg_place import length_px, numbers
from runboard.plan.outlines.svg_style import Paint, StyleSheet
from runboard.plan.outlines.svg_tree import Node

# How wide a letter is, as a share of its type's size. From memory: usual letters are half as wide as high, capitals wider.
LETTER_WIDE = 0.6
USUAL_SIZE = 16.0

Run = tuple[float, float, float, float]


def runs_of(node: Node, styles: StyleSheet, paint: Paint, whole: tuple[float, float]) -> Iterator[Run]:
    """(left, baseline, width, size) of each line of a text, in its own units. A part that says where it begins begins a line."""
    yield from _Runs(styles, whole).of(node, paint, (0.0, 0.0))


class _Runs:
    def __init__(self, styles: StyleSheet, whole: tuple[float, float]) -> None:
        self.styles, self.whole = styles, whole

    def of(self, node: Node, paint: Paint, at: tuple[float, float]) -> Iterator[Run]:
        if paint.is_out or paint.is_hidden or not (paint.fills or paint.strokes):
            return
        at = self._moved(node, at)
        size = length_px(paint.said.get("font-size"), USUAL_SIZE, USUAL_SIZE)
        text = node.text
        for child in node.children:
            if child.tag in ("tspan", "a", "textPath"):
                if {"x", "y", "dy"} & child.attributes.keys():
                    yield from self.of(child, self.styles.paint(child, paint), at)
                else:
                    text += child.text
            text += child.after
        letters = len(" ".join(text.split()))
        if letters and size > 0:
            wide = letters * size * LETTER_WIDE
            shift = {"middle": wide / 2, "end": wide}.get(paint.said.get("text-anchor", ""), 0.0)
            yield at[0] - shift, at[1], wide, size

    def _moved(self, node: Node, at: tuple[float, float]) -> tuple[float, float]:
        found = []
        for name, shift, before, whole in (("x", "dx", at[0], self.whole[0]), ("y", "dy", at[1], self.whole[1])):
            first = (node.attributes.get(name, "").replace(",", " ").split() or [""])[0]
            moved = (numbers(node.attributes.get(shift, ""), 1) or [0.0])[0]
            found.append(length_px(first, whole, before) + moved)
        return found[0], found[1]
