"""Where the pages and scripts lie: at the top of a checkout, inside the package once installed."""

from pathlib import Path

_PACKAGE = Path(__file__).parent


def folder(name: str) -> Path:
    """The folder ``templates`` or ``static``."""
    installed = _PACKAGE / name
    return installed if installed.is_dir() else _PACKAGE.parent / name
