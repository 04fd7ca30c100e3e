"""sqlite-utils without pandas and numpy, which it loads wherever they are installed (the planner's solver brings them along), to
know of types of columns that no shop has: a third of a second of every command's time."""

import sys
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sqlite_utils import Database, Migrations
else:
    kept_out = [name for name in ("pandas", "numpy") if name not in sys.modules]
    sys.modules.update(dict.fromkeys(kept_out))  # whoever imports them now is told that there are none
    try:
        from sqlite_utils import Database, Migrations
    finally:
        for name in kept_out:
            del sys.modules[name]

__all__ = ["Database", "Migrations"]
