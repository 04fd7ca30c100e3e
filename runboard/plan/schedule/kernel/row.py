"""What a flat row is to the types: something whose places hold whole numbers."""

from typing import Protocol


class Row(Protocol):
    """A list of ``int``, or an array of 64-bit whole numbers where the rule is compiled."""

    def __getitem__(self, at: int, /) -> int: ...

    def __setitem__(self, at: int, value: int, /) -> None: ...


class Rows(Protocol):
    """A list of rows, or an array of two dimensions."""

    def __getitem__(self, at: int, /) -> Row: ...
