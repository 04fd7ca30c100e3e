"""The QR code (ISO/IEC 18004) of a card: level and size chosen so that a smudged one still reads.

Level H restores 30 % of a code, Q 25 %. Every module is a whole number of the dots of a label printer of 203 dpi, so that
none is drawn thinner than its neighbour: five of them, 0.63 mm, with level H for the addresses that there are. A longer one
takes Q where that keeps its modules larger, for small modules are lost to dust before large ones are to a stain.
"""

import io
import math
from functools import lru_cache

import segno

ROOM = 30.8  # mm on a card, with the quiet zone
DOT = 25.4 / 203
_QUIET = 4
_ENOUGH_DOTS = 5
LONGEST = 140  # characters of an address; more would make modules of less than three dots


@lru_cache(maxsize=512)
def svg(text: str) -> str:
    """The code as an SVG element of its own size in mm, at most ``ROOM``; without any style. Raises ``ValueError`` for a
    text that would make it too fine to read."""
    if len(text) > LONGEST:
        raise ValueError(f"A code for {len(text)} characters would be too fine to read; {LONGEST} are possible.")
    code = segno.make(text, error="h", boost_error=False, micro=False)
    if _dots(code) < _ENOUGH_DOTS:
        code = max(code, segno.make(text, error="q", boost_error=False, micro=False), key=_dots)
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
