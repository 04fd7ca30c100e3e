"""QR codes (ISO/IEC 18004) for a terminal and for a page, to be read by a phone at arm's length."""

import io

import segno

# A reader needs a code about a tenth as wide as it is far: 6 to 8 cm at arm's length. In a terminal one module is one
# column of about 2.2 mm, so the code is read from afar as soon as it is there; what counts is that it fits 80 columns.
# Level L makes the fewest modules, and segno raises the level where that needs no more of them. A screen is not torn or
# smudged, which is what the higher levels are for.
_LEVEL = "l"
_QUIET = 4  # modules of white around it, as the standard asks
LONGEST = 300  # characters of a URL that still fit 80 columns with their quiet zone
_BLACK_AND_WHITE = "\x1b[0;97;40m"
_USUAL = "\x1b[0m"


def terminal(text: str, *, colours: bool) -> str:
    """The code in half blocks, two rows a line, for a terminal of 80 columns.

    ``colours`` says that the terminal understands ANSI colours: then it is black on white everywhere. Without them it
    is right on a dark terminal, and inverted on a light one. Raises ``ValueError`` if the text is too long.
    """
    written = io.StringIO()
    _code(text).terminal(written, border=_QUIET, compact=True)
    lines = written.getvalue().splitlines()
    if colours:
        lines = [f"{_BLACK_AND_WHITE}{line}{_USUAL}" for line in lines]
    return "\n".join(lines) + "\n"


def svg(text: str, title: str) -> str:
    """The code as an SVG element to stand in a page: black on white in the dark too, with its quiet zone, without any
    style (a strict CSP lets it pass). It has no size of its own: give it at least 6 cm (240 CSS px). Raises
    ``ValueError`` if the text is too long."""
    written = io.BytesIO()
    _code(text).save(
        written,
        kind="svg",
        border=_QUIET,
        dark="#000",
        light="#fff",
        xmldecl=False,
        svgns=True,
        omitsize=True,
        nl=False,
        title=title,
        svgclass="qr",
        lineclass=None,
    )
    return written.getvalue().decode()


def _code(text: str) -> segno.QRCode:
    if len(text) > LONGEST:
        raise ValueError(f"A code for {len(text)} characters would be too fine to read; {LONGEST} are possible.")
    return segno.make(text, error=_LEVEL, boost_error=True, micro=False)
