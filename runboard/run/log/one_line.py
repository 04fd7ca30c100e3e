"""A text in one line, of signs that can be seen: for names, and for whatever leaves the building in a header or a title."""


def one_line(text: str, most: int) -> str:
    """The text without breaks, control signs and others that cannot be seen, each gap one space, at most so many signs."""
    return " ".join("".join(sign if sign.isprintable() else " " for sign in text).split())[:most].strip()
