"""What is looked at where letters are as large as a small screen allows: nothing too wide, cut off, or over something else."""

from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Browser, Page

from tests.browser.conftest import FLAGS, WITHOUT_WINDOWS, Phones

# A phone of 360 × 740 in layout pixels: at 150 % and at 200 %, and with the browser's own text twice as large.
ZOOMED = {"150 %": (240, 493), "200 %": (180, 370)}
TWICE_AS_LARGE = "--blink-settings=defaultFontSize=32"

# By how much the page, or the sheet over it, is too wide, and which part; what is cut off; texts over each other, but under what
# stays fixed; bars that take more than a third of the screen. A wide table scrolls in its own box.
WRONG = r"""() => {
  const found = [];
  const root = document.documentElement, inside = document.querySelector("dialog[open]");
  const name = (one) => `${one.tagName.toLowerCase()}.${String(one.className?.baseVal ?? one.className).split(" ").join(".")} '${(one.innerText ?? "").trim().slice(0, 40).replaceAll("\n", " ")}'`;
  const room = inside ?? root;
  if (room.scrollWidth > room.clientWidth) {
    const right = inside ? inside.getBoundingClientRect().right : root.clientWidth;
    const wide = [...document.querySelectorAll(inside ? "dialog[open] *" : "body *")].filter((one) => one.checkVisibility() && !one.closest(".unseen, .scroll, svg *, thead") && one.getBoundingClientRect().right > right + 0.5 && one.getBoundingClientRect().width > 1);
    found.push(`${room.scrollWidth - room.clientWidth} px too wide: ${wide.filter((one) => !wide.some((other) => one !== other && one.contains(other))).slice(0, 4).map(name).join("; ")}`);
  }
  for (const one of document.querySelectorAll(inside ? "dialog[open] *" : "body *")) {
    if (!one.checkVisibility() || one.closest(".unseen, svg *, .scroll, thead, table")) continue;
    const style = getComputedStyle(one);
    if (["hidden", "clip"].includes(style.overflowX) && one.scrollWidth > one.clientWidth + 1 && one.innerText?.trim()) found.push(`cut off: ${name(one)}`);
    const longest = Math.max(...(one.matches(".row > a") ? one.innerText : "").split(/\s+/).map((word) => word.length));
    if (longest * 0.4 * parseFloat(style.fontSize) > one.getBoundingClientRect().width) found.push(`squeezed: ${name(one)}`);
    if (one.matches("button, a, summary, select") && one.scrollWidth > one.clientWidth + 1 && one.clientWidth && style.display !== "inline") found.push(`label wider than itself: ${name(one)}`);
  }
  const boxes = [...document.querySelectorAll(inside ? "dialog[open] *" : "main *, nav *")].filter((one) => one.checkVisibility() && !one.closest(".unseen, svg, [hidden], .stack thead, .log thead") && [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim()))
    .filter((one) => { for (let up = one; up; up = up.parentElement) if (["fixed", "sticky"].includes(getComputedStyle(up).position)) return false; return true; })
    .flatMap((one) => [...one.childNodes].filter((node) => node.nodeType === 3 && node.data.trim()).flatMap((node) => { const range = document.createRange(); range.selectNodeContents(node); return [...range.getClientRects()].map((box) => ({one, box})); }));
  for (let i = 0; i < boxes.length; i += 1) for (let j = i + 1; j < Math.min(boxes.length, i + 60); j += 1) {
    const {box: a, one: x} = boxes[i], {box: b, one: y} = boxes[j];
    if (x === y || x.contains(y) || y.contains(x)) continue;
    const w = Math.min(a.right, b.right) - Math.max(a.left, b.left), h = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
    if (w > 2 && h > Math.min(a.height, b.height) * 0.4) { found.push(`over each other: ${name(x)} and ${name(y)}`); break; }
  }
  const bars = [...document.querySelectorAll("body *")].filter((one) => one.checkVisibility() && getComputedStyle(one).position === "fixed" && one.getBoundingClientRect().width > 10).reduce((sum, one) => sum + one.getBoundingClientRect().height, 0);
  if (!inside && bars > innerHeight / 3) found.push(`bars take ${Math.round(bars)} of ${innerHeight} px`);
  return [...new Set(found)].slice(0, 12);
}"""


@contextmanager
def with_large_text(chromium: Browser) -> Iterator[Phones]:
    """Phones whose browser shows text of 32 pixels where others have 16."""
    browser = chromium.browser_type.launch(executable_path=WITHOUT_WINDOWS, args=[*FLAGS, TWICE_AS_LARGE])
    yield Phones(browser)
    browser.close()


def wrong(page: Page, where: str) -> list[str]:
    """What is wrong on the screen as it stands, with all that is folded open."""
    page.evaluate("document.querySelectorAll('main details').forEach((one) => { one.open = true; })")
    page.evaluate("new Promise(requestAnimationFrame)")
    return [f"{where}: {found}" for found in page.evaluate(WRONG)]
