"""One file of many: what a screen needs at once, what it fetches later, and its styles.

A phone fetches three files where there are sixty small ones, without comments. They are made of ``static/`` as it stands;
nobody builds anything. Modules are composed and not copied: each is run once, whoever asks for it, as when a browser
loads them one by one. For that they are written regularly, and what is written otherwise is refused:

- an import stands on a line of its own: ``import { some, one as other } from "../room/file.js";`` or ``import * as all from …``;
- an export is a ``const``, a ``function`` or a ``class`` where it is declared, or a list on a line of its own;
- nothing leads back to who imports it, and nothing but a screen's own script waits at its top (``await``).
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from posixpath import dirname, join, normpath

_IMPORT = re.compile(r'import (?:\{ ([^}]+) \}|\* as (\w+)) from "(\.[^"]+)";')
_LATER = re.compile(r'\bimport\("(\.[^"]+)"\)')
_DECLARED = re.compile(r"export ((?:async )?(?:const|function|class) (\w+)\b.*)", re.DOTALL)
_LISTED = re.compile(r'export \{ ([^}]+) \}(?: from "(\.[^"]+)")?;')
_VENDORED = re.compile(r"export\{([^}]*)\};?\s*\Z")
_COMMENT = re.compile(r"\s*(?://.*|/\*\*.*\*/)\s*")
_IN_A_STYLE = re.compile(r"/\*.*?\*/", re.DOTALL)

# What a screen's own script begins with: modules by name, and the way to those that come later.
_AT_ONCE = """const $modules = {};
let $more;
async function $later(name) {
  $more ??= import("./%s").then((found) => found.put($modules, $later)).catch((error) => { $more = undefined; throw error; });
  if (!$modules[name]) await $more;
  return $modules[name];
}
export { $modules as modules, $later as later };
"""


class Irregular(ValueError):
    """A script or a style that cannot be composed as it is written."""


@dataclass(frozen=True)
class Module:
    """A script as it stands in the composed file: ``imports`` names of each module, ``later`` modules, what it ``exports``."""

    name: str
    body: str
    imports: tuple[tuple[str, tuple[str, ...]], ...]
    later: tuple[str, ...]
    exports: tuple[tuple[str, str], ...]

    def text(self) -> str:
        """Run where it stands, its exports kept under its name."""
        given = ", ".join(f"{name}: {what}" for name, what in self.exports)
        return f'$modules["{self.name}"] = (() => {{\n{self.body}\nreturn {{ {given} }};\n}})();\n'


def at_once(static: Path, script: str, later: str) -> tuple[str, list[str]]:
    """(text, names of what it is made of): the screen's script with all that it imports; the rest is in the file ``later``."""
    found = _with_imports(static, [script])
    whole = "".join(module.text() for module in found[:-1])
    return f"{_AT_ONCE % later}{whole}{{\n{found[-1].body}\n}}\n", [module.name for module in found]


def later(static: Path, script: str) -> tuple[str, list[str]]:
    """(text, names): all that the screen's script fetches later, and what only that needs."""
    first = _with_imports(static, [script])
    rest: dict[str, Module] = {}
    new = first
    while new:
        known = {module.name for module in first} | rest.keys()
        new = _with_imports(static, [name for module in new for name in module.later], known)
        rest |= {module.name: module for module in new}
    whole = "".join(module.text() for module in rest.values())
    return f"export function put($modules, $later) {{\n{whole}}}\n", [
        module.name for module in (*first, *rest.values())
    ]


def styles(static: Path, names: tuple[str, ...]) -> tuple[str, list[str]]:
    """(text, names): styles in their order."""
    texts = [_IN_A_STYLE.sub("", (static / name).read_text("utf-8")) for name in names]
    if wrong := [name for name, text in zip(names, texts, strict=True) if "url(" in text or "@import" in text]:
        raise Irregular(f"{wrong}: what a style names lies elsewhere for a composed one")
    return "".join(texts), list(names)


