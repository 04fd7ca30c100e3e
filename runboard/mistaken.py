"""What a command says of a mistake in what was asked of it."""


class Mistaken(Exception):
    """What was asked for cannot be done; the text says why, and what to do."""
