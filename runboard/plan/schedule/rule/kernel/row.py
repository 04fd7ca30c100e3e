"""What a flat row is to the types: something whose places hold whole numbers."""

from typing import Protocol


class Row(Protocol):
    """A list of ``int``, or an array of 32-bit whole numbers where the rule is compiled."""

    def __getitem__(self, at: int, /) -> int: ...

    def __setitem__(self, at: int, value: int, /) -> None: ...