def _with_imports(static: Path, names: list[str], known: set[str] | None = None) -> list[Module]:
    """These and all that they import, each after what it imports, but those that are known."""
    found: dict[str, Module] = {}
    for name in names:
        _gather(static, name, found, known or set(), ())
    return list(found.values())


def _gather(static: Path, name: str, found: dict[str, Module], known: set[str], asked_by: tuple[str, ...]) -> None:
    if name in asked_by:
        raise Irregular(f"{name} leads back to itself")
    if name in found or name in known:
        return
    module = read(name, (static / name).read_text("utf-8"))
    for other, names in module.imports:
        _gather(static, other, found, known, (*asked_by, name))
        given = {one for one, _ in found[other].exports} if other in found else set(names)
        if missing := set(names) - given:
            raise Irregular(f"{name}: {other} has no {sorted(missing)}")
    found[name] = module


def read(name: str, text: str) -> Module:
    """One script, its imports and exports turned into what the composed file has instead."""
    if name.startswith("vendor/"):
        return _vendored(name, text)
    imports: list[tuple[str, tuple[str, ...]]] = []
    exports: list[tuple[str, str]] = []
    body = "\n".join(_lines(name, text, imports, exports))
    later = tuple(_beside(name, found) for found in _LATER.findall(body))
    body = _LATER.sub(lambda found: f'$later("{_beside(name, found[1])}")', body)
    return Module(name, body, tuple(imports), later, tuple(exports))


def _lines(
    name: str, text: str, imports: list[tuple[str, tuple[str, ...]]], exports: list[tuple[str, str]]
) -> Iterator[str]:
    in_a_text = False
    for line in text.split("\n"):
        if not in_a_text and _COMMENT.fullmatch(line):
            continue
        in_a_text ^= line.count("`") % 2 == 1
        if found := _IMPORT.fullmatch(line):
            yield _imported(_beside(name, found[3]), found[1], found[2], imports)
        elif found := _LISTED.fullmatch(line):
            exports += _listed(name, found[1], found[2], imports)
        elif found := _DECLARED.fullmatch(line):
            exports.append((found[2], found[2]))
            yield found[1]
        elif line.startswith(("import ", "import{", "export")):
            raise Irregular(f"{name}: {line}")
        else:
            yield line


def _imported(other: str, names: str | None, whole: str | None, imports: list[tuple[str, tuple[str, ...]]]) -> str:
    if whole:
        imports.append((other, ()))
        return f'const {whole} = $modules["{other}"];'
    pairs = _pairs(names or "")
    imports.append((other, tuple(one for one, _ in pairs)))
    named = ", ".join(one if one == mine else f"{one}: {mine}" for one, mine in pairs)
    return f'const {{ {named} }} = $modules["{other}"];'


def _listed(
    name: str, names: str, there: str | None, imports: list[tuple[str, tuple[str, ...]]]
) -> list[tuple[str, str]]:
    pairs = _pairs(names)
    if not there:
        return [(given, one) for one, given in pairs]
    other = _beside(name, there)
    imports.append((other, tuple(one for one, _ in pairs)))
    return [(given, f'$modules["{other}"].{one}') for one, given in pairs]


def _vendored(name: str, text: str) -> Module:
    """A library in one file, which lists its exports at its end and imports nothing."""
    found = _VENDORED.search(text)
    if not found or re.search(r"^import\b|\bimport\(", text, re.MULTILINE):
        raise Irregular(name)
    exports = tuple((given, one) for one, given in _pairs(found[1]))
    return Module(name, text[: found.start()], (), (), exports)


def _pairs(names: str) -> list[tuple[str, str]]:
    """``one as other`` as (one, other), ``one`` as (one, one)."""
    parts = [part.split(" as ") for part in re.split(r"\s*,\s*", names.strip())]
    return [(part[0], part[-1]) for part in parts]


def _beside(name: str, path: str) -> str:
    return normpath(join(dirname(name), path))
