"""Scripts and styles of a screen in one file each: nothing twice, nothing missing, made anew when a file changes."""

import re
import shutil
from pathlib import Path

import pytest
from flask.testing import FlaskClient

from runboard.web.door import composing, static_files
from runboard.web.door.composing import Irregular, at_once, later, read
from runboard.web.door.static_files import SCREENS, composed, names_of
from tests.serving import ROOT

STATIC = ROOT / "static"
BEGINS = re.compile(r'^\$modules\["([^"]+)"\] = ', re.MULTILINE)


def made(name: str) -> static_files.Composed:
    found = composed(STATIC, name)
    assert found
    return found


@pytest.mark.parametrize("screen", SCREENS)
def test_each_module_of_a_screen_stands_once_in_what_it_fetches_at_once_or_later(screen: str) -> None:
    _, script, rest = names_of(screen)

    first, more = BEGINS.findall(made(script).text), BEGINS.findall(made(rest).text)

    assert len(first) > 20 and len(more) > 15
    assert len({*first, *more}) == len(first) + len(more)


@pytest.mark.parametrize("screen", SCREENS)
def test_what_is_composed_asks_for_no_module_by_its_own_address(screen: str) -> None:
    _, script, rest = names_of(screen)

    assert re.findall(r'\bimport\(?\s*"([^"]+)"', made(script).text) == [f"./{rest}"]
    assert re.findall(r"\bimport\b", made(rest).text.replace("importance", "")) == []
    assert not re.search(r"^(?:import|export)\b(?! \{ \$modules as)", made(script).text, re.MULTILINE)


def test_what_comes_later_is_named_as_it_is_kept() -> None:
    _, script, rest = names_of("now")
    texts = made(script).text + made(rest).text

    named = set(re.findall(r'\$later\("([^"]+)"\)', texts))

    assert {"alerts/alarm.js", "door/overlay.js", "sheets/wrong.js"} <= named
    assert named - set(BEGINS.findall(texts)) == set()


def test_comments_stay_at_home_and_what_is_written_does_not() -> None:
    module = read(
        "now/one.js", "// said\nexport const text = html`\n  // no comment\n`;\n  /** told */\nlet other = 1;"
    )

    assert "said" not in module.body and "told" not in module.body
    assert "// no comment" in module.body


def test_imports_and_exports_become_names() -> None:
    module = read(
        "now/one.js",
        'import { a, b as c } from "../door/two.js";\nimport * as all from "./three.js";\n'
        'export { a, c as d };\nexport { e } from "./three.js";\nexport async function f() { return import("./four.js"); }',
    )

    assert 'const { a, b: c } = $modules["door/two.js"];' in module.body
    assert 'const all = $modules["now/three.js"];' in module.body
    assert 'async function f() { return $later("now/four.js"); }' in module.body
    assert dict(module.exports) == {"a": "a", "d": "c", "e": '$modules["now/three.js"].e', "f": "f"}
    assert module.later == ("now/four.js",)


@pytest.mark.parametrize(
    "line",
    [
        "export default 1;",
        "export let count = 0;",
        "export const { a, b } = both;",
        "import all from './all.js';",
        'import "./all.js";',
        'import {a} from "./all.js";',
        'import { a } from "./all.js"; // why',
        'export * from "./all.js";',
    ],
)
def test_what_is_written_otherwise_is_refused(line: str) -> None:
    with pytest.raises(Irregular):
        read("now/one.js", line)


def test_a_name_that_nobody_exports_and_a_way_back_are_refused(tmp_path: Path) -> None:
    (tmp_path / "one.js").write_text('import { gone } from "./two.js";')
    (tmp_path / "two.js").write_text("export const here = 1;")
    (tmp_path / "three.js").write_text('import { four } from "./four.js";\nexport const three = 3;')
    (tmp_path / "four.js").write_text('import { three } from "./three.js";\nexport const four = 4;')

    with pytest.raises(Irregular, match="has no"):
        at_once(tmp_path, "one.js", "")
    with pytest.raises(Irregular, match="leads back"):
        at_once(tmp_path, "three.js", "")


def test_a_module_that_both_need_is_fetched_at_once_alone(tmp_path: Path) -> None:
    (tmp_path / "one.js").write_text('import { two } from "./two.js";\nimport("./three.js");')
    (tmp_path / "two.js").write_text("export const two = 2;")
    (tmp_path / "three.js").write_text('import { two } from "./two.js";\nexport const three = two + 1;')

    assert BEGINS.findall(at_once(tmp_path, "one.js", "")[0]) == ["two.js"]
    assert BEGINS.findall(later(tmp_path, "one.js")[0]) == ["three.js"]


def test_a_style_that_names_another_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "one.css").write_text("a { background: url(sign.svg) }")

    with pytest.raises(Irregular):
        composing.styles(tmp_path, ("one.css",))


@pytest.mark.parametrize("name", ["now.js", "now.later.js", "now.css"])
def test_a_composed_file_is_sent_once(client: FlaskClient, name: str) -> None:
    first = client.get(f"/composed/{name}")
    again = client.get(f"/composed/{name}", headers={"If-None-Match": first.headers["ETag"]})

    assert first.status_code == 200 and first.content_type.startswith("text/")
    assert (again.status_code, again.data) == (304, b"")


@pytest.mark.parametrize("name", ["nothing.js", "now", "..%2fnow.js"])
def test_nothing_else_is_composed(client: FlaskClient, name: str) -> None:
    assert client.get(f"/composed/{name}").status_code in (404, 308)


def test_a_changed_file_is_composed_anew(tmp_path: Path) -> None:
    place = tmp_path / "copy"
    shutil.copytree(STATIC, place)
    before = composed(place, "now.js")

    with (place / "door" / "clock.js").open("a", encoding="utf-8") as file:
        file.write("const more = 1;\n")
    after = composed(place, "now.js")

    assert before and after and before.etag != after.etag and "const more = 1;" in after.text
