"""How the elements of an SVG file are painted: attributes, the ``style`` of each and simple rules of a style sheet (SVG 2,
chapter 6; CSS 2.2, 6.4)."""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import NamedTuple

from runboard.plan.outlines.svg_tree import Node

Named = Callable[[str, int], None]  # a code of what is unclear, and its line

_SIMPLE = re.compile(r"(\*|[A-Za-z][\w-]*)?((?:[.#][\w-]+)*)$")
_PART = re.compile(r"[.#][\w-]+")
_WHITE = re.compile(
    r"white$|#fff(?:fff)?$|rgb\(\s*255\s*,\s*255\s*,\s*255\s*\)$|rgb\(\s*100%\s*,\s*100%\s*,\s*100%\s*\)$"
)
MOST_CLASSES = 20
MOST_SHEET = 300_000  # letters of one style sheet
INHERITED = ("fill", "stroke", "stroke-width", "fill-rule", "fill-opacity", "stroke-opacity", "visibility", "font-size",
             "text-anchor", "stroke-dasharray", "color")  # fmt: skip
OWN = ("display", "opacity", "clip-path", "mask", "filter", "marker-start", "marker-mid", "marker-end")


class Selector(NamedTuple):
    """One simple selector: all that it names must be an element's. The weightier wins, of two alike the later."""

    tag: str
    classes: frozenset[str]
    ids: frozenset[str]

    @property
    def weight(self) -> tuple[int, int, int]:
        return len(self.ids), len(self.classes), int(bool(self.tag))

    @property
    def first(self) -> str:
        """One of its names, by which it is found."""
        return next((f"#{one}" for one in self.ids), next((f".{one}" for one in self.classes), self.tag))

    def fits(self, tag: str, classes: frozenset[str], key: str) -> bool:
        return self.tag in ("", tag) and self.classes <= classes and self.ids <= {key}


@dataclass(frozen=True)
class Paint:
    """What holds at one element: ``said`` are the inherited properties; whether it is seen at all, marked inside, along its
    line."""

    said: Mapping[str, str]
    is_out: bool = False
    is_hidden: bool = False
    fills: bool = True
    strokes: bool = False
    even_odd: bool = False


START = Paint({})


class StyleSheet:
    """All rules of a file, and what is painted where."""

    def __init__(self, root: Node, named: Named) -> None:
        self.named = named
        self.rules: dict[Selector, tuple[int, dict[str, str]]] = {}
        for node in root:
            for selector, said in self._rules(node) if node.tag == "style" else ():
                self.rules[selector] = (len(self.rules), {**self.rules.get(selector, (0, {}))[1], **said})
        self.by_first: dict[str, list[Selector]] = {}
        for selector in self.rules:
            self.by_first.setdefault(selector.first, []).append(selector)

    def _fitting(self, node: Node) -> list[dict[str, str]]:
        """What rules say of an element, the weightiest last."""
        if not self.rules:
            return []
        key, classes = node.attributes.get("id", ""), frozenset(node.attributes.get("class", "").split()[:MOST_CLASSES])
        names = ("", node.tag, f"#{key}", *(f".{one}" for one in classes))
        found = [one for name in names for one in self.by_first.get(name, ()) if one.fits(node.tag, classes, key)]
        return [self.rules[one][1] for one in sorted(found, key=lambda one: (one.weight, self.rules[one][0]))]

    def _rules(self, node: Node) -> Iterator[tuple[Selector, dict[str, str]]]:
        text = _without_comments(node.text[:MOST_SHEET])
        if "@" in text or len(node.text) > MOST_SHEET:
            self.named("style", node.line)
        for rule in text.split("}"):
            heads, brace, body = rule.partition("{")
            for head in heads.split(",") if brace else ():
                simple = _SIMPLE.match(head.strip())
                if simple is None or not head.strip():
                    self.named("style", node.line)
                    continue
                parts = _PART.findall(simple[2])
                tag = "" if simple[1] in (None, "*") else simple[1]
                classes = frozenset(part[1:] for part in parts if part[0] == ".")
                ids = frozenset(part[1:] for part in parts if part[0] == "#")
                yield Selector(tag, classes, ids), _declared(body)

    def paint(self, node: Node, above: Paint) -> Paint:
        """What holds at an element within another."""
        own = {name: value for name, value in node.attributes.items() if name in INHERITED or name in OWN}
        for rule in self._fitting(node):
            own |= rule
        own |= _declared(node.attributes.get("style", ""))
        said = {**above.said, **{name: own[name] for name in INHERITED if own.get(name, "inherit") != "inherit"}}
        is_out = above.is_out or own.get("display") == "none" or _is_nothing(own.get("opacity", "1"))
        found = Paint(said, is_out, said.get("visibility") in ("hidden", "collapse"))
        if not is_out:
            self._unusual(node, own)
        return replace(
            found,
            fills=self._marks(said.get("fill", "black"), said.get("fill-opacity", "1"), node),
            strokes=self._marks(said.get("stroke", "none"), said.get("stroke-opacity", "1"), node),
            even_odd=said.get("fill-rule") == "evenodd",
        )

    def _unusual(self, node: Node, own: Mapping[str, str]) -> None:
        for name, code in (("clip-path", "clip"), ("mask", "mask"), ("filter", "filter"), ("marker-start", "marker"),
                           ("marker-mid", "marker"), ("marker-end", "marker")):  # fmt: skip
            if own.get(name, "none") != "none":
                self.named(code, node.line)

    def _marks(self, paint: str, opacity: str, node: Node) -> bool:
        """Whether a paint burns: none and what is seen through do not, nor does white, which is named."""
        paint = paint.strip().lower()
        if paint in ("none", "transparent") or _is_nothing(opacity):
            return False
        is_shape = node.tag not in ("svg", "g", "a", "switch", "defs", "symbol", "use")
        if _WHITE.match(paint):
            if is_shape:
                self.named("white", node.line)
            return False
        if paint.startswith("url(") and is_shape:
            self.named("pattern", node.line)
        return True


def _without_comments(text: str) -> str:
    kept, at = [], 0
    while (start := text.find("/*", at)) >= 0:
        kept.append(text[at:start])
        end = text.find("*/", start + 2)
        if end < 0:
            return " ".join(kept)
        at = end + 2
    return " ".join((*kept, text[at:])).replace("<!--", " ").replace("-->", " ")


def _declared(text: str) -> dict[str, str]:
    parts = (part.partition(":") for part in text.split(";"))
    return {
        name.strip().lower(): value.replace("!important", "").strip()
        for name, _, value in parts
        if name.strip().lower() in INHERITED or name.strip().lower() in OWN
    }


def _is_nothing(opacity: str) -> bool:
    try:
        return float(opacity.rstrip("% ")) <= 0
    except ValueError:
        return False
