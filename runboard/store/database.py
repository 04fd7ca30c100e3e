"""sqlite-utils without pandas, which it loads wherever that is installed (the planner's solver brings it along), to know of
one type of column that no shop has: a fifth of a second of every command's time."""

import sys
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sqlite_utils import Database, Migrations
else:
    is_there = "pandas" in sys.modules
    sys.modules.setdefault("pandas", None)  # whoever imports it now is told that there is none
    try:
        from sqlite_utils import Database, Migrations
    finally:
        if not is_there:
            del sys.modules["pandas"]

__all__ = ["Database", "Migrations"]
