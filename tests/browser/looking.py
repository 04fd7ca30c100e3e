"""What is looked at on every screen, light and dark, on a phone and on a tablet."""

import os
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, Request

from tests.browser.conftest import PHONE, TABLET, Scheme

SIZES = {"phone": PHONE, "tablet": TABLET}
SCHEMES: tuple[Scheme, ...] = ("light", "dark")
TOUCH, INLINE = 56, 44
_AXE = Axe().axe_script

# Everything that is pressed, by what stands in its way: height, and what it is called.
_TARGETS = """() => [...document.querySelectorAll("button, a, summary, select, input:not([type=hidden]), textarea")]
  .filter((one) => one.checkVisibility() && !one.closest(".unseen") && one.getBoundingClientRect().width > 1)
  .filter((one) => { const dialog = document.querySelector("dialog[open]"); return !dialog || dialog.contains(one); })
  .map((one) => {
    const box = (one.closest("label.tick") ?? one).getBoundingClientRect();
    return {words: (one.getAttribute("aria-label") ?? one.innerText ?? one.name).slice(0, 60), tag: one.tagName,
      inline: one.tagName === "A" && getComputedStyle(one).display === "inline", height: box.height, width: box.width};
  })"""
# How far the last thing on the screen reaches under the bars that stand fixed at its foot, once it is scrolled to.
_UNDER_THE_BARS = """() => {
  window.scrollTo(0, document.documentElement.scrollHeight);
  const fixed = [...document.querySelectorAll(".last, .screens")].filter((one) => one.checkVisibility());
  const bars = Math.min(innerHeight, ...fixed.map((one) => one.getBoundingClientRect().top));
  const rest = [...document.querySelectorAll("main *")]
    .filter((one) => one.checkVisibility() && !one.closest(".last, dialog, .unseen") && !one.children.length && one.innerText?.trim());
  const lowest = Math.max(0, ...rest.map((one) => one.getBoundingClientRect().bottom));
  window.scrollTo(0, 0);
  return lowest - bars;
}"""
# While a sheet lies over the page axe looks at the sheet: the page is looked at without it.
# Of all that is written in one colour, size and weight on the same grounds some: the first, the last, one in the middle.
# What axe says of their contrast it says of the others; it takes most of its time for that rule, the longer the page.
_ALIKE = """() => {
  const look = (one) => { const {color, fontSize, fontWeight, textShadow, opacity, visibility} = getComputedStyle(one);
    return [color, fontSize, fontWeight, textShadow, opacity, visibility].join(); };
  const ground = (one) => { const {backgroundColor, backgroundImage, opacity, filter, position} = getComputedStyle(one);
    return [backgroundColor, backgroundImage, opacity, filter, position].join(); };
  const grounds = new Map();
  const under = (one) => {
    if (!one) return "";
    if (!grounds.has(one)) grounds.set(one, `${under(one.parentElement)}|${ground(one)}${one.matches(":disabled, [aria-disabled=true]")}`);
    return grounds.get(one);
  };
  const words = (one) => ["INPUT", "SELECT", "TEXTAREA"].includes(one.tagName) || [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim());
  const alike = new Map();
  for (const one of (document.querySelector("dialog[open]") ?? document.body).querySelectorAll("*")) {
    if (!words(one) || !one.checkVisibility()) continue;
    const key = `${look(one)} ${under(one)}`;
    alike.set(key, [...(alike.get(key) ?? []), one]);
  }
  return [...alike.values()].flatMap((found) => [...new Set([found[0], found[found.length >> 1], found.at(-1)])]);
}"""
_FINDS = f"""async (everything) => {{
  const violations = async (where, how) => (await axe.run(where, {{resultTypes: ["violations"], ...how}})).violations;
  return [
    ...await violations({{include: ({_ALIKE})()}}, {{runOnly: ["color-contrast"]}}),
    ...everything ? await violations(document.querySelector("dialog[open]") ?? document, {{rules: {{"color-contrast": {{enabled: false}}}}}}) : [],
  ];
}}"""
# What is unfolded or lit anew has come to rest: nothing moves but what moves for good, and nothing has changed for a moment.
_RESTS = """async () => {
  const moving = document.getAnimations().filter((one) => Number.isFinite(one.effect.getComputedTiming().endTime));
  await Promise.all(moving.map((one) => one.finished.catch(() => {})));
  await new Promise((rests) => {
    const giveUp = setTimeout(rests, 2000);
    let timer = setTimeout(rests, 40);
    new MutationObserver(() => { clearTimeout(timer); timer = setTimeout(rests, 40); })
      .observe(document, {subtree: true, childList: true, attributes: true, characterData: true});
  });
  await new Promise(requestAnimationFrame);
}"""
_TOO_WIDE = """() => {
  const room = document.documentElement.clientWidth;
  const inside = document.querySelector("dialog[open]");
  const wide = (inside ? inside.scrollWidth - inside.clientWidth : document.documentElement.scrollWidth - room);
  return wide > 0 ? wide : 0;
}"""


