"""Print how many values from outside are asserted, of each standing, and of which question: ``python -m tests.outside``."""

from itertools import groupby

from tests.outside.said import all_said, counts


def main() -> None:
    """The table, and the three sums."""
    said = sorted(all_said(), key=lambda one: (one.question, one.standing, one.source))
    for (question, standing, source), some in groupby(said, key=lambda one: (one.question, one.standing, one.source)):
        print(f"{len(list(some)):4} {standing:12} {question}  ({source})")
    print(", ".join(f"{count} {standing}" for standing, count in counts(said).items()))


if __name__ == "__main__":
    main()
