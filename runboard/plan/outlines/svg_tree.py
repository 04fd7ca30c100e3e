"""The elements of an SVG file, each with its line: read by expat alone, which fetches nothing, in bounded time and memory."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from xml.parsers import expat
from xml.parsers.expat import errors

from runboard.run.refusal import Refused

SVG = "http://www.w3.org/2000/svg"
XLINK = "http://www.w3.org/1999/xlink"
_LINKS = "href", " ".join((XLINK, "href"))

MOST_BYTES = 10_000_000
MOST_DEPTH = 100
MOST_ELEMENTS = 40_000
_PACKED = b"\x1f\x8b"
# What expat calls what breaks off, or ends otherwise than it began.
_NOT_CLOSED = (
    errors.XML_ERROR_NO_ELEMENTS,
    errors.XML_ERROR_UNCLOSED_TOKEN,
    errors.XML_ERROR_PARTIAL_CHAR,
    errors.XML_ERROR_TAG_MISMATCH,
    errors.XML_ERROR_UNCLOSED_CDATA_SECTION,
)


@dataclass(eq=False)
class Node:
    """One element of SVG's own names: ``attributes`` are those of no namespace, and ``href`` of either. ``text`` is what
    stands right within it; ``after`` what stands behind it, within the one around it."""

    tag: str
    attributes: Mapping[str, str]
    line: int
    children: list["Node"] = field(default_factory=list)
    text: str = ""
    after: str = ""

    def __iter__(self) -> Iterator["Node"]:
        """Itself and all within, from the first to the last."""
        waiting = [self]
        while waiting:
            node = waiting.pop()
            yield node
            waiting += reversed(node.children)


def read_tree(content: bytes) -> Node:
    """The root of an SVG file. Refuses what is too large or no XML, another kind of file, and a document type that declares
    anything of its own: an entity could be one file of this machine, or billions of letters."""
    if len(content) > MOST_BYTES:
        raise Refused("drawing-too-large", most=MOST_BYTES // 1_000_000)
    if not content.strip():
        raise Refused("drawing-empty")
    if content.startswith(_PACKED):
        raise Refused("drawing-packed")
    return _Reader().read(content)


class _Reader:
    def __init__(self) -> None:
        self.parser = expat.ParserCreate(namespace_separator=" ")
        self.parser.buffer_text = True
        self.parser.StartDoctypeDeclHandler = self._doctype
        self.parser.EntityDeclHandler = self._entity
        self.parser.StartElementHandler = self._start
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = self._text
        self.root: Node | None = None
        self.open: list[Node | None] = []  # None: of another language, and all within it
        self.found = 0

    def read(self, content: bytes) -> Node:
        try:
            self.parser.Parse(content, True)
        except expat.ExpatError as wrong:
            raise self._refused(wrong) from wrong
        except (UnicodeError, ValueError, LookupError) as wrong:
            raise Refused("drawing-not-readable", line=self._line) from wrong
        if self.root is None:
            raise Refused("drawing-not-svg", line=1)
        return self.root

    def _refused(self, wrong: expat.ExpatError) -> Refused:
        """'drawing-none' where not even its first element could be read."""
        if not self.found:
            return Refused("drawing-none")
        if errors.messages[wrong.code] in _NOT_CLOSED:
            return Refused("drawing-not-closed", line=wrong.lineno)
        return Refused("drawing-not-readable", line=wrong.lineno)

    @property
    def _line(self) -> int:
        return self.parser.CurrentLineNumber

    def _doctype(self, name: str, system: str | None, public: str | None, has_internal: bool) -> None:
        if has_internal:
            raise Refused("drawing-entities", line=self._line)

    def _entity(self, *_said: object) -> None:
        raise Refused("drawing-entities", line=self._line)

    def _start(self, name: str, said: dict[str, str]) -> None:
        space, _, tag = name.rpartition(" ")
        if self.root is None and tag != "svg":
            raise Refused("drawing-not-svg", line=self._line)
        self.found += 1
        if self.found > MOST_ELEMENTS:
            raise Refused("drawing-too-many", most=MOST_ELEMENTS)
        if len(self.open) >= MOST_DEPTH:
            raise Refused("drawing-too-deep", line=self._line)
        if space not in ("", SVG) or (self.open and self.open[-1] is None):
            self.open.append(None)
            return
        attributes = {key: value for key, value in said.items() if " " not in key}
        attributes.update(("href", said[key]) for key in reversed(_LINKS) if key in said)
        node = Node(tag, attributes, self._line)
        above = self.open[-1] if self.open else None
        if above is not None:
            above.children.append(node)
        if self.root is None:
            self.root = node
        self.open.append(node)

    def _end(self, _name: str) -> None:
        self.open.pop()

    def _text(self, text: str) -> None:
        node = self.open[-1] if self.open else None
        if node is None:
            return
        if node.children:
            node.children[-1].after += text
        else:
            node.text += text
