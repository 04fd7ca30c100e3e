"""What helpers press and what heads their page takes two lines at most on a small phone, in every language."""

import re

import pytest
from playwright.sync_api import Page

from runboard.words.sentences import LANGUAGES, catalogue, sentence
from tests.serving import Here

# A look at a machine says all that was looked at, however long that is; its heading says it before.
KINDS = {
    "pair": r"go-wrong|go-call",
    "go": r"go-(?!watch).*|list-run|list-left|count-go|card-go|card-code-go|shut-go|leave-go|first-piece-pass",
    "full": r"leave|undo|back|ok|hurt-\w+|wrong-(hurt|bad|stopped)|scrap-.*|stop-(power|cutter|slip|failed|other)|first-piece-fail",
    "h1": r".*-title|card-through",
    "h2": r"what-to-do|setup|texts|state-.*|watch-for|count-why|first-piece-measured",
}
FACTS = {"good": 12, "scrap": 12, "left": 12, "number": "112", "step": "Sand 120"}
DRAW = """([kind, texts]) => texts.map(([name, text]) => {
    const place = document.createElement("section");
    place.className = kind === "h2" && name.includes("state") ? "work" : "";
    if (kind === "pair") place.innerHTML = '<div class="bar"><div><div class="pair"><button>x</button></div></div></div>';
    document.querySelector("main").append(place);
    const drawn = document.createElement({h1: "h1", h2: "h2"}[kind] ?? "button");
    drawn.className = ["go", "full"].includes(kind) ? kind : "";
    drawn.textContent = text;
    (place.querySelector(".pair") ?? place).append(drawn);
    const range = document.createRange();
    range.selectNodeContents(drawn);
    const lines = new Set([...range.getClientRects()].map((box) => Math.round(box.top))).size;
    const wide = drawn.scrollWidth > drawn.clientWidth || drawn.getBoundingClientRect().right > document.documentElement.clientWidth;
    place.remove();
    return lines > 2 || wide ? `${name}, ${lines} lines: ${text}` : "";
}).filter(Boolean)"""


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_button_or_a_title_takes_two_lines_at_most(language: str, phone: Page, server: Here) -> None:
    phone.goto(f"{server.address}t?language={language}")
    names = [name for name in sorted(catalogue(language).names) if name.startswith("helper-")]
    for kind, those in KINDS.items():
        drawn = [name for name in names if re.fullmatch(those, name.removeprefix("helper-"))]

        assert phone.evaluate(DRAW, [kind, [[name, sentence(name, FACTS, locale=language)] for name in drawn]]) == []
