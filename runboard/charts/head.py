"""Where a head travels over a bed, to scale: solid with the beam on, dashed with it off. Ink only."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from runboard.charts.svg import LETTER, cut

WIDTH = 328.0
_HEAD, _FOOT, _MOST_HIGH = 38.0, 20.0, 420.0


@dataclass(frozen=True)
class Way:
    """One part of the head's way, in mm, y downwards."""

    x1: float
    y1: float
    x2: float
    y2: float
    on: bool


def head(label: str, ways: Sequence[Way], said: tuple[str, str, str], about: str = "") -> Markup:
    """The way of a head. ``said`` are two lines above it, and how wide it is below: from the leftmost to the rightmost that
    the head goes. ``label`` and ``about`` are for those who do not see it."""
    xs = [x for way in ways for x in (way.x1, way.x2)] or [0.0, 1.0]
    ys = [y for way in ways for y in (way.y1, way.y2)] or [0.0, 1.0]
    left, top, wide, high = min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys)
    scale = min((WIDTH - 4) / max(wide, 1e-6), _MOST_HIGH / max(high, 1e-6))
    drawn_high = high * scale

    def path(some: Iterable[Way]) -> str:
        found, at = [], None
        for way in some:
            start = f"{2 + (way.x1 - left) * scale:.1f} {_HEAD + 4 + (way.y1 - top) * scale:.1f}"
            end = f"{2 + (way.x2 - left) * scale:.1f} {_HEAD + 4 + (way.y2 - top) * scale:.1f}"
            if end == start and at == start:
                continue
            found.append(f"L{end}" if at == start else f"M{start}L{end}")
            at = end
        return "".join(found)

    height = _HEAD + drawn_high + 8 + _FOOT
    foot = _HEAD + drawn_high + 8
    return Markup(
        '<svg class="chart head" viewBox="0 0 {:g} {:g}" role="img" aria-label="{}"><desc>{}</desc>'
        '<text class="name" x="0" y="14" fill="currentColor">{}</text><text x="0" y="31" fill="currentColor">{}</text>'
        '<path fill="none" stroke="currentColor" stroke-width="0.9" stroke-dasharray="3 3" d="{}"/>'
        '<path fill="none" stroke="currentColor" stroke-width="1.8" d="{}"/>'
        '<path fill="none" stroke="currentColor" stroke-width="0.9" d="M2 {:g}v6M2 {:g}H{:g}v-3v6"/>'
        '<text x="{:g}" y="{:g}" text-anchor="middle" fill="currentColor">{}</text></svg>'
    ).format(
        WIDTH, round(height, 1), label, about, cut(said[0], WIDTH), cut(said[1], WIDTH),
        path(way for way in ways if not way.on), path(way for way in ways if way.on),
        round(foot - 3, 1), round(foot, 1), round(2 + wide * scale, 1),
        *_middle(2 + wide * scale / 2, said[2], foot + 15), said[2],
    )  # fmt: skip


def _middle(x: float, text: str, y: float) -> tuple[float, float]:
    return round(max(x, len(text) * LETTER / 2), 1), round(y, 1)
