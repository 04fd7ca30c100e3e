"""How many examples a test by chance tries: as many as it says in the run, ``RUNBOARD_EXAMPLES`` of each by hand."""

import os


def examples(usual: int) -> int:
    return int(os.environ.get("RUNBOARD_EXAMPLES", usual))