class Looking:
    """Looks at what a page shows in each size and scheme, and writes down what is wrong."""

    def __init__(self, page: Page, address: str) -> None:
        self.page = page
        self.host = urlsplit(address).netloc
        self.wrong: list[str] = []
        self.pictures = os.environ.get("RUNBOARD_PICTURES")
        self.under_way: set[Request] = set()
        page.on("request", self._asked)
        page.on("requestfinished", lambda request: self.under_way.discard(request))
        page.on("requestfailed", lambda request: self.under_way.discard(request))

    def _asked(self, request: Request) -> None:
        url = request.url
        parts = urlsplit(url)
        if parts.path != "/stream":  # which never ends
            self.under_way.add(request)
        if parts.scheme in ("http", "https", "ws", "wss") and parts.netloc != self.host:
            self.wrong.append(f"asks a third party: {url}")

    def unfold(self) -> None:
        """Open all that is folded."""
        self.page.evaluate("document.querySelectorAll('main details').forEach((one) => { one.open = true; })")
        self.rests()

    def rests(self) -> None:
        """Wait until what was asked for is there, and shown."""
        self.page.evaluate(_RESTS)
        until = time.monotonic() + 10
        while self.under_way and time.monotonic() < until:
            self.page.evaluate(_RESTS)

    def picture(self, name: str) -> None:
        """Only a picture, where they are wanted."""
        for size, viewport in SIZES.items() if self.pictures else ():
            self.page.set_viewport_size(viewport)
            for scheme in SCHEMES:
                self.page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
                self._picture(name, size, scheme)

    def at(self, name: str) -> None:
        """Look at the screen as it stands."""
        for size, viewport in SIZES.items():
            self.page.set_viewport_size(viewport)
            for scheme in SCHEMES:
                self.page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
                self.rests()
                where = f"{name}, {size}, {scheme}"
                if self.pictures:
                    self._picture(name, size, scheme)
                self.wrong += [f"{where}: {found}" for found in self._found(size, scheme)]
        self.page.set_viewport_size(PHONE)
        self.page.emulate_media(color_scheme="light")

    def _found(self, size: str, scheme: Scheme) -> Iterator[str]:
        for violation in self._violations(size, scheme):
            yield f"axe {violation['id']}: {[node['html'][:120] for node in violation['nodes'][:3]]}"
        if scheme == "dark":
            return
        if wide := self.page.evaluate(_TOO_WIDE):
            yield f"{wide} px too wide"
        if not self.page.locator("dialog[open]").count() and (under := self.page.evaluate(_UNDER_THE_BARS)) > 0:
            yield f"{under:.0f} px of it stay under the bars at the foot"
        if size == "phone":
            for one in self.page.evaluate(_TARGETS):
                if one["height"] < (INLINE if one["inline"] else TOUCH) - 0.5:
                    yield f"{one['tag']} '{one['words']}' is {one['height']:.0f} px high"

    def _violations(self, size: str, scheme: Scheme) -> list[dict[str, Any]]:
        """What axe finds: everything once, and in the dark only what another light can change."""
        everything = (size, scheme) == ("phone", "light")
        if not everything and (size, scheme) != ("tablet", "dark"):
            return []
        if not self.page.evaluate("'axe' in window"):
            self.page.evaluate(_AXE)
        found: list[dict[str, Any]] = self.page.evaluate(_FINDS, everything)
        return found

    def _picture(self, name: str, size: str, scheme: Scheme) -> None:
        folder = Path(str(self.pictures))
        folder.mkdir(parents=True, exist_ok=True)
        self.page.screenshot(path=folder / f"{name}-{size}-{scheme}.png".replace(" ", "-"))
