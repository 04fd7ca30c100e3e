"""The real server on a data folder, with a page that is answered only after a minute."""

import sys
import time
from pathlib import Path

from runboard.app import build, served
from runboard.house import Settings
from runboard.web.door.serve import listen, serve


def stuck() -> str:
    """Far longer than a server may take to end."""
    print("stuck", flush=True)
    time.sleep(60)
    return ""


def main() -> None:
    house = build(Settings(Path(sys.argv[1]), plans=False))
    house.app.add_url_rule("/stuck", view_func=stuck)
    with listen(0) as listening:
        serve(served(house), listening, open_browser=False)


if __name__ == "__main__":
    main()
