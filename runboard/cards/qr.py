"""The QR code (ISO/IEC 18004) of a card: level and size chosen so that a smudged one still reads.

Level H restores 30 % of a code, Q 25 %. A module of 0.5 mm is four dots of a label printer of 203 dpi, and every module is
a whole number of such dots, so that none is drawn thinner than its neighbour.
"""

import io
import math
from functools import lru_cache

import segno

ROOM = 28.2  # mm on a card, with the quiet zone
DOT = 25.4 / 203
_QUIET = 4
_LEAST_DOTS = 4
LONGEST = 140  # characters of an address that still make modules of three dots


@lru_cache(maxsize=512)
def svg(text: str) -> str:
    """The code as an SVG element of its own size in mm, at most ``ROOM``; without any style. Raises ``ValueError`` for a
    text that would make it too fine to read."""
    if len(text) > LONGEST:
        raise ValueError(f"A code for {len(text)} characters would be too fine to read; {LONGEST} are possible.")
    code = segno.make(text, error="h", boost_error=False, micro=False)
    if _dots(code) < _LEAST_DOTS:
        code = segno.make(text, error="q", boost_error=True, micro=False)
    side = (code.symbol_size(border=_QUIET)[0]) * _dots(code) * DOT
    written = io.BytesIO()
    code.save(
        written,
        kind="svg",
        border=_QUIET,
        dark="#000",
        xmldecl=False,
        omitsize=True,
        nl=False,
        svgclass="code",
        lineclass=None,
    )
    return written.getvalue().decode().replace("<svg ", f'<svg width="{side:.3f}mm" height="{side:.3f}mm" ', 1)


def _dots(code: segno.QRCode) -> int:
    """Dots of a printer that one module takes."""
    return max(2, math.floor(ROOM / code.symbol_size(border=_QUIET)[0] / DOT))
