"""``python -m tests.bench presses``, ``… now``, ``… alerts``, ``… cards``, ``… plan``, ``… obey``, ``… prices``, ``… pages``,
``… forecast``, ``… review``, ``… programs`` and ``… start``: figures, printed beside their goals."""

import sys


def main(arguments: list[str]) -> int:
    match arguments:
        case ["presses", *rest]:
            from tests.bench.presses import main as presses

            return presses(verbose="--each" in rest)
        case ["now", *rest]:
            from tests.bench.now import main as now

            return now(quick="--quick" in rest)
        case ["alerts", *rest]:
            from tests.bench.alerts import main as alerts

            return alerts(quick="--quick" in rest)
        case ["plan", *rest]:
            from tests.bench.plan import run

            return run(rest)
        case ["obey", *rest]:
            from tests.bench.obey import main as obey

            return obey(rest)
        case ["prices", *rest]:
            from tests.bench.prices import main as prices

            return prices(quick="--quick" in rest, searched="--at-once" not in rest)
        case ["cards", *rest]:
            from tests.bench.cards import main as cards

            return cards(quick="--quick" in rest)
        case ["pages", *rest]:
            from tests.bench.pages import main as pages

            return pages(quick="--quick" in rest)
        case ["review", *rest]:
            from tests.bench.review import main as review

            return review(quick="--quick" in rest)
        case ["programs", *rest]:
            from tests.bench.programs import main as programs

            return programs(quick="--quick" in rest)
        case ["start"]:
            from tests.bench.start import main as start

            return start()
        case ["forecast"]:
            from tests.bench.forecast import main as forecast

            return forecast()
    print(__doc__)
    return 2


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
