"""The bars of a review that leaves the shop: one an operation, what was guessed as an empty bar, what it took as a filled one.

Drawn for a phone's width and for paper alike. Its attributes draw it black on white, for paper: WeasyPrint lets no style of
the page into a drawing. Browsers colour it by its classes.
"""

from collections.abc import Sequence
from datetime import timedelta
from html import escape

from runboard.words.facts import span_in_words
from runboard.words.sentences import sentence

_WIDE = 328
_ROW = 46
_TOP, _BAR = 17, 9
_TYPE = 'font-family="DejaVu Sans, sans-serif" font-size="11"'
_DRAWN = {"guess": 'fill="none" stroke="#000" stroke-width="1.2"', "taken": 'fill="#000"'}
_MOST_LETTERS = 30  # of a name beside its figures; the whole stands at its operation

Named = tuple[str, timedelta, timedelta | None]


def bars_svg(bars: Sequence[Named]) -> str:
    """An SVG element of (name, guess, taken); '' where there is nothing to draw. What was not measured has no filled bar, and
    says so."""
    longest = max((max(guess, taken or guess) for _, guess, taken in bars), default=timedelta(0))
    if not longest:
        return ""
    rows = "".join(_row(at, bar, longest) for at, bar in enumerate(bars))
    title = escape(sentence("friend-bars-title"))
    return (
        f'<svg class="bars" viewBox="0 0 {_WIDE} {_ROW * len(bars)}" role="img" aria-label="{title}" {_TYPE}>'
        f"<title>{title}</title>{rows}</svg>"
    )


def _row(at: int, bar: Named, longest: timedelta) -> str:
    name, guess, taken = bar
    y = at * _ROW
    if taken is None:
        said = sentence("friend-bar-unknown", {"guess": span_in_words(guess)})
    else:
        said = sentence("friend-bar-taken", {"taken": span_in_words(taken), "guess": span_in_words(guess)})
    drawn = [
        f'<text x="0" y="{y + 12}" font-weight="700">{escape(_short(name))}</text>',
        f'<text class="figure" x="{_WIDE}" y="{y + 12}" text-anchor="end">{escape(said)}</text>',
        _bar("guess", y + _TOP, guess, longest),
    ]
    if taken is not None:
        drawn.append(_bar("taken", y + _TOP + _BAR + 2, taken, longest))
    return "".join(drawn)


def _short(name: str) -> str:
    return name if len(name) <= _MOST_LETTERS else f"{name[: _MOST_LETTERS - 1].rstrip()}…"


def _bar(kind: str, y: float, length: timedelta, longest: timedelta) -> str:
    wide = max(1.0, (_WIDE - 2) * (length / longest))
    return f'<rect class="{kind}" {_DRAWN[kind]} x="1" y="{y}" width="{wide:.1f}" height="{_BAR}"/>'
