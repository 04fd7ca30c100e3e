"""What is sent to a child process: packed, with the views that book and routes hold, which by themselves cannot be."""

import io
import pickle
from types import MappingProxyType
from typing import Any


class _Packer(pickle.Pickler):
    def reducer_override(self, found: Any) -> Any:
        return (_view, (dict(found),)) if isinstance(found, MappingProxyType) else NotImplemented


def _view(found: dict[Any, Any]) -> MappingProxyType[Any, Any]:
    return MappingProxyType(found)


def packed(found: object) -> bytes:
    """Anything of the shop, as bytes for another process of the same program."""
    into = io.BytesIO()
    _Packer(into, pickle.HIGHEST_PROTOCOL).dump(found)
    return into.getvalue()


def unpacked(found: bytes) -> Any:
    """The same again; of bytes that this program packed."""
    return pickle.loads(found)  # noqa: S301 - packed by this process or its parent
