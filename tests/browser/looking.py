"""What is looked at on every screen, light and dark, on a phone and on a tablet."""

import os
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

from tests.browser.conftest import PHONE, TABLET, Scheme

SIZES = {"phone": PHONE, "tablet": TABLET}
SCHEMES: tuple[Scheme, ...] = ("light", "dark")
TOUCH, INLINE = 56, 24

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
        page.on("request", lambda request: self._asked(request.url))

    def _asked(self, url: str) -> None:
        parts = urlsplit(url)
        if parts.scheme in ("http", "https", "ws", "wss") and parts.netloc != self.host:
            self.wrong.append(f"asks a third party: {url}")

    def unfold(self) -> None:
        """Open all that is folded."""
        self.page.evaluate("document.querySelectorAll('main details').forEach((one) => { one.open = true; })")
        self.page.wait_for_timeout(300)

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
                self.page.wait_for_timeout(60)
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
        """What axe finds. It is slow: everything once, and in the dark only what another light can change."""
        options: dict[str, Any] = {"resultTypes": ["violations"]}
        if (size, scheme) == ("tablet", "dark"):
            options["runOnly"] = ["color-contrast"]
        elif (size, scheme) != ("phone", "light"):
            return []
        found: list[dict[str, Any]] = Axe().run(self.page, options=options).response["violations"]
        return found

    def _picture(self, name: str, size: str, scheme: Scheme) -> None:
        folder = Path(str(self.pictures))
        folder.mkdir(parents=True, exist_ok=True)
        self.page.screenshot(path=folder / f"{name}-{size}-{scheme}.png".replace(" ", "-"))
