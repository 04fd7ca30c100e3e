"""The pictures of README, made anew from the demo as it stands at this moment: ``python -m tests.readme_pictures``.

Now, the plan and a review are phones of 360 by 740 at two pixels each; the card is the first side of one that is printed. All are
PNGs with a palette, in ``.pictures/``, each of less than 60 kB.
"""

import subprocess
import sys
from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory

from PIL import Image
from playwright.sync_api import Page, expect, sync_playwright

from runboard.demo.make import make_demo
from tests.phone import Phone
from tests.serving import ROOT, serving_demo

PICTURES = ROOT / ".pictures"
RUN, FINISHED, TRAY = "r5", "r2", "7"
SIZE, SCALE, MOST = (360, 740), 2, 60_000
COLOURS = (64, 32, 16)
DOTS_PER_INCH = "175"  # an A6 card is as wide as the phones then


def main() -> None:
    with TemporaryDirectory() as place:
        data = Path(place) / "shop"
        make_demo(data, datetime.now(UTC))
        with serving_demo(data, planner=True) as server:
            _answer_what_was_running(server.address)
            _screens(server.address)
        _card(data, Path(place))


def _answer_what_was_running(address: str) -> None:
    robin = Phone(address, person="robin")
    for restart in robin.state().get("asks", {}):
        robin.press("restart answered", {"restart": restart})


def _screens(address: str) -> None:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path="/usr/bin/chromium")
        width, height = SIZE
        page = browser.new_page(viewport={"width": width, "height": height}, device_scale_factor=SCALE)
        page.context.add_cookies([{"name": "person", "value": "robin", "url": address}])
        for name, (path, settle) in SCREENS.items():
            page.goto(address + path)
            settle(page)
            _keep(name, Image.open(BytesIO(page.screenshot(animations="disabled"))))
        browser.close()


def _now(page: Page) -> None:
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    expect(page.locator("footer.last")).to_be_visible()
    expect(page.locator(".care .sign").first).to_be_visible()
    page.wait_for_function("() => [...document.images].every((one) => one.complete && one.naturalWidth)")


def _plan(page: Page) -> None:
    chart = page.locator(".key-fold").first
    while not chart.count():  # the plan is on its way
        page.wait_for_timeout(1000)
        page.reload()
    chart.evaluate("(one) => window.scrollTo(0, one.getBoundingClientRect().top - 60)")


def _review(page: Page) -> None:
    expect(page.locator("#lines:not([hx-get])")).to_be_visible(timeout=60_000)


SCREENS: Mapping[str, tuple[str, Callable[[Page], None]]] = {
    "now": ("", _now),
    "plan": ("plan", _plan),
    "review": (f"review/runs/{FINISHED}", _review),
}


def _card(data: Path, place: Path) -> None:
    paper, side = place / "card.pdf", place / "card"
    command = [
        sys.executable,
        "-m",
        "runboard.cli",
        "cards",
        RUN,
        "--data",
        str(data),
        "--trays",
        TRAY,
        "--kinds",
        "travellers",
    ]
    subprocess.run([*command, "--out", str(paper)], check=True, cwd=ROOT)
    subprocess.run(["pdftoppm", "-r", DOTS_PER_INCH, "-png", "-singlefile", str(paper), str(side)], check=True)
    _keep("card", Image.open(side.with_suffix(".png")))


def _keep(name: str, picture: Image.Image) -> None:
    """With the most colours that keep it small."""
    for colours in COLOURS:
        kept = BytesIO()
        picture.convert("RGB").quantize(colours, method=Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE).save(
            kept, "PNG", optimize=True
        )
        if kept.tell() < MOST:
            break
    (PICTURES / f"{name}.png").write_bytes(kept.getvalue())
    print(f"{name}.png: {picture.width} × {picture.height}, {colours} colours, {kept.tell()} bytes")


if __name__ == "__main__":
    main()
